"""The test plan as a sheet: where each plug goes, what to do after each result, what counts as tight, what can hurt."""

from collections.abc import Sequence
from math import ceil

from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.profile import Profile
from estimator.model.say import Feet, Inches, Say, Typed
from estimator.model.stretch import hull
from estimator.onsite.plug_results import Followed, Result, followed
from estimator.onsite.plugs import Plug
from estimator.onsite.section_table import sections_of
from estimator.onsite.sections import Section, is_named, label
from estimator.onsite.sheet import Block, SiteSheet, Words
from estimator.onsite.test_plan import Step, TestPlan, test_plans
from estimator.onsite.tight import CAUTIONS, new_pipe, tight
from estimator.onsite.ways_in import ways_in
from estimator.tables.tables import Tables

NAME = "tests"


def test_sheet(job: Job, diagnosis: Diagnosis, tables: Tables, results: Sequence[Result] = ()) -> SiteSheet:
    """Return the sheet for whoever tests the drains under the slab; after `results`, of the tests that are left.

    Errors: TooManyResults for more results than tests.
    """
    plans = test_plans(job, diagnosis, tables)
    title = Say.of("Test plan for the drains")
    if not plans:
        return SiteSheet(
            name=NAME,
            title=title,
            answer=Say.of(
                "No line in the notes leaves a slab or has a cleanout in the yard, so there is nothing to plan."
            ),
            blocks=(),
        )
    ways = followed(plans, results)
    several = len(plans) > 1
    blocks = (
        *(_so_far(way, plan, several) for plan, way in zip(plans, ways, strict=True)),
        *(_steps(way, plan, several, tables) for plan, way in zip(plans, ways, strict=True)),
        *(sections_of(plan, several) for plan in plans),
        tight(tables),
        new_pipe(max((s.size_in for plan in plans for s in plan.sections), default=4.0), _highest_ft(job, plans)),
        _camera(job),
        CAUTIONS,
    )
    return SiteSheet(
        name=NAME, title=title, answer=_answer(plans, ways), blocks=tuple(b for b in blocks if not b.empty)
    )


test_sheet.__test__ = False  # type: ignore[attr-defined]


def _answer(plans: Sequence[TestPlan], ways: Sequence[Followed]) -> Say:
    made = any(way.made for way in ways)
    step = next((way.next for way in ways if way.next is not None), None)
    if made and step is not None:
        left = sum(len(way.left) for way in ways)
        return Say.of("Next: test {number}. Tests left at most: {most}.", number=step.number, most=left)
    where = tuple(name for way in ways for name in way.where)
    if made and where:
        return Say.of(
            "The leak is in: {sections}. Stop testing, and write it into the job file.", sections=_labels(where)
        )
    if not made and any(plan.steps for plan in plans):
        return Say.of(
            "Up to {most} tests with one plug; {expected} on average. Stop when the result no longer changes the repair.",
            most=sum(plan.most for plan in plans),
            expected=f"{sum(plan.expected for plan in plans):.1f}",
        )
    if made or all(s.known == "tight" for plan in plans for s in plan.sections):
        return Say.of("All sections held. No more tests are needed.")
    return Say.of("No more tests needed now. Repair what the camera saw, then test the whole drain again.")


def _highest_ft(job: Job, plans: Sequence[TestPlan]) -> float | None:
    """How far the highest joint of the drains lies below the slab top, ft; None where no depth is known."""
    found = []
    for plan in (p for p in plans if not p.outdoors):
        profile = Profile(job.line(plan.main))
        for station in (profile.extent.from_ft, profile.extent.to_ft):
            invert = profile.invert_below_slab_ft(station).value
            if invert is not None:
                found.append(invert - profile.bore_in(station).value / 12)
    return max(min(found), 0.0) if found else None


def _so_far(way: Followed, plan: TestPlan, several: bool) -> Block:
    dropped, held = Say.of("the level dropped"), Say.of("the level held")
    lines = [
        Say.of("Test {number}: {result}.", number=step.number, result=dropped if result == "drop" else held)
        for step, result in way.made
    ]
    if way.where:
        lines.append(_noted([s for s in plan.sections if s.name in way.where]))
        lines.append(Say.of("A second leak may hide behind it: test the whole drain again after the repair."))
    heading = Say.of("Line {line}: so far", line=plan.main) if several else Say.of("So far")
    return Block(heading=heading, lines=tuple(lines))


def _noted(sections: Sequence[Section]) -> Say:
    """What to write into the job file: the branch, or the line from station to station."""
    own = {s.line for s in sections if not s.branch}
    if len(own) == 1 and not any(s.branch for s in sections):
        found = hull([s.stretch for s in sections])
        where = f'covers = ["{own.pop()}"], from = {found.from_ft:.1f}, to = {found.to_ft:.1f}'
    else:
        named = dict.fromkeys(s.name if s.branch and is_named(s.name) else s.line for s in sections)
        where = "covers = [" + ", ".join(f'"{name}"' for name in named) + "]"
    return Say.of('[[water_test]] with kind = "isolated", result = "failed", {where}.', where=Typed(where))


