"""What is rented while the ground is open is paid for until the dig is filled, as the schedule has it, over whole houses."""

import csv
import shutil
from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.model.offer import Option
from estimator.onsite.failed_inspection import failed_inspection
from estimator.tables.read import demo_folder
from estimator.tables.tables import Tables
from estimator.takeoff.rented import BY_DAY, Hire, cheapest, days_charged, hire_of

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
    """A week at 3 days, and a trip at half a day of rent (common practice, from memory)."""
    assert cheapest(worked, Hire(week=3, trip=0.5)) == (charged, times)


@pytest.mark.parametrize(
    ("worked", "least", "trip", "charged", "times"),
    [
        ((1,), 2, 0.5, 2, 1),
        ((1, 3), 2, 0.5, 3, 1),  # two hires are 4 days and a trip; to let it stand 3
        ((1, 7), 2, 0.5, 4, 2),  # 4 days and a trip; to let it stand 5
        ((1, 3), 1, 600 / 320, 3, 1),  # 2 days and 600 are 1,240; 3 days 960
        ((1, 7), 1, 600 / 320, 2, 2),  # 2 days and 600 are 1,240; a week and 2 days 1,600
    ],
)
def test_each_hire_is_charged_its_least_days_and_each_trip_what_the_delivery_costs(
    worked: tuple[int, ...], least: float, trip: float, charged: float, times: int
) -> None:
    assert cheapest(worked, Hire(week=3, trip=trip, least=least)) == (charged, times)


@pytest.mark.parametrize("job", [DEMO, *(HOUSES / name / "job.toml" for name in WET_OR_BOXED), *EVERYDAY])
def test_one_excavator_serves_all_digs_and_stays_for_the_fill_where_that_costs_less(job: Path) -> None:
    for option in priced(job, None).quote.options:
        dug = [t for t in option.takeoffs if t.value("dig_bcy")]
        worked = sorted({day for t in dug for day in days_worked(option, t.repair.id)})
        brought = sum(t.value("excavator_deliveries") for t in option.takeoffs)
        charged, times = cheapest(worked, Hire(week=3, trip=150 / 320))
        assert {t.value("excavator_days") for t in dug} == ({charged} if dug else set())
        assert brought == times
        assert sum(c.quantity for c in option.price.costs if c.ref == "excavator") == charged


def test_the_demos_tunnel_is_dug_beside_on_the_first_day_and_filled_beside_on_the_seventh() -> None:
    """By hand: kitchen's trench and the yard's hole on day 1, both filled on day 7: 2 days of rent and 2 trips, 940; to let it stand
    is a week and 2 days, 5 x 320 and one trip, 1,750."""
    option = next(o for o in priced(DEMO, None).quote.options if any(t.works.tunnels for t in o.takeoffs))
    paid = {c.ref: c.amount for c in option.price.costs}
    assert (paid["excavator"], paid["excavator-delivery"]) == (640, 300)


def with_rows(folder: Path, **cells: dict[str, str]) -> Path:
    """A copy of the demo's tables with these cells of equipment rows, by item (`_` for `-`)."""
    shutil.copytree(demo_folder(), folder)
    with (folder / "equipment.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    with (folder / "equipment.csv").open("w", encoding="utf-8", newline="") as file:
        out = csv.DictWriter(file, list(rows[0]))
        out.writeheader()
        out.writerows(row | cells.get(row["item"].replace("-", "_"), {}) for row in rows)
    return folder


def tunnel(folder: Path) -> tuple[Option, Tables]:
    run = priced(DEMO, folder)
    return next(o for o in run.quote.options if any(t.works.tunnels for t in o.takeoffs)), run.tables


def test_a_delivery_that_costs_more_than_standing_lets_it_stand(tmp_path: Path) -> None:
    """Day 1 and day 7: two days of 40 and two trips of 150 are 380; a week and 2 days, 5 x 40, and one trip 350."""
    option, tables = tunnel(with_rows(tmp_path / "far", excavator={"cost": "40"}))
    paid = {c.ref: c.amount for c in option.price.costs}
    assert (paid["excavator"], paid["excavator-delivery"]) == (200, 150)
    assert hire_of(tables) == Hire(week=3, trip=150 / 40)


@pytest.mark.parametrize("row", [{"own": "yes"}, {"own": "yes", "crew": "excavation"}, {"crew": "excavation"}])
def test_a_machine_of_the_firms_own_is_brought_once_and_costs_nothing_while_an_inspection_fails(
    tmp_path: Path, row: dict[str, str]
) -> None:
    """The demo's tunnel: it digs on day 1 and fills on day 7, two days of 120 and one trip of 150."""
    option, tables = tunnel(with_rows(tmp_path / "own", excavator={"cost": "120", **row}))
    paid = {c.ref: c.amount for c in option.price.costs}
    assert paid["excavator-delivery"] == 150
    assert paid["excavator"] == 120 * sum(c.quantity for c in option.price.costs if c.ref == "excavator")
    assert {t.value("excavator_days") for t in option.takeoffs} == {0, 2}
    assert hire_of(tables) is None
    found = failed_inspection(option, tables)
    assert found is not None and not any("excava" in str(what) for what, _ in found.paid)
