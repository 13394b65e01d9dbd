"""A job and its needs in; every repair the rules allow out, and the rules that forbid the others."""

from collections.abc import Iterator, Mapping

from estimator.model.frozen import Frozen, replace
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Effect, Need, Verdict
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.scopes.across import across_grounds
from estimator.scopes.before import DIG_FACTS, with_what_comes_first
from estimator.scopes.judge import Judge, May, counts, facts_in
from estimator.scopes.named import name_of
from estimator.scopes.rules import may as all_rules
from estimator.scopes.rules.why_not import why_not
from estimator.scopes.ways import Place, Shape, Shaper, ways
from estimator.scopes.whole_yard import under_the_house
from estimator.tables.tables import Tables
from estimator.works.grade import fall_asked_in_per_ft
from estimator.works.methods import record_of


class Offers(Frozen):
    """Repairs that may be offered, and the verdicts that block the others (one a rule, a method and a stretch).

    `instead` stop short of a beam or of a neighbor: they are offered where the longer one of that way cannot be.
    """

    repairs: tuple[Repair, ...]
    verdicts: tuple[Verdict, ...] = ()
    instead: tuple[Repair, ...] = ()


def repairs(job: Job, diagnosis: Diagnosis, tables: Tables, may: May = all_rules) -> Offers:
    """For each line and each run of neighbouring needs, every way of repair over the stretch it would really take."""
    judge = Judge(job, tables, may)
    offered: dict[str, Repair] = {}
    instead: dict[str, Repair] = {}
    apart: dict[str, Repair] = {}
    blocked: dict[Verdict, None] = {}
    house_too = any(under_the_house(n, job) for n in diagnosis.needs)
    for line in job.lines:
        needs = tuple(sorted((n for n in diagnosis.needs if n.line == line.name), key=lambda n: (n.stretch, n.id)))
        for made in across_grounds(line.name, needs, judge):
            offered.setdefault(made.id, made)
        for method, shape in _shapes(job, line.name, needs, judge, house_too):
            for found in _judged(method, shape, line.name, needs, judge):
                if isinstance(found, Repair):
                    kept = apart if shape.apart else instead if shape.stops_short else offered
                    kept.setdefault(found.id, found)
                else:
                    blocked.setdefault(found)
    offered = {made.id: made for made in offered.values() if not _ways_in(made) & tables.methods_off}
    instead |= _where_nothing_else_is_dug(apart, offered, judge)
    untried = why_not(job, diagnosis.needs, offered.values(), tables)
    cures_nothing = (v for v in (*untried, *judge.does_not_fix) if not _offered_on_the_line(v, offered))
    against = dict.fromkeys((*cures_nothing, *(v for v in blocked if not _offered_there(v, offered))))
    spare = (r for r in instead.values() if r.id not in offered and not _ways_in(r) & tables.methods_off)
    return Offers(tuple(offered.values()), tuple(against), tuple(spare))


def _where_nothing_else_is_dug(
    apart: Mapping[str, Repair], offered: Mapping[str, Repair], judge: Judge
) -> dict[str, Repair]:
    """Of the repairs that leave a near neighbor to another dig, those whose place no whole dig puts right."""
    dug = (r for r in offered.values() if judge.works(r.method, r.line, r.stretch, r.reroute, r.entry).new_pipe)
    answered = {need for r in dug for need in r.answers}
    return {name: r for name, r in apart.items() if not set(r.answers) <= answered}


def _ways_in(repair: Repair) -> frozenset[str]:
    """Its own way and those of what comes first."""
    return frozenset((repair.method, *(first.method for first in repair.first)))


def _offered_on_the_line(verdict: Verdict, offered: Mapping[str, Repair]) -> bool:
    """The way is offered for something else on that line; what it does not cure there stands on that repair."""
    return any((r.method, r.line) == (verdict.method, verdict.line) for r in offered.values())


def _offered_there(verdict: Verdict, offered: Mapping[str, Repair]) -> bool:
    """The way is offered after all on that stretch, only shorter or longer."""
    same = (r for r in offered.values() if (r.method, r.line) == (verdict.method, verdict.line))
    return any(r.stretch.touches(verdict.stretch) for r in same)


