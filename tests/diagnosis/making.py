"""Small jobs made in code, for the tests of diagnosis."""

from datetime import date
from typing import Any

from estimator.diagnosis.case import Case
from estimator.model.job import Customer, House, Job
from estimator.model.line import Finding, Line, Mark, Pass
from estimator.model.stretch import Stretch
from tests.made_up.stretch import demo_tables, finding

DAY = date(2026, 11, 18)


def mark(word: str, from_ft: float, to_ft: float | None = None, **more: Any) -> Mark:
    return Mark(word=word, stretch=Stretch(from_ft, from_ft if to_ft is None else to_ft), **more)


def line(*findings: str | Finding, pipe: str = "clay", zone: str = "yard", **more: Any) -> Line:
    """A 4 in line of 60 ft, filmed from end to end, with the flow; findings as short texts."""
    seen = tuple(finding(f) if isinstance(f, str) else f for f in findings)
    one = Pass(number=1, access="front cleanout", flow="with flow", start_ft=0.0, sign=1, seen=Stretch(0.0, 60.0))
    marks = (mark(zone, 0.0, holds=True), *more.pop("marks", ()))
    made: dict[str, Any] = {"name": "main", "size_in": 4.0, "pipe": pipe, "passes": (one,), **more}
    return Line(marks=marks, findings=seen, **made)


def job(*lines: Line, **more: Any) -> Job:
    house = {"floor": "slab", "jurisdiction": "demo", "built": 1967, "soil": "firm clay", **more.pop("house", {})}
    return Job(
        number="1", day=DAY, prepared_by="R. Example", customer=Customer(name="an owner", site="a house"),
        house=House(**house), lines=lines, **more,
    )  # fmt: skip


def case(*findings: str | Finding, **more: Any) -> Case:
    """One line in a job; `house`, `tests`, `signs`, `foundation` go to the job, the rest to the line."""
    to_job = {k: more.pop(k) for k in ("house", "water_tests", "signs", "foundation") if k in more}
    one = line(*findings, **more)
    return Case(job(one, **to_job), one, demo_tables())
