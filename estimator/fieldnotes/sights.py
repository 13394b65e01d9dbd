"""Sights of findings in the order of the passes come in; one finding for each thing, with its history, goes out."""

from collections.abc import Callable, Iterable
from dataclasses import replace

from estimator.fieldnotes.drafts import NEEDS_AMOUNT, SAYS_HOW_MUCH
from estimator.fieldnotes.limits import Limits
from estimator.fieldnotes.words import ALL_SIGNS, UTILITIES
from estimator.model.frozen import Frozen
from estimator.model.line import Finding, Line, Pass
from estimator.model.problem import Place, Problem, question
from estimator.model.stretch import Stretch

NOT_SEEN_GOING_IN = question(
    "log/not-seen-going-in",
    "the {kind} at {at} was seen only as the camera was pulled back, so the groove noted there going in is in doubt.",
    "Film that stretch once more, going in.",
    "What looked whole on the way in was missed once; it may be missed elsewhere.",
)
PROBLEMS = (NOT_SEEN_GOING_IN,)

SOFT = ("scale", "grease", "mud", "blocked")
"""What cleaning takes away. Roots are not here: cut roots leave the opening they came in by."""
CLOSES = frozenset({"cannot pass", "no flow", "full"})
"""Signs that are over once a later camera run got through."""


def got_through(seen: Stretch | None, at: Stretch) -> bool:
    """A run that filmed on both sides of a place went through it."""
    return seen is not None and seen.from_ft < at.from_ft and at.to_ft < seen.to_ft


def opened(finding: Finding) -> Finding:
    """The finding without the signs that it closes the pipe; what stopped a camera is severe where nothing else says how much."""
    signs = tuple(s for s in finding.signs if s not in CLOSES)
    unsaid = finding.kind in NEEDS_AMOUNT and signs != finding.signs and not SAYS_HOW_MUCH & set(signs)
    amount = finding.percent or finding.size_in or finding.grade_word
    return replace(finding, signs=signs, grade_word="severe" if unsaid and not amount else finding.grade_word)


class Cleaned(Frozen):
    """A pass after cleaning, and how far was cleaned, as a stretch of stations (None: all it saw)."""

    number: int
    seen: Stretch
    cleaned: Stretch | None


def same_place(a: Stretch, b: Stretch, limits: Limits) -> bool:
    return abs(a.from_ft - b.from_ft) <= limits.same_place_ft and abs(a.to_ft - b.to_ft) <= limits.same_place_ft


def signs_in_order(signs: Iterable[str]) -> tuple[str, ...]:
    """Each sign once, in the order of the table, so that what is written twice stays alike."""
    order = {sign: number for number, sign in enumerate((*ALL_SIGNS, *UTILITIES))}
    return tuple(sorted(set(signs), key=lambda sign: order[sign]))


def _other_look(earlier: Finding, later: Finding) -> bool:
    """In another run, on the way back, or once it was cleaned; what was seen after a cleaning is not seen before it again."""
    runs = [(f.origin.pass_number, f.origin.back) for f in (earlier, later)]
    return runs[0] != runs[1] or (later.after_cleaning and not earlier.after_cleaning)


def one_finding(earlier: Finding, later: Finding, through: bool = False) -> Finding:
    """The later sight, with what it does not say taken from the earlier one, which goes into its history.

    Where the later run went through, the pipe is closed no more; what cleaning took away is as much as the later run saw.
    """
    before = opened(earlier) if through else earlier
    if later.after_cleaning and not earlier.after_cleaning and later.kind in (*SOFT, "roots"):
        before = replace(before, percent=None, size_in=None, grade_word=None)
    return replace(
        later,
        percent=later.percent or before.percent,
        size_in=before.size_in if later.size_in is None else later.size_in,
        grade_word=later.grade_word or before.grade_word,
        count=earlier.count if later.count is None else later.count,
        clock=later.clock or earlier.clock,
        direction=later.direction or earlier.direction,
        signs=signs_in_order((*later.signs, *before.signs)),
        grade="seen" if "seen" in (earlier.grade, later.grade) else later.grade,
        after_cleaning=later.after_cleaning or earlier.after_cleaning,
        history=(*earlier.history, replace(earlier, history=())),
    )


