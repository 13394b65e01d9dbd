"""What is rented while the ground is open is paid for until the dig is filled, as the schedule has it, over whole houses."""

from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.model.offer import Option
from estimator.takeoff.rented import BY_DAY, cheapest, days_charged

HOUSES = Path(__file__).parents[1] / "cases" / "houses"
DEMO = Path(__file__).parents[2] / "estimator" / "demo" / "job.toml"
EVERYDAY = sorted((Path(__file__).parents[1] / "everyday").glob("*/job.toml"))
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


def days_worked(option: Option, repair: str) -> set[int]:
    """The days on which the repair is dug or filled, told off the same way."""
    mine = [t for t in option.schedule.tasks if t.repair == repair and t.step in ("dig", "fill")]
    return {day for day in range(1, 40) for t in mine if t.start < day * 8 - 1e-6 and t.end > (day - 1) * 8 + 0.25}


@pytest.mark.parametrize("name", WET_OR_BOXED)
def test_pumps_and_boxes_are_paid_for_until_the_dig_is_filled(name: str) -> None:
    found = 0
    for option in priced(HOUSES / name / "job.toml", None).quote.options:
        for takeoff in option.takeoffs:
            for quantity, rent in BY_DAY.items():
                if not rent.for_all and (rented := takeoff.value(quantity)):
                    found += 1
                    days = days_open(option, takeoff.repair.id)
                    charged = takeoff.value(rent.pieces) * days_charged(days, 3) if rent.by_week else days
                    assert rented == charged, (option.letter, quantity)
    assert found


@pytest.mark.parametrize(
    ("worked", "charged", "times"),
    [
        ((1,), 1, 1),
        ((1, 2), 2, 1),  # kept overnight
        ((1, 3), 2, 2),  # 3 days, or 2 and a trip: 2.5
        ((1, 3, 4), 3, 1),  # 4 days of a week cost 3; 1 + 2 and a trip 3.5
        ((1, 2, 3, 4, 5), 3, 1),
        ((1, 7), 2, 2),  # 7 days cost 3 + 2; two single days and a trip 2.5
        ((1, 2, 7, 8), 4, 2),  # 8 days cost 6; 2 + 2 and a trip 4.5
        ((1, 2, 3, 4, 9), 4, 2),  # 9 days cost 6; a week and a day 4.5
    ],
)
def test_a_machine_stands_or_is_fetched_and_brought_again_whichever_costs_less(
    worked: tuple[int, ...], charged: float, times: int
) -> None:
    """A week at 3 days, and a trip at half a day of rent, 150 against 320 (common practice, from memory)."""
    assert cheapest(worked, 3, 0.5) == (charged, times)


@pytest.mark.parametrize("job", [DEMO, *(HOUSES / name / "job.toml" for name in WET_OR_BOXED), *EVERYDAY])
def test_one_excavator_serves_all_digs_and_stays_for_the_fill_where_that_costs_less(job: Path) -> None:
    for option in priced(job, None).quote.options:
        dug = [t for t in option.takeoffs if t.value("dig_bcy")]
        worked = sorted({day for t in dug for day in days_worked(option, t.repair.id)})
        brought = sum(t.value("excavator_deliveries") for t in option.takeoffs)
        charged, times = cheapest(worked, 3, 0.5)
        assert {t.value("excavator_days") for t in dug} == ({charged} if dug else set())
        assert brought == times
        assert sum(c.quantity for c in option.price.costs if c.ref == "excavator") == charged


def test_the_demos_tunnel_is_dug_beside_on_the_first_day_and_filled_beside_on_the_seventh() -> None:
    """By hand: kitchen's trench and the yard's hole on day 1, both filled on day 7: 2 days of rent and 2 trips, 940; to let it stand
    is a week and 2 days, 5 x 320 and one trip, 1,750."""
    option = next(o for o in priced(DEMO, None).quote.options if any(t.works.tunnels for t in o.takeoffs))
    paid = {c.ref: c.amount for c in option.price.costs}
    assert (paid["excavator"], paid["excavator-delivery"]) == (640, 300)
