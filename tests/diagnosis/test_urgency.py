"""How soon: the level, one more over a hollow, one less when only suspected, and never late where people are. Common practice."""

import pytest

from estimator.diagnosis import diagnose
from estimator.model.job import Foundation, Sign
from tests.diagnosis.making import job, line
from tests.made_up.stretch import demo_tables


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


def test_a_line_is_as_urgent_as_its_worst_place_and_says_what_makes_it_so() -> None:
    found = diagnose(job(line("20 crack soil seen", "60 crack hairline", zone="slab")), demo_tables())
    (one,) = found.urgency
    assert (one.line, one.level) == ("main", max(n.urgency for n in found.needs))
    assert [str(text) for text in one.because] == ["The ground under the floor or drive may be washed out."]


@pytest.mark.parametrize(
    "finding, more, said",
    [
        ("20 crack open suspected", {}, ["It is only suspected so far."]),
        ("20 crack open", {"signs": (Sign(what="sewage in the tub"),)}, ["Sewage can reach people."]),
        ("20 crack open", {"house": {"expansive_soil": True}}, ["It leaks under the slab, into clay that swells."]),
        ("20 crack open", {"foundation": Foundation(work="planned")}, ["It leaks under the slab, and the house is to be lifted."]),
        ("20 sag 20%", {"house": {"expansive_soil": True}}, []),
    ],
)  # fmt: skip
def test_every_reason_for_being_sooner_or_later_is_said(finding: str, more: dict, said: list[str]) -> None:
    (one,) = diagnose(job(line(finding, zone="slab"), **more), demo_tables()).urgency
    assert [str(text) for text in one.because] == said


def test_a_line_without_trouble_has_no_urgency() -> None:
    assert diagnose(job(line()), demo_tables()).urgency == ()


def test_a_drain_seen_closed_is_an_emergency_whatever_closes_it() -> None:
    """What closes it is only suspected, so its repair has no fixed price; that nothing flows is no guess."""
    assert urgency("20 collapse no flow") == 4
    assert urgency("20 blocked no flow") == 4
