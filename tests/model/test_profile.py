"""What holds at any station of a line, filmed with or against the flow, and how each answer is known."""

import pytest

from estimator.model.line import Line, Mark, Origin, Pass
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch


def camera(number: int = 1, start: float = 0.0, sign: int = 1, flow: str = "with flow", seen: float = 40.0) -> Pass:
    low, high = sorted((start, start + sign * seen))
    return Pass(
        number=number, access=f"access {number}", flow=flow, start_ft=start, sign=sign, seen=Stretch(low, high)  # type: ignore[arg-type]
    )  # fmt: skip


def mark(word: str, a: float, b: float | None = None, number: int = 1, **slots: object) -> Mark:
    holds = b is None and word in ("slab", "yard", "drive", "pipe", "size", "room", "under", "soil")
    return Mark(
        word=word, stretch=Stretch(a, a if b is None else b), holds=holds, origin=Origin(pass_number=number), **slots  # type: ignore[arg-type]
    )  # fmt: skip


def profile(*marks: Mark, passes: tuple[Pass, ...] = (camera(),), **line: object) -> Profile:
    return Profile(Line(name="main", size_in=4.0, pipe="cast iron", marks=marks, passes=passes, **line))  # type: ignore[arg-type]


def test_a_word_holds_the_way_the_camera_went_until_the_next_of_its_kind() -> None:
    p = profile(mark("yard", 0), mark("slab", 10), mark("yard", 30))
    assert [p.zone(at).value for at in (0, 9.9, 10, 29.9, 30, 40)] == ["yard", "yard", "slab", "slab", "yard", "yard"]


def test_a_word_from_a_pass_that_went_down_the_stations_holds_downwards() -> None:
    back = camera(sign=-1, start=40)
    p = profile(mark("slab", 40), mark("yard", 0), passes=(back,))
    assert [p.zone(at).value for at in (40, 0.1, 0, -3)] == ["slab", "slab", "yard", "yard"]


def test_two_passes_from_one_cleanout_hold_each_its_own_way() -> None:
    p = profile(
        mark("yard", 0), mark("slab", 5), mark("drive", 0, number=2), passes=(camera(), camera(2, sign=-1, seen=20))
    )
    assert [p.zone(at).value for at in (-10, 3, 20)] == ["drive", "yard", "slab"]


def test_a_stretch_wins_over_what_holds_and_ends_with_itself() -> None:
    p = profile(mark("yard", 0), mark("drive", 10, 20))
    assert [p.zone(at).value for at in (9.9, 10, 20, 20.1)] == ["yard", "drive", "drive", "yard"]


def test_where_nobody_said_a_zone_there_is_none_and_beyond_the_film_it_is_carried() -> None:
    p = profile(mark("yard", 10))
    assert (p.zone(5).value, p.zone(5).how) == (None, "assumed")
    assert (p.zone(40).value, p.zone(40).how) == ("yard", "read")
    assert (p.zone(40.1).value, p.zone(40.1).how) == ("yard", "carried")


def test_pipe_and_bore_change_where_it_is_written_and_are_the_lines_own_elsewhere() -> None:
    p = profile(mark("pipe", 20, choice="clay"), mark("size", 30, size_in=6.0))
    assert p.pipes(Stretch(0, 40)) == ((Stretch(0, 20), "cast iron"), (Stretch(20, 40), "clay"))
    assert p.sizes(Stretch(0, 40)) == ((Stretch(0, 30), 4.0), (Stretch(30, 40), 6.0))


def test_depth_is_read_or_between_or_carried_and_never_silently() -> None:
    p = profile(mark("depth", 10, depth_ft=3.0, surface="lawn"), mark("depth", 20, depth_ft=4.0, surface="lawn"))
    answers = [p.depth_to_centre_ft(at) for at in (10, 15, 20, 25, 5)]
    assert [(a.value, a.how) for a in answers] == [
        (3.0, "read"), (3.5, "between"), (4.0, "read"), (4.0, "carried"), (3.0, "carried")
    ]  # fmt: skip
    assert profile().depth_to_centre_ft(5).value is None


def test_a_depth_at_one_place_stands_over_one_given_for_a_stretch() -> None:
    whole, one = mark("depth", 0, 40, depth_ft=3.0, surface="lawn"), mark("pothole", 20, depth_ft=3.4, surface="lawn")
    p = profile(whole, one)
    assert [p.depth_to_centre_ft(at).value for at in (19, 20, 21)] == [3.0, 3.4, 3.0]


