"""A need in its line in; how soon out, 0 to 4, and why; and the same of a whole line.

Its level, one more where sewage can reach people or the ground is hollow under slab or drive, one less where it is only
suspected. A leak under a slab in soil that swells, or before a lift, is never under 3. Sewage where people are is 4.
"""

from collections.abc import Sequence

from estimator.diagnosis.case import Case, opens
from estimator.diagnosis.ground import sewage_out
from estimator.diagnosis.severity import EMERGENCY, REPAIR
from estimator.model.judgement import LineUrgency, Need
from estimator.model.say import Say

HOLLOW = frozenset({"void", "washing", "soil seen"})


def urgency(need: Need, case: Case) -> int:
    """How soon one need must be seen to. Source: common practice."""
    if _reaches_people(need, case):
        return EMERGENCY
    level = need.severity
    if _hollow_above(need, case):
        level += 1
    if _only_suspected(need):
        level -= 1
    if _leaks_under_slab(need, case) and (case.job.house.expansive_soil or _lift_planned(case)):
        level = max(level, REPAIR)
    return max(0, min(EMERGENCY, level))


def because(need: Need, case: Case) -> tuple[Say, ...]:
    """What makes a need sooner or later than its trouble alone would."""
    leaks = _leaks_under_slab(need, case)
    holds = (
        (_reaches_people(need, case), Say.of("Sewage can reach people.")),
        (_hollow_above(need, case), Say.of("The ground under the floor or drive may be washed out.")),
        (leaks and bool(case.job.house.expansive_soil), Say.of("It leaks under the slab, into clay that swells.")),
        (leaks and _lift_planned(case), Say.of("It leaks under the slab, and the house is to be lifted.")),
        (_only_suspected(need), Say.of("It is only suspected so far.")),
    )
    return tuple(text for true, text in holds if true)


def line_urgency(needs: Sequence[Need], case: Case) -> LineUrgency | None:
    """The most urgent of a line's needs, with all that makes those so; None where the line has none."""
    if not needs:
        return None
    level = max(n.urgency for n in needs)
    why = (text for n in needs if n.urgency == level for text in because(n, case))
    return LineUrgency(case.line.name, level, tuple(dict.fromkeys(why)))


def _leaks(need: Need) -> bool:
    return any(opens(f) for f in need.findings) or "failed test" in need.kinds


def _reaches_people(need: Need, case: Case) -> bool:
    return _leaks(need) and sewage_out(case)


def _only_suspected(need: Need) -> bool:
    """Nothing of it was seen; a drain that was seen closed is closed, whatever it is that closes it."""
    return need.grade in ("suspected", "not inspected") and not was_seen(need)


def was_seen(need: Need) -> bool:
    return any(f.grade in ("seen", "inferred") for f in need.findings)


def _hollow_above(need: Need, case: Case) -> bool:
    """Soil was seen or mud lies in the pipe, under a slab or a drive."""
    covered = {"slab", "drive", "basement"} & case.zones(need.stretch)
    mud = any(f.stretch.touches(need.stretch) for f in case.of("mud"))
    return bool(covered) and (mud or any(HOLLOW & set(f.signs) for f in need.findings))


def _leaks_under_slab(need: Need, case: Case) -> bool:
    return _leaks(need) and case.under_slab(need.stretch)


def _lift_planned(case: Case) -> bool:
    return case.job.foundation.work == "planned"
