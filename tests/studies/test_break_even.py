"""Where the choice between two ways turns, checked by pricing both there."""

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.model.deeper_line import deeper
from estimator.studies.break_even import break_even, turnings
from estimator.studies.compare import compare
from estimator.studies.priced import with_floor


@pytest.fixture
def pair(house, tables):
    def make(job, *methods: str):
        columns = {c.method: c for c in compare(job, tables).open}
        return [columns[m].option.scope.repairs[0] for m in methods]

    return make


def along(found, word: str):
    return next(a for a in found.along if word in str(a.axis.name))


def test_at_a_turn_both_ways_cost_the_same_or_one_of_them_jumps(house, tables, pair) -> None:
    job = house("pecan")
    tunnel, floor = pair(job, "tunnel", "break-through")
    turned = {one.axis.name: one.at for one in turnings(tunnel, floor, job, tables)}
    for axis in break_even(tunnel, floor, job, tables).along:
        at = turned[axis.axis.name]
        for turn in axis.turns:
            low = [at(r, turn.at - 0.01) for r in (tunnel, floor)]
            high = [at(r, turn.at + 0.01) for r in (tunnel, floor)]
            below = [with_floor((r,), j, tables) for r, j in low]
            above = [with_floor((r,), j, tables) for r, j in high]
            assert (below[0] - below[1]) * (above[0] - above[1]) < 0
            assert turn.below != turn.above


def test_a_dear_enough_floor_turns_the_choice_to_the_tunnel(house, tables, pair) -> None:
    """The turn lies where the difference is the floor's square feet times its price [computed]."""
    job = house("pecan")
    tunnel, floor = pair(job, "tunnel", "break-through")
    dear = tables.with_settings({"floor_price_high": "300"})
    (turn,) = along(break_even(tunnel, floor, job, dear), "floor").turns
    more = with_floor((tunnel,), job, dear) - with_floor((floor,), job, dear)
    one = replace(job, house=replace(job.house, floor_price_sf=Decimal(1)))
    feet = with_floor((floor,), one, dear) - with_floor((floor,), job, dear)
    assert turn.at == pytest.approx(more / feet, abs=0.02)
    assert (turn.below, turn.above) == ("break-through", "tunnel")
    assert turn.prices_above[1] > turn.prices_below[1]


def test_the_real_prices_where_the_job_stands_are_those_of_the_comparison(house, tables, pair) -> None:
    job = house("pecan")
    tunnel, floor = pair(job, "tunnel", "break-through")
    length = along(break_even(tunnel, floor, job, tables), "length")
    assert length.axis.now == 29
    at = next(one.at for one in turnings(tunnel, floor, job, tables) if one.axis.name == length.axis.name)
    assert at(tunnel, 29)[0].stretch == tunnel.stretch
    assert at(tunnel, 10)[0].stretch.length_ft == 10


def test_an_axis_that_moves_neither_price_is_left_out(house, tables, pair) -> None:
    job = house("maple")
    spot, burst = pair(job, "yard spot", "burst")
    names = [str(a.axis.name) for a in break_even(spot, burst, job, tables).along]
    assert names == ["length of pipe", "depth of the pipe"]


def test_deeper_moves_every_depth_of_that_line_and_no_other_mark(house) -> None:
    job = house("pecan")
    before, after = job.lines[0].marks, deeper(job, "main", 1.5).lines[0].marks
    moved = [(a.depth_ft, b.depth_ft) for a, b in zip(before, after, strict=True) if a.depth_ft is not None]
    assert moved and all(b == a + 1.5 for a, b in moved)
    assert [m for m in before if m.depth_ft is None] == [m for m in after if m.depth_ft is None]
