"""What the demo firm's settings and places say beside what was published: a number changed by mistake shows here."""

from datetime import date
from functools import cache

from estimator.knowledge.houses import TENDONS_SINCE
from estimator.tables.read import demo_folder, read_tables
from estimator.tables.tables import Tables
from tests.published.check import Check


@cache
def demo() -> Tables:
    reading = read_tables(demo_folder(), date(2026, 11, 25))
    assert reading.tables is not None
    return reading.tables


def _setting(key: str, published: float, unit: str, what: str, source: str, basis: str, within: float = 1e-9) -> Check:
    return Check(
        id=f"setting {key}",
        what=what,
        published=published,
        unit=unit,
        source=source,
        basis=basis,
        ours=lambda: demo().number(key),
        within=within,
    )  # type: ignore[arg-type]


FIRM = (
    _setting("cleanout_every_ft", 100, "ft", "cleanouts apart", "IPC 708", "read"),
    _setting("cleanout_turn_degrees", 45, "degrees", "a turn that takes a cleanout", "IPC 708", "read"),
    _setting(
        "hanger_plastic_ft",
        4,
        "ft",
        "hangers apart, plastic",
        "IRC P2605.1; 24 CFR 3280.608; IPC table 308.5",
        "read second-hand",
    ),
    _setting("lift_ft", 0.5, "ft", "one tamped layer", "IPC 306", "read"),
    _setting(
        "bedding_ft",
        4 / 12,
        "ft",
        "bedding under the pipe",
        "ASTM D2321; two city standards",
        "read second-hand",
        0.005,
    ),
    _setting("concrete_pcf", 150, "lb/cu ft", "weight of concrete", "from memory", "memory"),
    _setting("bag_cf", 0.60, "cu ft", "what an 80 lb bag fills", "from memory", "memory"),
    _setting(
        "concrete_waste_percent",
        10,
        "percent",
        "concrete ordered beyond the hole, 10 to 15",
        "a published coverage table (page not kept)",
        "read",
    ),
    _setting("resin_void_percent", 87, "percent", "hollows of a felt tube", "a saturation chart", "read"),
    _setting("resin_excess_percent", 10, "percent", "resin beyond the wall, 5 to 10", "ASTM F1216 7.2", "read"),
    _setting("liner_safety_factor", 2, "times", "safety of a liner", "ASTM F1216 design defaults", "read"),
    _setting("liner_modulus_psi", 250_000, "psi", "least modulus", "ASTM F1216 table 1", "read"),
    _setting("liner_strength_psi", 4_500, "psi", "least flexural strength", "ASTM F1216 table 1", "read"),
    _setting("liner_ovality_percent", 2, "percent", "out of round counted with", "ASTM F1216 design defaults", "read"),
    _setting(
        "liner_long_term_percent",
        50,
        "percent",
        "share of the modulus kept, 50 to 75",
        "ASTM F1216 design defaults",
        "read",
    ),
    _setting("burst_wait_h", 4, "h", "wait before a burst pipe is tied in", "a city's code for pipe bursting", "read"),
    _setting(
        "bend_radius_ods",
        27,
        "diameters",
        "bend of a fused pipe, DR 17",
        "bend radii of polyethylene pipe in the makers' handbook; a city's code for pipe bursting says 20 whatever the wall (read)",
        "memory",
    ),
    _setting(
        "locator_tolerance_percent", 10, "percent", "error of a locator's depth", "common practice", "common practice"
    ),
    _setting("locator_tolerance_min_ft", 0.5, "ft", "and never better than", "common practice", "common practice"),
)

PLACES = (
    Check(
        id="tendons",
        what="slabs built since then may have tendons",
        published=1965,
        unit="year",
        source="a contractor's page and a trade magazine: in use in the 1960s",
        basis="read second-hand",
        ours=lambda: TENDONS_SINCE,
    ),
    Check(
        id="place demo small",
        what="least fall to 2 1/2 in, a place under the IPC",
        published=0.25,
        unit="in/ft",
        source="IPC table 704.1",
        basis="read",
        ours=lambda: demo().place("demo").slope_small_in_per_ft or 0.0,
    ),
    Check(
        id="place demo mid",
        what="least fall 3 to 6 in, a place under the IPC",
        published=0.125,
        unit="in/ft",
        source="IPC table 704.1",
        basis="read",
        ours=lambda: demo().place("demo").slope_mid_in_per_ft or 0.0,
    ),
    Check(
        id="place unknown mid",
        what="least fall 3 to 6 in where nobody asked: the stricter code",
        published=0.25,
        unit="in/ft",
        source="UPC 708.0",
        basis="read second-hand",
        ours=lambda: demo().place("unknown").slope_mid_in_per_ft or 0.0,
    ),
)

SETTINGS = FIRM + PLACES
