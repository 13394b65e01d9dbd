"""A few words in, the facts of a made-up stretch out: for the examples on top of every rule and for tests."""

import re
from dataclasses import replace
from datetime import date
from functools import cache
from typing import Any

from estimator.model.job import House, Leg, Reroute, Site, Wishes
from estimator.model.judgement import Need
from estimator.model.line import FINDING_WORDS, Finding, Mark
from estimator.model.opening import Opening, Span
from estimator.model.profile import Beam, Branch
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.work import Quantity, Repair, Takeoff
from estimator.model.works import Burst, Laid, Left, Lined, Works
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.tables.tables import Tables

_DAY = date(2026, 11, 18)


@cache
def demo_tables() -> Tables:
    """The demo price tables as of one day."""
    from estimator.tables.read import demo_folder, read_tables

    reading = read_tables(demo_folder(), _DAY)
    if reading.tables is None:
        raise RuntimeError("; ".join(str(p) for p in reading.problems))
    return reading.tables


def limits(place: str = "demo", **settings: str) -> Limits:
    """The demo settings and place, with some settings changed."""
    tables = demo_tables()
    return Limits(tables.with_settings(settings) if settings else tables, place)


def place(name: str = "demo", **row: Any) -> Limits:
    """The demo settings in a place whose row says this instead."""
    tables = demo_tables()
    here = replace(tables.place(name), **row)
    rows = {**tables.rows, "places": (here,)}
    return Limits(Tables(rows, tables.day, tables.fingerprint, tables.source), name)


def finding(text: str) -> Finding:
    """`8-44 channel 60% soil seen`, `sag 45%`, `hole 3in`, `crack at 5-7`: a finding; station 10 where none is given."""
    where, at_ft = re.match(r"([\d.]+)(?:-([\d.]+))?\s+", text), Stretch(10.0, 10.0)
    if where:
        low = float(where[1])
        at_ft, text = Stretch(low, float(where[2] or low)), text[where.end() :]
    kind = max((k for k in FINDING_WORDS if text.startswith(k)), key=len)
    rest = text[len(kind) :]
    made: dict[str, Any] = {}
    for pattern, name in ((r"([\d.]+)%", "percent"), (r"([\d.]+)in\b", "size_in"), (r"at (\d+)-(\d+)", "clock")):
        if match := re.search(pattern, rest):
            numbers = tuple(float(g) for g in match.groups())
            made[name] = numbers[0] if name == "size_in" else (*numbers, *numbers)[:2]
            rest = rest.replace(match[0], "")
    grade = next((g for g in ("suspected", "inferred", "not inspected") if g in rest), "seen")
    signs = tuple(s.strip() for s in (rest if grade == "seen" else rest.replace(grade, "")).split(",") if s.strip())
    made["clock"] = tuple(int(c) for c in made["clock"]) if "clock" in made else None
    return Finding(id=f"{kind}@{at_ft.from_ft:g}", kind=kind, stretch=at_ft, signs=signs, grade=grade, **made)  # type: ignore[arg-type]


def need(kind: str, severity: int = 3, at: Stretch | None = None, **more: Any) -> Need:
    """A need of one kind."""
    made = {"kinds": (kind,), "grade": "seen", "must": severity >= 3, "findings": (), "urgency": severity, **more}
    at = at or Stretch(10.0, 10.0)
    return Need(id=f"main@{at.from_ft:g}", line="main", stretch=at, severity=severity, **made)


def mark(word: str, at_ft: float = 10.0, **more: Any) -> Mark:
    return Mark(word=word, stretch=Stretch(at_ft, at_ft), **more)


def branch(size_in: float = 3.0, live: str | None = "live", **more: Any) -> Branch:
    made: dict[str, Any] = {
        "station_ft": 10.0,
        "side": "left",
        "proven": True,
        "name": None,
        "away_ft": 0.0,
        "out_of_reach": False,
    }
    return Branch(size_in=size_in, live=live, mark=mark("branch"), **{**made, **more})


def beam(at_ft: float = 10.0, wide_ft: float = 1.0, bottom_ft: float = 2.0, through: bool = False) -> Beam:
    return Beam(Stretch(at_ft, at_ft + wide_ft), bottom_ft, through, mark("beam", at_ft))


def reroute(
    yard_ft: float = 0.0, wall_ft: float = 0.0, attic_ft: float = 0.0, fall_in: float = 24.0, **more: Any
) -> Reroute:
    """A way round for the main, with legs of these lengths and this fall, invert to invert."""
    legs = (("yard", yard_ft), ("wall", wall_ft), ("attic", attic_ft))
    made = tuple(Leg(zone=zone, length_ft=feet) for zone, feet in legs if feet)
    return Reroute(name="round the east side", replaces_line="main", legs=made, fall_available_ft=fall_in / 12, **more)


NEW_IN_PLACE = ("yard spot", "slab spot", "tunnel", "break-through", "trench", "crawl replace")


