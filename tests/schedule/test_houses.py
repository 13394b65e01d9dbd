"""Days of whole houses against what crews take (common practice, from memory)."""

import math
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
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


Link = tuple[str, str, str]
"""Part of a repair's name ("last of": the last length of it), step and crew; or "wait", what for, "" for time that passes by itself."""
TESTED_AND_SEEN: tuple[Link, ...] = (
    ("job", "test", "plumbing"), ("wait", "inspector", ""), ("job", "inspect", "plumbing"),
)  # fmt: skip
"""Once for all new pipe, however many lines it lies on."""
BY_HAND: dict[str, tuple[Link, ...]] = {
    "reline": (
        ("job", "site", "plumbing"), ("main", "look", "plumbing"), ("main", "clean", "plumbing"), ("main", "pipe", "lining"),
        ("kitchen", "pipe", "lining"), ("kitchen", "test", "plumbing"), ("wait", "inspector", ""), ("job", "inspect", "plumbing"),
        ("job", "film", "plumbing"),
    ),
    "tunnel": (
        ("job", "site", "plumbing"), ("tunnel", "dig", "tunnel"), ("last of tunnel", "pipe", "plumbing"), ("job", "test", "plumbing"),
        ("wait", "inspector", ""), ("job", "inspect", "plumbing"), ("tunnel", "fill", "tunnel"), ("tunnel", "close", "plumbing"),
    ),
    "break-through": (
        ("job", "site", "plumbing"), ("main", "open", "labor"), ("first of main", "dig", "labor"), ("kitchen", "open", "labor"),
        ("last of main", "dig", "labor"), ("last of main", "pipe", "plumbing"), ("kitchen", "pipe", "plumbing"),
        *TESTED_AND_SEEN, ("main", "fill", "labor"),
        ("main", "close", "labor"), ("kitchen", "fill", "labor"), ("kitchen", "close", "labor"),
    ),
}  # fmt: skip
"""The longest chain of each of the demo's three kinds of option, laid out on paper: what must follow what, and who is busy."""


