"""A repair named by hand in the job file in; the Repair over exactly that stretch out, or the verdicts that forbid it."""

from dataclasses import replace

from estimator.model.judgement import Effect, Need, Verdict
from estimator.model.problem import CannotGoOn, Place, error
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.visit import fact
from estimator.model.wanted import WantedOption, WantedRepair
from estimator.model.work import Repair, name_of
from estimator.scopes.before import DIG_FACTS, with_what_comes_first
from estimator.scopes.extent import Extent, bare_stretch, sound_pipe
from estimator.scopes.judge import Judge, counts, facts_in
from estimator.scopes.reach import from_the_exit
from estimator.works.methods import record_of, renews

NOTHING_THERE = error(
    "scopes/nothing-there",
    "{method} on line {line} is wanted by hand and would be priced on nothing: {why}.",
    'Write where it begins and ends, such as where = "2-29", or take that [[option]] out.',
    "An option is never priced on nothing.",
)
PROBLEMS = (NOTHING_THERE,)


def wanted_repair(
    wanted: WantedRepair, needs: tuple[Need, ...], offered: tuple[Repair, ...], judge: Judge
) -> Repair | tuple[Verdict, ...]:
    """The estimator's own stretch, out of the slab where it begins there; without one, the offer that answers most needs.

    What blocks stays blocked: a pin is no word against a rule (that is an override, with its reason).
    A way round is always one that was seen on site. Without a stretch and without an offer: over the needs of that line.
    Errors: CannotGoOn where it would be priced on nothing: no such line, no length, no way round in the notes.
    """
    if not any(line.name == wanted.line for line in judge.job.lines):
        raise _nothing(wanted, Say.of("there is no such line"))
    if _goes_round(wanted) or wanted.from_ft is None or wanted.to_ft is None:
        alike = [r for r in offered if r.method == wanted.method and r.line == wanted.line]
        alike = [r for r in alike if not wanted.entry or r.entry == wanted.entry]
        if alike:
            return max(alike, key=lambda r: (len(r.answers), -r.stretch.length_ft))
    if _goes_round(wanted):
        return _way_round(wanted, needs, judge)
    asked = _stretch(wanted, needs, judge)
    at_a_point = record_of(wanted.method).at_a_point or (
        not renews(wanted.method) and any(n.line == wanted.line for n in needs)
    )
    if asked.length_ft <= 0 and not at_a_point:
        raise _nothing(wanted, Say.of("it has no length"))
    stretch = _out_of_the_slab(wanted, asked, judge)
    made = over_stretch(wanted.method, wanted.line, stretch, needs, judge, wanted.entry)
    if not isinstance(made, Repair) or not wanted.tasks:
        return made
    return replace(
        made, id=f"{made.id} ({', '.join(wanted.tasks)})", facts=made.facts | {fact(kind) for kind in wanted.tasks}
    )


def _goes_round(wanted: WantedRepair) -> bool:
    return record_of(wanted.method).goes_round


def _way_round(wanted: WantedRepair, needs: tuple[Need, ...], judge: Judge) -> Repair | tuple[Verdict, ...]:
    """The first way in the notes that replaces what is wanted, over all that it replaces; or what forbids it."""
    whole = Profile(judge.job.line(wanted.line)).extent
    somewhere = wanted.from_ft is not None or any(n.line == wanted.line for n in needs)
    asked = _stretch(wanted, needs, judge) if somewhere else None
    for way in judge.job.reroutes:
        low = whole.from_ft if way.replaces_from_ft is None else way.replaces_from_ft
        high = whole.to_ft if way.replaces_to_ft is None else way.replaces_to_ft
        replaced = Stretch.between(low, high)
        there = asked is None or replaced.covers(asked)
        if way.replaces_line == wanted.line and way.legs and replaced.length_ft > 0 and there:
            return over_stretch(wanted.method, wanted.line, replaced, needs, judge, wanted.entry, way.name)
    raise _nothing(wanted, Say.of("no way round in the notes replaces it"))


def _nothing(wanted: WantedRepair, why: Say) -> CannotGoOn:
    return CannotGoOn(NOTHING_THERE(Place("the job file"), method=wanted.method, line=wanted.line, why=why))


def _out_of_the_slab(wanted: WantedRepair, stretch: Stretch, judge: Judge) -> Stretch:
    """A tunnel or a strip named up to the slab edge goes on to where it can be coupled in the open."""
    if not record_of(wanted.method).to_the_edge or wanted.entry == "wall":
        return stretch
    return from_the_exit(Extent(stretch), Profile(judge.job.line(wanted.line)), judge.tables).stretch


def over_stretch(
    method: str,
    line: str,
    stretch: Stretch,
    needs: tuple[Need, ...],
    judge: Judge,
    entry: str = "",
    reroute: str = "",
) -> Repair | tuple[Verdict, ...]:
    """One method over a given stretch, after the dig that a rule asks for; or the verdicts that forbid it there."""
    touched = tuple(n for n in needs if n.line == line and stretch.touches(n.stretch))
    verdicts = judge.verdicts(method, line, stretch, touched, reroute, entry)
    blocks = tuple(v for v in verdicts if counts(v, Effect.BLOCKS))
    if blocks:
        return blocks
    answers = tuple(n.id for n in touched if stretch.covers(n.stretch) and judge.fixes(method, n))
    made = Repair(
        id=f"{name_of(method, line, stretch, entry, reroute)}, by hand",
        method=method,
        line=line,
        stretch=stretch,
        answers=answers,
        leaves=tuple(n.id for n in touched if n.id not in answers),
        entry=entry or record_of(method).entry,
        reroute=reroute,
        facts=facts_in(verdicts),
        verdicts=verdicts,
        because=(Say.of("the stretch the estimator gave"),),
    )
    on_line = tuple(n for n in needs if n.line == line)
    with_first = next(with_what_comes_first(made, on_line, judge), None)
    return with_first or tuple(v for v in verdicts if counts(v, Effect.REQUIRES_FIRST) and v.facts & DIG_FACTS)


def _stretch(wanted: WantedRepair, needs: tuple[Need, ...], judge: Judge) -> Stretch:
    """As given; else over the needs of the line, cut back to sound pipe where pipe is renewed.

    What renews no pipe is over the whole line where nothing is wrong with it.
    """
    if wanted.from_ft is not None and wanted.to_ft is not None:
        return Stretch.between(wanted.from_ft, wanted.to_ft)
    on_line = tuple(n for n in needs if n.line == wanted.line)
    if not on_line and wanted.from_ft is None and wanted.to_ft is None and not renews(wanted.method):
        return Profile(judge.job.line(wanted.line)).extent
    if not on_line:
        at = wanted.from_ft if wanted.from_ft is not None else wanted.to_ft or 0.0
        return Stretch(at, at)
    bare = bare_stretch(on_line)
    profile = Profile(judge.job.line(wanted.line))
    return (
        bare if not renews(wanted.method) else sound_pipe(bare, on_line, profile, judge.tables, profile.extent).stretch
    )


def by_hand(options: tuple[WantedOption, ...], *words: str) -> tuple[WantedOption, ...]:
    """The estimator's wishes of these kinds (add, drop, rename, pin), in his order."""
    return tuple(o for o in options if o.do in words)