def merged(sights: Iterable[Finding], limits: Limits, passes: Iterable[Pass] = ()) -> list[Finding]:
    """Sights of one thing in several passes made one finding; the newest look counts."""
    seen = {p.number: p.seen for p in passes}
    out: list[Finding] = []
    for sight in sights:
        for number, known in enumerate(out):
            alike = known.kind == sight.kind and _other_look(known, sight)
            if alike and same_place(known.stretch, sight.stretch, limits):
                through = got_through(seen.get(sight.origin.pass_number), known.stretch)
                out[number] = one_finding(known, sight, through)
                break
        else:
            out.append(sight)
    return out


def parted(
    findings: Iterable[Finding], after: Iterable[Cleaned], passes: Iterable[Pass]
) -> tuple[list[Finding], list[Finding]]:
    """Findings that still stand, and those that a later pass found gone: soft things cleaned away, a block passed.

    Roots that a pass after cleaning did not see again, and whose end is told, are cut; the joint they came in by is still there:
    they stand as light.
    """
    known = tuple(passes)
    seen_by, ended = {p.number: p.seen for p in known}, {p.number for p in known if p.stopped_because}
    cleaned = list(after)

    def passed(finding: Finding) -> bool:
        later = (seen for n, seen in seen_by.items() if n > finding.origin.pass_number)
        return any(got_through(seen, finding.stretch) for seen in later)

    def after_it(finding: Finding) -> list[Cleaned]:
        number, stretch = finding.origin.pass_number, finding.stretch
        later = (c for c in cleaned if c.number > number and c.seen.covers(stretch))
        return [c for c in later if (c.cleaned or c.seen).covers(stretch)]

    def gone(finding: Finding) -> bool:
        return passed(finding) if finding.kind == "blocked" else finding.kind in SOFT and bool(after_it(finding))

    def now(finding: Finding) -> Finding:
        seen = opened(finding) if passed(finding) else finding
        filmed = seen.kind == "roots" and any(c.number in ended for c in after_it(seen))
        return cut(seen) if filmed else seen

    every = list(findings)
    return [now(f) for f in every if not gone(f)], [f for f in every if gone(f)]


def cut(roots: Finding) -> Finding:
    """Return roots that a camera did not see again after cleaning: as they were in the history, light now."""
    before = replace(roots, history=())
    return replace(
        roots, percent=None, size_in=None, grade_word="light", after_cleaning=True, history=(*roots.history, before)
    )


MISSED_BY_EYE = ("hole", "gap", "crack", "collapse")


def doubted(findings: Iterable[Finding], place_of: Callable[[Finding], Place]) -> tuple[list[Finding], list[Problem]]:
    """A groove noted going in becomes suspected where a hole in it was seen only coming back."""
    every = list(findings)
    missed = [sight for f in every if f.kind in MISSED_BY_EYE for sight in _missed_going_in(f)]
    problems: list[Problem] = []
    out: list[Finding] = []
    for f in every:
        over = [m for m in missed if _on_the_way_in(f, m)]
        problems += [NOT_SEEN_GOING_IN(place_of(m), kind=m.kind, at=m.origin.reading_ft or 0.0) for m in over]
        out.append(replace(f, grade="suspected") if over else f)
    return out, problems


def _missed_going_in(finding: Finding) -> list[Finding]:
    """The sights of this thing on the way back of a pass that did not see it going in."""
    sights = (*finding.history, finding)
    going_in = {s.origin.pass_number for s in sights if not s.origin.back}
    return [s for s in sights if s.origin.back and s.origin.pass_number not in going_in]


def _on_the_way_in(groove: Finding, missed: Finding) -> bool:
    same_pass = groove.origin.pass_number == missed.origin.pass_number
    return groove.kind == "channel" and same_pass and not groove.origin.back and groove.stretch.covers(missed.stretch)


def numbered(line: str, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Every finding with an id made of its line, kind and place, alike whenever the notes say the same."""
    used: dict[str, int] = {}
    out = []
    for f in findings:
        at = f"{f.stretch.from_ft:g}" + (f"..{f.stretch.to_ft:g}" if f.stretch.length_ft else "")
        name = f"{line}: {f.kind} {at}"
        used[name] = used.get(name, 0) + 1
        out.append(replace(f, id=name if used[name] == 1 else f"{name} ({used[name]})"))
    return tuple(out)


def line_findings(line: Line) -> tuple[Finding, ...]:
    """Every sight a line holds, old ones and gone ones among them; what cleaning left of roots (`cut`) nobody saw."""
    return tuple(sight for f in (*line.findings, *line.superseded) for sight in _sights(f))


def _sights(found: Finding) -> tuple[Finding, ...]:
    left_by_cleaning = bool(found.history) and found.history[-1].origin == found.origin
    return found.history if left_by_cleaning else (*found.history, replace(found, history=()))