def works(method: str, at: Stretch, zones: tuple[str, ...], size_in: float, opening: dict[str, Any]) -> Works:
    """What a way does over a made-up stretch: one opening of it, as deep and as wide as is said in `opening`."""
    kinds = {"yard spot": "pit", "look and see": "pit", "trench": "trench", "slab spot": "floor opening"}
    kinds |= {"break-through": "floor opening", "tunnel": "tunnel", "burst": "pit"}
    if method == "look and see" and {"slab", "basement"} & set(zones):
        kinds["look and see"] = "floor opening"
    named: dict[str, Any] = {
        "kind": kinds.get(method), "line": "main", "along": at, "name": Say.of("the trench from {low} to {high}", low=at.from_ft, high=at.to_ft),
        "depth_ft": 3.0, "bottom_width_ft": 2.4, "top_width_ft": 2.4, "spans": tuple(Span(at, z) for z in zones), **opening,
    }  # fmt: skip
    if method == "tunnel":
        named["spans"] = tuple(Span(at, z) for z in zones if z == "slab")
    pipe: dict[str, Any] = {"line": "main", "stretch": at, "size_in": size_in}
    return Works(
        line="main",
        openings=(Opening(**named),) if named["kind"] else (),
        laid=(Laid(**pipe, hung=method in ("tunnel", "crawl replace")),) if method in NEW_IN_PLACE else (Laid(line="", stretch=at, size_in=size_in),) if method == "reroute" else (),
        lined=(Lined(**pipe, pieces_ft=(4.0,) if method == "sectional liner" else ()),) if method in ("reline", "sectional liner") else (),
        burst=(Burst(**pipe),) if method == "burst" else (),
        piece=method in ("yard spot", "slab spot", "sectional liner"),
        tested=(at,) if method == "isolation test" else (),
        left=(Left(line="main", stretch=at, how="capped"),) if method in ("abandon", "reroute") else (),
        cleans=(at,) if method in ("clean", "reline", "sectional liner") else (),
    )  # fmt: skip


def stretch(*findings: str, method: str = "reline", **more: Any) -> StretchFacts:
    """A stretch 0–30 ft of a 4 in clay main in the yard of a 1967 slab house, with these findings and whatever else is said.

    `house`, `site` and `wishes` may be given as dicts of what differs.
    """
    proof = "none, invented drawing" if more.get("house", {}).get("floor", "slab") == "slab" else ""
    house = House(floor="slab", jurisdiction="demo", built=1967, soil="firm clay", tendons=proof)
    seen = tuple(finding(text) for text in findings)
    made: dict[str, Any] = {
        "stretch": Stretch(0.0, 30.0), "extent": Stretch(0.0, 60.0), "zones": ("yard",), "pipes": ("clay",),
        "sizes_in": (4.0,), "depth_ft": 3.0, "soils": ("firm clay",), "cleanouts_ft": (0.0,),
        "findings": seen, "line_findings": seen, **more,
    }  # fmt: skip
    called = {"opening_ft": "depth_ft", "bottom_ft": "bottom_width_ft", "top_ft": "top_width_ft"}
    opened = {called.get(name, name): made.pop(name) for name in OPENING_WORDS if name in made}
    if isinstance(depth := made["depth_ft"], float):
        opened.setdefault("depth_ft", depth)
    opened.setdefault("depth_known", made["depth_ft"] is not None)
    made.setdefault("works", works(method, made["stretch"], made["zones"], max(made["sizes_in"]), opened))
    made.setdefault("line_marks", made.get("marks", ()))
    made["house"] = replace(house, **more.get("house", {}))
    made["site"] = replace(Site(), **more.get("site", {}))
    made["wishes"] = replace(Wishes(), **more.get("wishes", {}))
    return StretchFacts(line="main", method=method, **made)


def measured(safe_depth_ft: float, method: str = "trench", facts: tuple[str, ...] = (), **more: Any) -> Measured:
    """A repair measured with this depth (tolerance counted), and any other quantities by name, such as tunnel_ft=25.1."""
    amounts = {"safety_depth_ft": safe_depth_ft, **{k: more.pop(k) for k in list(more) if k in QUANTITIES_USED}}
    quantities = tuple(Quantity(name=name, value=value, unit="") for name, value in amounts.items())
    wide, top = amounts.get("dig_width_ft"), amounts.get("dig_top_width_ft")
    opened = {"opening_ft": safe_depth_ft, **({"bottom_ft": wide} if wide else {}), **({"top_ft": top} if top else {})}
    at = stretch(method=method, **opened, **more)
    repair = Repair(id="r1", method=method, line="main", stretch=at.stretch)
    return Measured(repair, Takeoff(repair=repair, quantities=quantities, facts=frozenset(facts)), at)


def dug(safe_depth_ft: float, method: str = "trench", **more: Any) -> StretchFacts:
    """The facts of a stretch whose opening is this deep, the locator's tolerance counted."""
    return measured(safe_depth_ft, method, **more).at


OPENING_WORDS = ("held_by", "wet", "assumed", "opening_ft", "bottom_ft", "top_ft", "depth_known")
"""What may be said of the opening of a made-up stretch, beside its depth."""
QUANTITIES_USED = (
    "dig_width_ft", "dig_top_width_ft", "tunnel_ft", "pits", "pit_depth_ft", "tunnel_mouth_height_ft", "tunnel_face_height_ft", "burst_entry_ft",
)  # fmt: skip
