"""Bank yards dug and put back in; loose yards, the heap, what is hauled away and in how many loads, out.

Swell turns bank into loose for the heap and the truck; shrink turns bank into fill. Never both on one quantity.
"""

from estimator.knowledge.excavation import SPOIL_BACK_FT
from estimator.takeoff.case import Case
from estimator.takeoff.working import CUBIC_FT_PER_CY, up


def loose_cy(bank_cy: float, swell_percent: float) -> float:
    """
    >>> round(loose_cy(1000, 30), 6)
    1300.0
    """
    return bank_cy * (1 + swell_percent / 100)


def bank_needed_cy(compacted_cy: float, shrink: float) -> float:
    """Bank yards that make so many compacted yards.

    >>> round(bank_needed_cy(2.733, 0.90), 3)
    3.037
    """
    return compacted_cy / shrink


def truck_loads(loose_cy_: float, tons: float, truck_cy: float, truck_tons: float) -> float:
    """By volume or by weight, whichever asks for more; always up.

    >>> truck_loads(1300, 0, 7, 4), truck_loads(5.0, 4.0, 5, 4), truck_loads(5.01, 4.0, 5, 4), truck_loads(1, 8.1, 5, 4)
    (186.0, 1.0, 2.0, 3.0)
    """
    return up(max(loose_cy_ / truck_cy, tons / truck_tons))


def spoil(case: Case, bank_cy: float) -> None:
    """The heap: loose yards and the ground it covers, kept back from the edge."""
    paper, swell = case.paper, case.soil.swell_percent
    loose = paper.put(
        "spoil_lcy",
        loose_cy(bank_cy, swell),
        "bank yards x (1 + swell)",
        ("bank yards", bank_cy, "cy"),
        ("swell", swell, "percent"),
    )
    height = case.number("heap_height_ft")
    paper.put(
        "pile_sf",
        loose * CUBIC_FT_PER_CY / height,
        "loose cubic ft / average height, kept back from the edge",
        ("loose", loose, "cy"),
        ("average height", height, "ft"),
        ("back from the edge", SPOIL_BACK_FT, "ft"),
        source="29 CFR 1926.651(j)(2); common practice",
    )


def export(
    case: Case, bank_cy: float, native_ccy: float, shrink: float, rubble_lcy: float = 0.0, rubble_tons: float = 0.0
) -> None:
    """What is left over goes away: bank yards less what goes back, loose, in loads; broken concrete rides along."""
    paper, soil = case.paper, case.soil
    back = bank_needed_cy(native_ccy, shrink)
    left = bank_cy - back
    if left < 0:
        paper.put(
            "import_lcy",
            loose_cy(-left, soil.swell_percent),
            "(native / shrink - dug) x (1 + swell)",
            ("dug", bank_cy, "cy"),
            ("native back", native_ccy, "cy"),
            ("shrink", shrink),
            ("swell", soil.swell_percent, "percent"),
        )
        left = 0.0
    out = paper.put(
        "export_lcy",
        loose_cy(left, soil.swell_percent),
        "(dug - native back / shrink) x (1 + swell)",
        ("dug", bank_cy, "cy"),
        ("native back", native_ccy, "cy"),
        ("shrink", shrink),
        ("swell", soil.swell_percent, "percent"),
    )
    tons = left * soil.tons_per_bcy + rubble_tons
    truck_cy, truck_tons = case.number("truck_lcy"), case.number("truck_tons")
    paper.put(
        "loads",
        truck_loads(out + rubble_lcy, tons, truck_cy, truck_tons),
        "the larger of loose yards / truck yards and tons / truck tons, up",
        ("dug", bank_cy, "cy"),
        ("goes back, as bank", min(back, bank_cy), "cy"),
        ("left over, loose, concrete included", out + rubble_lcy, "cy"),
        ("weight", tons, "ton"),
        ("truck", truck_cy, "cy"),
        ("truck", truck_tons, "ton"),
    )
