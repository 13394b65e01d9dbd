"""What is rented while the ground is open is paid for until the dig is filled, as the schedule has it, over whole houses."""

from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.model.offer import Option
from estimator.takeoff.rented import BY_DAY, days_charged

HOUSES = Path(__file__).parents[1] / "cases" / "houses"
WET_OR_BOXED = (
    "tunnel-in-wet-sand",
    "water-in-a-four-foot-trench",
    "ordinary-house-with-four-troubles",
    "twenty-feet-and-a-half",
    "bursting-five-feet-from-gas",
)


@pytest.mark.parametrize(
    ("days", "charged"),
    [(0.5, 0.5), (1, 1), (2, 2), (3, 3), (4, 3), (5, 3), (6, 4), (8, 6), (9, 6), (10, 6), (11, 7)],
)
def test_a_week_of_rent_costs_three_days_of_it(days: float, charged: float) -> None:
    """By hand: 5 working days a week, a week at 3 days (common practice, from memory: 3 to 4)."""
    assert days_charged(days, 3) == charged


def test_a_firm_that_rents_by_the_day_alone_sets_the_week_to_five() -> None:
    assert [days_charged(days, 5) for days in range(15)] == list(range(15))


def days_open(option: Option, repair: str) -> int:
    """Days from the first shovel to the end of the fill, told off on the tasks: a quarter hour into a day makes none.

    A box stands until the dig is filled: the ground is filled as the protective system comes out, from the bottom up
    (29 CFR 1926.652(e)(1)(v) and (vi), from memory).
    """
    mine = [t for t in option.schedule.tasks if t.repair == repair and t.step != "close"]
    days = [day for day in range(1, 40) for t in mine if t.start < day * 8 - 1e-6 and t.end > (day - 1) * 8 + 0.25]
    first = next(int(t.start // 8) + 1 for t in sorted(mine, key=lambda t: t.start) if t.step == "dig")
    return max(days) - first + 1


@pytest.mark.parametrize("name", WET_OR_BOXED)
def test_pumps_and_boxes_are_paid_for_until_the_dig_is_filled(name: str) -> None:
    found = 0
    for option in priced(HOUSES / name / "job.toml", None).quote.options:
        for takeoff in option.takeoffs:
            for quantity, pieces in BY_DAY.items():
                if rented := takeoff.value(quantity):
                    found += 1
                    days = days_open(option, takeoff.repair.id)
                    charged = takeoff.value(pieces) * days_charged(days, 3) if pieces else days
                    assert rented == charged, (option.letter, quantity)
    assert found
