"""A need among the needs of its line in; whether renewing the whole run is no question, an option, or the only answer, out."""

from collections.abc import Sequence
from typing import Literal

from estimator.diagnosis.case import Case, Run
from estimator.diagnosis.iron import mostly_grooved
from estimator.diagnosis.roots import most_joints_have_roots, root_places
from estimator.diagnosis.tested import failed_sections
from estimator.model.judgement import Need
from estimator.model.stretch import joined

Whole = Literal["no", "option", "only"]
CLEANED_AWAY = frozenset({"scale", "grease", "blocked", "failed test", "utility"})
"""Needs that say nothing about the run's age."""


def whole_line(need: Need, needs: Sequence[Need], case: Case) -> Whole:
    """Only: fiber, iron grooved along most of the run, clay with roots at most joints, or a run that slopes back as a whole.

    Option: three structural places on the run, padded places of a share of it (settings), or several sections under the
    slab that failed their tests. Source: common practice.
    """
    if set(need.kinds) <= CLEANED_AWAY:
        return "no"
    run = case.run_at(need.stretch.middle_ft)
    on_run = [n for n in needs if not set(n.kinds) <= CLEANED_AWAY and n.stretch.touches(run.stretch)]
    if run.family == "fibre" or _runs_back(need, run):
        return "only"
    if mostly_grooved(case, run) and set(need.kinds) & {"channel", "hole", "crack", "gap", "collapse"}:
        return "only"
    if most_joints_have_roots(case, run) and "roots" in need.kinds:
        return "only"
    many = spots(on_run, case, run) >= case.number("whole_line_spots") or _system_failed(need, case)
    return "option" if many or padded_percent(on_run, case, run) >= case.number("whole_line_share_percent") else "no"


def _system_failed(need: Need, case: Case) -> bool:
    """Several sections failed their tests: replacing all of it under the slab is compared with spots (D13)."""
    return case.under_slab(need.stretch) and len(failed_sections(case)) >= case.number("test_sections_fail")


def spots(needs: Sequence[Need], case: Case, run: Run) -> int:
    """Structural places on a run; a stretch of roots counts its joints."""
    roots = root_places(case, run)
    singles = sum(1 for n in needs if "roots" not in n.kinds)
    with_roots = sum(1 for n in needs if "roots" in n.kinds)
    return singles + max(roots, with_roots)


def padded_percent(needs: Sequence[Need], case: Case, run: Run) -> float:
    """Share of a run that its places take once cut back to sound pipe, percent of its length."""
    pad_ft = _pad_ft(case, run)
    parts = [n.stretch.padded(pad_ft, pad_ft).common(run.stretch) for n in needs]
    length_ft = run.stretch.length_ft
    return 100.0 * sum(p.length_ft for p in joined(p for p in parts if p)) / length_ft if length_ft else 0.0


def _pad_ft(case: Case, run: Run) -> float:
    keys = {
        "plastic": "pad_plastic_ft",
        "iron": "pad_cast_iron_ft",
        "clay": "clay_lay_length_ft",
        "concrete": "clay_lay_length_ft",
    }
    return case.number(keys.get(run.family, "pad_other_ft"))


def _runs_back(need: Need, run: Run) -> bool:
    sloping = [f for f in need.findings if f.kind in ("reverse fall", "backfall")]
    return any("long" in f.signs or f.stretch.covers(run.stretch) for f in sloping)
