"""Judgement on whole houses: what must be offered, what must not, what must be left. Judgement of the trade: common practice.

The houses are invented; prices are not judged here, only which ways come out and over which stretch.
"""

from pathlib import Path

import pytest

from estimator.diagnosis import diagnose
from estimator.fieldnotes.reading import read_job
from estimator.model.stretch import Stretch, joined
from estimator.model.work import all_repairs
from estimator.pipeline.costing import costing, place_of
from estimator.scopes.candidates import repairs
from estimator.scopes.choose import Choices, choose
from tests.scopes.conftest import repairs_only

HOUSES = Path(__file__).parents[1] / "jobs"
NOTHING_TO_REPAIR = ("clean-line", "gas-in-the-drain", "hidden-leak-near-not-sealed")
WITH_REPAIRS = sorted(p.parent.name for p in HOUSES.glob("*/job.toml") if p.parent.name not in NOTHING_TO_REPAIR)


@pytest.fixture
def chosen(tables):
    def make(name: str) -> Choices:
        reading = read_job(HOUSES / name / "job.toml")
        assert reading.job is not None, "\n".join(str(p) for p in reading.problems)
        diagnosis = diagnose(reading.job, tables)
        offers = repairs(reading.job, diagnosis, tables)
        place = place_of(reading.job, tables)
        return choose(reading.job, diagnosis, offers, costing(reading.job, tables, place), tables)

    return make


def ways(choices: Choices) -> list[list[str]]:
    """The methods of each option, the cheapest option first."""
    return [sorted({r.method for r in all_repairs(o.scope.repairs)}) for o in choices.options]


def against(choices: Choices, method: str) -> set[str]:
    return {v.rule for v in choices.verdicts if v.method == method}


def test_an_iron_main_with_its_bottom_gone_is_broken_out_tunnelled_or_lined_after_a_dig(chosen) -> None:
    """Grooved along more than half the run: the whole run, never three spots."""
    found = chosen("j01-hickory")
    assert sorted(ways(found)) == [["break-through"], ["reline", "tunnel"], ["tunnel"], ["visit"]]
    options = repairs_only(found.options)
    whole = [joined(r.stretch for r in all_repairs(o.scope.repairs)) for o in options]
    assert all(len(new) == 1 and new[0].covers(Stretch(4, 46)) for new in whole)
    assert [o.floor_sf > 0 for o in options] == [True, False, False]


def test_a_crawl_space_is_replaced_whole_and_clay_gets_pieces_or_the_whole_run(chosen) -> None:
    found = chosen("j02-walnut")
    assert ["sectional liner"] in ways(found)
    assert any(set(w) & {"trench", "burst"} for w in ways(found))
    assert any("crawl replace" in w for w in ways(found))


def test_a_rotten_kitchen_line_is_renewed_whole_or_led_around(chosen) -> None:
    """8 ft of rot and the pads take 12 of 14 ft, so there is no spot."""
    found = chosen("j05-alderwood")
    assert ways(found) == [["reroute"], ["break-through"], ["tunnel"]]


def test_one_big_offset_in_young_plastic_is_one_dig(chosen) -> None:
    found = chosen("j06-poplar")
    assert ways(found) == [["yard spot"]]
    assert against(found, "reline") == against(found, "sectional liner") == {"big-offset"}


def test_good_plastic_behind_clay_full_of_roots_stays(chosen) -> None:
    found = chosen("j09-sycamore")
    assert {m for way in ways(found) for m in way} <= {"trench", "burst", "reline", "sectional liner", "clean"}
    assert all(r.stretch.to_ft <= 60 for o in found.options for r in o.scope.repairs)
    assert any(set(way) & {"trench", "burst", "reline"} for way in ways(found))


def test_fiber_pipe_is_renewed_whole_and_never_lined_or_patched(chosen) -> None:
    found = chosen("j10-chestnut")
    assert {method for way in ways(found) for method in way} <= {"trench", "burst"}
    assert [o.old_pipe_left_ft for o in found.options] == [0.0] * len(found.options)
    assert "out-of-round-no-liner" in against(found, "reline")


def test_a_customer_who_wants_it_cleaned_is_sold_cleaning_and_no_more_than_spots(chosen) -> None:
    found = chosen("j12-cedar")
    assert ways(found)[0] == ["clean"]
    assert all(set(way) <= {"clean", "yard spot", "sectional liner"} for way in ways(found))


@pytest.mark.parametrize("name", WITH_REPAIRS)
def test_every_need_that_must_be_put_right_is_answered_by_every_option(chosen, name: str) -> None:
    found = chosen(name)
    repairs = repairs_only(found.options)
    assert 1 <= len(repairs) <= 4
    assert not found.unanswered
    assert all(not n.must for o in repairs for n in o.scope.leaves)


@pytest.mark.parametrize("name", WITH_REPAIRS)
def test_the_first_option_is_the_cheapest_and_proved(chosen, name: str) -> None:
    found = chosen(name)
    by_search = [o for o in repairs_only(found.options) if not o.by_hand]
    job = read_job(HOUSES / name / "job.toml").job
    keep = job is not None and job.wishes.keep_floors  # then what keeps them stands first, whatever it costs
    order = [(keep and any(t.works.cuts_floor for t in o.takeoffs), o.price.total) for o in by_search]
    assert order == sorted(order)
    assert by_search[0].scope.bound == 0
