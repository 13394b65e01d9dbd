"""Days of whole houses against what crews take (common practice, from memory)."""

from decimal import Decimal
from pathlib import Path

import pytest

from estimator.cli.way import priced
from estimator.model.offer import Option
from estimator.schedule import dated

DEMO = Path(__file__).parents[2] / "estimator" / "demo" / "job.toml"
JOBS = Path(__file__).parents[1] / "jobs"


def option(job: Path, method: str) -> Option:
    options = priced(job, None).quote.options
    return next(o for o in options if any(r.method == method for r in o.scope.repairs))


@pytest.mark.parametrize(("method", "days", "off"), [("tunnel", (6, 11), (1, 5)), ("break-through", (4, 9), (1, 5))])
def test_the_demos_options_take_the_days_that_crews_take(
    method: str, days: tuple[int, int], off: tuple[int, int]
) -> None:
    """A tunnel of some 22 ft with a way round and a yard dig; the same through the floor."""
    found = option(DEMO, method)
    assert days[0] <= found.days_on_site <= days[1]
    assert off[0] <= found.days_without_drains <= off[1]


def test_every_number_of_days_is_read_from_the_schedule() -> None:
    for one in priced(DEMO, None).quote.options:
        assert one.schedule is not None
        assert one.days_on_site == one.schedule.days_on_site
        assert one.days_without_drains == one.schedule.days_without_drains
        assert sum((s.length for s in one.schedule.calendar), Decimal(0)) == one.days_on_site
        off = sum((s.length for s in one.schedule.calendar if s.no_drains), Decimal(0))
        assert off == one.days_without_drains


def test_working_days_leave_out_weekends_and_holidays() -> None:
    """November 25, 2026 is a Wednesday; the 26th is Thanksgiving (calendar): the second day is Friday the 27th, the third Monday."""
    from datetime import date

    found = dated(option(DEMO, "tunnel").schedule, date(2026, 11, 25))
    assert found.days[:3] == (date(2026, 11, 25), date(2026, 11, 27), date(2026, 11, 30))
