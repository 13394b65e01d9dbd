"""A lining after a dig stops at the pipe just laid new, and goes on beyond it as a lining of its own. Common practice."""

import pytest

from estimator.model.stretch import Stretch
from estimator.model.work import all_repairs
from estimator.pipeline import run
from estimator.scopes.candidates import repairs

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
