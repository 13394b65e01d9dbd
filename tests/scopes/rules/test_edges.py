"""Each limit at its edge and one step off. Limits are the demo settings or published numbers; the edges are common practice."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from estimator.model.edge_beam import KnownEdge
from estimator.model.job import EdgeBeam
from estimator.model.opening import Opening
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.works import Works
from estimator.scopes.rules import BY_ID, facts_of
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.verdicts import each
from tests.diagnosis.making import job, line
from tests.made_up.stretch import beam, branch, demo_tables, limits, mark, measured, need, reroute, stretch

Facts = Callable[[float], StretchFacts]
SLAB = {"zones": ("slab",)}


def long(feet: float, method: str, **more: object) -> StretchFacts:
    return stretch(method=method, stretch=Stretch(0.0, feet), **more)


def crossing(what: str, inches: float) -> StretchFacts:
    return stretch(method="burst", marks=(mark("crossing", choice=what, lengths=(("above", inches / 12),)),))


def built(year: float, method: str, **more: object) -> StretchFacts:
    return stretch(method=method, zones=("slab",), house={"built": int(year), **more})


def painted(square_ft: float) -> StretchFacts:
    return stretch(method="reroute", house={"built": 1977}, site={"paint_sqft": square_ft})


def tree(away_ft: float, trunk_in: float = 12.0) -> StretchFacts:
    return stretch(method="trench", marks=(mark("tree", size_in=trunk_in, lengths=(("away", away_ft),)),))


def turned(degrees: float, method: str) -> StretchFacts:
    return stretch(method=method, marks=(mark("bend", degrees=degrees),))


def way(fall_in: float) -> StretchFacts:
    return stretch(method="reroute", reroutes=(reroute(yard_ft=40.0, fall_in=fall_in, size_in=4.0),))


def sink_at(feet: float) -> StretchFacts:
    return stretch(method="reroute", reroutes=(reroute(wall_ft=feet, serves=(("kitchen sink", 1),)),))


def old_slab(year: float) -> StretchFacts:
    return built(year, "break-through", floor="slab, tendons unknown")


BEFORE: list[tuple[str, str, float, float, Facts]] = [
    # rule, the effect that begins, the last value without it, the first with it, the facts
    ("big-offset", "caution", 10, 11, lambda v: stretch(f"offset {v}%", needs=(need("offset"), need("crack", at=Stretch(20, 20))))),
    ("big-offset", "requires first", 25, 26, lambda v: stretch(f"offset {v}%", needs=(need("offset"), need("crack", at=Stretch(20, 20))))),
    ("big-offset", "blocks", 25, 26, lambda v: stretch(f"offset {v}%", method="sectional liner")),
    ("lining-keeps-the-grade", "does not fix", 15, 16, lambda v: stretch(f"sag {v}%")),
    ("out-of-round-no-liner", "blocks", 10, 11, lambda v: stretch(f"oval {v}%")),
    ("bottom-gone-dig-first", "requires first", 33, 34, lambda v: stretch(f"channel gone {v}%")),
    ("bottom-gone-dig-first", "requires first", 3, 3.1, lambda v: stretch(f"0-{v} hole soil seen")),
    ("half-gone-no-liner", "blocks", 50, 51, lambda v: stretch(f"channel gone {v}%")),
    ("branches-are-opened-again", "adds work", 1.9, 2.0, lambda v: stretch(branches=(branch(v),))),
    ("tight-bends", "blocks", 45, 46, lambda v: turned(v, "burst")),
    ("tight-bends", "blocks", 45, 46, lambda v: turned(v, "sectional liner")),
    ("tight-bends", "requires first", 45, 46, lambda v: turned(v, "reline")),
    ("long-liner", "caution", 120, 120.1, lambda v: long(v, "reline")),
    ("long-liner", "caution", 60, 60.1, lambda v: long(v, "reline", sizes_in=(3.0,))),
    ("length-fits-the-method", "blocks", 10, 10.1, lambda v: long(v, "yard spot")),
    ("length-fits-the-method", "blocks", 6, 6.1, lambda v: long(v, "slab spot")),
    ("length-fits-the-method", "blocks", 10, 10.1, lambda v: long(v, "sectional liner")),
    ("length-fits-the-method", "blocks", 150, 150.1, lambda v: long(v, "burst")),
    ("length-fits-the-method", "blocks", 300, 300.1, lambda v: long(v, "clean")),
    ("bore-fits-the-method", "blocks", 6, 6.1, lambda v: stretch(method="burst", sizes_in=(v,))),
    ("bore-fits-the-method", "blocks", 4, 3.9, lambda v: stretch(method="burst", sizes_in=(v,))),
    ("bore-fits-the-method", "blocks", 3, 2.9, lambda v: stretch(method="sectional liner", sizes_in=(v,))),
    ("bore-fits-the-method", "requires first", 3.1, 3.0, lambda v: stretch(method="reline", sizes_in=(v,))),
    ("tendons-in-the-slab", "until approved", 1964, 1965, old_slab),
    ("tendons-in-the-slab", "until approved", 1964, 1965, lambda v: built(v, "break-through", tendons="")),  # a plain slab, no proof
    ("tendons-in-the-slab", "caution", 1964, 1965, lambda v: built(v, "tunnel", tendons="")),
    ("edge-beam-is-known", "no fixed price", 9.9, 10.0, lambda v: stretch(method="trench", slab_edge_ft=10.0, stretch=Stretch(0.0, v))),
    ("asbestos-before-cutting", "requires first", 1981, 1980, lambda v: built(v, "slab spot")),  # through 1980: from memory
    ("lead-paint", "requires first", 6.0, 6.1, painted),  # 40 CFR 745.83
    ("burst-near-utilities", "requires first", 12, 11.9, lambda v: crossing("gas", v)),  # Carmel, Indiana, 33.159
    ("burst-near-utilities", "requires first", 24, 23.9, lambda v: crossing("water", v)),  # Carmel, Indiana, 33.159
    ("reroute-has-the-fall", "blocks", 8.25, 8.24, way),  # 42 ft at 1/8 in/ft is 5.25 in, the wye takes 3 [computed]
    ("trap-arms", "requires first", 6.0, 6.1, sink_at),  # IPC, 1 1/2 in trap, read second-hand
    ("trees", "caution", 6.3, 6.2, tree),  # 5 ft from the edge of a trench 2.4 ft wide
    ("trees", "caution", 8.8, 8.7, lambda v: tree(v, 30.0)),  # three trunks of 30 in [computed]
    ("cleanouts", "adds work", 100, 100.1, lambda v: long(v, "trench", slab_edge_ft=0.0)),  # IPC 708
    ("cleanouts", "adds work", 5.0, 5.1, lambda v: stretch(method="trench", slab_edge_ft=0.0, cleanouts_ft=(v,))),
    ("cleanouts", "adds work", 5.1, 5.0, lambda v: stretch(method="trench", slab_edge_ft=0.0, cleanouts_ft=(), stretch=Stretch(v, 30.0))),
    ("cleanouts", "adds work", 5.0, 5.1, lambda v: stretch(method="trench", cleanouts_ft=(10.0 + v,), marks=(mark("bend", 10.0, degrees=90.0),))),
    ("cleanouts", "adds work", 45, 46, lambda v: stretch(method="trench", cleanouts_ft=(), marks=(mark("bend", 10.0, degrees=v),))),
    ("size-never-shrinks", "caution", 4.0, 3.9, lambda v: stretch(method="trench", sizes_below_in=(v,))),
    ("pipe-left-behind", "adds work", 3.9, 4.0, lambda v: stretch(method="abandon", sizes_in=(v,), **SLAB)),
    ("new-pipe-has-the-fall", "no fixed price", 0.3125, 0.311, lambda v: stretch(method="trench", fall_ft=v)),
    ("new-pipe-has-the-fall", "blocks", 0.271, 0.27, lambda v: stretch(method="trench", fall_ft=v)),
    ("flexible-joint-at-the-edge", "adds work", 5.1, 5.0, lambda v: stretch(f"{v} offset 20%", method="trench", slab_edge_ft=0.0)),
    ("crawl-space-is-tight", "adds work", 2.0, 1.9, lambda v: stretch(method="crawl replace", marks=(mark("crawl", lengths=(("", v),)),))),
    ("cheap-floor-short-dig", "prefers", 3.0, 2.9, lambda v: long(5.0, "slab spot", depth_ft=v, house={"floor_finish": "carpet"})),
    ("cheap-floor-short-dig", "prefers", 6.0, 5.9, lambda v: long(v, "slab spot", depth_ft=2.0, house={"floor_finish": "carpet"})),
    ("strip-stops-at-a-beam", "requires first", 30.0, 29.9, lambda v: stretch(method="break-through", beams=(beam(v),), **SLAB)),
]  # fmt: skip


def effects(rule: str, facts: StretchFacts) -> set[tuple[str, frozenset[str]]]:
    applies = BY_ID[rule].applies
    assert applies is not None
    return {(str(ruling.effect), ruling.facts) for ruling in each(applies(facts, limits()))}


@pytest.mark.parametrize(
    "rule, effect, without, with_it, facts", BEFORE, ids=lambda v: str(v) if isinstance(v, str | int | float) else ""
)
def test_a_limit_begins_where_it_says(rule: str, effect: str, without: float, with_it: float, facts: Facts) -> None:
    at_the_edge, one_step_on = effects(rule, facts(without)), effects(rule, facts(with_it))
    assert effect in {e for e, _ in one_step_on}
    assert at_the_edge != one_step_on


@pytest.mark.parametrize("from_ft, to_ft, found", [(4.0, 20.0, 1), (4.1, 20.0, 0), (4.0, 19.9, 0), (20.0, 4.0, 1)])
def test_a_way_round_counts_where_it_replaces_the_whole_stretch(from_ft: float, to_ft: float, found: int) -> None:
    round_it = reroute(yard_ft=20.0, replaces_from_ft=from_ft, replaces_to_ft=to_ft)
    house = job(line(), reroutes=(round_it,))
    assert len(facts_of(house, house.lines[0], Stretch(4.0, 20.0), (), demo_tables()).reroutes) == found


def test_pipe_up_to_two_and_a_half_inches_falls_as_the_small_sizes_do() -> None:
    # IPC 704.1: 1/4 in/ft to 2 1/2 in, 1/8 in/ft from 3 to 6 in; the demo place says the same
    assert [limits().least_fall_in_per_ft(size) for size in (2.0, 2.5, 3.0, 4.0)] == [0.25, 0.25, 0.125, 0.125]


DEPTHS = [
    # 29 CFR 1926.651(c)(2), 1926.652(a)(1), Subpart P App. B: 4 ft ladder, 5 ft system, over 20 ft engineer
    ("ladder-from-four-feet", "requires first", 3.99, 4.0),
    ("protect-from-five-feet", "requires first", 4.99, 5.0),
    ("engineer-past-twenty-feet", "until approved", 20.0, 20.01),
    ("competent-person-is-named", "requires first", 3.99, 4.0),
    ("machine-reaches", "no fixed price", 10.0, 10.01),  # a firm's default
]


@pytest.mark.parametrize("rule, effect, without, with_it", DEPTHS)
def test_a_depth_limit_begins_where_the_published_rule_says(
    rule: str, effect: str, without: float, with_it: float
) -> None:
    assert effect not in after(rule, measured(without))
    assert effect in after(rule, measured(with_it))


def after(rule: str, it: Measured) -> set[str]:
    asked = BY_ID[rule]
    if asked.applies is not None:
        return {effect for effect, _ in effects(rule, it.at)}
    assert asked.measures is not None
    return {str(ruling.effect) for ruling in each(asked.measures(it, limits()))}


def test_a_pit_counts_with_the_locators_tolerance() -> None:
    def pit(depth_ft: float) -> Measured:
        deep = Opening(
            kind="pit",
            line="main",
            along=Stretch(0, 5),
            depth_ft=depth_ft,
            tolerance_ft=0.5,
            name=Say.of("the tunnel's pit"),
        )
        return measured(0.0, method="tunnel", works=Works(line="main", openings=(deep,)))

    assert after("ladder-from-four-feet", pit(3.5)) == {"requires first"}
    assert after("ladder-from-four-feet", pit(3.49)) == set()


def test_water_in_a_dig_asks_for_a_system_at_any_depth() -> None:
    assert after("protect-from-five-feet", measured(2.0, wet=True)) == {"requires first"}


def test_any_sign_of_caving_asks_for_a_system_at_any_depth() -> None:
    assert after("protect-from-five-feet", measured(1.0, site={"caving_signs": True})) == {"requires first"}


def test_below_five_feet_the_competent_person_decides_and_nothing_says_none_required() -> None:
    rule = BY_ID["protect-from-five-feet"]
    assert rule.applies is not None
    for depth_ft in (3.0, 4.49, 4.5, 4.99):
        said = str(each(rule.applies(measured(depth_ft).at, limits()))[0].estimator)
        assert "competent person" in said and "nothing" not in said
        assert ("few inches decide" in said) is (depth_ft >= 4.5)


def test_a_dig_outside_the_45_degree_line_from_a_footing_needs_no_engineer() -> None:
    # bottom 3.0 ft below the footing's base, edge of the dig 3.0 ft clear: on the line, as the plumbing codes draw it
    far = mark("footing", lengths=(("away", 4.2), ("deep", 1.5)))
    assert after("footing-below-dig", measured(4.5, dig_width_ft=2.4, line_marks=(far,))) == set()
    near = mark("footing", lengths=(("away", 4.1), ("deep", 1.5)))
    assert after("footing-below-dig", measured(4.5, dig_width_ft=2.4, line_marks=(near,))) == {"until approved"}


@pytest.mark.parametrize(
    "feet, effects_said", [(25.0, set()), (25.1, {"caution"}), (59.9, {"caution"}), (60.0, {"blocks"})]
)
def test_a_long_tunnel_needs_a_second_way_out(feet: float, effects_said: set[str]) -> None:
    assert after("second-way-out", measured(3.0, method="tunnel", tunnel_ft=feet)) == effects_said


def test_two_pits_halve_the_way_out() -> None:
    assert after("second-way-out", measured(3.0, method="tunnel", tunnel_ft=50.0, pits=2)) == set()


def test_a_trench_may_cross_every_kind_of_open_ground() -> None:
    assert (
        effects("place-fits-the-method", stretch(method="trench", zones=("yard", "drive", "walk", "street"))) == set()
    )


def test_a_slope_needs_its_whole_top_within_the_free_width() -> None:
    def free(width_ft: float) -> set[str]:
        marks = (mark("clear", lengths=(("", width_ft),)),)
        return after("slope-that-does-not-fit", measured(5.0, dig_top_width_ft=10.0, held_by="sloped", marks=marks))

    assert free(10.0) == set()
    assert free(9.9) == {"requires first"}


def test_build_up_of_every_kind_at_once_is_still_only_dirt() -> None:
    dirty = need("scale", 3, kinds=("scale", "grease", "blocked"))
    assert effects("dirt-alone-is-cleaned", stretch(needs=(dirty,))) == {("does not fix", frozenset())}


@pytest.mark.parametrize("said", [EdgeBeam(0.0, 0.0), EdgeBeam(2.0, 1.0)])
def test_a_word_about_the_edge_beam_ends_the_asking(said: EdgeBeam) -> None:
    house = job(line(zone="slab", zero="slab edge"), house={"edge_beam": said})
    known = facts_of(house, house.lines[0], Stretch(4.0, 20.0), (), demo_tables())
    dug = stretch(method="tunnel", stretch=Stretch(4.0, 20.0), **SLAB).works
    assert effects("edge-beam-is-known", replace(known, method="tunnel", works=dug)) == set()
    silent = job(line(zone="slab", zero="slab edge"))
    unknown = facts_of(silent, silent.lines[0], Stretch(4.0, 20.0), (), demo_tables())
    asked = effects("edge-beam-is-known", replace(unknown, method="tunnel", works=dug))
    assert {effect for effect, _ in asked} == {"no fixed price", "requires first"}
    assert frozenset({"engineer"}) in {facts for _, facts in asked}


def test_a_known_edge_beam_takes_the_engineer_for_every_tunnel() -> None:
    there = KnownEdge(EdgeBeam(2.0, 1.0), "the house")
    none = KnownEdge(EdgeBeam(0.0, 0.0), "the house")
    assert effects("tunnel-under-a-beam", stretch(method="tunnel", edge=there, **SLAB)) == {
        ("requires first", frozenset({"engineer"}))
    }
    assert effects("tunnel-under-a-beam", stretch(method="tunnel", edge=none, **SLAB)) == set()


def test_a_basement_without_a_depth_of_its_own_has_no_fixed_price() -> None:
    marks = (
        mark("basement", 0.0, holds=True),
        mark("yard", 20.0, holds=True),
        mark("depth", 30.0, depth_ft=7.0, surface="lawn"),
    )
    house = job(replace(line(), marks=marks))

    def depth(low: float, high: float) -> float | None:
        return facts_of(house, house.lines[0], Stretch(low, high), (), demo_tables()).depth_ft

    assert depth(20.0, 40.0) == 7.0
    assert depth(19.0, 40.0) is None
    assert depth(2.0, 10.0) is None


def test_a_trench_up_to_the_slab_edge_and_deeper_than_its_beam_waits_for_an_engineer() -> None:
    """24 in below the slab top is 1.5 ft below the ground 6 in lower: 1.5 ft deep clears it, a step more does not."""
    known = KnownEdge(EdgeBeam(2.0, 1.0), "the house")

    def said(depth_ft: float, from_ft: float, edge: KnownEdge = known) -> set[str]:
        it = measured(depth_ft, slab_edge_ft=10.0, stretch=Stretch(from_ft, 30.0), edge=edge)
        return after("footing-below-dig", it)

    assert said(1.5, 10.0) == set()
    assert said(1.6, 10.0) == {"until approved"}
    assert said(1.6, 10.2) == set()
    assert said(1.6, 10.0, KnownEdge(EdgeBeam(0.0, 0.0), "the house")) == set()