def _steps(way: Followed, plan: TestPlan, several: bool, tables: Tables) -> Block:
    heads = (
        Say.of("test"),
        Say.of("plug"),
        Say.of("water to fill"),
        Say.of("if the level drops"),
        Say.of("if it holds"),
    )
    heading = Say.of("Line {line}: tests in order", line=plan.main) if several else Say.of("Tests in order")
    lines: list[Say] = []
    if way.left:
        lines.append(
            Say.of(
                "Each test takes about {minutes} minutes: fill, wait, read. Type what you saw: --result drop or --result hold, one for each test.",
                minutes=_minutes(way.left, tables),
            )
        )
        lines.append(_toilets(way.left))
    if way.left and plan.outdoors:
        lines.append(Say.of("Plug the house side too, or the water rises into the house drains. No fixture may run."))
    return Block(
        heading=heading,
        lines=tuple(lines),
        heads=heads,
        rows=tuple(_step(s, plan.outdoors, plan.main) for s in way.left),
    )


def _toilets(steps: Sequence[Step]) -> Say:
    """Which toilets have to be pulled, and for which tests."""
    pulled = tuple(dict.fromkeys(s.plug.way_in for s in steps if s.plug.toilet))
    if not pulled:
        return Say.of("No toilet has to be pulled for a plug: a cleanout is near enough.")
    numbers = tuple(str(s.number) for s in steps if s.plug.toilet)
    return Say.of("Toilets to pull: {toilets}. Only for tests {numbers}.", toilets=pulled, numbers=numbers)


def _minutes(steps: Sequence[Step], tables: Tables) -> int:
    """The longest of them: its gallons from the hose, the air's leaving, and the reading, up to 5 minutes."""
    fill = max(s.plug.gallons for s in steps) / tables.number("fill_gal_per_min")
    return 5 * ceil((fill + tables.number("test_settle_min") + tables.number("test_minutes")) / 5)


def _step(step: Step, outdoors: bool, line: str) -> tuple[Words, ...]:
    plug = Say.of(
        "{size} plug {where}, {away} from the {way_in}",
        size=Inches(step.plug.size_in),
        where=_where(step.plug, outdoors, line),
        away=Feet(round(step.plug.way_in_ft, 1)),
        way_in=step.plug.way_in,
    )
    to = (
        Say.of("{gallons} gal to the top of the cleanout. On the plug: {head} of water, {psi} psi, {pounds} lb")
        if outdoors
        else Say.of("{gallons} gal to the slab top. On the plug: {head} of water, {psi} psi, {pounds} lb")
    )
    fill = Say.of(
        to.text,
        head=Feet(round(step.plug.head_ft, 1)),
        gallons=f"{step.plug.gallons:.0f}",
        psi=f"{step.plug.psi:.1f}",
        pounds=f"{step.plug.load_lb:.0f}",
    )
    return (str(step.number), plug, fill, _next(step.if_drops), _next(step.if_holds))


def _where(plug: Plug, outdoors: bool, line: str) -> Say:
    at = Feet(round(plug.station_ft, 1))
    if plug.line != line:
        return Say.of("on line {line}, {place}", line=plug.line, place=_where(plug, True, plug.line))
    if not plug.branch and outdoors:
        return Say.of("at the lower end ({at})", at=at)
    if not plug.branch:
        return Say.of("at the building outlet ({at})", at=at)
    branch = label(plug.branch)
    if not is_named(plug.branch):
        upstream, downstream = Say.of("just upstream of {branch} ({at})"), Say.of("just downstream of {branch} ({at})")
    else:
        upstream = Say.of("just upstream of the {branch} branch ({at})")
        downstream = Say.of("just downstream of the {branch} branch ({at})")
    return Say.of((upstream if plug.upstream else downstream).text, branch=branch, at=at)


def _camera(job: Job) -> Block:
    heads = (
        Say.of("line"),
        Say.of("access point"),
        Say.of("smallest pipe on the way"),
        Say.of("reaches"),
        Say.of("tight 90° bends"),
        Say.of("camera"),
    )
    rows = tuple(
        (
            Say.of("{line}", line=way.line),
            way.name,
            Say.of("{size}", size=Inches(way.size_in)),
            Say.of("{at}", at=Feet(round(way.reach_ft, 1))),
            str(way.square_bends),
            Say.of("may not come out: small head only") if way.may_stick else Say.of("goes in and comes out"),
        )
        for way in ways_in(job)
    )
    return Block(heading=Say.of("Camera: which access first"), heads=heads, rows=rows)


def _next(what: int | tuple[str, ...]) -> Say:
    if isinstance(what, int):
        return Say.of("go to test {number}", number=what)
    if not what:
        return Say.of("all of it holds. Stop.")
    return Say.of("the leak is in: {sections}. Stop.", sections=_labels(what))


def _labels(names: Sequence[str]) -> tuple[Say, ...]:
    return tuple(label(name) for name in names)
