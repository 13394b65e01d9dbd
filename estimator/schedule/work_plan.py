"""Tasks and waits with what each waits for in; what waits for each, and how much work lies behind it, out."""

from collections.abc import Mapping, Sequence
from functools import cached_property

from estimator.model.frozen import Frozen
from estimator.model.schedule import Task, Wait


class Plan(Frozen, kw_only=True, dict=True):
    """What has to be placed. `before` are the tasks and waits that each task or wait waits for, by id."""

    tasks: tuple[Task, ...]
    waits: tuple[Wait, ...]
    before: Mapping[str, Sequence[str]]

    @classmethod
    def of(cls, tasks: Sequence[Task], waits: Sequence[Wait]) -> "Plan":
        """Tasks and waits that know themselves what they wait for."""
        every: tuple[Task | Wait, ...] = (*tasks, *waits)
        return cls(tasks=tuple(tasks), waits=tuple(waits), before={one.id: one.waits_for for one in every})

    @cached_property
    def hours(self) -> Mapping[str, float]:
        """How long each task and wait takes on the clock, by id: gangs share their work."""
        return {t.id: t.crew_hours / t.gangs for t in self.tasks} | {w.id: w.hours for w in self.waits}

    @cached_property
    def after(self) -> Mapping[str, Sequence[str]]:
        """The tasks and waits that wait for each task and wait: `before` from the other side."""
        out: dict[str, list[str]] = {name: [] for name in self.hours}
        for name in out:
            for earlier in self.before[name]:
                if earlier in out:
                    out[earlier].append(name)
        return out

    @cached_property
    def tails(self) -> Mapping[str, float]:
        """Hours of the longest chain from the start of each task or wait to the end. Errors: ValueError for a ring."""
        known: dict[str, float] = {}
        begun: set[str] = set()

        def tail(name: str) -> float:
            if name not in known:
                if name in begun:
                    raise ValueError(f"{name} waits for itself")
                begun.add(name)
                known[name] = self.hours[name] + max([tail(n) for n in self.after[name]], default=0.0)
            return known[name]

        return {name: tail(name) for name in self.hours}
