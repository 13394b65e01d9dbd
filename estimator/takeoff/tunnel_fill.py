"""A tunnel dug in; what goes back into it, four ways, and what is left to haul, out."""

import math

from estimator.knowledge.hydrostatics import FLOATS_SOURCE as FLOATS
from estimator.knowledge.hydrostatics import PVC_LB_PER_FT, WET_FILL_PCF, uplift_lb_per_ft
from estimator.takeoff.case import Case
from estimator.takeoff.haul import export
from estimator.works.depth import INCHES_PER_FT, outside_ft

FILLS = {
    "native": "native_backfill",
    "slurry": "slurry_backfill",
    "flowable": "flowable_backfill",
    "open": "left_open",
}


def fill(case: Case, bank: float, pit_bank: float) -> None:
    """What goes back: four ways, by the firm's setting; the pit is always filled with native soil."""
    paper, kind = case.paper, case.word("tunnel_fill", *FILLS)
    paper.facts.add(FILLS[kind])
    share = {"native": 1.0, "slurry": 1 - case.number("slurry_share_percent") / 100}.get(kind, 0.0)
    native_in = share * bank
    native = paper.put(
        "native_ccy",
        native_in + pit_bank,
        "share of the tunnel + all of the pit",
        ("tunnel", bank, "cy"),
        ("share", share * 100, "percent"),
        ("pit", pit_bank, "cy"),
    )
    paper.put(
        "tunnel_native_ccy", native_in, "tunnel x share", ("tunnel", bank, "cy"), ("share", share * 100, "percent")
    )
    _pumped(case, kind, bank, native_in)
    if kind == "native":
        paper.warn("native fill packed by hand settles: the tunnel is not a support")
    if kind == "open":
        paper.warn("a tunnel left open needs a door, drainage and the engineer's word")
    export(case, bank + pit_bank, native, case.soil.shrink_hand)


def _pumped(case: Case, kind: str, bank: float, native_in: float) -> None:
    """Cement slurry over native soil, or flowable fill alone; an empty pipe floats in either."""
    paper = case.paper
    if kind == "slurry":
        paper.put(
            "slurry_cy",
            bank - native_in,
            "what native soil leaves",
            ("tunnel", bank, "cy"),
            ("native", native_in, "cy"),
        )
        if math.ceil(bank - native_in) < case.number("short_load_under_cy"):
            paper.put("short_loads", 1, "fewer whole yards than a full load", ("slurry", bank - native_in, "cy"))
    if kind == "flowable":
        over = 100 + case.number("flowable_over_percent")
        paper.put(
            "flowable_cy",
            bank * over / 100,
            "tunnel x allowance",
            ("tunnel", bank, "cy"),
            ("allowance", over, "percent"),
        )
        paper.put("short_loads", 1, "a part load is charged")
    if kind in ("slurry", "flowable"):
        _uplift(case)


def _uplift(case: Case) -> None:
    """What an empty pipe pushes up with in wet fill, so that the crew fills it and holds it down."""
    outside = outside_ft(case) * INCHES_PER_FT
    own = next((lb for size, lb in sorted(PVC_LB_PER_FT.items()) if size >= case.bore_in), max(PVC_LB_PER_FT.values()))
    case.paper.put(
        "uplift_lb_per_ft",
        uplift_lb_per_ft(outside, own),
        "pi/4 x outside² / 144 x weight of the fill - weight of the pipe",
        ("outside of the pipe", outside, "in"),
        ("wet fill", WET_FILL_PCF, "lb/cu ft"),
        ("the pipe's own weight", own, "lb/ft"),
        source=FLOATS,
    )
