"""Every need with every way of repair in; place by place what may be offered and what not, and why, as rows out."""

from collections.abc import Iterator, Sequence

from estimator.cli.views.needs import place_of
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, sentence
from estimator.scopes.each_way import NeedWays, WayThere
from estimator.wording.say import speaker

Same = tuple[bool, str, str]
"""Offered or not, and what is said: ways that are answered alike stand together."""


def rows(found: Sequence[NeedWays], columns: int, language: str = ENGLISH) -> list[Row]:
    """For each place the ways that may be offered, then the others, with a reason for either reader; places answered alike together."""
    if not found:
        return []
    out = [Row(""), Row(speaker(language)("Every way, place by place"), "head")]
    alike: dict[tuple[Row, ...], list[NeedWays]] = {}
    for one in found:
        alike.setdefault(tuple(_answers(one, columns, language)), []).append(one)
    for answers, places in alike.items():
        out += [Row(line) for one in places for line in indented(place_of(one.need, language), columns)]
        out += answers
    return out


def _answers(one: NeedWays, columns: int, language: str) -> Iterator[Row]:
    """What is said of the ways at one place; ways answered alike stand together."""
    for (offered, mine, theirs), methods in _alike(one.ways, language).items():
        names, look = ", ".join(term(m, language) for m in methods), "" if offered else "dim"
        yield from (Row(line, look) for line in indented(f"{names}: {mine}", columns, by=4, hanging=2))
        yield from (Row(line, look) for line in indented(theirs, columns, by=6, hanging=2) if theirs)


def _alike(ways: Sequence[WayThere], language: str) -> dict[Same, list[str]]:
    out: dict[Same, list[str]] = {}
    for way in sorted(ways, key=lambda w: not w.offered):
        out.setdefault((way.offered, *_said(way, language)), []).append(way.method)
    return out


def _said(way: WayThere, language: str) -> tuple[str, str]:
    """The estimator's sentence with the rule, and the homeowner's in quotes."""
    speak, verdict = speaker(language), way.verdict
    if verdict is None:
        return speak("may be offered; no rule says anything of it."), ""
    effect = term(verdict.effect.value, language)
    start = speak("may be offered; {effect}", effect=effect) if way.offered else effect
    mine = f"{start}: {sentence(verdict.estimator, language)} ({verdict.rule})"
    return mine, f"“{sentence(verdict.homeowner, language)}”"
