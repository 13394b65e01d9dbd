"""Evidence and a job in; what the return visit should settle out."""

from collections.abc import Sequence

from estimator.diagnosis.case import Case
from estimator.diagnosis.reading import Reading
from estimator.model.job import SLAB_FLOORS
from estimator.model.judgement import Evidence, Need, Question
from estimator.model.say import Say
from estimator.model.stretch import Stretch


def questions_of(
    case: Case, evidence: Sequence[Evidence], needs: Sequence[Need], readings: Sequence[Reading]
) -> tuple[Question, ...]:
    """What to find out on one line, each once: asked by the evidence, by missing levels, branches and parts not filmed."""
    blocks = {r.id for r in readings if r.blocks_fixed_price}
    asked = [
        Question(about=e.confirm, line=e.line, stretch=e.stretch, blocks_fixed_price=e.rule in blocks)
        for e in evidence
        if e.asks and e.confirm is not None
    ]
    return tuple(
        dict.fromkeys([*asked, *_suspected(needs), *_levels(case, needs), *_branches(case), *_not_filmed(case, needs)])
    )


def _suspected(needs: Sequence[Need]) -> list[Question]:
    return [
        Question(
            about=Say.of("Was it really there? It was only suspected: look again before a fixed price."),
            line=n.line,
            stretch=n.stretch,
        )
        for n in needs
        if n.grade == "suspected" and n.findings
    ]


def _levels(case: Case, needs: Sequence[Need]) -> list[Question]:
    """A dip that must be dug, without the levels that say how far."""
    return [
        Question(
            about=Say.of(
                "Take the level of the pipe's bottom at both ends of the standing water and beyond, to know how far it must be laid anew."
            ),
            line=n.line,
            stretch=n.stretch,
        )
        for n in needs
        if {"sag", "reverse fall", "backfall"} & set(n.kinds) and n.must and not levels_known(case, n.stretch)
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
            blocks_fixed_price=False,
        )
        for part in case.profile.not_inspected
    ]


def house_questions(case: Case) -> tuple[Question, ...]:
    """Asked once a job: tendons, what runs in the slab, foundation work."""
    house, out = case.job.house, []
    if house.floor == "slab, tendons unknown":
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
    return tuple(out)
