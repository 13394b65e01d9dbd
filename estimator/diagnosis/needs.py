"""A line's findings in; the bare stretches that must or may be repaired, with level, urgency and how sure, out.

Pads, whole joints and merged digs hang on the method and are the scopes' business. Findings that touch are one need; dirt
in the pipe (scale, grease) and dips are needs of their own, unless the ground settled and all of it broke there (D23).
Scale that hides the pipe must come off, whatever its level: nothing under it can be judged before (D07).
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from estimator.diagnosis.case import Case
from estimator.diagnosis.ground import settled_places
from estimator.diagnosis.iron import heavy_scale
from estimator.diagnosis.severity import REPAIR, WATCH, severity
from estimator.diagnosis.tested import Section, leaks_in_the_test, not_located
from estimator.diagnosis.urgency import urgency
from estimator.diagnosis.whole_line import whole_line
from estimator.model.judgement import Evidence, Need
from estimator.model.line import Finding, Grade
from estimator.model.stretch import hull

GROUPS: dict[str, str] = {
    **dict.fromkeys(("scale", "grease"), "build-up"),
    **dict.fromkeys(("sag", "reverse fall", "backfall"), "dip"),
    **dict.fromkeys(("mud", "insects"), "sign"),
    "utility": "utility",
}
"""Kinds that are needs of their own; every other kind is trouble of the pipe itself."""

HELD_BACK = "held back"

SURE: tuple[Grade, ...] = ("seen", "inferred", "suspected", "not inspected")


def needs_of(case: Case, evidence: Sequence[Evidence]) -> tuple[Need, ...]:
    """The needs of one line, in order of station. Ids are line@station, with the kind added where two would be alike."""
    settled = settled_places(case)
    in_settled = {f.id for _, found in settled for f in found}
    made = [_need(case, found, evidence) for _, found in settled]
    for group in ("pipe", "dip", "build-up", "utility"):
        rest = [f for f in case.line.findings if group_of(f) == group and f.id not in in_settled]
        made += [_need(case, found, evidence) for found in touching(f for f in rest if severity(f, case) >= WATCH)]
    made += [_leak_not_located(case, section, evidence) for section in not_located(case)]
    ordered = sorted(made, key=lambda n: (n.stretch.from_ft, n.stretch.to_ft))
    whole = [replace(n, whole_line=whole_line(n, ordered, case)) for n in ordered]
    return _named(whole)


def group_of(finding: Finding) -> str:
    """The group its need belongs to; water that never ends is held back further down and no dip to repair (D03)."""
    held_back = finding.kind == "sag" and "never ends" in finding.signs
    return HELD_BACK if held_back else GROUPS.get(finding.kind, "pipe")


def touching(findings: Iterable[Finding]) -> tuple[tuple[Finding, ...], ...]:
    """Findings in groups that touch each other, in order of station."""
    out: list[list[Finding]] = []
    reach = float("-inf")
    for finding in sorted(findings, key=lambda f: (f.stretch.from_ft, f.stretch.to_ft)):
        if out and finding.stretch.from_ft <= reach:
            out[-1].append(finding)
        else:
            out.append([finding])
            reach = float("-inf")
        reach = max(reach, finding.stretch.to_ft)
    return tuple(tuple(group) for group in out)


def _need(case: Case, findings: Sequence[Finding], evidence: Sequence[Evidence]) -> Need:
    stretch = hull(f.stretch for f in findings)
    level = max(severity(f, case) for f in findings)
    must = int(case.number("must_repair_severity"))
    if set(findings) & set(leaks_in_the_test(case)):
        level = max(level, REPAIR)
    if any(case.family_at(f) == "fibre" for f in findings):
        level = max(level, must)
    kinds = dict.fromkeys(f.kind for f in findings)
    if any(f.kind == "roots" for f in findings):
        kinds["opening"] = None
    hidden = [f for f in heavy_scale(case) if f in findings]
    worst = [f for f in findings if severity(f, case) == max(severity(g, case) for g in findings)]
    need = Need(
        id="",
        line=case.line.name,
        stretch=stretch,
        kinds=tuple(kinds),
        findings=tuple(findings),
        severity=level,
        urgency=0,
        grade=_grade(worst),
        must=level >= must or bool(hidden),
        because=tuple(dict.fromkeys(e.rule for e in evidence if set(e.findings) & {f.id for f in findings})),
    )
    return replace(need, urgency=urgency(need, case))


def _grade(worst: Sequence[Finding]) -> Grade:
    """As sure as the surest of the worst findings; what closes the pipe unseen, or stops all flow, is only suspected (D19)."""
    if all(
        (f.kind == "blocked" and "soft" not in f.signs) or (f.kind == "collapse" and "no flow" in f.signs)
        for f in worst
    ):
        return "suspected"
    return min((f.grade for f in worst), key=SURE.index)


TEST_READINGS = ("test-fails-camera-clean", "section-fails-nothing-seen")


def _leak_not_located(case: Case, section: Section, evidence: Sequence[Evidence]) -> Need:
    """A section failed and nothing seen explains it: something leaks there, nobody knows where."""
    must = int(case.number("must_repair_severity"))
    need = Need(
        id="",
        line=case.line.name,
        stretch=section.at or case.profile.extent,
        kinds=("leak", "failed test"),
        findings=(),
        severity=must,
        urgency=0,
        grade="suspected",
        must=True,
        because=tuple(e.rule for e in evidence if e.rule in TEST_READINGS),
    )
    return replace(need, urgency=urgency(need, case))


def _named(needs: Iterable[Need]) -> tuple[Need, ...]:
    out: list[Need] = []
    for need in needs:
        name = f"{need.line}@{round(need.stretch.from_ft, 1):g}"
        if any(name == n.id for n in out):
            name = f"{name} {need.kinds[0]}"
        while any(name == n.id for n in out):
            name += "+"
        out.append(replace(need, id=name))
    return tuple(out)
