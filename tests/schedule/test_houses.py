"""Days of whole houses against what crews take (common practice, from memory)."""

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
"""Part of a repair's name, step and crew; or "wait", what for, "" for time that passes by itself."""
BY_HAND: dict[str, tuple[Link, ...]] = {
    "reline": (
        ("job", "site", "plumbing"), ("main", "look", "plumbing"), ("main", "clean", "plumbing"), ("main", "pipe", "lining"),
        ("kitchen", "pipe", "lining"), ("kitchen", "test", "plumbing"), ("wait", "inspector", ""), ("job", "inspect", "plumbing"),
        ("job", "film", "plumbing"),
    ),
    "tunnel": (
        ("job", "site", "plumbing"), ("tunnel", "dig", "tunnel"), ("last of tunnel", "pipe", "plumbing"), ("tunnel", "test", "plumbing"),
        ("wait", "inspector", ""), ("job", "inspect", "plumbing"), ("tunnel", "fill", "tunnel"), ("tunnel", "close", "plumbing"),
    ),
    "break-through": (
        ("job", "site", "plumbing"), ("reroute", "uncover", "excavation"), ("reroute", "dig", "excavation"),
        ("reroute", "pipe", "plumbing"), ("break-through", "pipe", "plumbing"), ("reroute", "join", "plumbing"),
        ("reroute", "test", "plumbing"), ("break-through", "test", "plumbing"), ("yard", "pipe", "plumbing"),
        ("wait", "inspector", ""), ("job", "inspect", "plumbing"), ("job", "film", "plumbing"), ("reroute", "close", "plumbing"),
        ("yard", "close", "plumbing"), ("break-through", "close", "plumbing"),
    ),
}  # fmt: skip
"""The longest chain of each of the demo's three kinds of option, laid out on paper: what must follow what, and who is busy."""


def walked(found: Option, links: tuple[Link, ...]) -> float:
    """The hour at which the chain ends: each crew works from its set-up to the eighth hour and goes on the next morning."""
    schedule, at = found.schedule, 0.0
    set_ups = {t.crew: min(u.start % 8 for u in schedule.tasks if u.crew == t.crew) for t in schedule.tasks}
    set_up = min(set_ups.values())
    for name, step, crew in links:
        if name == "wait":
            at += next(w.hours for w in schedule.waits if w.id == step)
            continue
        whose = name.removeprefix("last of ")
        mine = [t for t in schedule.tasks if whose in t.repair and t.step == step and t.crew == crew]
        hours = sum(t.crew_hours / t.gangs for t in (mine if whose == name else mine[-1:]))
        assert hours > 0, (name, step, crew)
        at = max(at, at // 8 * 8 + set_up)
        while hours > (room := (at // 8 + 1) * 8 - at) + 1e-9:
            hours, at = hours - room, (at // 8 + 1) * 8 + set_up
        at += hours
    return at


WHOLE_HOUSES: dict[str, tuple[Link, ...]] = {
    "long-tunnel": BY_HAND["tunnel"],
    "whole-house": (
        ("job", "site", "plumbing"), ("main", "open", "labor"), ("kitchen", "open", "labor"), ("main", "dig", "labor"),
        ("last of main", "pipe", "plumbing"), ("kitchen", "pipe", "plumbing"), ("main", "test", "plumbing"),
        ("kitchen", "test", "plumbing"), ("wait", "inspector", ""), ("job", "inspect", "plumbing"), ("main", "fill", "labor"),
        ("main", "close", "labor"), ("kitchen", "fill", "labor"), ("kitchen", "close", "labor"),
    ),
}  # fmt: skip


@pytest.mark.parametrize(("house", "days", "off"), [("long-tunnel", (8, 11), (3, 5)), ("whole-house", (6, 9), (3, 5))])
def test_whole_houses_by_hand(house: str, days: tuple[int, int], off: tuple[int, int]) -> None:
    """Ranges are what crews take, from memory; the ends are laid out on paper, with the hours of November 2026.

    42 ft of tunnel past two baths, two crews from two pits: on site 1.80 h, 61.08 crew-hours of digging by two to 34.88; the
    last of the pipe 5.73 to 41.24, tested 44.07, inspected from 46.07 to 47.24; filled by two, 23.10, to 60.05; lawn 61.39.
    42 ft of main and 20 of the kitchen's branch through the floor: two pairs of laborers open and dig 52.6 crew-hours from
    1.99 to 30.76; last of the main 35.08, kitchen 39.31, two tests 45.80, inspected 49.79; filled and closed by two, 22.56, to
    61.90. Eight days both.
    """
    found = option(Path(__file__).parent / house / "job.toml", "tunnel" if house == "long-tunnel" else "break-through")
    assert days[0] <= found.days_on_site <= days[1]
    assert off[0] <= found.days_without_drains <= off[1]
    assert found.schedule.end == pytest.approx(walked(found, WHOLE_HOUSES[house]), abs=0.02)
    by_hand = {"long-tunnel": 61.39, "whole-house": 61.90}
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
    filled 12.26 h to 62.70, beds 63.36: eight days. Floor: the plumbers are busy all through, to 43.08 on day 6.
    """
    found = option(DEMO, method)
    assert found.schedule.end == pytest.approx(walked(found, BY_HAND[method]), abs=0.02)
