"""Which repairs become candidates and over which stretch. Lengths and pads: common practice, as the demo settings have them."""

from dataclasses import replace

import pytest

from estimator.model.judgement import Diagnosis
from estimator.model.stretch import Stretch
from estimator.scopes.candidates import repairs

MAPLE = """
pass front cleanout to street, riser 2 ft
 2      yard lawn
 2-62   joints every 3ft
38-48   depth 3.4ft from lawn
41      offset 20%
43.5-45 crack open
62      end city main, stop reached main
"""
PECAN = """
pass pulled hall toilet to street, riser 18in
 1.5     slab, room hall
16.5-32.5  channel gone, soil seen
40.5     beam 24in deep 12in wide
41.5     yard bare ground, invert 2.6ft below slab
43.5     stop cable end
"""


def silent(method, facts, tables, rules=()):
    """Rules that say nothing, so that every shape is seen."""
    return ()


def stretches(offers, method: str) -> list[tuple[float, float]]:
    return [(r.stretch.from_ft, r.stretch.to_ft) for r in offers.repairs if r.method == method]


@pytest.fixture
def offers(notes, needs_of, tables):
    def make(log: str, may=silent, needs: dict | None = None, **words: str):
        job = notes(log, **words)
        return repairs(job, needs_of(job, **(needs or {})), tables, may)

    return make


def test_two_places_in_clay_become_one_dig_over_three_whole_joints(offers) -> None:
    """Worked example Maple: pieces 36–39, 39–42, 42–45 are touched, so 9.0 ft are replaced [computed]."""
    found = offers(MAPLE)
    assert stretches(found, "yard spot") == [(36.0, 45.0)]
    spot = next(r for r in found.repairs if r.method == "yard spot")
    assert spot.answers == ("offset 39", "crack 41.5")
    assert spot.leaves == ()


def test_a_joint_read_half_a_foot_off_is_still_that_joint(offers) -> None:
    """What sits at a joint touches the pieces on both sides of it; readings are good to half a foot, common practice."""
    log = "pass front cleanout to street, surface\n0 yard\n0-60 joints every 3ft\n0-60 depth 3ft from lawn\n{at} offset 20%\n60 stop"
    assert stretches(offers(log.format(at=30)), "yard spot") == [(27.0, 33.0)]
    assert stretches(offers(log.format(at=30.4)), "yard spot") == [(27.0, 33.0)]
    assert stretches(offers(log.format(at=31)), "yard spot") == [(30.0, 33.0)]


def test_a_tunnel_goes_on_to_the_slab_edge_and_two_feet_outside(offers) -> None:
    """Worked example Pecan: 9–25 padded 2 ft in iron, 7 ft of remnant replaced, 2 ft outside: 29 ft [computed]."""
    found = offers(PECAN, pipe="cast iron", zero="slab edge")
    assert stretches(found, "tunnel") == [(-2.0, 27.0)]
    assert [r.entry for r in found.repairs if r.method == "tunnel"] == ["exit"]


def test_break_through_and_reline_run_over_the_same_stretch_as_the_tunnel(offers) -> None:
    found = offers(PECAN, pipe="cast iron", zero="slab edge")
    assert stretches(found, "break-through") == stretches(found, "reline") == [(-2.0, 27.0)]


def test_a_remnant_of_ten_feet_stays(offers) -> None:
    log = "pass front cleanout to house, surface\n0-40 depth 3ft from lawn\n0 yard\n5 slab\n{low}-{high} channel gone\n40 stop"
    near = offers(log.format(low=16.9, high=20), pipe="cast iron", zero="slab edge")
    far = offers(log.format(low=17, high=20), pipe="cast iron", zero="slab edge")
    assert stretches(near, "tunnel") == [(-2.0, 17.0)]
    assert stretches(far, "tunnel") == [(10.0, 17.0)]


def test_a_cleanout_nearer_than_two_feet_ends_the_new_pipe(offers) -> None:
    log = "pass front cleanout to house, surface\n0-40 depth 3ft from lawn\n0 yard, cleanout\n1.5 slab\n5-9 channel gone\n40 stop"
    found = offers(log, pipe="cast iron", zero="slab edge")
    assert stretches(found, "tunnel") == [(-1.5, 9.5)]


