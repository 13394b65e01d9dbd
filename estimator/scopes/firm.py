"""Options with what was said of them in; whether their price is firm, and the visit that would make one firm, out.

What is only asked for on paper (a permission, a permit) no visit settles. A drain that another line runs through is left
alone: no visit is sold for it.
"""

from collections.abc import Iterable, Sequence

from estimator.model.basis import Basis
from estimator.model.judgement import Diagnosis, Effect, Need, Question, Verdict
from estimator.model.stretch import Stretch, hull
from estimator.model.visit import KINDS, fact
from estimator.model.work import Repair, Takeoff, all_repairs
from estimator.scopes.judge import counts
from estimator.scopes.rules import BY_ID, price_holds
from estimator.scopes.rules.cleaning_closes_no_opening import lived_with
from estimator.works.methods import of, renews

NOT_FIRM = (Effect.NO_FIXED_PRICE, Effect.UNTIL_APPROVED)
LOOKED_FOR: dict[str, str] = {
    "sewer-smell": "smoke",
    "animals-in-the-house": "smoke",
    "backs-up": "film",
    "drains-slowly": "film",
}
"""What people report and no finding explains, and the visit that looks for its cause."""
BY_CAMERA = "film"


def why_not_firm(repairs: Iterable[Repair], takeoffs: Iterable[Takeoff]) -> tuple[Verdict, ...]:
    """Return what rules and takeoff say against a fixed price for these repairs."""
    said = [v for r in all_repairs(repairs) for v in r.verdicts] + [v for t in takeoffs for v in t.finds]
    return tuple(dict.fromkeys(v for v in said if counts(v, *NOT_FIRM)))


def open_questions(repairs: Iterable[Repair], diagnosis: Diagnosis) -> tuple[Question, ...]:
    """Return the questions that keep these repairs from a fixed price; what only cleans or looks is what answers them."""
    renewing = [r for r in all_repairs(repairs) if renews(r.method)]
    return tuple(
        q
        for q in diagnosis.questions
        if q.not_fixed
        and any(q.line == r.line and (q.stretch is None or q.stretch.touches(r.stretch)) for r in renewing)
    )


Wanted = dict[str, dict[str, Stretch]]
"""By line, the kinds of visit that are wanted there, each with its stretch."""


def is_firm(repairs: Sequence[Repair], takeoffs: Sequence[Takeoff], diagnosis: Diagnosis) -> bool:
    """Return whether nothing stands against a fixed price. A cleaning by which somebody lives with a dip is no cure: what would be has its visit."""
    open_ = why_not_firm(repairs, takeoffs) or open_questions(repairs, diagnosis)
    return not open_ and not _lives_with(repairs, diagnosis)


def settled_by(repairs: Sequence[Repair], takeoffs: Sequence[Takeoff], basis: Basis, diagnosis: Diagnosis) -> Wanted:
    """Return the visits that would settle what stands against a fixed price of these repairs; none for what only papers settle."""
    wanted: Wanted = {}
    verdicts = why_not_firm(repairs, takeoffs)
    for v in verdicts:
        _want(wanted, v.line, BY_ID[v.rule].settled_by, v.stretch)
    for f in basis.facts if any(v.rule == price_holds.RULE.id for v in verdicts) else ():
        _want(wanted, f.line, f.settled_by if f.rises else "", f.stretch)
    for q in open_questions(repairs, diagnosis):
        _want(wanted, q.line, BY_CAMERA, q.stretch or Stretch(0.0, 0.0))
    return {line: kinds for line, kinds in wanted.items() if line not in _closed(diagnosis)}


def visits(
    options: Sequence[tuple[Sequence[Repair], Sequence[Takeoff], Basis]],
    diagnosis: Diagnosis,
    unanswered: Sequence[Need],
) -> tuple[Repair, ...]:
    """Return what would make firm all those of these options that are not, one visit a line."""
    wanted: Wanted = {}
    for repairs, takeoffs, basis in options:
        for line, kinds in settled_by(repairs, takeoffs, basis, diagnosis).items():
            for kind, stretch in kinds.items():
                _want(wanted, line, kind, stretch)
    for e in diagnosis.evidence if not options and not diagnosis.needs else ():
        _want(wanted, e.line, LOOKED_FOR.get(e.rule, ""), e.stretch or Stretch(0.0, 0.0))
    for need in unanswered:
        _want(wanted, need.line, BY_CAMERA, need.stretch)
    closed = _closed(diagnosis)
    return tuple(_visit(line, kinds, diagnosis) for line, kinds in wanted.items() if line not in closed)


def _closed(diagnosis: Diagnosis) -> frozenset[str]:
    """Lines that another utility runs through: nobody works in or over them."""
    return frozenset(n.line for n in diagnosis.needs if "utility" in n.kinds)


def _lives_with(repairs: Sequence[Repair], diagnosis: Diagnosis) -> bool:
    answered = {a for r in repairs for a in r.answers}
    needs = [n for n in diagnosis.needs if n.id in answered]
    return not any(renews(r.method) for r in repairs) and bool(needs) and all(lived_with(n) for n in needs)


def _want(wanted: Wanted, line: str, kind: str, stretch: Stretch) -> None:
    if kind:
        here = wanted.setdefault(line, {})
        here[kind] = stretch.union(here[kind]) if kind in here else stretch


def _visit(line: str, kinds: dict[str, Stretch], diagnosis: Diagnosis) -> Repair:
    whole = hull(kinds.values())
    about = tuple(n.id for n in diagnosis.needs if n.line == line and n.stretch.touches(whole))
    method = of(measure="visit")[0].name
    named = ", ".join(kind for kind in KINDS if kind in kinds)
    return Repair(
        id=f"{line}: {method} ({named}), {whole.from_ft:.4g} to {whole.to_ft:.4g} ft",
        method=method,
        line=line,
        stretch=whole,
        answers=about,
        facts=frozenset(fact(kind) for kind in kinds),
    )
