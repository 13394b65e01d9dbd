"""What was concluded and why, for the office: needs, evidence, rules that fired, overrides, questions that are open."""

from estimator.model.judgement import Verdict
from estimator.model.offer import Quote
from estimator.model.work import Repair, all_repairs
from estimator.papers.inside import close, in_hundredths, inside_page, table
from estimator.sheets.book import Cell, Sheet
from estimator.wording.say import say

ENGLISH = "en_US"
WIDTHS = (22.0, 18.0, 18.0, 54.0)


def rules(quote: Quote) -> Sheet:
    """All judgement on one sheet."""
    page = inside_page("Rules", WIDTHS, "What was concluded, and by which rule", job=quote.job)
    diagnosis = quote.diagnosis
    page.heading("What was found: repaired or left")
    table(page, ("Need", "Where", "How bad", "What"), (
        (Cell(n.id, "cell"), Cell(f"{n.line} {n.stretch.from_ft:.1f} to {n.stretch.to_ft:.1f} ft", "cell"),
         Cell(f"level {n.severity}, {n.grade}" + ("" if n.must else ", may be left"), "cell"), Cell(", ".join(n.kinds), "cell"))
        for n in diagnosis.needs
    ), 9)  # fmt: skip
    page.heading("Evidence")
    table(page, ("Rule", "Line", "From", "Meaning"), (
        (Cell(e.rule, "cell"), Cell(e.line, "cell"), Cell(in_hundredths(", ".join(e.findings)), "cell quiet"), Cell(say(e.meaning, ENGLISH), "cell"))
        for e in diagnosis.evidence
    ), 9)  # fmt: skip
    page.heading("Rules on the ways of repair")
    table(page, ("Rule", "Way", "Effect", "Why"), (_verdict(v) for v in _verdicts(quote)), 9)
    page.heading("Overruled by the owner")
    table(page, ("Rule", "Option", "What", "Why"), (
        (Cell(o.rule, "cell"), Cell(o.option, "cell"), Cell(" ".join(p for p in (o.line, o.where, o.item, o.quantity) if p), "cell"), Cell(o.reason, "cell"))
        for o in quote.job.overrides
    ), 9)  # fmt: skip
    page.listing(
        "Questions for the next visit", [f"{q.line} {say(q.about, ENGLISH)}".strip() for q in diagnosis.questions]
    )
    return close(page, f"INTERNAL {quote.job.number}")


def _verdicts(quote: Quote) -> list[Verdict]:
    repairs: list[Repair] = [r for o in quote.options for r in all_repairs(o.scope.repairs)]
    mine = [v for r in repairs for v in r.verdicts]
    found = [v for o in quote.options for t in o.takeoffs for v in t.finds]
    return list({(v.rule, v.method, v.line, v.stretch): v for v in (*mine, *found, *quote.blocked)}.values())


def _verdict(verdict: Verdict) -> tuple[Cell, ...]:
    way = f"{verdict.method}, {verdict.line} {verdict.stretch.from_ft:.1f} to {verdict.stretch.to_ft:.1f} ft"
    why = (
        f"{say(verdict.estimator, ENGLISH)} — OVERRULED: {verdict.overruled}"
        if verdict.overruled
        else say(verdict.estimator, ENGLISH)
    )
    return Cell(verdict.rule, "cell"), Cell(way, "cell quiet"), Cell(str(verdict.effect), "cell"), Cell(why, "cell")
