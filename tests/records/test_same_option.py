"""The same option is known again when lengths, letters and prices have moved, and another one is not taken for it."""

from dataclasses import replace
from typing import Any

import pytest

from estimator.model.say import Feet, FromTable, Say
from estimator.model.stretch import Stretch
from estimator.model.work import Repair, Scope
from estimator.records.recorded_text import plain
from estimator.records.same_option import like, names, paired, recorded, same, work_of
from tests.made_up.quote import example_quote

LINING = Say.of("{title}", title=FromTable("Line the pipe from inside", "Revestir el tubo viejo por dentro"))


def option(
    *repairs: tuple[str, str, float, float], letter: str = "A", name: str = "", entry: str = "", long: float = 0
):
    """An option that does so: line, way, from and to in feet."""
    made = tuple(
        Repair(id=str(i), line=line, method=way, stretch=Stretch(start, to), entry=entry)
        for i, (line, way, start, to) in enumerate(repairs)
    )
    what = Say.of("{length} made new", length=Feet(long))
    title = Say.of("{title} ({what})", title=LINING, what=what) if long else LINING
    scope = Scope(repairs=made, needs=())
    return replace(example_quote().options[0], letter=letter, name=name, title=title, scope=scope)


def found(was: Any, *offered: Any) -> int | None:
    return same(work_of(was), [work_of(o) for o in offered])


def test_four_feet_more_in_its_title_and_another_letter_leave_it_the_same_option():
    was = option(("main", "reline", 0, 36.5), long=36.5)
    now = option(("main", "reline", 0, 40.5), long=40.5, letter="B")
    assert found(was, option(("main", "trench", 0, 40.5)), now) == 1
    assert names([work_of(was)], [work_of(now)]) == (["A → B: Line the pipe from inside"],) * 2


def test_another_way_or_another_line_is_another_option():
    was = option(("main", "reline", 0, 30))
    assert found(was, option(("main", "trench", 0, 30)), option(("yard", "reline", 0, 30))) is None


def test_a_way_more_on_a_line_that_was_not_in_it_is_the_same_and_a_way_more_on_one_that_was_is_not():
    was = option(("main", "reline", 0, 30))
    assert found(was, option(("main", "reline", 0, 30), ("yard", "yard spot", 5, 9))) == 0
    assert found(was, option(("main", "reline", 0, 30), ("main", "slab spot", 33, 36))) is None


def test_the_name_that_the_estimator_gave_stands_over_what_it_does():
    was = option(("main", "reline", 0, 30), name="Ours")
    assert found(was, option(("main", "reline", 0, 30)), option(("main", "trench", 0, 30), name="Ours")) == 1
    assert found(was, option(("main", "reline", 0, 30))) == 0


@pytest.mark.parametrize(("first", "nearest"), [(12.0, 0), (41.0, 1)])
def test_of_several_alike_the_nearest_stretch_is_the_same(first, nearest):
    near, far = option(("main", "slab spot", 10, 14)), option(("main", "slab spot", 40, 44))
    assert found(option(("main", "slab spot", first, first + 4)), near, far) == nearest


def test_of_two_quite_alike_the_letter_decides_and_a_tunnel_from_the_same_side_goes_before():
    spot = ("main", "tunnel", 10.0, 14.0)
    assert found(option(spot, letter="B"), option(spot, letter="A"), option(spot, letter="B")) == 1
    assert found(option(spot, entry="wall"), option(spot, entry="exit"), option(spot, entry="wall", letter="C")) == 1


def test_no_option_stands_in_two_pairs_and_a_third_quote_takes_the_names():
    old = [work_of(option(("main", "reline", 0, to), letter=letter)) for letter, to in (("A", 30.0), ("B", 40.0))]
    new = [work_of(option(("main", "reline", 0, 41), letter="A"))]
    assert paired(old, new) == {1: 0}
    before, after = names(old, new)
    assert after == [before[1]] and len({*before}) == 2
    assert like(new, list(zip(before, old, strict=True))) == [before[1]]


def test_a_record_is_read_as_the_option_it_was_made_from():
    for one in (option(("main", "reline", 0, 36.5), long=36.5), *example_quote().options):
        assert recorded(plain(one)) == work_of(one)
