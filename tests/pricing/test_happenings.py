"""What may happen on a job, in the range and in the contingency that reaches the firm's own confidence."""

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.model.work import Takeoff
from estimator.pipeline import with_ranges
from estimator.pricing.build import price_scope
from estimator.pricing.happenings import happenings
from estimator.pricing.likely_range import range_of, reaching, too_little
from estimator.tables.rows import Event, PlaceRow
from estimator.tables.rows_of_hours import Production
from estimator.tables.tables import Tables

D = Decimal
Scope = tuple[Takeoff, ...]
DEMO = Path(__file__).parents[2] / "estimator" / "demo" / "job.toml"


def event(**changes: object) -> Event:
    usual = {"event": "rain", "methods": ("yard spot",), "when": (), "chance_percent": 25.0, "crew": "excavation"}
    return Event(**{**usual, "hours": 4.0, "cost": D(100), **changes})  # type: ignore[arg-type]


def certain(tables: Tables, *events: Event) -> Tables:
    """Tables in which every hour and price is sure, and these events."""
    sure = tuple(
        replace(row, low=row.likely, high=row.likely) if isinstance(row, Production) else row
        for row in tables.rows["production"]
    )
    made = replace(tables, rows={**tables.rows, "production": sure, "events": events})
    return made.with_settings({"range_prices_percent": "0"})


def test_an_event_costs_its_hours_and_its_money_as_often_as_it_comes(
    maple: Scope, tables: Tables, place: PlaceRow
) -> None:
    """Four hours on 3.336 + 1 of set-up are 8.336 h: a day of 8.25 h no longer holds them, so a day and a half with two set-ups,
    12.25 h for 9.336: + 4 h × 68.64 = 274.56, and 100 of money. Three times out of four it does not come."""
    own = certain(tables, event())
    price = price_scope(maple, own, place)
    found = range_of(price, maple, own, seed=7, draws=4000)
    comes = float(price.direct) + 4 * 68.64 + 100
    assert found.cost[50] == pytest.approx(float(price.direct))
    assert found.cost[80] == pytest.approx(comes)
    assert found.mean_cost == pytest.approx(float(price.direct) + 0.25 * (comes - float(price.direct)), rel=0.01)
    assert dict(found.drivers)["rain"] == pytest.approx(100)


@pytest.mark.parametrize(
    ("changes", "there"),
    [({}, True), ({"methods": ("tunnel",)}, False), ({"when": ("lawn",)}, False), ({"when": ("not lawn",)}, True)],
)
def test_an_event_comes_to_the_repairs_it_is_for(
    changes: dict[str, object], there: bool, maple: Scope, tables: Tables, place: PlaceRow
) -> None:
    own = certain(tables, event(**changes))
    assert bool(happenings(price_scope(maple, own, place), maple, own)) is there


def test_hours_of_a_crew_that_is_not_on_the_job_are_money(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    own = certain(tables, event(crew="labor"))
    found = happenings(price_scope(maple, own, place), maple, own)[0]
    assert (found.crew, found.cost) == ("", pytest.approx(100 + 4 * 52.80))


def test_a_contingency_too_small_is_named_and_what_reaches_is_enough(
    maple: Scope, tables: Tables, place: PlaceRow
) -> None:
    own = certain(tables, event())
    price = price_scope(maple, own, place)
    short = range_of(price, maple, own, seed=7)
    needed = reaching(short)
    said = too_little("A", short)
    assert said is not None and "holds in 75 of 100" in str(said.wrong)
    assert needed is not None and 16 < needed < 17  # 374.56 ÷ 2,310.75 = 16.2 %
    held = range_of(price_scope(maple, own, place, contingency=needed), maple, own, seed=7)
    assert held.contingency_percent == float(needed)
    assert (reaching(held), too_little("A", held)) == (None, None)


def test_a_job_may_take_the_contingency_its_confidence_needs(tmp_path: Path) -> None:
    for name in DEMO.parent.glob("*.t*"):
        (tmp_path / name.name).write_bytes(name.read_bytes())
    job = tmp_path / "job.toml"
    job.write_text(job.read_text("utf-8") + '\n[settings]\ncontingency_reaches_confidence = "yes"\n', "utf-8")
    plain, raised = priced(DEMO, None), priced(job, None)
    before = {o.letter: o.price for o in plain.quote.options}
    ranges = {o.letter: o.likely_range for o in with_ranges(plain.quote, plain.tables, 3208534261).options}
    short = {letter for letter, found in ranges.items() if found is not None and found.short_percent}
    assert short
    for option in raised.quote.options:
        now, was = option.price, before[option.letter]
        assert (now.contingency_percent > was.contingency_percent) is (option.letter in short)
        assert now.direct == was.direct
