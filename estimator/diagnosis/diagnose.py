"""Step 2: a job and the firm's tables in; what the findings mean out: needs, evidence, questions."""

from estimator.diagnosis import camera, ground, iron, roots, standing_water, symptoms, water_test_readings
from estimator.diagnosis.case import Case
from estimator.diagnosis.lift_sequence import lift_sequence
from estimator.diagnosis.needs import needs_of
from estimator.diagnosis.questions import house_questions, questions_of
from estimator.diagnosis.reading import Reading
from estimator.diagnosis.tests_read import pairs, read_test
from estimator.diagnosis.urgency import line_urgency
from estimator.model.gas import GAS_SMELL
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Evidence, LineUrgency, Need, Question
from estimator.tables.tables import Tables

READINGS: tuple[Reading, ...] = tuple(
    sorted(
        (
            *roots.READINGS,
            *standing_water.READINGS,
            *iron.READINGS,
            *ground.READINGS,
            *camera.READINGS,
            *water_test_readings.READINGS,
            *symptoms.READINGS,
        ),
        key=lambda r: (r.id != GAS_SMELL, r.numbers or ("D99",)),
    )
)
"""Gas before everything; then in the order of their numbers; those without a number last."""


ONCE = frozenset({"gas-smell", "pumped-under-pressure", "sewer-smell", "backs-up", "drains-slowly", "animals-in-the-house", "sewage-gets-out", "several-sections-fail", "two-building-exits", "water-nobody-uses", "water-rises-elsewhere",
                  "section-would-not-seal", "level-drops-and-holds", "section-fails-nothing-seen", "whole-system-empties", "leak-rate", "test-leaves-open"})  # fmt: skip
"""Readings of the house rather than of a line: the first line that shows one carries it."""


def diagnose(job: Job, tables: Tables) -> Diagnosis:
    """Every reading on every line, the needs that follow, how soon, what a return visit should settle; tests compared; the order with a lift.

    A clean line has no need: nothing to repair. Errors: KeyError when the settings table lacks a limit.
    """
    needs: list[Need] = []
    evidence: list[Evidence] = []
    questions: list[Question] = []
    soon: list[LineUrgency] = []
    for line in job.lines:
        case = Case(job, line, tables)
        found = _evidence(case, evidence)
        here = needs_of(case, found)
        evidence += found
        needs += here
        soon += [one] if (one := line_urgency(here, case)) else []
        questions += questions_of(case, found, here, READINGS)
        if line is job.lines[0]:
            questions += house_questions(case)
    return Diagnosis(
        needs=tuple(needs),
        evidence=tuple(evidence),
        questions=tuple(dict.fromkeys(questions)),
        lift_steps=lift_sequence(job, needs),
        tests=tuple(read_test(test, job, tables) for test in job.water_tests),
        tests_compared=tuple(pair.says for pair in pairs(job, tables)),
        urgency=tuple(soon),
    )


def _evidence(case: Case, before: list[Evidence]) -> list[Evidence]:
    said = {(e.rule, e.meaning) for e in before if e.rule in ONCE}
    found = [e for reading in READINGS for e in reading.found(case)]
    return [e for e in found if (e.rule, e.meaning) not in said]
