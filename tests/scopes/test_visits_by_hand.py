"""A visit, a first water test or a film wanted by hand where nothing has to be repaired: priced as a job of its own."""

from decimal import Decimal
from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.model.offer import Option

NOTES = """[job]
number = "1"
date = 2026-11-18
prepared_by = "R. Example"
demo = true
[customer]
name = "Invented"
site = "1 Invented Street"
[house]
built = 1962
floor = "slab"
soil = "firm clay"
jurisdiction = "demo"
[foundation]
work = "planned"
lift_date = 2027-01-12
company = "Invented Lifting"
piers = 14
[[line]]
name = "main"
size = "4 in"
pipe = "cast iron"
zero = "slab edge"
ends = "city main"
log = '''
pass front cleanout to house, against flow, riser 2 ft
2   yard lawn, cleanout
6   slab tile, invert 30in below slab
30  end closet bend
'''
[[option]]
do = "pin"
name = "Before the lift"
repairs = [{{ method = "visit", line = "main", tasks = "{tasks}" }}]
"""


def visit(folder: Path, tasks: str) -> Option:
    job = folder / "job.toml"
    job.write_text(NOTES.format(tasks=tasks))
    (found,) = priced(job, None).quote.options
    return found


@pytest.mark.parametrize(
    ("tasks", "task", "low", "high"),
    [("test", "whole test", 350, 700), ("film", "camera pass", 250, 600), ("film, test", "whole test", 500, 1200)],
)
def test_a_visit_wanted_by_hand_is_priced_alone(tmp_path: Path, tasks: str, task: str, low: int, high: int) -> None:
    """Ranges are what such a visit is charged in the US in 2024–26, from memory."""
    found = visit(tmp_path, tasks)
    assert low <= found.price.total <= high
    assert task in {t.task for t in found.price.tasks}
    assert found.fixed


def test_the_first_water_test_by_hand(tmp_path: Path) -> None:
    """Coming 1.17 h and the test 1.83 h, expected hours [(1.25 + 1.75 + 2.5) / 3], with 0.67 h of set-up a morning's 3.67 h:
    half a day of the plumbers. The water stands 30 in over the lowest bottom, to the slab's top and no higher."""
    found = visit(tmp_path, "test")
    (crew,) = found.price.crews
    assert crew.days == Decimal("0.5")
    assert crew.work_hours == pytest.approx(7 / 6 + 11 / 6)
    assert [t.value("test_head_ft") for t in found.takeoffs if t.value("whole_tests")] == [2.5]
    assert {t.step for t in found.schedule.tasks if t.drains_off} == {"test"}