def walked(found: Option, links: tuple[Link, ...]) -> float:
    """The hour at which the chain ends: each crew works from its set-up to the eighth hour and goes on the next morning."""
    schedule, at = found.schedule, 0.0
    set_ups = {c.crew: c.setup_hours / math.ceil(c.days) for c in found.price.crews}
    for name, step, crew in links:
        if name == "wait":
            at += next(w.hours for w in schedule.waits if w.id == step)
            continue
        part, whose = name.rsplit(" of ", 1) if " of " in name else ("", name)
        mine = [t for t in schedule.tasks if whose in t.repair and t.step == step and t.crew == crew]
        mine = {"": mine, "first": mine[:1], "last": mine[-1:]}[part]
        hours = sum(t.crew_hours / t.gangs for t in mine)
        assert hours > 0, (name, step, crew)
        set_up = set_ups[crew]
        at = max(at, at // 8 * 8 + set_up)
        while hours > (room := (at // 8 + 1) * 8 - at) + 1e-9:
            hours, at = hours - room, (at // 8 + 1) * 8 + set_up
        at += hours
    return at


WHOLE_HOUSES: dict[str, tuple[Link, ...]] = {
    "long-tunnel": BY_HAND["tunnel"],
    "whole-house": (
        ("job", "site", "plumbing"), ("main", "open", "labor"), ("kitchen", "open", "labor"), ("main", "dig", "labor"),
        ("kitchen", "dig", "labor"), ("last of kitchen", "pipe", "plumbing"), *TESTED_AND_SEEN, ("main", "fill", "labor"),
        ("main", "close", "labor"), ("kitchen", "fill", "labor"), ("kitchen", "close", "labor"),
    ),
    "two-branches": (
        ("job", "site", "plumbing"), ("main", "open", "labor"), ("kitchen", "open", "labor"), ("laundry", "open", "labor"),
        ("main", "dig", "labor"), ("kitchen", "dig", "labor"), ("laundry", "dig", "labor"), ("last of laundry", "pipe", "plumbing"),
        *TESTED_AND_SEEN, ("main", "fill", "labor"), ("main", "close", "labor"), ("kitchen", "fill", "labor"),
        ("laundry", "fill", "labor"), ("kitchen", "close", "labor"), ("laundry", "close", "labor"),
    ),
}  # fmt: skip


@pytest.mark.parametrize(
    ("house", "days", "off"),
    [("long-tunnel", (8, 11), (3, 5)), ("whole-house", (6, 9), (3, 5)), ("two-branches", (6, 9), (3, 5))],
)
def test_whole_houses_by_hand(house: str, days: tuple[int, int], off: tuple[int, int]) -> None:
    """Ranges are what crews take, from memory; the ends are laid out on paper, with the hours of November 2026.

    42 ft of tunnel past two baths, two crews from two pits: on site 1.80 h, 61.08 crew-hours of digging by two to 34.88; the
    last of the pipe 5.53 to 41.04; a toilet off and the test, 3.42, to 44.46; inspected from 46.46 to 47.63; filled by two,
    23.10, to 60.44; lawn 1.33 to 61.78. Eight days.
    42 ft of main and 20 of the kitchen's branch through the floor: two pairs of laborers open 19.66 + 10.53 and dig 21.05 +
    7.90 crew-hours from 1.99 to 34.84, 7.18 h a day; the last of the kitchen's pipe 1.53 to 36.37; one test for both lines,
    3.42, to 39.79; inspected to 42.96; filled and closed by two, 14.83 + 6.76, to 54.58. Seven days.
    20 ft of the laundry's branch beside: 10.53 + 7.90 crew-hours more by two, to 44.88; the last pipe to 46.41, still one test
    to 50.65; inspected to 53.82; filled and closed by two, 14.83 + 2 x 6.76, to 69.64. Nine days for 82 ft.
    """
    found = option(Path(__file__).parent / house / "job.toml", "tunnel" if house == "long-tunnel" else "break-through")
    assert days[0] <= found.days_on_site <= days[1]
    assert off[0] <= found.days_without_drains <= off[1]
    assert found.schedule.end == pytest.approx(walked(found, WHOLE_HOUSES[house]), abs=0.02)
    by_hand = {"long-tunnel": 61.78, "whole-house": 54.58, "two-branches": 69.64}
    assert found.schedule.end == pytest.approx(by_hand[house], abs=0.03)


def test_one_face_has_room_for_one_tunnel_crew() -> None:
    """A tunnel from one pit is dug by one crew however many the firm has; from two pits by two."""
    for job, pits in ((Path(__file__).parent / "long-tunnel" / "job.toml", 2), (DEMO, 1)):
        found = option(job, "tunnel")
        assert [t.value("pits") for t in found.takeoffs if t.works.tunnels] == [pits]
        assert {t.gangs for t in found.schedule.tasks if t.crew == "tunnel"} == {pits}


@pytest.mark.parametrize("method", BY_HAND)
def test_the_demos_three_kinds_of_option_by_hand(method: str) -> None:
    """On paper, with the hours of November 2026.

    Lining: on site 1.80 h, filmed 2.50, cleaned 5.11; main lined 8.49 h, to 14.23 the second day; kitchen 6.27 h, to 21.13 the
    third; tested 23.97; inspector from 25.97, done 27.13; film to 29.23, the fourth day.
    Tunnel: dug 32.86 h from 1.80 to 37.19 on day 5; the last of the pipe 43.33, tested 46.17, inspected 49.80 on day 7;
    filled 12.26 h to 62.70, beds 63.36: eight days. Floor: two pairs of laborers open 12.46 + 7.84 and dig 11.88 crew-hours to
    19.73; the last of the main 3.05 to 22.78, the kitchen's 2.30 to 25.91; one test 2.83 to 28.74, inspected to 31.91; filled and
    closed by two, 7.72 + 4.70, to 38.93 on day 5.
    """
    found = option(DEMO, method)
    assert found.schedule.end == pytest.approx(walked(found, BY_HAND[method]), abs=0.02)
