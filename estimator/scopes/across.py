"""A need that lies under two grounds, such as across the slab edge, in; a way for each part, sold as one repair, out."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import product

from estimator.model.judgement import Effect, Need
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch, hull
from estimator.model.work import Repair, name_of
from estimator.scopes.extent import Extent, sound_pipe
from estimator.scopes.ground import grounds
from estimator.scopes.judge import Judge, counts, facts_in
from estimator.scopes.whole_yard import under_the_house, whole_run
from estimator.works.methods import Method, of, record_of


def across_grounds(line: str, needs: tuple[Need, ...], judge: Judge) -> Iterator[Repair]:
    """For each need under more than one ground, every choice of one way for each part that the rules allow."""
    profile = Profile(judge.job.line(line))
    for need in needs:
        parts = [(run, ground) for run, ground in grounds(profile) if run.overlaps(need.stretch)]
        if len(parts) < 2:
            continue
        choices = [
            [r for way in of(ground=ground, across=True) for r in _parts(way, need, run, profile, judge)]
            for run, ground in parts
        ]
        for chosen in product(*choices):
            yield _together(chosen, need, needs, judge)


def _parts(way: Method, need: Need, run: Stretch, profile: Profile, judge: Judge) -> Iterator[Repair]:
    """The part under one ground, cut back to sound pipe at its own end; beside a repair under the house the whole yard line too.

    Nothing where the rules forbid it.
    """
    bare = need.stretch.common(run)
    if bare is None or not judge.fixes(way.name, need):
        return
    sound = sound_pipe(bare, (need,), profile, judge.tables, run)
    extents = [sound]
    if way.ground == "outside" and under_the_house(need, judge.job):
        extents.append(sound.to(whole_run(profile, run, sound.stretch), Say.of("the whole yard line new")))
    made = (_part(way, extent, need, judge) for extent in dict.fromkeys(extents))
    yield from (repair for repair in made if repair is not None)


def _part(way: Method, extent: Extent, need: Need, judge: Judge) -> Repair | None:
    method, entry = way.name, way.entry
    verdicts = judge.verdicts(method, need.line, extent.stretch, (need,), entry=entry)
    if any(counts(v, Effect.BLOCKS) for v in verdicts):
        return None
    return Repair(
        id=name_of(method, need.line, extent.stretch, entry),
        method=method,
        line=need.line,
        stretch=extent.stretch,
        entry=entry,
        facts=facts_in(verdicts),
        verdicts=verdicts,
        because=(*extent.because, Say.of("the part on this side of the change of ground")),
    )


def _together(parts: tuple[Repair, ...], need: Need, needs: tuple[Need, ...], judge: Judge) -> Repair:
    """One repair: the dearest kind of digging last, the others first."""
    *first, last = sorted(parts, key=lambda r: (record_of(r.method).ground == "floor", r.stretch))
    whole = hull(part.stretch for part in parts)
    inside = tuple(n for n in needs if whole.covers(n.stretch))
    answers = tuple(n.id for n in inside if all(judge.fixes(p.method, n) for p in parts))
    others = " and ".join(f"{p.method} {p.stretch.from_ft:.4g} to {p.stretch.to_ft:.4g} ft" for p in first)
    return replace(last, id=f"{last.id}, with {others}", first=tuple(first), answers=answers)
