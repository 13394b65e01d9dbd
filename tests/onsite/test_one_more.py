"""What one more locate or level saves: against the option's own prices for one more foot, found another way."""

from pathlib import Path

import pytest

from estimator.cli.priced_job import Priced, priced
from estimator.model.offer import Option
from estimator.onsite.elevations import elevations
from estimator.onsite.one_more import BESIDE_FT, OneMore, one_more, one_more_block
from estimator.onsite.positions import Errors
from estimator.pipeline.costing import place_of, with_job_settings
from estimator.pricing.margins import margins
from estimator.takeoff import take_off

JOBS = Path(__file__).parents[1] / "jobs"
EIGHTY = 1.2816
"""Standard errors on each side that hold eighty of a hundred of a normal distribution (tables of the normal distribution)."""


@pytest.fixture(scope="module", name="maple")
def _maple() -> Priced:
    return priced(JOBS / "maple" / "job.toml", None)


def option_with(run: Priced, method: str) -> Option:
    return next(o for o in run.quote.options if any(t.repair.method == method for t in o.takeoffs))


def found(run: Priced, method: str) -> tuple[OneMore, ...]:
    job = run.quote.job
    return one_more(option_with(run, method), job, with_job_settings(job, run.tables))


def margin(run: Priced, method: str, code: str) -> float:
    """Dollars a foot, as the quote reckons its own unit prices (rounded up to the firm's step)."""
    job, option = run.quote.job, option_with(run, method)
    own = with_job_settings(job, run.tables)
    each = margins(
        option.takeoffs, job, own, place_of(job, own), lambda repair, changed: take_off(repair, changed, own)
    )
    return float(each[code].price)


def method_of(run: Priced) -> str:
    return next(
        t.repair.method for o in run.quote.options for t in o.takeoffs if t.repair.method in ("trench", "yard spot")
    )


def test_the_best_comes_first_and_places_beside_each_other_count_once(maple: Priced) -> None:
    readings = found(maple, method_of(maple))
    assert readings
    assert [r.dollars for r in readings] == sorted((r.dollars for r in readings), reverse=True)
    for n, one in enumerate(readings):
        for other in readings[n + 1 :]:
            assert (one.level, one.line) != (other.level, other.line) or abs(
                one.station_ft - other.station_ft
            ) >= BESIDE_FT


def test_a_locate_saves_its_feet_at_the_price_of_a_foot(maple: Priced) -> None:
    """Two ways to one number: the price with less to allow, and the quote's own price of one more foot times the feet."""
    method = method_of(maple)
    best = next(r for r in found(maple, method) if not r.level)
    per_foot = margin(maple, method, "more-pipe-yard")
    assert best.dollars == pytest.approx(best.less_ft * per_foot, rel=0.25)


def test_a_level_saves_its_inches_at_the_price_of_a_foot_deeper(maple: Priced) -> None:
    method = method_of(maple)
    best = next(r for r in found(maple, method) if r.level)
    assert best.dollars == pytest.approx(best.less_ft * margin(maple, method, "deeper"), rel=0.3)


def test_what_a_locate_narrows_is_by_hand(maple: Priced) -> None:
    """Maple has no tapes: 1.28 times spot, tape and 4 % of the way from the access, against the same from the locate; at both ends."""
    job, method = maple.quote.job, method_of(maple)
    errors = Errors.of(with_job_settings(job, maple.tables))
    best = next(r for r in found(maple, method) if not r.level)
    repair = next(t for o in maple.quote.options for t in o.takeoffs if t.repair.method == method)
    along = [o.along for o in repair.works.openings if o.line == best.line]
    ends = (min(a.from_ft for a in along), max(a.to_ft for a in along))
    start = job.line(best.line).passes[0].start_ft

    def allowed(away_ft: float) -> float:
        return EIGHTY * (errors.spot_ft**2 + errors.tape_ft**2 + ((errors.counter + errors.bow) * away_ft) ** 2) ** 0.5

    by_hand = sum(allowed(abs(end - start)) - allowed(abs(end - best.station_ft)) for end in ends)
    assert best.less_ft == pytest.approx(by_hand, abs=0.05)


def test_what_a_level_narrows_is_by_hand(maple: Priced) -> None:
    """At the place itself a level leaves 1.28 times its own error; elsewhere more is left."""
    job, method = maple.quote.job, method_of(maple)
    own = with_job_settings(job, maple.tables)
    best = next(r for r in found(maple, method) if r.level)
    known = elevations(job, job.line(best.line), own)
    assert known is not None
    most = EIGHTY * max(h.sigma_ft for h in known.heights)
    assert 0 < best.less_ft <= most


def test_an_option_that_opens_nothing_has_no_next_reading(maple: Priced) -> None:
    for option in maple.quote.options:
        if not option.works.openings:
            assert one_more_block(option, maple.quote.job, with_job_settings(maple.quote.job, maple.tables)).empty


def test_a_cut_floor_is_told_in_square_feet() -> None:
    """Hickory is cut open through the floor and nobody taped it: the far end is what a locate narrows. The strip is 2 ft wide; the working room at its end keeps its size."""
    run = priced(JOBS / "j01-hickory" / "job.toml", None)
    option = next(o for o in run.quote.options if any(x.cuts_floor for x in o.works.openings))
    readings = one_more(option, run.quote.job, with_job_settings(run.quote.job, run.tables))
    best = next(r for r in readings if not r.level)
    width = min(x.top_width_ft or x.bottom_width_ft for x in option.works.openings if x.cuts_floor)
    assert best.floor_sf == pytest.approx(best.less_ft * width, rel=0.1)
    assert best.dollars > 0
