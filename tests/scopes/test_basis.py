"""What a price rests on, and when it is firm: each end of a tolerance measured and priced as a whole."""

from dataclasses import replace

import pytest

from estimator.model.basis import Fact
from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.wanted import Override
from estimator.pipeline import run
from tests.made_up.stretch import demo_tables
from tests.scopes.conftest import NotesOf

DEEP = "pass front cleanout to street, with flow, surface\n0 cleanout, yard lawn\n2-60 joints every 3ft\n0-60 clear 60ft\n0-60 {depth}\n26 offset 30% down\n28 crack broken, soil seen\n60 end city main, stop reached main"
SOIL, RULE = 'soil = "firm clay"\n', "price-holds-in-its-tolerance"


def options(job: Job) -> tuple[Option, ...]:
    quote = run(job, demo_tables(), job.day).quote
    assert quote is not None
    return quote.options


def dig(job: Job) -> Option:
    return next(o for o in options(job) if o.works.renewed and o.works.open_digs)


def sloped(job: Job) -> Job:
    """Its sides are laid back: the room is there, and the firm wants it so."""
    return replace(job, settings=(*job.settings, ("protection_wanted", "sloped")))


def fact(option: Option, subject: str) -> Fact:
    return next(f for f in option.basis.facts if f.subject == subject)


def test_a_price_names_what_was_seen_measured_and_told(notes: NotesOf) -> None:
    basis = dig(notes(DEEP.format(depth="depth 3ft from lawn"))).basis
    assert {f.subject: f.how for f in basis.facts} == {
        "pipe": "seen",
        "run-out": "seen",
        "depth": "measured",
        "soil": "told",
    }


def test_a_depth_that_may_raise_the_price_past_the_limit_is_no_firm_price_and_its_hole_can_be_signed(
    notes: NotesOf,
) -> None:
    """A pit 6 ft deep with sloped sides: its earth grows with the cube of the depth, so that 7 in move the whole price."""
    job = sloped(notes(DEEP.format(depth="depth 6ft from lawn")))
    deep = dig(job)
    assert deep.basis.rises_percent > 10 and not deep.fixed
    assert any("exact depth" in str(why) for why in deep.not_fixed_because)
    visit = options(job)[0]
    assert visit.fixed and "visit pothole" in visit.scope.repairs[0].facts
    assert visit.price.total < deep.price.total / 5


def test_the_same_pit_is_firm_once_the_pipe_was_uncovered(notes: NotesOf) -> None:
    """A hole deeper than by hand counts where the firm digs it by vacuum: its own setting says so."""
    seen = sloped(notes(DEEP.format(depth="pothole 6ft from lawn")))
    firm = dig(replace(seen, settings=(*seen.settings, ("pothole_max_ft", "8"))))
    assert fact(firm, "depth").how == "seen" and firm.basis.rises == 0 and firm.fixed


def test_a_price_that_can_only_come_down_is_firm(notes: NotesOf) -> None:
    """Just over 5 ft with the tolerance the sides are held already (29 CFR 1926.652(a)(1)); half a foot less needs no box."""
    near = dig(notes(DEEP.format(depth="depth 4ft from lawn")))
    assert near.basis.falls > near.basis.rises and near.basis.rises_percent <= 10 and near.fixed


def test_a_limit_of_the_firm_decides(notes: NotesOf) -> None:
    job = sloped(notes(DEEP.format(depth="depth 6ft from lawn")))
    assert dig(replace(job, settings=(*job.settings, ("firm_swing_percent", "40")))).fixed


def test_the_owner_may_overrule_it_with_a_reason(notes: NotesOf) -> None:
    job = sloped(notes(DEEP.format(depth="depth 6ft from lawn")))
    word = Override(rule=RULE, reason="we dug next door in May and know the depth")
    assert dig(replace(job, overrides=(word,))).fixed


def test_ground_nobody_named_and_a_floor_nobody_measured_are_assumed_and_move_the_price(notes: NotesOf) -> None:
    log = "pass hall toilet to street, with flow, surface\n0 slab tile\n0-30 loc 28in under tile\n12-15 channel gone, soil seen\n30 yard lawn\n45 stop reached main"
    job = notes(log, pipe="cast iron")
    unsure = replace(job, house=replace(job.house, soil=None, slab_thickness_ft=None))
    floor = next(o for o in options(unsure) if o.works.cuts_floor)
    assert fact(floor, "soil").how == fact(floor, "slab").how == "assumed"
    assert fact(floor, "slab").rises > 0
    told = next(o for o in options(job) if o.works.cuts_floor)
    assert fact(told, "soil").how == fact(told, "slab").how == "told" and fact(told, "slab").rises == 0


@pytest.mark.parametrize("depth", ["depth 3ft from lawn", "depth 5ft 6in from lawn"])
def test_a_repair_from_inside_rests_on_no_depth(notes: NotesOf, depth: str) -> None:
    inside = [o for o in options(notes(DEEP.format(depth=depth).replace("26 offset 30% down\n", ""))) if o.works.lined]
    assert inside and not any(f.subject == "depth" for o in inside for f in o.basis.facts)


KITCHEN = """
[[line]]
name = "kitchen"
size = "2 in"
pipe = "cast iron"
zero = "access"
{joins}
log = '''
pass kitchen cleanout to main, with flow, surface
0 slab tile, depth 20in from tile
3-22 channel gone, soil seen
24 end main line
'''
"""
MAIN = """
pass front cleanout to house, after descale, surface
0 cleanout, yard lawn
4 slab tile, depth 2.5ft from tile
20 branch 2in right live proven called kitchen
30 depth 2.7ft from tile
42 end closet bend
"""
INDOORS = 'floor_finish = "tile"\nwater_lines = "overhead"\nin_slab = "nothing"\nedge_beam = "24in deep 12in wide"'


@pytest.mark.parametrize(
    ("joins", "known"), [('joins = { line = "main", at = 20 }', True), ('ends = "main line"', False)]
)
def test_a_branch_renewed_to_its_wye_is_firm_only_where_its_wye_was_noted(
    notes: NotesOf, joins: str, known: bool
) -> None:
    """The log says that it ends at the main line; where it does moves nothing else: the same wye is counted and priced."""
    job = notes(MAIN, built="1962", house=INDOORS, more=KITCHEN.format(joins=joins))
    renewed = next(o for o in options(job) if o.floor_sf)
    assert [x.new_wye for x in renewed.works.laid] == [True]
    assert fact(renewed, "join").how == ("told" if known else "assumed")
    assert renewed.fixed is known
    assert known or next(o for o in options(job) if o.letter == renewed.firm_after).fixed
