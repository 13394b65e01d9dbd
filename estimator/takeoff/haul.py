"""Bank yards dug and put back in; loose yards, the heap, what is hauled away and in how many loads, out.

Swell turns bank into loose for the heap and the truck; shrink turns bank into fill. Never both on one quantity.
"""

from estimator.knowledge.excavation import SPOIL_BACK_FT
from estimator.takeoff.case import Case
from estimator.takeoff.working import CUBIC_FT_PER_CY, Given, cubic_yards, up

POUNDS_PER_TON = 2000.0


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
    _loads(
        case,
        out + rubble_lcy,
        left * soil.tons_per_bcy + rubble_tons,
        ("dug", bank_cy, "cy"),
        ("goes back, as bank", min(back, bank_cy), "cy"),
    )


def _loads(case: Case, loose_cy_: float, tons: float, *given: Given) -> None:
    truck_cy, truck_tons = case.number("truck_lcy"), case.number("truck_tons")
    case.paper.put(
        "loads",
        truck_loads(loose_cy_, tons, truck_cy, truck_tons),
        "the larger of loose yards / truck yards and tons / truck tons, up",
        *given,
        ("left over, loose, concrete included", loose_cy_, "cy"),
        ("weight", tons, "ton"),
        ("truck", truck_cy, "cy"),
        ("truck", truck_tons, "ton"),
    )


def with_flatwork(case: Case) -> None:
    """Walk and driveway taken up ride along with the soil and the slab: the loads are counted anew with them."""
    paper, soil = case.paper, case.soil
    cubic_ft = sum(paper.value(f"{what}_sf") for what in ("flatwork", "drive", "street", "asphalt")) * case.number(
        "flatwork_thickness_ft"
    )
    if not cubic_ft:
        return
    weight, bulk = case.number("concrete_pcf"), case.number("concrete_swell_percent")
    tons = paper.put(
        "flatwork_tons",
        cubic_ft * weight / POUNDS_PER_TON,
        "area x thickness x weight / 2000",
        ("concrete", cubic_ft, "cu ft"),
        ("weight", weight, "lb/cu ft"),
    )
    broken = paper.put(
        "flatwork_haul_lcy",
        loose_cy(cubic_yards(cubic_ft), bulk),
        "area x thickness / 27 x (1 + bulking)",
        ("concrete", cubic_ft, "cu ft"),
        ("bulking", bulk, "percent"),
    )
    out = paper.value("export_lcy")
    bank_left = out / (1 + soil.swell_percent / 100)
    _loads(
        case,
        out + broken + paper.value("slab_haul_lcy"),
        bank_left * soil.tons_per_bcy + tons + paper.value("slab_tons"),
        ("soil left over, loose", out, "cy"),
        ("walk and driveway, broken", broken, "cy"),
    )
