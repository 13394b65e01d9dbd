"""A quote with the ranges of its options in, the office's lines about them out. Nothing of it is for the homeowner."""

from collections.abc import Sequence

from estimator.cli.views.check import place_of
from estimator.cli.views.layout import Layout
from estimator.cli.views.options import all_repairs, price
from estimator.cli.views.screen import Row
from estimator.cli.views.words import Words
from estimator.model.likely_range import LikelyRange
from estimator.model.money import cents
from estimator.model.offer import Option, Quote
from estimator.papers.office_sums import cost_of
from estimator.scopes.each_way import NeedWays, WayThere

MOST_DRIVERS = 5


def write_ranges(out: Layout, quote: Quote) -> None:
    """A block an option: percentiles, what drives them, what the contingency should be."""
    out.line()
    out.paragraph(
        out.speak("FOR THE OFFICE: never send this. How far our own cost and the crew days may run."), look="bad"
    )
    for option in quote.options:
        if option.likely_range:
            _option(out, option, option.likely_range)


def _option(out: Layout, option: Option, found: LikelyRange) -> None:
    speak, days = out.speak, out.number(option.price.days)
    out.heading(speak("Option {letter}: {days} crew days in the price", letter=option.letter, days=days))
    heads = (speak("stays within"), speak("in 10 of 100"), speak("in 50"), speak("in 80"), speak("in 90"))
    body = [
        (speak("our cost"), *(out.dollars(cents(amount), True) for amount in found.cost.values())),
        (speak("crew days"), *map(out.number, found.days.values())),
    ]
    out.table(heads, body, right=(1, 2, 3, 4))
    out.paragraph(priced_on(option, out), by=2)
    out.paragraph(_contingency(found, out), by=2)
    if moving := [(name, share) for name, share in found.drivers[:MOST_DRIVERS] if share >= 1]:
        shares = ", ".join(f"{out.term(name)} {out.number(share, 0)}%" for name, share in moving)
        out.paragraph(speak("What moves it: {shares}.", shares=shares), by=2)


def priced_on(option: Option, words: Words) -> str:
    """The cost that the range is about, and what the price costs besides, which is left out of it."""
    own, others = option.price.direct, cost_of(option) - option.price.direct
    if not others:
        return words.speak("Priced on a cost of {amount}, all of it our own work.", amount=words.dollars(own, True))
    return words.speak(
        "Priced on a cost of {amount} for our own work. Subs, fees and allowances cost {others} more; they are not in these figures.",
        amount=words.dollars(own, True), others=words.dollars(others, True),
    )  # fmt: skip


def _contingency(found: LikelyRange, words: Words) -> str:
    """What the firm's confidence would need against what the table gives."""
    said = {
        "wanted": words.number(found.contingency_needed_percent),
        "sure": words.number(found.confidence_percent),
        "given": words.number(found.contingency_percent),
        "held": words.number(found.held_chance_percent, 0),
    }
    if found.short_percent:
        return words.speak(
            "A contingency of {wanted}% would hold in {sure} of 100 such jobs; the tables give {given}%, {short} points too "
            "little, which holds in {held}.",
            **said, short=words.number(found.short_percent),
        )  # fmt: skip
    return words.speak(
        "A contingency of {wanted}% would hold in {sure} of 100 such jobs; the tables give {given}%, enough, which holds in "
        "{held}.",
        **said,
    )


Same = tuple[bool, str, str]
"""Offered or not, and what is said: ways that are answered alike stand together."""


def write_each_way(out: Layout, found: Sequence[NeedWays]) -> None:
    """For each place the ways that may be offered, then the others, with a reason for either reader; places answered alike together."""
    if not found:
        return
    out.heading(out.speak("Every way, place by place"))
    alike: dict[tuple[Row, ...], list[NeedWays]] = {}
    for one in found:
        answers = out.part()
        _answers(answers, one)
        alike.setdefault(tuple(answers.rows), []).append(one)
    for rows, places in alike.items():
        for one in places:
            out.paragraph(place_of(one.need, out), by=2)
        out.rows += rows


def _answers(out: Layout, one: NeedWays) -> None:
    """What is said of the ways at one place; ways answered alike stand together."""
    for (offered, mine, theirs), methods in _alike(one.ways, out).items():
        look = "" if offered else "dim"
        out.paragraph(f"{out.terms(methods)}: {mine}", by=4, hanging=2, look=look)
        if theirs:
            out.paragraph(theirs, by=6, hanging=2, look=look)


def _alike(ways: Sequence[WayThere], words: Words) -> dict[Same, list[str]]:
    out: dict[Same, list[str]] = {}
    for way in sorted(ways, key=lambda w: not w.offered):
        out.setdefault((way.offered, *_said(way, words)), []).append(way.method)
    return out


def _said(way: WayThere, words: Words) -> tuple[str, str]:
    """The estimator's sentence with the rule, and the homeowner's in quotes."""
    verdict = way.verdict
    if verdict is None:
        return words.speak("may be offered; no rule says anything of it."), ""
    effect = words.term(verdict.effect.value)
    start = words.speak("may be offered; {effect}", effect=effect) if way.offered else effect
    mine = f"{start}: {words.sentence(verdict.estimator)} ({verdict.rule})"
    return mine, f"“{words.sentence(verdict.homeowner)}”"


def write_what_if(out: Layout, as_filed: Quote, changed: Quote, changes: Sequence[str]) -> None:
    """One row a way of repair; a way that only one of them offers stands alone."""
    speak = out.speak
    before, after = _by_way(as_filed, out), _by_way(changed, out)
    out.line(speak("What if {changes} — nothing is saved", changes=", ".join(changes)), "head")
    headers = (speak("way"), speak("as in the file"), speak("with the change"), speak("moves by"))
    cells = [_cells(way, before.get(way), after.get(way), out) for way in dict.fromkeys([*before, *after])]
    out.table(headers, cells, right=(1, 2, 3))
    out.line()


def _by_way(quote: Quote, words: Words) -> dict[str, Option]:
    """Options by what they do, since letters may move."""
    return {
        "; ".join(sorted({f"{words.term(r.method)} {words.term(r.line)}" for r in all_repairs(o)})): o
        for o in quote.options
    }


def _cells(way: str, before: Option | None, after: Option | None, words: Words) -> tuple[str, str, str, str]:
    moved, never = "", words.speak("not offered")
    if before and after:
        difference = after.price.total - before.price.total
        moved = words.moved_by(difference) if difference else words.dollars(difference, whole=True)
    return way, price(before, words) if before else never, price(after, words) if after else never, moved
