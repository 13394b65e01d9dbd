"""What is rented while the ground is open is paid for as many days as the schedule has it open, over whole houses."""

from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.model.offer import Option
from estimator.takeoff.rented import BY_DAY

HOUSES = Path(__file__).parents[1] / "cases" / "houses"
WET_OR_BOXED = (
    "tunnel-in-wet-sand",
    "water-in-a-four-foot-trench",
    "ordinary-house-with-four-troubles",
    "twenty-feet-and-a-half",
)


def days_open(option: Option, repair: str, after: tuple[str, ...]) -> int:
    """Days from the first shovel to the last task not of these steps, told off on the tasks: a quarter hour into a day makes none."""
    mine = [t for t in option.schedule.tasks if t.repair == repair and t.step not in after]
    days = [day for day in range(1, 40) for t in mine if t.start < day * 8 - 1e-6 and t.end > (day - 1) * 8 + 0.25]
    first = next(int(t.start // 8) + 1 for t in sorted(mine, key=lambda t: t.start) if t.step == "dig")
    return max(days) - first + 1


@pytest.mark.parametrize("name", WET_OR_BOXED)
def test_pumps_and_boxes_are_paid_for_as_long_as_the_ground_is_open(name: str) -> None:
    options = priced(HOUSES / name / "job.toml", None).quote.options
    found = 0
    for option in options:
        for takeoff in option.takeoffs:
            for quantity, pieces in BY_DAY.items():
                if rented := takeoff.value(quantity):
                    found += 1
                    after = ("close",) if quantity == "dewater_days" else ("fill", "close")
                    count = takeoff.value(pieces) if pieces else 1.0
                    assert rented == count * days_open(option, takeoff.repair.id, after), (option.letter, quantity)
    assert found
