"""A finding in, its level by the firm's limits out: 0 note, 1 watch, 2 plan a repair, 3 repair now, 4 emergency.

What each limit is stands in the settings; the order of words (hairline, open, loose ...) is common practice.
"""

from collections.abc import Callable

from estimator.diagnosis.case import Case
from estimator.model.line import Finding

NOTE, WATCH, PLAN, REPAIR, EMERGENCY = range(5)
WORDS = {"light": WATCH, "moderate": PLAN, "severe": REPAIR}
SOIL = frozenset({"soil seen", "void", "washing"})


def severity(finding: Finding, case: Case) -> int:
    """The level of one finding. Water seen only while somebody used water counts one less (a picture of low flow)."""
    level = LEVELS.get(finding.kind, _one)(finding, case)
    if "only in use" in finding.signs:
        level -= 1
    return max(NOTE, min(EMERGENCY, level))


def by_share(finding: Finding, case: Case, name: str) -> int | None:
    """Level by the share of the bore against the limits `name`_1_percent to `name`_3_percent; None where no share is known.

    A level begins above its limit: 25 % roots are level 2, 26 % level 3.
    """
    share = finding.share_percent(case.bore_in(finding))
    if share is None:
        return WORDS.get(finding.grade_word or "")
    return max((n for n in (WATCH, PLAN, REPAIR) if share > case.number(f"{name}_{n}_percent")), default=NOTE)


def _has(finding: Finding, *signs: str) -> bool:
    return bool(set(signs) & set(finding.signs))


def _one(finding: Finding, case: Case) -> int:
    return WATCH


def _roots(f: Finding, case: Case) -> int:
    if _has(f, "cannot pass", "no flow", "full"):
        return EMERGENCY
    level = by_share(f, case, "roots")
    level = (WATCH if _has(f, "hair", "hairline") else PLAN) if level is None else level
    return max(level, REPAIR) if _has(f, "cut yearly") else level


def _offset(f: Finding, case: Case) -> int:
    if _has(f, "cannot pass"):
        return EMERGENCY
    level = by_share(f, case, "offset")
    level = PLAN if level is None else level
    return max(level, REPAIR) if _has(f, "catches paper") else level


def _gap(f: Finding, case: Case) -> int:
    """A joint apart under the slab that shows soil runs to the ground: never less than level 3."""
    if _has(f, "washing", "void") or (_has(f, "running out", "soil seen") and case.under_slab(f.stretch)):
        return REPAIR
    wide = f.size_in is not None and f.size_in > case.number("gap_2_in")
    return PLAN if wide or _has(f, "soil seen") else WATCH


def _crack(f: Finding, case: Case) -> int:
    if _has(f, "loose", "broken") or SOIL & set(f.signs):
        return REPAIR
    if _has(f, "hairline"):
        return WATCH
    return WORDS.get(f.grade_word or "", PLAN)


def _hole(f: Finding, case: Case) -> int:
    """A hole of unknown size counts as a large one."""
    if _has(f, "void") and {"slab", "drive"} & case.zones(f.stretch):
        return EMERGENCY
    small = f.size_in is not None and f.size_in < case.number("hole_3_in")
    return PLAN if small and not SOIL & set(f.signs) else REPAIR


def _collapse(f: Finding, case: Case) -> int:
    return EMERGENCY if _has(f, "no flow", "cannot pass") and not _has(f, "still flows") else REPAIR


def _channel(f: Finding, case: Case) -> int:
    if _has(f, "gone", "broken") or SOIL & set(f.signs):
        return EMERGENCY if _has(f, "running out") else REPAIR
    if _has(f, "smooth"):
        return WATCH
    return WORDS.get(f.grade_word or "", PLAN)


def _build_up(f: Finding, case: Case) -> int:
    if _has(f, "cannot pass", "no flow", "full"):
        return EMERGENCY
    level = by_share(f, case, "scale")
    level = PLAN if level is None else level
    return max(level, REPAIR) if _has(f, "drags") else level


def _sag(f: Finding, case: Case) -> int:
    """Level 1 only when shallow and short; standing water over an inch is never level 1 (it is a quarter of a 4 in pipe)."""
    long_ft, bore_in = f.stretch.length_ft, case.bore_in(f)
    if _has(f, "never ends"):
        return WATCH
    if _has(f, "full"):
        return EMERGENCY if long_ft > case.number("sag_full_long_ft") else REPAIR
    level = by_share(f, case, "sag")
    level = PLAN if level is None else level
    if _has(f, "lens under"):
        return max(level, REPAIR)
    deep_in = (f.share_percent(bore_in) or 0.0) / 100 * bore_in
    if level == WATCH and (long_ft >= case.number("sag_short_ft") or deep_in > case.number("sag_report_in")):
        return PLAN
    return level


def _slope(f: Finding, case: Case) -> int:
    if _has(f, "flat"):
        return PLAN
    return EMERGENCY if _has(f, "long") else REPAIR


def _oval(f: Finding, case: Case) -> int:
    level = by_share(f, case, "oval")
    return EMERGENCY if _has(f, "flat") else PLAN if level is None else level


def _blocked(f: Finding, case: Case) -> int:
    if _has(f, "no flow"):
        return EMERGENCY
    return PLAN if _has(f, "soft") else REPAIR


def _intruding(f: Finding, case: Case) -> int:
    level = by_share(f, case, "intruding")
    return PLAN if level is None else level


def _fitting(f: Finding, case: Case) -> int:
    return PLAN if _has(f, "catches paper") else WATCH


def _leak(f: Finding, case: Case) -> int:
    if _has(f, "running in", "running out"):
        return REPAIR
    return WATCH if _has(f, "stain") else PLAN


LEVELS: dict[str, Callable[[Finding, Case], int]] = {
    "roots": _roots,
    "offset": _offset,
    "gap": _gap,
    "crack": _crack,
    "hole": _hole,
    "collapse": _collapse,
    "channel": _channel,
    "scale": _build_up,
    "grease": _build_up,
    "sag": _sag,
    "reverse fall": _slope,
    "backfall": _slope,
    "oval": _oval,
    "blister": lambda f, case: REPAIR,
    "blocked": _blocked,
    "intruding": _intruding,
    "utility": lambda f, case: EMERGENCY,
    "fitting": _fitting,
    "leak": _leak,
    "mud": _one,
    "insects": _one,
}
"""Mud and insects are never a repair by themselves: an opening is suspected nearby."""
