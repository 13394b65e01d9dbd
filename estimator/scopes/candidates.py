"""A job and its needs in; every repair the rules allow out, and the rules that forbid the others."""

from collections.abc import Iterator, Mapping

from estimator.model.frozen import Frozen, replace
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Effect, Need, Verdict
from estimator.model.profile import Profile
from estimator.model.remembered import answered_once
from estimator.model.stretch import Stretch
from estimator.model.work import Repair, name_of
from estimator.scopes.across import across_grounds
from estimator.scopes.before import DIG_FACTS, with_what_comes_first
from estimator.scopes.judge import Judge, May, counts, facts_in
from estimator.scopes.rules import may as all_rules
from estimator.scopes.rules.why_not import why_not
from estimator.scopes.ways import Place, Shape, Shaper, ways
from estimator.scopes.whole_yard import under_the_house
from estimator.tables.tables import Tables
from estimator.works.grade import fall_asked_in_per_ft

Ids = tuple[str, ...]


class Offers(Frozen):
    """Repairs that may be offered, and the verdicts that block the others (one a rule, a method and a stretch).

    `instead` stop short of a beam or of a neighbor: they are offered where the longer one of that way cannot be.
    """

    repairs: tuple[Repair, ...]
    verdicts: tuple[Verdict, ...] = ()
    instead: tuple[Repair, ...] = ()


def repairs(job: Job, diagnosis: Diagnosis, tables: Tables, may: May = all_rules, *, untried: bool = True) -> Offers:
    """For each line and each run of neighbouring needs, every way of repair over the stretch it would really take.

    `untried`: with the reasons why a way was not even tried, which are only told.
    """
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
    told = why_not(job, diagnosis.needs, offered.values(), tables) if untried else ()
    cures_nothing = (v for v in (*told, *judge.does_not_fix) if not _offered_on_the_line(v, offered))
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


class _Places:
    """Where shapes are asked for along one line, and what each way makes of them: many ways ask of the same few needs."""

    def __init__(self, job: Job, line: str, needs: tuple[Need, ...], tables: Tables, house_too: bool) -> None:
        self.job, self.needs, self.tables, self.house_too = job, needs, tables, house_too
        self.profile = Profile(job.line(line))

    @answered_once
    def new_fall(self, first: str) -> float | None:
        """The least fall of new pipe from this need on, ft per ft: the place's number for this bore; None when the place is unknown."""
        need = next(n for n in self.needs if n.id == first)
        bore_in = self.profile.bore_in(need.stretch.middle_ft).value
        inches = fall_asked_in_per_ft(self.tables.known_place(self.job.house.jurisdiction), bore_in)
        return None if inches is None else inches / 12

    @answered_once
    def _place(self, ids: Ids, new_fall: float | None) -> Place:
        group = tuple(n for n in self.needs if n.id in ids)
        return Place(group, self.profile, self.tables, new_fall, self.job.reroutes, self.house_too)

    @answered_once
    def shapes(self, shaper: Shaper, ids: Ids, new_fall: float | None, any_length: bool = False) -> tuple[Shape, ...]:
        """The shapes of one way over these needs."""
        place = self._place(ids, new_fall)
        return shaper(replace(place, any_length=True) if any_length else place)


def _shapes(job: Job, line: str, needs: tuple[Need, ...], judge: Judge, house_too: bool) -> Iterator[tuple[str, Shape]]:
    places = _Places(job, line, needs, judge.tables, house_too)
    for record, shaper in ways():
        seen: set[tuple[Stretch, str, str]] = set()
        runs = tuple(neighbours(tuple(n for n in needs if judge.fixes(record.name, n))))
        alone = {n.id: _reach(places, shaper, (n.id,)) for n, *others in runs if not others and _is_dug_for(n)}
        for run in runs:
            ids, fall = tuple(n.id for n in run), places.new_fall(run[0].id)
            grown = _grown(ids, fall, needs, alone, record.merge_gap, places, shaper)
            near = places.shapes(shaper, ids, fall) if grown != ids else ()
            apart = (replace(s, apart=True) for s in near if not _ends_in_one(s, needs))
            for shape in (*places.shapes(shaper, grown, fall), *apart):
                key = (shape.extent.stretch, shape.entry, shape.reroute)
                if key not in seen:
                    seen.add(key)
                    yield record.name, shape


def _reach(places: _Places, shaper: Shaper, ids: Ids) -> list[Stretch]:
    return [s.extent.stretch for s in places.shapes(shaper, ids, places.new_fall(ids[0]))]


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
    ids: Ids,
    new_fall: float | None,
    needs: tuple[Need, ...],
    alone: Mapping[str, list[Stretch]],
    merges: str,
    places: _Places,
    shaper: Shaper,
) -> Ids:
    """Take in each neighbour nearer than the merge gap of this way, and each bad place an end would lie in.

    `alone` is what each need that this way puts right, and that is known to be bad, would take by itself.
    """
    gap = places.tables.number(merges) if merges else 0.0
    while True:
        mine = [s.extent.stretch for s in places.shapes(shaper, ids, new_fall, True) if not s.stops_short]
        more = {
            n.id
            for n in needs
            if n.id not in ids
            and (
                any(a.gap_ft(b) < gap for a in mine for b in alone.get(n.id, ()))
                or any(ends_inside(s, n.stretch) for s in mine)
            )
        }
        if not more:
            return ids
        ids = tuple(n.id for n in needs if n.id in more or n.id in ids)


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
