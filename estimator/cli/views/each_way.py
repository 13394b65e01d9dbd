"""Every need with every way of repair in; place by place what may be offered and what not, and why, as rows out."""

from collections.abc import Sequence

from estimator.cli.views.layout import Layout
from estimator.cli.views.needs import place_of
from estimator.cli.views.screen import Row
from estimator.cli.views.words import Words
from estimator.scopes.each_way import NeedWays, WayThere

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
