"""A second opinion on the earthwork: the same solids sliced numerically, and their outlines by a general geometry library."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon, box, unary_union

from estimator.works.earth import (
    Depth,
    end_area_cf,
    prismoid_cf,
    section_sf,
    sloped_all_round_cf,
    sloped_pit_cf,
    trench_cf,
    trench_end_area_cf,
)
from estimator.works.grade import Crossing
from estimator.works.tunnel_shape import Dip, TunnelShape, beam_concrete_cf, dip_under

depths_ft = st.floats(0.5, 20)
widths_ft = st.floats(0.5, 8)
slopes = st.sampled_from([0.0, 0.5, 0.75, 1.0, 1.5])


@st.composite
def trenches(draw: st.DrawFn) -> tuple[Depth, ...]:
    steps = draw(st.lists(st.tuples(st.floats(0.5, 40), depths_ft), min_size=1, max_size=5))
    found = [Depth(0.0, draw(depths_ft))]
    for step, depth in steps:
        found.append(Depth(found[-1].at_ft + step, depth))
    return tuple(found)


def cross_section(width: float, depth: float, slope: float) -> Polygon:
    return Polygon(
        [(-width / 2, -depth), (width / 2, -depth), (width / 2 + slope * depth, 0), (-width / 2 - slope * depth, 0)]
    )


def sliced(depths: tuple[Depth, ...], width: float, slope: float, slices: int = 200) -> float:
    """The trench cut across into thin slices, each as thick as its own outline says."""
    whole = 0.0
    for a, b in pairwise(depths):
        thick = (b.at_ft - a.at_ft) / slices
        for n in range(slices):
            depth = a.depth_ft + (b.depth_ft - a.depth_ft) * (n + 0.5) / slices
            whole += cross_section(width, depth, slope).area * thick
    return whole


@given(trenches(), widths_ft, slopes)
def test_a_trench_of_changing_depth_is_as_large_as_its_slices(
    depths: tuple[Depth, ...], width: float, slope: float
) -> None:
    assert trench_cf(depths, width, slope) == pytest.approx(sliced(depths, width, slope), rel=1e-4)


@given(trenches(), widths_ft, slopes)
def test_end_areas_never_give_less_than_the_exact_volume(depths: tuple[Depth, ...], width: float, slope: float) -> None:
    assert trench_end_area_cf(depths, width, slope) >= trench_cf(depths, width, slope) * (1 - 1e-12)


@given(trenches(), widths_ft)
def test_with_upright_sides_both_ways_of_reckoning_agree(depths: tuple[Depth, ...], width: float) -> None:
    assert trench_end_area_cf(depths, width) == pytest.approx(trench_cf(depths, width))


@given(st.floats(1, 60), widths_ft, depths_ft, slopes)
def test_a_pit_sloped_on_four_sides_is_as_large_as_its_level_slices(
    length: float, width: float, depth: float, slope: float
) -> None:
    """At height z over the bottom the outline is the bottom grown by slope x z, corners square; Simpson over z is exact."""
    bottom = box(0, 0, length, width)
    areas = [bottom.buffer(slope * z, join_style="mitre", mitre_limit=10).area for z in (0.0, depth / 2, depth)]
    by_slices = depth * (areas[0] + 4 * areas[1] + areas[2]) / 6
    assert sloped_pit_cf(length, width, depth, slope) == pytest.approx(by_slices, rel=1e-9)


@given(st.floats(1, 60), widths_ft, depths_ft, slopes)
def test_a_level_trench_sloped_all_round_is_that_pit(length: float, width: float, depth: float, slope: float) -> None:
    level = (Depth(0.0, depth), Depth(length, depth))
    assert sloped_all_round_cf(level, width, slope) == pytest.approx(sloped_pit_cf(length, width, depth, slope))


def end_slices(width: float, depth: float, slope: float, slices: int = 200) -> float:
    """What lies beyond one end: at a distance u from the bottom's edge the floor has risen by u / slope, the sides go on."""
    reach = slope * depth
    whole = 0.0
    for n in range(slices):
        risen = (n + 0.5) / slices * depth
        low, top = width + 2 * slope * risen, width + 2 * slope * depth
        whole += Polygon([(-low / 2, risen), (low / 2, risen), (top / 2, depth), (-top / 2, depth)]).area
    return whole * reach / slices


@given(trenches(), widths_ft, slopes)
def test_a_trench_of_changing_depth_sloped_all_round_is_as_large_as_its_slices(
    depths: tuple[Depth, ...], width: float, slope: float
) -> None:
    ends = sum(end_slices(width, d.depth_ft, slope) for d in (depths[0], depths[-1]))
    by_slices = sliced(depths, width, slope) + ends
    assert sloped_all_round_cf(depths, width, slope) == pytest.approx(by_slices, rel=1e-4)


@given(widths_ft, depths_ft, slopes)
def test_the_section_formula_is_the_area_of_its_outline(width: float, depth: float, slope: float) -> None:
    assert section_sf(width, depth, slope) == pytest.approx(cross_section(width, depth, slope).area)


