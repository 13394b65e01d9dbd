"""Evidence and a job in; what the return visit should settle out."""

from collections.abc import Sequence

from estimator.diagnosis.case import Case
from estimator.diagnosis.reading import Reading
from estimator.diagnosis.severity import PLAN
from estimator.diagnosis.tests_read import read_test
from estimator.diagnosis.urgency import was_seen
from estimator.knowledge.excavation import needs_ladder
from estimator.knowledge.tendons import may_have_tendons
from estimator.model.edge_beam import edge_beam
from estimator.model.fall import CLIMBS
from estimator.model.job import SLAB_FLOORS, Job
from estimator.model.judgement import Evidence, Need, Question
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch


def questions_of(
    case: Case, evidence: Sequence[Evidence], needs: Sequence[Need], readings: Sequence[Reading]
) -> tuple[Question, ...]:
    """What to find out on one line, each once: asked by the evidence, by missing levels, branches and parts not filmed."""
    told = {r.id: r.not_fixed for r in readings}
    if case.of(IN_THE_BORE):  # nobody goes near this line before its owner has cleared it
        evidence = [e for e in evidence if e.rule == CLEARED_FIRST]
    asked = [
        Question(about=e.confirm, line=e.line, stretch=e.stretch, not_fixed=told.get(e.rule))
        for e in evidence
        if e.asks and e.confirm is not None and not (e.rule == PULLED and _tested_after_the_lift(case))
    ]
    if case.of(IN_THE_BORE):
        return tuple(dict.fromkeys(asked))
    rest = (
        _climbs(case),
        _way_in(case, needs),
        _suspected(needs),
        _located(case, needs),
        _levels(case, needs),
        _branches(case),
        _not_filmed(case, needs),
    )
    return tuple(dict.fromkeys([*asked, *(question for some in rest for question in some)]))


def _suspected(needs: Sequence[Need]) -> list[Question]:
    return [
        Question(
            about=Say.of("Was it really there? It was only suspected: look again before a fixed price."),
            line=n.line,
            stretch=n.stretch,
        )
        for n in needs
        if n.grade == "suspected" and n.findings and not was_seen(n)
    ]


def _climbs(case: Case) -> list[Question]:
    """The readings of the pipe's bottom rise with the flow."""
    fall = case.profile.slope_ft_per_ft()
    if fall is None or fall > 0:
        return []
    about = Say.of(
        "By the levels this line runs uphill toward its lower end: take them again, and look for a lower place to tie in; new pipe between the same ends would not drain."
    )
    return [Question(about=about, line=case.line.name, not_fixed=CLIMBS)]


def _way_in(case: Case, needs: Sequence[Need]) -> list[Question]:
    """A side line with trouble under the floor, and nobody noted where it runs to nor how far the wall is."""
    line, profile, seen = case.line, case.profile, {case.line.name}
    while line.joins is not None and line.joins.line not in seen and profile.slab_edge_ft is None:
        seen.add(line.joins.line)
        line = case.job.line(line.joins.line)
        profile = Profile(line)
    if profile.slab_edge_ft is not None or case.profile.marks("beside"):
        return []
    inside = [n for n in needs if case.zones(n.stretch) & INSIDE]
    about = Say.of(
        "Where does this line run into another one, and how far is the nearest outside wall? A tunnel's way in is a guess until then."
    )
    return [Question(about=about, line=n.line, stretch=n.stretch) for n in inside[:1]]


def _located(case: Case, needs: Sequence[Need]) -> list[Question]:
    """Trouble in the ground and no depth read in that ground: how deep a dig goes there is not known."""
    buried = [n for n in needs if n.must and not case.zones(n.stretch) <= HANGS_FREE and not set(n.kinds) <= CLEANABLE]
    return [
        Question(
            about=_LOCATE_INSIDE if case.zones(n.stretch) & INSIDE else _LOCATE, line=case.line.name, stretch=n.stretch
        )
        for n in buried
        if (depth := case.profile.depth_to_centre_ft(n.stretch.middle_ft)).value is None or depth.how == "assumed"
    ][:1]


INSIDE = frozenset({"slab", "basement"})
_LOCATE = Say.of(
    "Locate the pipe here and write down how deep it lies and under which surface: the price of any dig stays open until then."
)
_LOCATE_INSIDE = Say.of(
    "How deep is the pipe under the floor here? A depth from the lawn says nothing of it. Locate it from inside: the price of any dig stays open until then."
)


def _levels(case: Case, needs: Sequence[Need]) -> list[Question]:
    """A dip that is, or should be before long, laid anew, without the levels that say how far."""
    return [
        Question(
            about=Say.of(
                "Take the level of the pipe's bottom at both ends of the standing water and beyond, to know how far it must be laid anew."
            ),
            line=n.line,
            stretch=n.stretch,
        )
        for n in needs
        if {"sag", "reverse fall", "backfall"} & set(n.kinds)
        and n.severity >= PLAN
        and not levels_known(case, n.stretch)
    ]


