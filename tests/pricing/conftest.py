"""Tables and takeoffs written out by hand for the two worked examples: nothing here comes from another room."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from estimator.model.stretch import Stretch
from estimator.model.work import JOB, Quantity, Repair, Takeoff
from estimator.tables import rows
from estimator.tables.tables import Tables

SETTINGS = {
    "crew_day_hours": "8",
    "crew_step_days": "0.5",
    "crew_tolerance_hours": "0.25",
    "slab_open_ft_per_day": "15",
    "inspection_wait_h": "2",
    "lead_permit_days": "2",
    "lead_locate_days": "3",
    "lead_engineer_days": "5",
    "lead_lab_days": "3",
    "lead_liner_days": "2",
    "rain_moves_days": "1",
    "inspection_moves_days": "1",
    "night_weekend_rate": "1.5",
    "factor_cap": "3",
    "price_expected_hours": "no",
    "overhead_per_crew_day": "0",
    "commission_percent": "0",
    "card_fee_percent": "0",
    "warranty_reserve_percent": "0",
    "small_parts_percent": "5",
    "round_price_to": "25",
    "unit_price_step": "1",
    "min_charge_test": "450",
    "min_charge_camera": "250",
    "present_worth_rate_percent": "3",
    "confidence_percent": "80",
    "contingency_reaches_confidence": "no",
    "payments": "deposit 10, start 30, pipe in before cover 40, done 20",
    "range_draws": "10000",
    "range_common_percent": "50",
    "range_prices_percent": "10",
    "range_unseen_percent": "25",
}
ROLES = {"lead plumber": "38", "helper": "22", "laborer": "20", "operator": "32"}
CREWS = {
    "plumbing": {"lead plumber": 1, "helper": 1},
    "tunnel": {"laborer": 3},
    "labor": {"laborer": 2},
    "excavation": {"operator": 1, "laborer": 1},
}
# item: unit, cost, waste %, pack
MATERIALS = {
    "pvc-4": ("ft", "4.20", "10", "10"),
    "wye-4": ("each", "18", "0", "1"),
    "eighth-bend-4": ("each", "9", "0", "1"),
    "coupling-4": ("each", "24", "0", "1"),
    "cleanout-4": ("each", "62", "0", "1"),
    "hanger": ("each", "9.50", "0", "1"),
    "shoring-set": ("each", "20", "0", "1"),
    "slurry": ("cy", "95", "0", "1"),
    "sand": ("ton", "28", "0", "0.5"),
    "sand-delivery": ("each", "90", "0", "0"),
    "sod": ("sf", "0.95", "0", "10"),
}
# item: unit, cost, crew
EQUIPMENT = {
    "excavator": ("day", "320", "excavation"),
    "excavator-delivery": ("each", "150", ""),
    "rammer": ("day", "75", "excavation"),
    "camera": ("each", "90", ""),
    "tunnel-kit": ("day", "60", "tunnel"),
    "slurry-pump": ("each", "150", ""),
}
SUBS = {"load": ("160", "own"), "engineer": ("450", "sub"), "permit": ("150", "pass-through")}
# task: crew, low, likely, high
PRODUCTION = {
    "daily set-up": ("", 0.75, 1.0, 1.25),
    "mobilize": ("plumbing", 1.0, 1.5, 2.5),
    "inspection wait": ("plumbing", 0.5, 1.0, 2.0),
    "camera pass": ("plumbing", 0.75, 1.0, 1.75),
    "new-pipe test": ("plumbing", 2.0, 2.5, 4.0),
    "isolate": ("plumbing", 0.75, 1.0, 1.5),
    "pothole": ("excavation", 0.5, 1.0, 1.5),
    "machine dig": ("excavation", 0.08, 0.12, 0.25),
    "hand dig": ("labor", 0.9, 1.3, 2.2),
    "machine backfill": ("excavation", 0.15, 0.25, 0.4),
    "sod": ("excavation", 0.01, 0.015, 0.025),
    "pipe in trench": ("plumbing", 0.08, 0.12, 0.20),
    "pipe in tunnel": ("plumbing", 0.15, 0.25, 0.45),
    "coupling": ("plumbing", 0.25, 0.35, 0.60),
    "branch": ("plumbing", 0.75, 1.0, 1.75),
    "cleanout": ("plumbing", 0.5, 0.75, 1.5),
    "tunnel dig": ("tunnel", 0.9, 1.15, 1.9),
    "tunnel backfill": ("tunnel", 0.35, 0.50, 0.80),
}
FACTORS = [("tunnel", ("branch", "coupling"), 1.5), ("inside_work", ("daily set-up",), 1.3)]
# item: class, methods, quantity, unit, billed, recipe rows (part, ref, quantity, per, crew)
ITEMS: dict[str, tuple[str, str, str, str, str, list[tuple[str, str, str, float, str]]]] = {
    "mobilize": (
        "reach", JOB, "jobs", "job", "lump",
        [("labor", "mobilize", "", 1, ""), ("equipment", "excavator-delivery", "excavator_deliveries", 1, "")],
    ),
    "permit": ("pipe", JOB, "permits", "each", "lump", [("fee", "permit", "", 1, "")]),
    "inspection": ("pipe", JOB, "inspections", "each", "lump", [("labor", "inspection wait", "", 1, "")]),
    "film after": (
        "find", JOB, "films_after", "each", "lump",
        [("labor", "camera pass", "", 1, ""), ("equipment", "camera", "", 1, "")],
    ),
    "yard dig": (
        "reach", "yard spot", "dig_bcy", "cy", "lump",
        [
            ("labor", "pothole", "potholes", 1, ""),
            ("labor", "machine dig", "", 1, ""),
            ("equipment", "excavator", "", 1, ""),
        ],
    ),
    "new pipe in trench": (
        "pipe", "yard spot", "pipe_trench_ft", "ft", "measured",
        [
            ("labor", "pipe in trench", "", 1, ""),
            ("labor", "coupling", "end_couplings", 1, ""),
            ("material", "pvc-{size}", "pipe_buy_ft", 1, ""),
            ("material", "coupling-{size}", "end_couplings", 1, ""),
        ],
    ),
    "fill": (
        "put back", "yard spot", "backfill_ccy", "cy", "lump",
        [
            ("labor", "machine backfill", "", 1, ""),
            ("equipment", "rammer", "", 1, ""),
            ("equipment", "excavator", "", 1, ""),
            ("material", "sand", "sand_tons", 1, ""),
            ("material", "sand-delivery", "sand_delivery", 1, ""),
            ("sub", "load", "loads", 1, ""),
        ],
    ),
    "sod": (
        "put back", "yard spot", "sod_sf", "sq ft", "measured",
        [("labor", "sod", "", 1, ""), ("material", "sod", "", 1, "")],
    ),
    "tunnel": (
        "reach", "tunnel", "tunnel_ft", "ft", "lump",
        [
            ("labor", "tunnel dig", "tunnel_ft_to_20", 1, ""),
            ("labor", "tunnel dig", "tunnel_ft_20_to_40", 1.15, ""),
            ("labor", "hand dig", "pit_bcy", 1, "tunnel"),
            ("equipment", "tunnel-kit", "", 1, ""),
            ("material", "shoring-set", "shoring_sets", 1, ""),
            ("sub", "engineer", "engineer_letters", 1, ""),
        ],
    ),
    "new pipe in tunnel": (
        "pipe", "tunnel", "pipe_tunnel_ft", "ft", "measured",
        [
            ("labor", "pipe in tunnel", "", 1, ""),
            ("labor", "coupling", "end_couplings_tunnel", 1, ""),
            ("labor", "cleanout", "cleanouts", 1, ""),
            ("labor", "new-pipe test", "tests", 1, ""),
            ("material", "pvc-{size}", "pipe_buy_ft", 1, ""),
            ("material", "coupling-{size}", "end_couplings_tunnel", 1, ""),
            ("material", "cleanout-{size}", "cleanouts", 1, ""),
            ("material", "hanger", "hangers", 1, ""),
        ],
    ),
    "side drains": (
        "pipe", "tunnel", "branches_tunnel", "each", "measured",
        [
            ("labor", "branch", "", 1, ""),
            ("material", "wye-{size}", "wyes", 1, ""),
            ("material", "eighth-bend-{size}", "eighth_bends", 1, ""),
            ("material", "coupling-{size}", "", 1, ""),
        ],
    ),
    "section test": ("find", "isolation test", "isolation_tests", "each", "measured", [("labor", "isolate", "", 1, "")]),
    "whole test": ("find", "visit", "whole_tests", "each", "lump", [("labor", "isolate", "", 1, "")]),
    "film": ("find", "visit", "films_before", "each", "lump", [("labor", "isolate", "", 1, "")]),
    "fill the tunnel": (
        "put back", "tunnel", "tunnel_ft", "ft", "lump",
        [
            ("labor", "tunnel backfill", "", 1, ""),
            ("equipment", "tunnel-kit", "", 1, ""),
            ("equipment", "slurry-pump", "pits", 1, ""),
            ("material", "slurry", "slurry_cy", 1, ""),
            ("sub", "load", "loads", 1, ""),
        ],
    ),
}  # fmt: skip
METHODS = {"yard spot": ("2500", "5"), "tunnel": ("6500", "10"), "isolation test": ("650", "2"), "visit": ("350", "2")}
PRICING = {
    "own": ("40", "30", True),
    "sub": ("25", "15", False),
    "allowance": ("25", "15", False),
    "pass-through": ("0", "0", False),
}


def _place(**changes: Any) -> rows.PlaceRow:
    empty: dict[str, Any] = {
        name: None
        for name, f in rows.PlaceRow.__dataclass_fields__.items()
        if name not in rows.TableRow.__dataclass_fields__
    }
    empty |= {
        "place": "demo",
        "text": "Demo County (invented)",
        "tax_kind": "contractor pays",
        "tax_percent": Decimal("8.25"),
        "deposit_cap_percent": Decimal(33),
    }
    empty |= {"permit_item": ("permit",), "code": "IPC", "code_edition": "", "source": "invented"}
    return rows.PlaceRow(**(empty | changes))


def _tables(**changes: Mapping[str, str]) -> Tables:
    """The hand-made tables; `settings={...}` changes settings."""
    settings = SETTINGS | dict(changes.get("settings", {}))
    made: dict[str, list[rows.TableRow]] = {name: [] for name in rows.TABLES}
    made["settings"] = [rows.Setting(key=k, value=v, unit="", min=None, max=None, why="") for k, v in settings.items()]
    made["roles"] = [rows.Role(role=r, wage=Decimal(w), burden_percent=Decimal(32)) for r, w in ROLES.items()]
    made["crews"] = [
        rows.CrewMember(crew=c, role=r, count=Decimal(n)) for c, roles in CREWS.items() for r, n in roles.items()
    ]
    made["materials"] = [
        rows.Material(
            item=i, text=i, size="", unit=u, cost=Decimal(c), waste_percent=Decimal(w), pack=Decimal(p), taxable=True,
            small_parts=True, price_day=None, supplier="", part_no="", good_until=None,
        )
        for i, (u, c, w, p) in MATERIALS.items()
    ]  # fmt: skip
    made["equipment"] = [
        rows.Equipment(item=i, text=i, unit=u, cost=Decimal(c), crew=w, min_days=Decimal(0), own=True, price_day=None)
        for i, (u, c, w) in EQUIPMENT.items()
    ]
    made["subs_and_fees"] = [
        rows.SubOrFee(item=i, text=i, unit="each", cost=Decimal(c), price_class=p, price_day=None, valid_until=None)
        for i, (c, p) in SUBS.items()
    ]
    made["production"] = [
        rows.Production(task=t, unit="", crew=c, low=lo, likely=li, high=hi, covers="")
        for t, (c, lo, li, hi) in PRODUCTION.items()
    ]
    made["factors"] = [rows.Factor(fact=f, tasks=t, multiplier=m) for f, t, m in FACTORS]
    for order, (item, (work_class, method, quantity, unit, billed, recipe)) in enumerate(ITEMS.items()):
        made["work_items"].append(
            rows.WorkItem(
                item=item, work_class=work_class, methods=(method,), when=(), quantity=quantity, unit=unit, billed=billed,
                order=order, text_en=item, text_es=item,
            )
        )  # fmt: skip
        made["recipes"] += [
            rows.Recipe(work_item=item, part=p, ref=r, quantity=q, per=per, crew=crew, when=())
            for p, r, q, per, crew in recipe
        ]
    words = ("warranty_en", "warranty_es", "title_en", "title_es", "under_en", "under_es", "risk_en", "risk_es")
    made["methods"] = [
        rows.MethodRow(
            method=m, min_charge=Decimal(least), contingency_percent=Decimal(c), life_low=50, life_high=80,
            **dict.fromkeys(words, ""),
        )
        for m, (least, c) in METHODS.items()
    ]  # fmt: skip
    made["pricing"] = [
        rows.PriceClass(price_class=c, margin_percent=Decimal(m), floor_margin_percent=Decimal(f), contingency=k)
        for c, (m, f, k) in PRICING.items()
    ]
    made["contingency"] = [
        rows.Contingency(fact="depth_unlocated", percent=Decimal(5)),
        rows.Contingency(fact="soil_unknown", percent=Decimal(5)),
    ]
    made["places"] = [_place()]
    numbered = {name: tuple(replace(row, cell_row=n) for n, row in enumerate(r, 2)) for name, r in made.items()}
    return Tables(rows=numbered, day=date(2026, 11, 18))


def _takeoff(method: str, facts: tuple[str, ...] = (), repair: str = "", **quantities: float) -> Takeoff:
    """A takeoff with these quantities and nothing else."""
    return Takeoff(
        repair=Repair(id=repair or method, method=method, line="main", stretch=Stretch(0, 10)),
        quantities=tuple(Quantity(name=n, value=v, unit="") for n, v in quantities.items()),
        facts=frozenset(facts),
        size="4",
    )


@pytest.fixture(scope="session")
def make_tables() -> Callable[..., Tables]:
    return _tables


@pytest.fixture(scope="session")
def make_place() -> Callable[..., rows.PlaceRow]:
    return _place


@pytest.fixture(scope="session")
def make_takeoff() -> Callable[..., Takeoff]:
    return _takeoff


@pytest.fixture(scope="session")
def tables() -> Tables:
    return _tables()


@pytest.fixture(scope="session")
def place() -> rows.PlaceRow:
    return _place()


@pytest.fixture(scope="session")
def job_takeoff() -> Takeoff:
    return _takeoff(JOB, jobs=1, permits=1, inspections=1, films_after=1)


@pytest.fixture(scope="session")
def maple(job_takeoff: Takeoff) -> tuple[Takeoff, ...]:
    """9 ft of clay pipe in the yard: 11.0 × 2.4 × 4.0 ft dug, as docs/worked-examples.md works it out."""
    dig = _takeoff(
        "yard spot",
        dig_bcy=11.0 * 2.4 * 4.0 / 27,
        excavator_days=1,
        potholes=1,
        native_ccy=(105.6 - 31.812) / 27,
        pipe_zone_ccy=1.1333,
        backfill_ccy=(105.6 - 31.812) / 27 + 1.1333,
        loads=1,
        sand_tons=1.1333 * 1.15 * 1.35,
        sand_delivery=1,
        sod_sf=60,
        pipe_trench_ft=9,
        pipe_buy_ft=9,
        end_couplings=2,
    )
    machine = Quantity(name="excavator_deliveries", value=1, unit="each")
    return (dig, replace(job_takeoff, quantities=(*job_takeoff.quantities, machine)))


@pytest.fixture(scope="session")
def pecan(job_takeoff: Takeoff) -> tuple[Takeoff, ...]:
    """29 ft of iron pipe under a slab, reached by tunnel, as docs/worked-examples.md works it out."""
    tunnel = _takeoff(
        "tunnel",
        ("tunnel", "under_slab", "engineer", "slurry_backfill"),
        tunnel_ft=29,
        tunnel_ft_to_20=20,
        tunnel_ft_20_to_40=9,
        pit_bcy=56 / 27,
        pits=1,
        shoring_sets=6,
        hangers=11,
        slurry_cy=2.57,
        loads=1,
        engineer_letters=1,
        pipe_tunnel_ft=29,
        pipe_buy_ft=29,
        branches_tunnel=3,
        wyes=3,
        eighth_bends=3,
        end_couplings_tunnel=2,
        cleanouts=1,
        tests=1,
    )
    return (tunnel, job_takeoff)