@given(trenches(), widths_ft, slopes, st.floats(0.01, 3))
def test_more_depth_never_means_less_earth(depths: tuple[Depth, ...], width: float, slope: float, more: float) -> None:
    deeper = tuple(Depth(d.at_ft, d.depth_ft + more) for d in depths)
    assert trench_cf(deeper, width, slope) > trench_cf(depths, width, slope)


@given(st.floats(1, 200), depths_ft, depths_ft)
def test_a_pyramid_by_the_prismoidal_formula_is_a_third_of_its_box(length: float, high: float, wide: float) -> None:
    assert prismoid_cf(length, 0.0, high * wide / 4, high * wide) == pytest.approx(length * high * wide / 3)
    assert end_area_cf(length, 0.0, high * wide) > prismoid_cf(length, 0.0, high * wide / 4, high * wide)


# ── tunnels ──────────────────────────────────────────────────────────────────────────────────

SLAB_FT = 1 / 3


@st.composite
def tunnels(draw: st.DrawFn) -> tuple[TunnelShape, tuple[Crossing, ...]]:
    length = draw(st.floats(6, 60))
    mouth = draw(st.floats(3.0, 5.0))
    plain = TunnelShape(
        length_ft=length, width_ft=draw(st.floats(2, 5)), mouth_ft=mouth, face_ft=draw(st.floats(3.0, mouth))
    )
    beams, at = [], draw(st.floats(0, 2))
    for _ in range(draw(st.integers(0, 3))):
        wide = draw(st.floats(0.5, 1.5))
        beams.append(Crossing(at, at + wide, draw(st.floats(0.5, 2.8)), False))
        at += wide + draw(st.floats(0.5, 20))
    inside = tuple(b for b in beams if b.from_ft < length)
    dips = tuple(d for b in inside if (d := dip_under(plain, b, SLAB_FT, 2.0, 2.0, 0.1)).depth_ft)
    shape = TunnelShape(
        length_ft=length,
        width_ft=plain.width_ft,
        mouth_ft=mouth,
        face_ft=plain.face_ft,
        dips=dips,
        beams_cf=beam_concrete_cf(plain, inside, SLAB_FT),
    )
    return shape, inside


def side_view(shape: TunnelShape, beams: tuple[Crossing, ...]) -> float:
    """The tunnel's outline from the side: down to the floor, dips added, beams cut out."""

    def floor(at: float) -> float:
        return -(shape.mouth_ft + (shape.face_ft - shape.mouth_ft) * at / shape.length_ft)

    def below(d: Dip) -> Polygon:
        return Polygon(
            [
                (d.from_ft, floor(d.from_ft)),
                (d.to_ft, floor(d.to_ft)),
                (d.to_ft, floor(d.to_ft) - d.depth_ft),
                (d.from_ft, floor(d.from_ft) - d.depth_ft),
            ]
        )

    plain = Polygon([(0, 0), (shape.length_ft, 0), (shape.length_ft, floor(shape.length_ft)), (0, floor(0))])
    concrete = (
        unary_union([box(b.from_ft, -(b.bottom_ft - SLAB_FT), b.to_ft, 0) for b in beams]) if beams else Polygon()
    )
    dug = unary_union([plain, *(below(d) for d in shape.dips if d.length_ft > 0)])
    return float(dug.area - concrete.intersection(plain).area)


@given(tunnels())
def test_a_tunnel_is_as_large_as_its_side_view_times_its_width(drawn: tuple[TunnelShape, tuple[Crossing, ...]]) -> None:
    shape, beams = drawn
    assert shape.bank_cf == pytest.approx(side_view(shape, beams) * shape.width_ft, rel=1e-6, abs=1e-6)


@given(tunnels())
def test_under_every_beam_there_is_room_to_crawl(drawn: tuple[TunnelShape, tuple[Crossing, ...]]) -> None:
    shape, beams = drawn
    for beam in beams:
        over = [d.depth_ft for d in shape.dips if d.from_ft <= beam.middle_ft <= d.to_ft]
        floor = SLAB_FT + shape.height_ft(beam.middle_ft) + max(over, default=0.0)
        if beam.middle_ft <= shape.length_ft:
            assert floor - beam.bottom_ft >= 2.0 - 1e-9


def test_dips_that_overlap_are_dug_once() -> None:
    shape = TunnelShape(length_ft=20, width_ft=3, mouth_ft=3, face_ft=3, dips=(Dip(0.4, 0, 5), Dip(0.6, 4, 9)))
    assert shape.dips_cf == pytest.approx(3 * (0.4 * 4 + 0.6 * 5))


def test_slices_would_notice_a_slope_left_out() -> None:
    depths = (Depth(0, 4), Depth(100, 8))
    assert not math.isclose(trench_cf(depths, 2, 1.0), sliced(depths, 2, 0.75), rel_tol=1e-3)


def test_a_dip_is_as_long_as_from_its_beginning_to_its_end() -> None:
    assert Dip(0.4, 2.0, 5.0).length_ft == 3.0
