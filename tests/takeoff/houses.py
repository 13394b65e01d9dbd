"""Short ways to write a job for a test: a house, a line, its marks and findings, a repair."""

from dataclasses import replace
from datetime import date
from typing import Any

from estimator.model.job import Customer, House, Job, Site
from estimator.model.line import Finding, Line, Mark, Pass
from estimator.model.stretch import Stretch
from estimator.model.work import Repair, Takeoff


def at(word: str, from_ft: float, to_ft: float | None = None, **slots: Any) -> Mark:
    return Mark(word=word, stretch=Stretch(from_ft, from_ft if to_ft is None else to_ft), **slots)


def hole(kind: str, from_ft: float, to_ft: float | None = None, **slots: Any) -> Finding:
    return Finding(
        id=f"{kind}-{from_ft}", kind=kind, stretch=Stretch(from_ft, from_ft if to_ft is None else to_ft), **slots
    )


def house(line: Line, *, site: Site | None = None, job: dict[str, Any] | None = None, **slots: Any) -> Job:
    facts: dict[str, Any] = {"floor": "slab", "jurisdiction": "demo", "soil": "firm clay", "lived_in": False, **slots}
    facts = {"tendons": "none, invented drawing", **facts}
    return Job(
        number="T-1",
        day=date(2026, 11, 25),
        prepared_by="test",
        customer=Customer(name="T", site="1 Test St"),
        house=House(**facts),
        lines=(line,),
        site=site or Site(),
        **(job or {}),
    )


def repair(method: str, from_ft: float, to_ft: float, **slots: Any) -> Repair:
    return Repair(id="r", method=method, line="main", stretch=Stretch(from_ft, to_ft), **slots)


def maple_line() -> Line:
    """Clay in the lawn, 3 ft lengths; depth read once, 3.4 ft under the lawn."""
    return Line(
        name="main",
        size_in=4,
        pipe="clay",
        marks=(
            at("cleanout", 0.0),
            at("yard", 0.0, choice="lawn", holds=True),
            *(at("joint", ft) for ft in (36.0, 39.0, 42.0, 45.0)),
            at("depth", 39.0, depth_ft=3.4, to="centre", surface="lawn"),
        ),
        findings=(
            hole("roots", 39.0, percent=(30, 30)),
            hole("offset", 39.0, percent=(15, 15)),
            hole("crack", 41.5, 43.0),
        ),
        passes=(
            Pass(
                number=1, access="cleanout", flow="with flow", riser_ft=2.0, start_ft=0.0, sign=1, seen=Stretch(0, 60)
            ),
        ),
    )


def pecan_line() -> Line:
    """Cast iron under a slab; stations count in from the slab edge, against the flow; exit invert 2.6 ft below the slab top."""
    return Line(
        name="main",
        size_in=4,
        pipe="cast iron",
        downstream=-1,
        zero="slab edge",
        marks=(
            at("yard", -10.0, 0.0, choice="bare ground"),
            at("slab", 0.0, 40.0),
            at("invert", 0.0, depth_ft=2.6, to="invert", surface="slab"),
            at("beam", 0.0, 1.0, lengths=(("wide", 1.0), ("deep", 2.0))),
            at("beam", 15.0, lengths=(("wide", 10 / 12), ("deep", 2.0))),
            at("branch", 10.0, size_in=3.0, live="live", proven=True),
            at("branch", 16.0, size_in=2.0, live="live", proven=True),
            at("branch", 22.0, size_in=2.0, live="live", proven=True),
        ),
        findings=(hole("channel", 9.0, 25.0, signs=("soil seen",)),),
        passes=(
            Pass(
                number=1,
                access="hall toilet",
                flow="with flow",
                riser_ft=2.0,
                start_ft=30.0,
                sign=-1,
                seen=Stretch(0, 30),
            ),
        ),
    )


def pecan_house(line: Line | None = None) -> Job:
    return house(line or pecan_line(), built=1965, slab_thickness_ft=1 / 3, slab_above_grade_ft=0.5)


def as_lines(takeoff: Takeoff) -> str:
    return "\n".join(f"{q.name:24} {q.value:10.4f} {q.unit:6} {q.formula}" for q in takeoff.quantities)


def changed(line: Line, *marks: Mark) -> Line:
    return replace(line, marks=(*line.marks, *marks))
