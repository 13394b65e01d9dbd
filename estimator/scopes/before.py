"""A repair that must have another first in; the repair with the dig that comes before it, one for each way of digging, out."""

from collections.abc import Iterator
from dataclasses import replace

from estimator.model.judgement import Effect, Need
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch, hull, joined, missing
from estimator.model.work import Repair
from estimator.scopes.extent import sound_pipe
from estimator.scopes.ground import runs_under
from estimator.scopes.judge import Judge, counts, facts_in
from estimator.works.methods import Method, of, record_of

DIG_FACTS = frozenset({"dig_first", "dig_at_branch"})
"""What a rule adds to its answer `requires first` when the thing that comes first is a dig."""


def with_what_comes_first(repair: Repair, needs: tuple[Need, ...], judge: Judge) -> Iterator[Repair]:
    """The repair as it is when no dig comes first; else once for each way of digging that the rules allow.

    Where no way of digging is allowed, or the dig alone would put everything right, nothing comes out.
    """
    places = _places(repair)
    if not places:
        yield repair
        return
    for way in of(first=True):
        digs = _all_dug(way, places, repair, needs, judge)
        if digs:
            yield _after(repair, digs, f"after {way.name}", needs, judge)
        on = _dug_on(repair, places, digs, judge) if digs and way.longer else ()
        longer = (way, record_of(way.longer)) if on else ()
        farther = next((d for w in longer if (d := _all_dug(w, on, repair, needs, judge))), ())
        if farther:
            yield _after(repair, farther, f"after {way.name} and on", needs, judge)


def _all_dug(
    way: Method, places: tuple[Stretch, ...], repair: Repair, needs: tuple[Need, ...], judge: Judge
) -> tuple[Repair, ...]:
    """A dig at each place; none where one is not allowed, or where they alone would put everything right."""
    digs = tuple(d for place in places if (d := _dig(way, place, repair, needs, judge)))
    answered = {need for d in digs for need in d.answers}
    return digs if len(digs) == len(places) and not answered.issuperset(repair.answers) else ()


def _dug_on(repair: Repair, places: tuple[Stretch, ...], digs: tuple[Repair, ...], judge: Judge) -> tuple[Stretch, ...]:
    """The places taken on over each rest so short that a liner in it may cost more than digging on, such as to a cleanout.

    None where there is no such rest, or nothing would be left to line.
    """
    if record_of(repair.method).shape != "shot":
        return ()
    longest, least = judge.tables.number("dig_on_max_ft"), judge.tables.number("pad_liner_ft")
    rest = missing(repair.stretch, [d.stretch for d in digs])
    lined = [part for part in rest if part.length_ft >= least]
    short = [part for part in lined if part.length_ft <= longest]
    if not short or len(short) == len(lined):
        return ()
    return joined(
        hull((place, *(part for part in short if part.touches(dig.stretch))))
        for place, dig in zip(places, digs, strict=True)
    )


def _after(repair: Repair, digs: tuple[Repair, ...], called: str, needs: tuple[Need, ...], judge: Judge) -> Repair:
    """The repair with its digs first; what they put right is answered too."""
    answers = tuple(n.id for n in needs if n.id in {*repair.answers, *(a for d in digs for a in d.answers)})
    leaves = tuple(left for left in repair.leaves if left not in answers)
    named = replace(repair, id=f"{repair.id}, {called}", answers=answers, leaves=leaves)
    return _beside_new_pipe(named, digs, needs, judge)


def _beside_new_pipe(repair: Repair, digs: tuple[Repair, ...], needs: tuple[Need, ...], judge: Judge) -> Repair:
    """The repair after its digs; a lining stops at the pipe just laid new, and goes on beyond it as a lining of its own.

    A rest shorter than pad_liner_ft without a need is left to the coupling.
    """
    if record_of(repair.method).shape != "shot":
        return replace(repair, first=digs)
    pad = judge.tables.number("pad_liner_ft")
    rest = missing(repair.stretch, [d.stretch for d in digs])
    parts = [p for p in rest if p.length_ft >= pad or any(n.stretch.overlaps(p) for n in needs)]
    if not parts or parts == [repair.stretch]:
        return replace(repair, first=digs)
    *others, last = sorted(parts, key=lambda p: p.length_ft)
    why = (*repair.because, Say.of("not over the pipe that is laid new before"))
    more = tuple(_lining(repair, part) for part in sorted(others))
    return replace(repair, stretch=last, first=(*digs, *more), because=why)


def _lining(whole: Repair, part: Stretch) -> Repair:
    """One more lining, on the other side of the new pipe; the whole repair says what is answered."""
    name = f"{whole.id}, and {part.from_ft:.4g} to {part.to_ft:.4g} ft"
    return replace(whole, id=name, stretch=part, answers=(), leaves=())


def _places(repair: Repair) -> tuple[Stretch, ...]:
    """Where the rules want a dig before this repair; cleaning and filming first are part of lining itself."""
    asked = [v for v in repair.verdicts if counts(v, Effect.REQUIRES_FIRST) and v.facts & DIG_FACTS]
    return joined(v.stretch for v in asked)


def _dig(way: Method, place: Stretch, repair: Repair, needs: tuple[Need, ...], judge: Judge) -> Repair | None:
    """The dig at one place, cut back to sound pipe; None when this way cannot be used there."""
    method, entry = way.name, way.entry
    profile = Profile(judge.job.line(repair.line))
    runs = [run for run in runs_under(profile, way.ground or "outside", place) if run.covers(place)]
    here = tuple(n for n in needs if n.stretch.touches(place))
    if not runs:
        return None
    stretch = sound_pipe(place, here, profile, judge.tables, runs[0]).stretch
    if way.spot and stretch.length_ft > judge.tables.number(way.longest):
        return None
    verdicts = judge.verdicts(method, repair.line, stretch, here, entry=entry)
    if any(counts(v, Effect.BLOCKS) for v in verdicts):
        return None
    answers = tuple(n.id for n in needs if stretch.covers(n.stretch) and judge.fixes(method, n))
    return Repair(
        id=f"{repair.line}: {method} first, {stretch.from_ft:.4g} to {stretch.to_ft:.4g} ft",
        method=method,
        line=repair.line,
        stretch=stretch,
        answers=answers,
        entry=entry,
        facts=facts_in(verdicts),
        verdicts=verdicts,
    )
