"""What stands within reach of an opening is heard, wherever along the pipe it was noted and whichever end of the new piece."""

from dataclasses import replace
from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.model.job import Site
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.scopes.rules import facts_of, may
from estimator.works import works_of
from tests.made_up.stretch import demo_tables, mark
from tests.takeoff.houses import changed, house, maple_line

SIX_INCHES = 0.5
PIECE = Stretch(20.0, 24.0)


def rules_near(*marks) -> set[str]:
    job = house(changed(replace(maple_line(), findings=()), *marks), site=Site(located=True))
    line, tables = job.lines[0], demo_tables()
    works = works_of(Repair(id="r", method="yard spot", line=line.name, stretch=PIECE), job, tables)
    facts = facts_of(job, line, PIECE, (), tables, works=works)
    return {v.rule for v in may("yard spot", facts, tables)}


@settings(max_examples=40, deadline=None)
@given(at=st.integers(min_value=20, max_value=70).map(lambda n: n / 2), away=st.sampled_from([0.0, 1.0, 2.5]))
def test_a_mark_moved_six_inches_is_heard_as_long_as_it_is_within_reach(at: float, away: float) -> None:
    """A dig 3.5 ft deep over 19 to 25 ft: a footing 1 ft deep speaks up to the 45 degree line, a 12 in tree up to six
    trunk diameters, 6 ft, a gas line up to 2 ft."""
    pit = works_of(
        Repair(id="r", method="yard spot", line="main", stretch=PIECE),
        house(replace(maple_line(), findings=())),
        demo_tables(),
    ).openings[0]
    assert (pit.along, pit.offset_ft, pit.bottom_width_ft, pit.top_width_ft) == (Stretch(19, 25), 0.0, 2.4, 2.4)
    for where in (at, at + SIX_INCHES):
        past = max(0.0, 19 - where, where - 25)
        gap, over_the_line = hypot(past, max(0.0, away - 1.2)), past
        heard = rules_near(
            mark("footing", where, lengths=(("away", away), ("deep", 1.0))),
            mark("tree", where, size_in=12.0, lengths=(("away", away),)),
            mark("crossing", where, choice="gas"),
        )
        assert ("trees" in heard) is (gap <= 6.0)
        assert ("locate-utilities" in heard) is (over_the_line <= 2.0)
        assert ("footing-below-dig" in heard) is (gap < pit.safety_ft - 1.0)


@pytest.mark.parametrize("zone", ["street", "drive"])
def test_working_room_that_opens_another_ground_counts(zone: str) -> None:
    """The new piece ends at 24 ft and its pit at 25: what begins at 24.5 ft is opened."""
    heard = rules_near(mark(zone, 24.5, holds=True))
    assert ("street-work" in heard) is (zone == "street")
    assert ("slabs-are-not-undermined" in heard) is (zone == "drive")


@pytest.mark.parametrize(("near", "far"), [(8.0, 11.0), (8.0, 14.0), (8.0, 14.5), (8.0, 15.0), (8.0, 20.0)])
def test_a_longer_piece_through_the_floor_never_opens_less(near: float, far: float) -> None:
    from tests.takeoff.houses import pecan_house, pecan_line

    plain = replace(pecan_line(), marks=tuple(m for m in pecan_line().marks if m.word != "beam"))
    job, tables = pecan_house(plain), demo_tables()

    def floor_sf(to_ft: float) -> float:
        method = "slab spot" if to_ft - near <= tables.number("slab_spot_max_ft") else "break-through"
        repair = Repair(id="r", method=method, line="main", stretch=Stretch(near, to_ft))
        return works_of(repair, job, tables).floor_sf

    assert floor_sf(far + 1.0) >= floor_sf(far)