def test_the_rules_are_asked_about_the_part_under_the_floor_only(offers) -> None:
    asked = []

    def listen(method, facts, tables, rules=()):
        asked.append((method, facts.stretch))
        return ()

    offers(PECAN, listen, pipe="cast iron", zero="slab edge")
    assert ("tunnel", Stretch(0.0, 27.0)) in asked
    assert ("break-through", Stretch(0.0, 27.0)) in asked


@pytest.mark.parametrize(("clear", "digs"), [(3.9, 1), (4.0, 2)])
def test_two_digs_in_the_yard_merge_under_four_feet(offers, clear: float, digs: int) -> None:
    """Common practice, after padding: PVC 1.0 ft at each end."""
    log = f"pass front cleanout to street, surface\n0 yard\n0-60 depth 3ft from lawn\n20 crack\n{22 + clear} crack\n60 stop"
    found = offers(log, pipe="pvc")
    assert len(stretches(found, "yard spot")) == (1 if digs == 1 else 3)
    assert ((19.0, 21.0) in stretches(found, "yard spot")) == (digs == 2)


@pytest.mark.parametrize(
    ("word", "severity", "alone"), [("", 2, False), ("", 1, True), (" suspected", 2, True), (" suspected", 3, True)]
)
def test_a_neighbour_only_suspected_or_only_watched_makes_no_dig_longer(
    notes, needs_of, tables, word: str, severity: int, alone: bool
) -> None:
    """Seen and to be repaired before long, the crack at 24 is one dig with the one at 20: 2 ft clear once cut back."""
    log = f"pass front cleanout to street, surface\n0 yard\n0-60 depth 3ft from lawn\n20 crack\n24-28 crack{word}\n60 stop"
    job = notes(log, pipe="pvc")
    first, second = needs_of(job).needs
    diagnosis = Diagnosis(needs=(first, replace(second, must=False, severity=severity)))
    found = repairs(job, diagnosis, tables, silent)
    assert ((19.0, 21.0) in stretches(found, "yard spot")) == alone


def test_a_spot_longer_than_ten_feet_is_a_trench(offers) -> None:
    log = "pass front cleanout to street, surface\n0 yard\n0-60 depth 3ft from lawn\n20-{to} crack\n60 stop"
    short, long = offers(log.format(to=28), pipe="pvc"), offers(log.format(to=28.1), pipe="pvc")
    assert (stretches(short, "yard spot"), stretches(short, "trench")) == ([(19.0, 29.0)], [])
    assert (stretches(long, "yard spot"), stretches(long, "trench")) == ([], [(19.0, 29.1)])


def test_fiber_pipe_is_renewed_as_a_whole(offers) -> None:
    log = "pass front cleanout to street, surface\n0 yard\n0-70 depth 3ft from lawn\n33 blister\n70 end city main, stop reached main"
    found = offers(log, pipe="fiber", needs={"whole_line": "only"})
    assert stretches(found, "trench") == stretches(found, "burst") == [(0.0, 70.0)]
    assert stretches(found, "yard spot") == stretches(found, "sectional liner") == []


def test_a_whole_run_ends_where_the_pipe_changes(offers) -> None:
    log = (
        "pass front cleanout to street, surface\n0 yard, cast iron\n0-75 depth 3ft from lawn\n22 clay\n60 pvc\n"
        "30 crack\n75 stop"
    )
    found = offers(log, needs={"whole_line": "option"})
    assert (22.0, 60.0) in stretches(found, "trench")


def test_what_is_only_suspected_gets_two_feet_and_the_locators_tolerance_more(offers) -> None:
    log = "pass front cleanout to street, surface\n0 yard\n0-60 depth {depth}ft from lawn\n20 crack{word}\n60 stop"
    assert stretches(offers(log.format(depth=3, word=""), pipe="pvc"), "yard spot") == [(19.0, 21.0)]
    assert stretches(offers(log.format(depth=3, word=" suspected"), pipe="pvc"), "yard spot") == [(16.5, 23.5)]
    assert stretches(offers(log.format(depth=6, word=" suspected"), pipe="pvc"), "yard spot") == [
        (pytest.approx(16.4), pytest.approx(23.6))
    ]


def test_a_dip_is_relaid_until_the_new_fall_meets_the_old_pipe(offers) -> None:
    """Extra = new · L / (old − new): 9 ft wet + 2 ft of pads, old 1/4, new 1/8 in/ft give as much again [computed]."""
    log = "pass front cleanout to street, surface\n0 yard\n0-60 depth 3ft from lawn\n{levels}20-29 sag 40%\n60 stop"
    levels = "2 level 24in below slab\n50 level 36in below slab\n"
    assert stretches(offers(log.format(levels=""), pipe="pvc"), "trench") == [(19.0, 45.0)]
    assert stretches(offers(log.format(levels=levels), pipe="pvc"), "trench") == [(19.0, pytest.approx(41.0))]


