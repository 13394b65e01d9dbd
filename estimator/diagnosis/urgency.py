"""A need in its line in; how soon out, 0 to 4.

Its level, one more where sewage can reach people or the ground is hollow under slab or drive, one less where it is only
suspected. A leak under a slab in soil that swells, or before a lift, is never under 3. Sewage where people are is 4.
"""

from estimator.diagnosis.case import Case, opens
from estimator.diagnosis.ground import sewage_out
from estimator.diagnosis.severity import EMERGENCY, REPAIR
from estimator.model.judgement import Need

HOLLOW = frozenset({"void", "washing", "soil seen"})


def urgency(need: Need, case: Case) -> int:
    """How soon one need must be seen to. Source: common practice."""
    leaks = any(opens(f) for f in need.findings) or "failed test" in need.kinds
    if leaks and sewage_out(case):
        return EMERGENCY
    level = need.severity
    if _hollow_above(need, case):
        level += 1
    if need.grade in ("suspected", "not inspected"):
        level -= 1
    if leaks and _soaks_the_soil(need, case):
        level = max(level, REPAIR)
    return max(0, min(EMERGENCY, level))


def _hollow_above(need: Need, case: Case) -> bool:
    """Soil was seen or mud lies in the pipe, under a slab or a drive."""
    covered = {"slab", "drive", "basement"} & case.zones(need.stretch)
    mud = any(f.stretch.touches(need.stretch) for f in case.of("mud"))
    return bool(covered) and (mud or any(HOLLOW & set(f.signs) for f in need.findings))


def _soaks_the_soil(need: Need, case: Case) -> bool:
    swells = bool(case.job.house.expansive_soil) or case.job.foundation.work == "planned"
    return swells and case.under_slab(need.stretch)


def line_urgency(needs: tuple[Need, ...], line: str) -> int:
    """The most urgent need of a line; 0 where it has none."""
    return max((n.urgency for n in needs if n.line == line), default=0)
