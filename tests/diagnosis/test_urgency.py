"""How soon: the level, one more over a hollow, one less when only suspected, and never late where people are. Common practice."""

import pytest

from estimator.diagnosis import diagnose
from estimator.model.job import Foundation, Sign
from estimator.scopes.rules.examples import demo_tables
from tests.diagnosis.making import job, line


def urgency(*findings: str, **more: object) -> int:
    to_job = {k: more.pop(k) for k in ("house", "signs", "foundation") if k in more}
    diagnosis = diagnose(job(line(*findings, **more), **to_job), demo_tables())  # type: ignore[arg-type]
    return max(n.urgency for n in diagnosis.needs)


@pytest.mark.parametrize(
    "findings, zone, soon",
    [
        (("20 crack open",), "yard", 2),
        (("20 crack open suspected",), "yard", 1),
        (("20 crack soil seen",), "yard", 3),
        (("20 crack soil seen",), "slab", 4),
        (("20 crack soil seen",), "drive", 4),
        (("20 crack open", "20 mud"), "slab", 3),
        (("20 crack open", "20 mud"), "yard", 2),
    ],
)
def test_a_hollow_or_mud_under_a_floor_or_drive_makes_it_sooner(
    findings: tuple[str, ...], zone: str, soon: int
) -> None:
    assert urgency(*findings, zone=zone) == soon


def test_a_leak_under_a_slab_in_soil_that_swells_is_never_less_than_three() -> None:
    assert urgency("20 crack hairline", zone="slab", house={"expansive_soil": True}) == 3
    assert urgency("20 crack hairline", zone="yard", house={"expansive_soil": True}) == 1


def test_before_a_lift_too() -> None:
    assert urgency("20 crack hairline", zone="slab", foundation=Foundation(work="planned")) == 3


@pytest.mark.parametrize("what", ["sewage in the tub", "wet lawn", "sinkhole"])
def test_sewage_where_people_are_is_an_emergency(what: str) -> None:
    assert urgency("20 crack open", signs=(Sign(what=what),)) == 4


def test_a_sign_that_is_no_sewage_changes_nothing() -> None:
    assert urgency("20 crack open", signs=(Sign(what="gate is locked"),)) == 2
