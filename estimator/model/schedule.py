"""Who does what on which day: tasks placed on working days, waits, and what papers and prices read from them."""

from collections.abc import Iterable
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.half_days import DUST, HALF_DAY, Clock
from estimator.model.money import up_to
from estimator.model.say import Say
from estimator.model.steps import LATER, STEPS


class Task(Frozen, kw_only=True):
    """Work of one crew without a break but nights. `start` and `end` are hours of site days: 8 × day + hour of that day.

    `crew_hours` are hours of one crew; `gangs` of them share it, side by side. `waits_for` are ids of tasks and waits.
    `below`: under drains that may be in use, in a tunnel.
    """

    id: str
    repair: str
    method: str
    step: str
    crew: str
    crew_hours: float
    items: tuple[str, ...]
    waits_for: tuple[str, ...] = ()
    drains_off: bool = False
    below: bool = False
    gangs: int = 1
    part: int = 1
    parts: int = 1
    start: float = 0.0
    end: float = 0.0
    at_the_pipe: Say | None = None

    @property
    def text(self) -> Say:
        """What is done, in words; on the pipe by the way of repair."""
        return self.at_the_pipe if self.step == "pipe" and self.at_the_pipe else STEPS[self.step]


class Wait(Frozen, kw_only=True):
    """Time that passes by itself: the inspector's coming, a cure, concrete. Hours of site days; nobody is paid for it."""

    id: str
    why: Say
    hours: float
    waits_for: tuple[str, ...]
    drains_off: bool = False
    start: float = 0.0
    end: float = 0.0


class Lead(Frozen, kw_only=True):
    """What has to come in before the first day: its name and how many working days it usually takes."""

    what: Say
    working_days: int


class Mark(Frozen, kw_only=True):
    """A milestone and the site day at whose end it is reached, from 1."""

    name: str
    text: Say
    day: int


class Risk(Frozen, kw_only=True):
    """Something that may move the end: what, and by how many site days."""

    what: Say
    days: Decimal


class CrewDay(Frozen, kw_only=True):
    """What one crew does on one site day (from 1), and for how many hours each; set-up is not among them."""

    day: int
    crew: str
    work: tuple[tuple[Task, float], ...]

    @property
    def hours(self) -> float:
        return sum(hours for _, hours in self.work)


class DaySpan(Frozen, kw_only=True):
    """Days of the work from the morning of day `start` (from 0) for `length` days: what is done, and whether drains work."""

    start: Decimal
    length: Decimal
    text: Say
    no_drains: bool = False