def levels_known(case: Case, stretch: Stretch) -> bool:
    """The fall over the stretch can be worked out from inverts or levels; a locator's depth never gives it."""
    return case.profile.fall_ft(stretch.from_ft, stretch.to_ft).value is not None


def _branches(case: Case) -> list[Question]:
    return [
        Question(
            about=Say.of("What drains into this side drain, and is it in use? Run water to be sure."),
            line=case.line.name,
            stretch=Stretch(b.station_ft, b.station_ft),
        )
        for b in case.profile.branches
        if b.live is None or b.proven is False
    ]


def _not_filmed(case: Case, needs: Sequence[Need]) -> list[Question]:
    return [
        Question(
            about=Say.of("This part was not filmed; it stays out of every fixed price until it is."),
            line=case.line.name,
            stretch=part,
        )
        for part in case.profile.not_inspected
    ]


def _tested_after_the_lift(case: Case) -> bool:
    """All drains were tested once the house had been lifted, and the test proves something."""
    after = (t for t in case.job.water_tests if t.kind == "whole" and t.when in ("after lift", "after repair"))
    return any(read_test(t, case.job, case.tables).outcome != "inconclusive" for t in after)


PULLED = "joint-pulled-by-a-lift"
IN_THE_BORE, CLEARED_FIRST = "utility", "another-line-in-the-bore"
HANGS_FREE = frozenset({"crawl", "basement"})
CLEANABLE = frozenset({"scale", "grease", "mud", "blocked", "insects"})


def house_questions(case: Case) -> tuple[Question, ...]:
    """Asked once a job: tendons, what runs in the slab, the beam along its edge."""
    house, out = case.job.house, [*_competent_person(case)]
    if not _slab_concerned(case.job):
        return tuple(out)
    if house.floor != "post-tensioned slab" and may_have_tendons(house, _tendons_since(case)):
        out.append(
            Question(
                about=Say.of(
                    "Does the slab hold steel tendons? A missing stamp proves nothing: ask, look at the slab edge, or scan."
                )
            )
        )
    if house.floor in SLAB_FLOORS and (house.water_lines == "unknown" or house.in_slab == "unknown"):
        out.append(
            Question(
                about=Say.of(
                    "Where do water, gas, power and ducts run in and under the slab, and where are the shut-offs?"
                )
            )
        )
    if house.floor in SLAB_FLOORS and _edge_never_said(case):
        out.append(
            Question(
                about=Say.of(
                    "Is there a beam along the slab's edge, how deep and how wide? Nobody said, and that does not mean none: uncover the edge, or ask for the drawing."
                )
            )
        )
    return tuple(out)


def _tendons_since(case: Case) -> int | None:
    place = case.tables.known_place(case.job.house.jurisdiction)
    return place.tendons_since if place else None


def _edge_never_said(case: Case) -> bool:
    """No log and no key tells of the edge beam, and some pipe lies under the slab."""
    near = case.number("edge_beam_near_ft")
    under = any("slab" in [zone for _, zone in Profile(x).zones(Profile(x).extent)] for x in case.job.lines)
    return under and edge_beam(case.job, case.line, near).beam is None


def _slab_concerned(job: Job) -> bool:
    """Not where all the trouble that was seen lies outside the slab: nobody cuts the slab for that."""
    failed = any(test.result != "passed" for test in job.water_tests)
    places = [(Profile(line), finding) for line in job.lines for finding in line.findings]
    zones = {zone for profile, finding in places for _, zone in profile.zones(finding.stretch)}
    return failed or not zones or bool(zones & {"slab", "", None})


def _competent_person(case: Case) -> list[Question]:
    """Asked where a dig may come to 4 ft, or a tunnel to be dug, and nobody is named who answers for it."""
    if case.job.site.competent_person.strip() or not any(map(_may_be_deep, _lines(case))):
        return []
    return [
        Question(
            about=Say.of(
                "Who is the competent person for the dig? Write the name under [site] as competent_person: without it no crew sheet is made for a tunnel, a pit at a wall, or a dig of 4 ft and more."
            )
        )
    ]


def _lines(case: Case) -> list[Case]:
    return [
        Case(case.job, line, case.tables)
        for line in case.job.lines
        if all(f.kind != IN_THE_BORE for f in line.findings)
    ]


def _may_be_deep(case: Case) -> bool:
    """Trouble under the slab, or so deep that a dig to below the pipe, with the locator's error, comes to 4 ft; or of unknown depth."""
    return any(_deep(case, f.stretch) for f in case.line.findings if f.kind not in CLEANABLE)


def _deep(case: Case, stretch: Stretch) -> bool:
    if case.zones(stretch) and case.zones(stretch) <= HANGS_FREE:
        return False
    centre_ft = case.profile.depth_to_centre_ft(stretch.middle_ft).value
    if centre_ft is None or "slab" in case.zones(stretch):
        return True
    error_ft = max(centre_ft * case.number("locator_tolerance_percent") / 100, case.number("locator_tolerance_min_ft"))
    under_ft = case.line.size_in / 24 + case.number("bedding_ft")
    return needs_ladder(centre_ft + under_ft + error_ft)
