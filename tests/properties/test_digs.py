"""A deeper or a longer dig never costs less, whatever it is; drawn anew on every run.

But for one load of spoil: soil packed back in takes up more than it came from, so a deeper hole may have less left over.
"""

import random
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

import pytest

from estimator.model.job import EdgeBeam, Job, Site
from estimator.model.line import Line, Pass
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.pricing.build import price_scope
from estimator.takeoff import take_off, take_off_job
from tests.properties.drawn_houses import seeds, tables
from tests.takeoff.houses import at, house

OUTSIDE = ("yard spot", "trench", "burst")
INSIDE = ("slab spot", "break-through", "tunnel")
STEP_FT = 0.25
LOAD = Decimal(300)  # 160 of the demo tables with contingency and margin, up to the price step


def job_of(rng: random.Random, method: str, depth_ft: float) -> Job:
    """A line of 60 ft, filmed whole, its depth read at its middle; the rest of the house by the dice."""
    inside = method in INSIDE
    pipe = rng.choice(("cast iron", "clay", "PVC"))
    ground = (
        (at("yard", -10.0, 0.0), at("slab", 0.0, 60.0)) if inside else (at("yard", 0.0, choice="lawn", holds=True),)
    )
    line = Line(
        name="main",
        size_in=rng.choice((3, 4, 6)),
        pipe=pipe,
        downstream=-1 if inside else 1,
        zero="slab edge" if inside else "access",
        marks=(*ground, at("depth", 30.0, depth_ft=depth_ft, to="centre", surface="slab" if inside else "lawn")),
        passes=(
            Pass(number=1, access="cleanout", flow="with flow", riser_ft=2.0, start_ft=60.0 if inside else 0.0,
                 sign=-1 if inside else 1, seen=Stretch(0, 60)),
        ),
    )  # fmt: skip
    site = Site(located=True, machine=rng.random() < 0.7, competent_person="R. Example", caving_signs=False)
    soil = rng.choice(("firm clay", "sand", "loam", None))
    made = house(line, site=site, soil=soil, slab_thickness_ft=1 / 3, slab_above_grade_ft=0.5)
    return replace(made, house=replace(made.house, edge_beam=EdgeBeam(0, 0)))


def price(job: Job, method: str, stretch: Stretch) -> Decimal:
    repair = Repair(id="r", method=method, line="main", stretch=stretch, entry="exit" if method == "tunnel" else "")
    taken = take_off(repair, job, tables())
    once = take_off_job(job, (taken,), tables(), 0.0)
    return price_scope((taken, once), tables(), tables().place("demo")).total


def less(asked: list[tuple[float, Decimal]]) -> list[tuple[float, Decimal]]:
    """Where one more step costs less, by more than a load of spoil is sold for."""
    return [b for a, b in pairwise(asked) if b[1] < a[1] - LOAD]


@pytest.mark.parametrize("seed", seeds(1))
@pytest.mark.parametrize("method", [*OUTSIDE, *INSIDE])
def test_a_deeper_dig_never_costs_less(method: str, seed: int) -> None:
    rng = random.Random(seed)
    low = rng.randint(1, 20)
    stretch = Stretch(low, low + rng.randint(2, 25))
    depths = [2.0 + STEP_FT * n for n in range(20)]
    asked = [(deep, price(job_of(random.Random(seed), method, deep), method, stretch)) for deep in depths]
    assert less(asked) == [], (seed, asked)


@pytest.mark.parametrize("seed", seeds(1))
@pytest.mark.parametrize("method", [*OUTSIDE, *INSIDE])
def test_a_longer_dig_never_costs_less(method: str, seed: int) -> None:
    rng = random.Random(seed)
    job = job_of(random.Random(seed), method, rng.randint(8, 26) / 4)
    low = rng.randint(1, 20)
    asked = [(float(n), price(job, method, Stretch(low, low + n))) for n in range(2, 34)]
    assert less(asked) == [], (seed, asked)