def test_levels_beside_a_dip_say_where_the_new_pipe_ends(offers) -> None:
    """From 28.25 in at 19 ft a fall of 1/8 in/ft asks for 29.5 in at 29 ft: level enough at 30, not where it hangs lower [computed]."""
    log = "pass front cleanout to street, surface\n0 yard\n0-60 depth 3ft from lawn\n{levels}20-29 sag 40%\n60 stop"
    falls = "19 level 28.25in below slab\n30 level 30in below slab\n50 level 36in below slab\n"
    back = (
        "19 level 28.25in below slab\n30 level 28.5in below slab\n40 level 31in below slab\n50 level 36in below slab\n"
    )
    assert stretches(offers(log.format(levels=falls), pipe="pvc"), "trench") == [(19.0, 30.0)]
    assert stretches(offers(log.format(levels=back), pipe="pvc"), "trench") == [(19.0, 40.0)]


def test_a_liner_goes_in_at_a_cleanout_and_not_at_a_pulled_toilet(offers) -> None:
    log = (
        "pass pulled hall toilet to street, surface\n0 slab\n10 crack\n{cleanout}40 yard, depth 2ft from lawn\n60 stop"
    )
    with_one = offers(log.format(cleanout="25 cleanout\n"), pipe="pvc", zero="slab edge")
    without = offers(log.format(cleanout=""), pipe="pvc", zero="slab edge")
    assert stretches(with_one, "reline") == [(15.0, 31.0)]
    assert stretches(without, "reline") == [(-2.0, 31.0)]


def test_a_blocked_way_comes_back_as_the_rule_that_blocks_it(notes, needs_of, tables) -> None:
    job = notes(MAPLE.replace("offset 20%", "offset 26%").replace("43.5-45 crack open", "50 crack"))
    found = repairs(job, needs_of(job), tables)
    assert "big-offset" in {v.rule for v in found.verdicts if v.method == "sectional liner"}
    assert any(r.method == "reline" and "yard spot" in [f.method for f in r.first] for r in found.repairs)


def test_lining_over_a_dip_leaves_it_and_says_so(notes, needs_of, tables) -> None:
    """A liner follows the old grade, common practice."""
    job = notes(MAPLE.replace("43.5-45 crack open", "43.5-47 sag 30%"))
    found = repairs(job, needs_of(job), tables)
    lined = [r for r in found.repairs if r.method == "reline"]
    assert all("sag 41.5" not in r.answers for r in lined)
    over_it = [r for r in lined if "sag 41.5" in r.leaves]
    assert over_it
    assert all("lining-keeps-the-grade" in {v.rule for v in r.verdicts} for r in over_it)


def test_cleaning_answers_no_opening_that_must_be_closed(notes, needs_of, tables) -> None:
    job = notes(MAPLE.replace("offset 20%", "roots 30%"))
    must, may = (repairs(job, needs_of(job, must=m), tables) for m in (True, False))
    assert stretches(must, "clean") == []
    assert stretches(may, "clean") == [(39.0, 39.0)]


def test_a_place_no_depth_was_read_for_gets_the_locators_tolerance_more(offers) -> None:
    log = "pass front cleanout to street, surface\n0 yard\n{depth}20 crack\n60 stop"
    assert stretches(offers(log.format(depth="0-60 depth 3ft from lawn\n"), pipe="pvc"), "yard spot") == [(19.0, 21.0)]
    assert stretches(offers(log.format(depth=""), pipe="pvc"), "yard spot") == [(18.5, 21.5)]


def test_pits_of_a_burst_stand_clear_of_a_tree(offers) -> None:
    log = "pass front cleanout to street, surface\n0 yard\n0-80 depth 3ft from lawn\n20-40 crack\n{tree}80 stop"
    assert stretches(offers(log.format(tree=""), pipe="pvc"), "burst") == [(19.0, 41.0)]
    tree = "43 tree 20in 1ft away\n"
    assert stretches(offers(log.format(tree=tree), pipe="pvc"), "burst") == [(19.0, pytest.approx(43.01))]