def test_a_depth_under_the_floor_is_not_mixed_with_one_under_the_lawn() -> None:
    p = profile(
        mark("slab", 0),
        mark("yard", 20),
        mark("depth", 5, depth_ft=2.0, surface="tile"),
        mark("depth", 30, depth_ft=4.0, surface="lawn"),
    )
    assert (p.depth_to_centre_ft(15).value, p.depth_to_centre_ft(15).how) == (2.0, "carried")
    assert (p.depth_to_centre_ft(25).value, p.depth_to_centre_ft(25).how) == (4.0, "carried")


def test_an_invert_is_half_a_bore_deeper_than_the_centre() -> None:
    p = profile(mark("slab", 0), mark("invert", 0, depth_ft=2.6, surface="slab", to="invert"))
    assert p.depth_to_centre_ft(0).value == pytest.approx(2.6 - 2 / 12)
    assert p.invert_below_slab_ft(0).value == 2.6


def test_fall_is_told_only_between_inverts_that_were_read_and_never_from_locates() -> None:
    up, down = mark("invert", 0, depth_ft=2.0, surface="slab"), mark("level", 40, depth_ft=2.5, surface="slab")
    p = profile(up, down)
    assert p.fall_ft(0, 40).value == pytest.approx(0.5)
    assert p.fall_ft(10, 30).value == pytest.approx(0.25)
    assert p.fall_ft(10, 30).how == "between"
    assert p.fall_ft(0, 41).value is None
    against = profile(up, down, passes=(camera(flow="against flow"),), downstream=-1)
    assert against.fall_ft(0, 40).value == pytest.approx(-0.5)  # it runs back
    located = profile(mark("loc", 0, depth_ft=2.0, surface="tile"), mark("loc", 40, depth_ft=3.0, surface="tile"))
    assert located.fall_ft(0, 40).value is None


@pytest.mark.parametrize("surface", ["slab", "tile", "floor", "concrete", None])
def test_levels_read_from_any_floor_give_the_fall_and_from_a_lawn_none(surface: str | None) -> None:
    """25 in below the tile, then 19 in with the flow: it climbs 6 in in 19 ft [computed]. A lawn is not level."""
    ends = [
        mark("invert", at, depth_ft=inches / 12, surface=surface, to="invert") for at, inches in ((1, 25), (20, 19))
    ]
    assert profile(mark("slab", 0), *ends).slope_ft_per_ft() == pytest.approx(-0.5 / 19)
    lawn = [mark("invert", at, depth_ft=inches / 12, surface="lawn", to="invert") for at, inches in ((1, 25), (20, 19))]
    assert profile(mark("yard", 0), *lawn).slope_ft_per_ft() is None


def test_filmed_is_what_passes_saw_and_the_rest_of_the_length_is_not_inspected() -> None:
    p = profile(passes=(camera(seen=20), camera(2, start=60, sign=-1, seen=30)), length_ft=85.0)
    assert p.filmed == (Stretch(0, 20), Stretch(30, 60))
    assert p.not_inspected == (Stretch(20, 30), Stretch(60, 85))
    assert p.inspected(Stretch(30, 60))
    assert not p.inspected(Stretch(19, 21))


def test_the_slab_edge_is_where_the_slab_ends_towards_the_street() -> None:
    against = profile(mark("yard", 0), mark("slab", 6), passes=(camera(flow="against flow"),), downstream=-1)
    assert against.slab_edge_ft == 6
    assert against.to_slab_edge_ft(10) == 4
    assert against.to_slab_edge_ft(4) == -2
    with_flow = profile(mark("slab", 0), mark("yard", 30))
    assert with_flow.slab_edge_ft == 30
    assert with_flow.to_slab_edge_ft(25) == 5
    assert profile(mark("slab", 0)).slab_edge_ft is None
    assert profile(mark("yard", 0)).slab_edge_ft is None
    assert profile(mark("slab", 40), passes=(camera(start=40, sign=-1),), zero="slab edge").slab_edge_ft == 0.0


def test_one_gets_in_at_a_cleanout_or_where_a_camera_went_in() -> None:
    p = profile(mark("cleanout", 25))
    assert p.accesses() == (0.0, 25.0)


def test_left_and_right_of_a_branch_are_told_as_one_looks_with_the_flow() -> None:
    branch = mark("branch", 10, size_in=3.0, side="left")
    assert profile(branch).branches[0].side == "left"
    assert profile(branch, passes=(camera(flow="against flow"),)).branches[0].side == "right"


def test_a_beam_at_one_place_is_as_long_as_it_is_wide() -> None:
    p = profile(mark("beam", 15, lengths=(("deep", 2.0), ("wide", 1.0))))
    assert p.beams[0].stretch == Stretch(15, 16)
    assert p.beams[0].bottom_below_slab_ft == 2.0
