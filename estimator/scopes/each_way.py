"""Needs, the repairs offered and what stands against others in; for every need every way of repair with its verdict out."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from estimator.model.job import Job
from estimator.model.judgement import METHODS, Effect, Need, Verdict
from estimator.model.say import Say
from estimator.model.work import Repair, all_repairs
from estimator.scopes.judge import counts
from estimator.scopes.rules import may
from estimator.scopes.rules.why_not import facts_there, in_order
from estimator.tables.tables import Tables

WEIGHT: tuple[Effect, ...] = tuple(Effect)
"""The gravest first: blocks, no fixed price ... prefers."""
WAYS: tuple[str, ...] = tuple(m for m in METHODS if m != "abandon")
"""Closing off the old pipe puts nothing right by itself: it comes with a way round."""
TOO_LONG = Say.of("What would have to be dug there is longer than a single spot.")
ONE_PLACE = Say.of("One opening is enough there.")
LOOK_AGAIN = Say.of("It is filmed again first; a hole is dug to look only where the camera cannot pass.")
NOT_FOR_THIS = Say.of("This way does not put that trouble right.")
NO_STRETCH: dict[str, tuple[str, Say, Say]] = {
    "yard spot": ("length-fits-the-method", TOO_LONG, Say.of("Cut back to sound pipe, with what lies near it, longer than a spot: a trench.")),
    "slab spot": ("length-fits-the-method", TOO_LONG, Say.of("Cut back to sound pipe, with what lies near it, longer than a spot: a strip or a tunnel.")),
    "break-through": ("length-fits-the-method", ONE_PLACE, Say.of("Short enough for one opening: a slab spot.")),
    "trench": ("length-fits-the-method", ONE_PLACE, Say.of("Short enough for one dig: a yard spot.")),
    "look and see": ("look-where-it-is-unclear", LOOK_AGAIN, Say.of("Suspected, but nothing stopped the camera: film it again.")),
}  # fmt: skip
"""Why no stretch of a way was found where no rule speaks against it over the bare trouble: rule, homeowner, estimator."""


@dataclass(frozen=True, slots=True)
class WayThere:
    """One way of repair for one need: may it be offered, and the gravest thing a rule says of it (None: nothing)."""

    method: str
    offered: bool
    verdict: Verdict | None


@dataclass(frozen=True, slots=True)
class NeedWays:
    need: Need
    ways: tuple[WayThere, ...]


def each_way(
    job: Job, needs: Sequence[Need], repairs: Iterable[Repair], against: Sequence[Verdict], tables: Tables
) -> tuple[NeedWays, ...]:
    """Every need with every way. `against` are all verdicts that stand against a way, those found by measuring among them."""
    open_ = tuple(one for repair in repairs for one in all_repairs((repair,)) if not _shut(one, against))
    return tuple(NeedWays(n, tuple(_way(m, n, job, open_, against, tables) for m in WAYS)) for n in needs)


def _shut(repair: Repair, against: Iterable[Verdict]) -> bool:
    """A rule blocked just this repair once it was measured."""
    it = (repair.method, repair.line, repair.stretch)
    return any((v.method, v.line, v.stretch) == it and counts(v, Effect.BLOCKS) for v in against)


def _way(
    method: str, need: Need, job: Job, open_: Sequence[Repair], against: Sequence[Verdict], tables: Tables
) -> WayThere:
    answering = [_gravest(r.verdicts) for r in open_ if r.method == method and need.id in r.answers]
    if answering:
        return WayThere(method, True, max(answering, key=_rank))
    said = may(method, facts_there(method, need, job, tables), tables)
    there = (v for v in against if (v.method, v.line) == (method, need.line) and v.stretch.touches(need.stretch))
    return WayThere(method, False, next(iter((*in_order(said), *there)), None) or _no_stretch(method, need))


def _no_stretch(method: str, need: Need) -> Verdict:
    rule, homeowner, estimator = NO_STRETCH.get(method, ("place-fits-the-method", NOT_FOR_THIS, NOT_FOR_THIS))
    return Verdict(
        rule=rule, effect=Effect.BLOCKS, method=method, line=need.line, stretch=need.stretch, homeowner=homeowner, estimator=estimator
    )  # fmt: skip


def _gravest(verdicts: Iterable[Verdict]) -> Verdict | None:
    """What does not fix another place nearby is left out: this need it does put right."""
    said = (v for v in verdicts if not v.overruled and v.effect is not Effect.DOES_NOT_FIX)
    return min(said, key=_rank, default=None)


def _rank(verdict: Verdict | None) -> int:
    return len(WEIGHT) if verdict is None else WEIGHT.index(verdict.effect)
