"""Openings in the slab in; saw cuts, concrete out, its weight and haul, and concrete, steel and retarder back, out."""

import math

from estimator.takeoff.case import Case
from estimator.takeoff.haul import POUNDS_PER_TON
from estimator.takeoff.working import cubic_yards, shown, up

Openings = tuple[tuple[float, float], ...]


def saw_lf(length_ft: float, width_ft: float, cross_every_ft: float) -> float:
    """Round the opening, and a cross cut each so many ft: 2(L + W) + W x floor(L / every).

    >>> saw_lf(20, 3, 2), saw_lf(27, 2, 2)
    (76.0, 84.0)
    """
    return 2 * (length_ft + width_ft) + width_ft * math.floor(round(length_ft / cross_every_ft, 9)) * 1.0


def bags(cubic_ft: float, bag_cf: float, extra_percent: float) -> float:
    """Bags of concrete mix, up.

    >>> bags(20, 0.60, 10)
    37.0
    """
    return up(cubic_ft / bag_cf * (1 + extra_percent / 100))


def concrete_out(case: Case, openings: Openings) -> None:
    """Saw, break, carry out and haul."""
    paper, thick = case.paper, case.slab_ft
    every = case.number("slab_cross_cut_ft")
    paper.put(
        "saw_lf",
        sum(saw_lf(length, wide, every) for length, wide in openings),
        "each opening: 2 x (length + width) + a cross cut each so many ft",
        ("openings", in_words(openings)),
        ("cross cut every", every, "ft"),
    )
    a_day = case.number("saw_ft_per_day")
    paper.put(
        "saw_days",
        up(paper.value("saw_lf") / a_day),
        "saw cut / a day's cut, up",
        paper.given("saw_lf"),
        ("a day", a_day, "ft"),
    )
    area = paper.put(
        "slab_sf",
        sum(length * wide for length, wide in openings),
        "length x width of each opening",
        ("openings", in_words(openings)),
    )
    paper.put(
        "slab_cy",
        cubic_yards(area * thick),
        "area x thickness / 27",
        ("area", area, "sq ft"),
        ("thickness", thick, "ft"),
    )
    _rubble(case, area * thick)
    paper.warn(
        "concrete dust is deadly over the years: wet saw, shrouded breaker, and masks indoors for saw and breaker alike"
    )
    paper.warn("water, gas, power and ducts in and under the floor are found and shut off before the first cut")


def _rubble(case: Case, cubic_ft: float) -> None:
    """The weight of the concrete taken out, and its room once broken."""
    paper, weight, bulk = case.paper, case.number("concrete_pcf"), case.number("concrete_swell_percent")
    paper.put(
        "slab_tons",
        cubic_ft * weight / POUNDS_PER_TON,
        "cubic ft x weight / 2000",
        ("concrete", cubic_ft, "cu ft"),
        ("weight", weight, "lb/cu ft"),
    )
    paper.put(
        "slab_haul_lcy",
        cubic_yards(cubic_ft) * (1 + bulk / 100),
        "concrete x (1 + bulking)",
        ("concrete", cubic_yards(cubic_ft), "cy"),
        ("bulking", bulk, "percent"),
    )


def in_words(openings: Openings) -> str:
    return ", ".join(f"{shown(length)} x {shown(wide)} ft" for length, wide in openings) or "none"


def concrete_back(case: Case, openings: Openings) -> None:
    """Dowels round the edge, vapour retarder, and bags for little or ready-mix for much."""
    paper = case.paper
    area = paper.put(
        "patch_sf", sum(length * wide for length, wide in openings), "what was opened", ("openings", in_words(openings))
    )
    apart = case.number("dowel_spacing_ft")
    paper.put(
        "dowels",
        sum(up(2 * (length + wide) / apart) for length, wide in openings),
        "round each opening / spacing, up",
        ("openings", in_words(openings)),
        ("spacing", apart, "ft"),
    )
    lap = case.number("retarder_lap_ft")
    paper.put(
        "retarder_sf",
        sum((length + lap) * (wide + lap) for length, wide in openings),
        "(length + lap) x (width + lap)",
        ("openings", in_words(openings)),
        ("lap", lap, "ft"),
    )
    _poured(case, area)


def _poured(case: Case, area: float) -> None:
    """Ready-mix for much, bags for little."""
    paper, thick, extra = case.paper, case.slab_ft, case.number("concrete_waste_percent")
    cubic_ft = area * thick
    if cubic_yards(cubic_ft) > case.number("ready_mix_over_cy"):
        paper.put(
            "patch_ready_mix_cy",
            cubic_yards(cubic_ft) * (1 + extra / 100),
            "area x thickness / 27 + extra",
            ("area", area, "sq ft"),
            ("thickness", thick, "ft"),
            ("extra", extra, "percent"),
        )
        small = paper.value("patch_ready_mix_cy") < case.number("short_load_under_cy")
        paper.put(
            "short_loads",
            1 if small else 0,
            "a part load is charged",
            ("full load", case.number("short_load_under_cy"), "cy"),
        )
    else:
        bag = case.number("bag_cf")
        paper.put(
            "patch_bags",
            bags(cubic_ft, bag, extra),
            "cubic ft / one bag + extra, up",
            ("concrete", cubic_ft, "cu ft"),
            ("one bag", bag, "cu ft"),
            ("extra", extra, "percent"),
        )
