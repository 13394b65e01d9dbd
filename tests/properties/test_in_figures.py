"""What the search reckons in figures is what the full build-up comes to, to the cent: a thousand random sets in each run.

Houses, repairs, settings and the place's tax are drawn anew; a failed test names the seed that draws the same again. The
sums of the build-up's own lines are added up beside it, so that the two do not agree by leaning on one figure.
"""

import random
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.diagnosis import diagnose
from estimator.model.job import Job
from estimator.model.wanted import Allowance
from estimator.model.work import Repair
from estimator.pipeline.costing import in_figures
from estimator.pricing.build import price_scope
from estimator.scopes.candidates import repairs
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from estimator.takeoff.together import together
from tests.properties.drawn_houses import drawn, read, seeds, tables, trouble, with_rows

TESTS, SETS = 20, 50
SETTINGS = {
    "commission_percent": ("0", "3", "7.5"),
    "card_fee_percent": ("0", "2.9"),
    "overhead_per_crew_day": ("0", "180"),
    "round_price_to": ("1", "5", "25"),
    "crew_tolerance_hours": ("0", "0.25"),
    "price_expected_hours": ("yes", "no"),
    "min_charge_test": ("0", "450", "3000"),
}
TAXES = (("contractor pays", Decimal("8.25")), ("separated", Decimal("8.25")), ("whole charge", Decimal("6.5")), ("none", None), ("", None))  # fmt: skip


def settings(rng: random.Random) -> Tables:
    """The demo's tables with some settings drawn, and now and then no tax classes."""
    own = tables().with_settings({key: rng.choice(values) for key, values in SETTINGS.items()})
    return own if rng.random() < 0.7 else replace(own, rows={**own.rows, "tax_classes": ()})


def place_of(rng: random.Random, own: Tables) -> PlaceRow | None:
    kind, percent = rng.choice(TAXES)
    return None if rng.random() < 0.05 else replace(own.place("demo"), tax_kind=kind, tax_percent=percent)


def house(rng: random.Random) -> Job | None:
    """A house with one to four troubles, some with one bathroom, some with an allowance."""
    invented = drawn(rng.randrange(10**9))
    more = [trouble(rng, 8, invented.seen_ft - 8) for _ in range(rng.randint(0, 2))]
    job = read(with_rows(invented, *more))
    if job is None:
        return None
    bathrooms = rng.randint(1, 2)
    allowances = (Allowance(text="fence", amount=Decimal("312.40")),) if rng.random() < 0.3 else ()
    return replace(job, house=replace(job.house, bathrooms=bathrooms), allowances=allowances)


def sets(rng: random.Random) -> Iterator[tuple[Job, Tables, PlaceRow | None, tuple[Repair, ...]]]:
    """Endless: random repairs that the rules allow, whether they belong together or not."""
    while True:
        job, own = house(rng), settings(rng)
        offered = repairs(job, diagnose(job, own), own).repairs if job else ()
        if job and offered:
            for _ in range(10):
                chosen = rng.sample(offered, rng.randint(1, min(3, len(offered))))
                yield job, own, place_of(rng, own), tuple(chosen)


@pytest.mark.parametrize("seed", seeds(TESTS))
def test_a_set_in_figures_comes_to_what_its_build_up_comes_to(seed: int) -> None:
    rng = random.Random(seed)
    drawn_sets = sets(rng)
    for _ in range(SETS):
        job, own, place, chosen = next(drawn_sets)
        takeoffs = [take_off(one, job, own) for repair in chosen for one in (*repair.first, repair)]
        found = in_figures(together(takeoffs, job, own), job, own, place)
        price = price_scope(found.takeoffs, own, place, allowances=job.allowances)
        assert found.total == price.total, (seed, [r.id for r in chosen])
        assert found.total == sum((line.amount for line in price.lines), Decimal(0)) + price.tax
        assert found.tasks == price.tasks
        assert found.figures.crews == price.crews
        assert found.machines == price.machines
        assert sum(found.figures.costs.values()) == sum(cost.amount for cost in price.costs)
        assert found.days_without_drains == float(price.schedule.days_without_drains)