def test_a_sectional_liner_comes_in_stock_lengths_of_four_feet(offers) -> None:
    """Need + 1.0 ft at each end, up to whole stock lengths; what is over lies half at each end. Common practice."""
    log = "pass front cleanout to street, surface\n0 yard\n0-60 depth 3ft from lawn\n20-{to} crack\n60 stop"
    assert stretches(offers(log.format(to=20.5), pipe="pvc"), "sectional liner") == [(18.25, 22.25)]
    assert stretches(offers(log.format(to=22), pipe="pvc"), "sectional liner") == [(19.0, 23.0)]
    assert stretches(offers(log.format(to=22.1), pipe="pvc"), "sectional liner") == [(17.05, 25.05)]


@pytest.mark.parametrize(
    ("at", "lined"), [(30.0, (28.0, 32.0)), (59.0, (56.0, 60.0)), (1.0, (0.0, 4.0)), (58.0, (56.0, 60.0))]
)
def test_the_spare_of_a_sectional_liner_lies_half_at_each_end_and_not_past_the_pipe(offers, at: float, lined) -> None:
    """A 4 ft piece over one bad joint: 1.0 ft onto sound pipe at each end, 2.0 ft over [computed]. Common practice."""
    log = "pass front cleanout to street, surface\n0 yard\n0-60 depth 3ft from lawn\n{at} crack\n60 stop"
    assert stretches(offers(log.format(at=at), pipe="pvc"), "sectional liner") == [lined]


EDGE = """
pass front cleanout to house, surface
 0      yard lawn, cleanout
 0-40   depth 3ft from lawn
12      slab tile, room hall
 {low}-{high}  channel gone
40      stop end
"""


def test_what_lies_across_the_slab_edge_takes_a_way_for_each_side(offers) -> None:
    """Different grounds do not merge into one dig, common practice; iron is cut back 2 ft at each end."""
    found = offers(EDGE.format(low=8, high=20), pipe="cast iron")
    both = [(r, r.first[0]) for r in found.repairs if r.first]
    assert sorted({(b.method, a.method) for a, b in both}) == [("trench", "break-through"), ("trench", "tunnel")]
    whole = {inside.method for inside, outside in both if outside.stretch == Stretch(0, 12)}
    assert whole == {"break-through", "tunnel"}, "beside a repair under the house the yard line may be new as a whole"
    for inside, outside in both:
        assert outside.stretch in (Stretch(6, 12), Stretch(0, 12)) and inside.stretch == Stretch(12, 22)
        assert inside.answers == ("channel 8",)


def test_what_ends_at_the_slab_edge_takes_one_way(offers) -> None:
    found = offers(EDGE.format(low=12, high=20), pipe="cast iron")
    assert [r for r in found.repairs if r.first] == []


def test_a_measured_way_in_from_the_wall_is_a_second_way_to_tunnel(offers) -> None:
    log = "pass front cleanout to house, surface\n0-40 depth 3ft from lawn\n0 yard\n5 slab\n25-27 channel gone\n{beside}40 stop"
    without = offers(log.format(beside=""), pipe="cast iron", zero="slab edge")
    with_one = offers(log.format(beside="26 beside 9ft\n"), pipe="cast iron", zero="slab edge")
    assert [r.entry for r in without.repairs if r.method == "tunnel"] == ["exit"]
    assert [(r.entry, r.stretch) for r in with_one.repairs if r.method == "tunnel"] == [
        ("exit", Stretch(18, 24)),
        ("wall", Stretch(18, 24)),
    ]


def test_a_way_round_takes_the_place_of_all_needs_on_what_it_replaces(offers) -> None:
    log = "pass kitchen cleanout to main, surface\n0 slab\n0-14 depth 1.5ft from slab\n3 crack\n9 hole 3in\n14 stop"
    way = '[[reroute]]\nname = "along the wall"\nreplaces = {{ line = "main"{part} }}\nlegs = [ {{ zone = "wall", length = "20 ft" }} ]\nfall_available = "20 in"'
    whole = offers(log, more=way.format(part=""))
    part = offers(log, more=way.format(part=', from = "5", to = "14"'))
    assert [(r.stretch, r.answers) for r in whole.repairs if r.method == "reroute"] == [
        (Stretch(0, 14), ("crack 3", "hole 9"))
    ]
    assert [(r.stretch, r.answers) for r in part.repairs if r.method == "reroute"] == [(Stretch(5, 14), ("hole 9",))]
