"""A lining after a dig stops at the pipe just laid new, and goes on beyond it as a lining of its own. Common practice."""

import pytest

from estimator.model.stretch import Stretch
from estimator.model.work import all_repairs
from estimator.pipeline import run
from estimator.pipeline.costing import in_figures, place_of
from estimator.scopes.candidates import repairs
from estimator.takeoff import take_off

GONE = """
pass front cleanout to street, surface
0      yard lawn, cleanout
0-60   depth 3ft from lawn
10     crack open
26-30  channel gone
{more}
60     cleanout
60     stop end
"""


@pytest.fixture
def lined(notes, needs_of, tables):
    """Of every lining that digs first: its pieces of lining, and its digs."""

    def make(more: str) -> list[tuple[set[tuple[float, float]], list[Stretch]]]:
        job = notes(GONE.format(more=more), pipe="cast iron")
        found = [r for r in repairs(job, needs_of(job), tables).repairs if r.method == "reline" and r.first]
        parts = [all_repairs((r,)) for r in found]
        return [
            (
                {(p.stretch.from_ft, p.stretch.to_ft) for p in some if p.method == "reline"},
                [p.stretch for p in some if p.method != "reline"],
            )
            for some in parts
        ]

    return make


def test_the_lining_stops_where_the_new_piece_begins(lined) -> None:
    """Iron is cut back 2 ft at each end, so the new piece is 24 to 32 ft [computed]."""
    found = lined("")
    assert ({(0.0, 24.0)}, [Stretch(24.0, 32.0)]) in found


def test_the_lining_goes_on_beyond_the_new_piece(lined) -> None:
    found = lined("50 crack open")
    assert any(pieces >= {(0.0, 24.0)} and len(pieces) == 2 for pieces, _ in found)
    assert not any(dig.overlaps(Stretch(*piece)) for pieces, digs in found for dig in digs for piece in pieces)


def test_both_linings_are_measured_and_nothing_is_counted_twice(notes, tables) -> None:
    job = notes(GONE.format(more="50 crack open"), pipe="cast iron")
    for option in run(job, tables, job.day).quote.options:
        for repair in option.scope.repairs:
            parts = [r for r in all_repairs((repair,)) if r.method in ("reline", "yard spot")]
            takeoffs = {t.repair.id: t for t in option.takeoffs}
            for part in parts:
                assert part.id in takeoffs
            new = [p.stretch for p in parts]
            assert not any(a.overlaps(b) for i, a in enumerate(new) for b in new[i + 1 :])


NEAR_THE_CLEANOUT = """
pass front cleanout to street, surface
0      yard lawn, cleanout
0-60   depth 3ft from lawn
3      crack open
{gone} channel gone
40     crack open
60     cleanout
60     stop end
"""


def near(notes, needs_of, tables, gone: str):
    job = notes(NEAR_THE_CLEANOUT.format(gone=gone), pipe="cast iron")
    found = [r for r in repairs(job, needs_of(job), tables).repairs if r.method == "reline" and r.first]
    return {
        (
            tuple(sorted((p.stretch.from_ft, p.stretch.to_ft) for p in all_repairs((r,)) if p.method == "reline")),
            tuple((p.method, p.stretch.from_ft, p.stretch.to_ft) for p in all_repairs((r,)) if p.method != "reline"),
        )
        for r in found
    }


def test_a_dig_that_leaves_a_few_feet_to_line_also_goes_on_to_the_cleanout(notes, needs_of, tables) -> None:
    """The new piece is 6 to 14 ft [computed: 2 ft past 8 to 12]; the 6 ft to the cleanout are lined, or dug for too."""
    found = near(notes, needs_of, tables, "8-12")
    spot = {dig for linings, (dig, *_) in found if len(linings) == 2}
    strip = {dig for linings, (dig, *_) in found if len(linings) == 1}
    assert any(method == "yard spot" for method, _, _ in spot)
    assert ("trench", 0.0, 14.0) in strip


@pytest.mark.parametrize(("gone", "both"), [("15-19", True), ("15.2-19.2", False)], ids=["the limit", "a step more"])
def test_a_longer_rest_is_lined(notes, needs_of, tables, gone: str, both: bool) -> None:
    """dig_on_max_ft is 12: the new piece begins 2 ft before the gap, the lining a foot past the cleanout."""
    found = near(notes, needs_of, tables, gone)
    assert any(dig[0][0] == "trench" and dig[0][1] <= 1.0 for _, dig in found) == both


def test_the_cheaper_of_spot_and_strip_is_offered(notes, tables) -> None:
    """Each is priced by hand-picked repairs beside what the search offers first of that kind."""
    job = notes(NEAR_THE_CLEANOUT.format(gone="8-12"), pipe="cast iron")
    done = run(job, tables, job.day)
    both = [r for r in done.offers.repairs if r.method == "reline" and r.first and len(r.answers) > 1]
    place = place_of(job, tables)
    prices = [
        in_figures([take_off(one, job, tables) for one in all_repairs((r,))], job, tables, place).total for r in both
    ]
    offered = [o.price.total for o in done.quote.options if any(r.method == "reline" for r in o.scope.repairs)]
    assert len(both) > 1
    assert min(offered) <= min(prices)