class Schedule(Frozen, kw_only=True):
    """The tasks of an option on its days. Every number of days anywhere is read from here."""

    tasks: tuple[Task, ...] = ()
    waits: tuple[Wait, ...] = ()
    leads: tuple[Lead, ...] = ()
    risks: tuple[Risk, ...] = ()
    day_hours: float = 8.0
    tolerance_hours: float = 0.25
    least_hours: float = 0.0  # no order of the work ends sooner

    @property
    def end(self) -> float:
        """The hour at which the last task ends, a second visit on another day not counted."""
        return max((t.end for t in self.tasks if t.step != LATER), default=0.0)

    @property
    def _clock(self) -> Clock:
        return Clock(self.day_hours, self.tolerance_hours, self.end)

    @property
    def days_on_site(self) -> Decimal:
        """Working days from the first morning to the last task, up to the half; a quarter hour over starts no new half."""
        return max(HALF_DAY, up_to(HALF_DAY * self._clock.halves, HALF_DAY)) if self.tasks else Decimal(0)

    @property
    def days_without_drains(self) -> Decimal:
        """Days on which no drain may be used, half day by half day, until the inspector has seen the water test."""
        return self._clock.days_off(self._spans_off)

    @property
    def _spans_off(self) -> list[tuple[float, float]]:
        """When the drains are off, in order."""
        spans = [(t.start, t.end) for t in self.tasks if t.drains_off]
        return sorted([*spans, *((w.start, w.end) for w in self.waits if w.drains_off)])

    def half_days_of(self, crew: str) -> tuple[int, ...]:
        """The half days on site, from 0, on which a crew is there for more than a quarter hour."""
        return self._clock.halves_of([(t.start, t.end) for t in self.tasks if t.crew == crew and t.step != LATER])

    def crew_days_of(self, crew: str) -> Decimal:
        """The days of one crew, half day by half day and gang by gang, a second visit counted."""
        return HALF_DAY * len(self.half_days_of(crew)) * self.gangs_of(crew) + self.later_days_of(crew)

    def later_days_of(self, crew: str) -> Decimal:
        """The days of one crew at a second visit, half day by half day."""
        later = [(t.start, t.end) for t in self.tasks if t.crew == crew and t.step == LATER]
        return HALF_DAY * len(self._clock.halves_of(later))

    @property
    def days_later(self) -> Decimal:
        """Days of a second visit on another day: of the crew that is there longest."""
        return max(map(self.later_days_of, self.crews), default=Decimal(0))

    def gangs_of(self, crew: str) -> int:
        """How many of one crew work side by side."""
        return max((t.gangs for t in self.tasks if t.crew == crew), default=1)

    @property
    def half_days_off(self) -> tuple[int, ...]:
        """The half days, from 0, on which no drain may be used."""
        return tuple(
            n for s in self.calendar if s.no_drains for n in range(int(s.start * 2), int((s.start + s.length) * 2))
        )

    @property
    def half_days_asked(self) -> tuple[int, ...]:
        """The half days, from 0, on which somebody works under drains that are in use: nobody runs water unasked."""
        below = self._clock.halves_of([(t.start, t.end) for t in self.tasks if t.below])
        return tuple(n for n in below if n not in self.half_days_off)

    @property
    def crews(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(t.crew for t in self.tasks))

    @property
    def crew_days(self) -> tuple[CrewDay, ...]:
        """The day plan: what each crew does on each day, by day and in the order of the work."""
        out: dict[tuple[int, str], list[tuple[Task, float]]] = {}
        for task in self.tasks:
            for day, hours in self._by_day(task):
                out.setdefault((day, task.crew), []).append((task, hours))
        return tuple(
            CrewDay(day=day, crew=crew, work=tuple(sorted(work, key=lambda w: w[0].start)))
            for (day, crew), work in sorted(out.items(), key=lambda kv: (kv[0][0], min(w[0].start for w in kv[1])))
        )

    def _by_day(self, task: Task) -> Iterable[tuple[int, float]]:
        """The task's crew hours laid on its days in proportion to the time it takes of each."""
        first, last = self._clock.day_at_start(task.start), self._clock.day_at_end(task.end)
        whole = task.end - task.start
        for day in range(first, last + 1):
            low, high = max(task.start, (day - 1) * self.day_hours), min(task.end, day * self.day_hours)
            if high - low > DUST:
                yield day, task.crew_hours * (high - low) / whole if whole else task.crew_hours

    @property
    def marks(self) -> tuple[Mark, ...]:
        """Milestones: the start, pipe in and tested before it is covered, done."""
        if not self.tasks:
            return ()
        pipe = [t.end for t in self.tasks if t.step in ("pipe", "join", "test")]
        out = [Mark(name="start", text=Say.of("the crew comes"), day=1)]
        if pipe:
            text = Say.of("the work on the pipe is done and not yet covered")
            out.append(Mark(name="pipe in before cover", text=text, day=self._clock.day_at_end(max(pipe))))
        out.append(Mark(name="done", text=Say.of("all work is done"), day=self._clock.day_at_end(self.end)))
        return tuple(out)

    @property
    def calendar(self) -> tuple[DaySpan, ...]:
        """What the homeowner sees, half day by half day, those alike put together."""
        spans: list[DaySpan] = []
        order = list(STEPS)
        for half in range(self._clock.halves if self.tasks else 0):
            low, high = self._clock.span(half)
            here = [
                t for t in self.tasks if t.step != LATER and min(t.end, high) - max(t.start, low) > self.tolerance_hours
            ]
            here = here or [t for t in self.tasks if t.step != LATER and min(t.end, high) - max(t.start, low) > DUST]
            texts = [t.text for t in sorted(here, key=lambda t: order.index(t.step))]
            texts = texts or [w.why for w in self.waits if min(w.end, high) - max(w.start, low) > DUST]
            text, off = Say.of("{works}", works=tuple(dict.fromkeys(texts))), self._clock.off(half, self._spans_off)
            last = spans[-1] if spans else None
            if last and (last.text, last.no_drains) == (text, off):
                spans[-1] = DaySpan(start=last.start, length=last.length + HALF_DAY, text=text, no_drains=off)
            else:
                spans.append(DaySpan(start=HALF_DAY * half, length=HALF_DAY, text=text, no_drains=off))
        return tuple(spans)

    @property
    def lead_days(self) -> int:
        """Working days before the first: the longest of what has to come in, since all is asked for at once."""
        return max((lead.working_days for lead in self.leads), default=0)