def _shapes(job: Job, line: str, needs: tuple[Need, ...], judge: Judge, house_too: bool) -> Iterator[tuple[str, Shape]]:
    profile = Profile(job.line(line))
    for record, shaper in ways():
        method = record.name
        seen: set[tuple[Stretch, str, str]] = set()
        fixed = tuple(n for n in needs if judge.fixes(method, n))
        places = [
            Place(group, profile, judge.tables, _new_fall(job, profile, group, judge.tables), job.reroutes, house_too)
            for group in neighbours(fixed)
        ]
        singles = (p for p in places if len(p.needs) == 1 and _is_dug_for(p.needs[0]))
        alone = {p.needs[0].id: [s.extent.stretch for s in shaper(p)] for p in singles}
        for place in places:
            grown = _grown(place, needs, alone, method, shaper)
            apart = (s for s in shaper(place) if grown != place and not _ends_in_one(s, needs))
            for shape in (*shaper(grown), *(replace(s, apart=True) for s in apart)):
                key = (shape.extent.stretch, shape.entry, shape.reroute)
                if key not in seen:
                    seen.add(key)
                    yield method, shape


def _ends_in_one(shape: Shape, needs: tuple[Need, ...]) -> bool:
    return any(ends_inside(shape.extent.stretch, n.stretch) for n in needs)


def _is_dug_for(need: Need) -> bool:
    """A neighbour is taken into the dig where it is known to be bad; one only suspected, or only to be watched, may be left."""
    return need.must or (not need.watched and need.grade in ("seen", "inferred"))


def neighbours(needs: tuple[Need, ...]) -> Iterator[tuple[Need, ...]]:
    """Every run of needs that follow one another, the short ones first.

    >>> ["".join(run) for run in neighbours(("a", "b", "c"))]
    ['a', 'b', 'c', 'ab', 'bc', 'abc']
    """
    for length in range(1, len(needs) + 1):
        for start in range(len(needs) - length + 1):
            yield needs[start : start + length]


def _grown(
    place: Place, needs: tuple[Need, ...], alone: dict[str, list[Stretch]], method: str, shaper: Shaper
) -> Place:
    """Take in each neighbour nearer than the merge gap of this way, and each bad place an end would lie in.

    `alone` is what each need that this way puts right, and that is known to be bad, would take by itself.
    """
    merges = record_of(method).merge_gap
    gap = place.tables.number(merges) if merges else 0.0
    while True:
        mine = [s.extent.stretch for s in shaper(replace(place, any_length=True)) if not s.stops_short]
        more = {
            n.id
            for n in needs
            if n not in place.needs
            and (
                any(a.gap_ft(b) < gap for a in mine for b in alone.get(n.id, ()))
                or any(ends_inside(s, n.stretch) for s in mine)
            )
        }
        if not more:
            return place
        here = more | {n.id for n in place.needs}
        place = replace(place, needs=tuple(n for n in needs if n.id in here))


def _new_fall(job: Job, profile: Profile, needs: tuple[Need, ...], tables: Tables) -> float | None:
    """The least fall of new pipe here, ft per ft: the place's number for this bore; None when the place is unknown."""
    bore_in = profile.bore_in(needs[0].stretch.middle_ft).value
    inches = fall_asked_in_per_ft(tables.known_place(job.house.jurisdiction), bore_in)
    return None if inches is None else inches / 12


def _judged(method: str, shape: Shape, line: str, needs: tuple[Need, ...], judge: Judge) -> Iterator[Repair | Verdict]:
    """The repair, or one repair for each way of doing first what must come first; or the verdicts that forbid it."""
    stretch = shape.extent.stretch
    inside = needs if shape.hands_over else tuple(n for n in needs if stretch.covers(n.stretch))
    touched = tuple(n for n in needs if stretch.touches(n.stretch))
    if any(ends_inside(stretch, n.stretch) for n in touched) and not shape.hands_over:
        return
    verdicts = judge.verdicts(method, line, stretch, touched, shape.reroute, shape.entry)
    forbidden = [v for v in verdicts if counts(v, Effect.BLOCKS)]
    if forbidden:
        yield from forbidden
        return
    answers = tuple(n.id for n in inside if judge.fixes(method, n))
    if not answers:
        return
    repair = Repair(
        id=name_of(method, line, stretch, shape.entry, shape.reroute),
        method=method,
        line=line,
        stretch=stretch,
        answers=answers,
        leaves=tuple(n.id for n in touched if n.id not in answers),
        entry=shape.entry,
        reroute=shape.reroute,
        facts=facts_in(verdicts),
        verdicts=verdicts,
        because=shape.extent.because,
    )
    with_first = tuple(with_what_comes_first(repair, needs, judge))
    yield from with_first or (v for v in verdicts if counts(v, Effect.REQUIRES_FIRST) and v.facts & DIG_FACTS)


def ends_inside(stretch: Stretch, need: Stretch) -> bool:
    """An end in the middle of another bad place is no sound end; the longer candidate takes that place in."""
    return any(need.from_ft < end < need.to_ft for end in (stretch.from_ft, stretch.to_ft))
