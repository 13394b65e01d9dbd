"""A quote and the rules' answers in, the reasons out: what each option answers and leaves, and which rule said what."""

from collections.abc import Iterable, Sequence

from estimator.cli.views.options import all_repairs
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.cli.views.words import at, sentence
from estimator.model.judgement import Effect, Need, Verdict
from estimator.model.offer import Option, Quote
from estimator.model.work import Repair

WEIGHT: tuple[Effect, ...] = tuple(Effect)


def rows(quote: Quote, verdicts: Sequence[Verdict], columns: int, language: str = "en_US") -> list[Row]:
    """Needs, then each option's repairs with their reasons, then every rule's answer by method."""
    return [
        Row(""),
        Row("What has to be put right", "head"),
        *(row for need in quote.diagnosis.needs for row in need_rows(need, columns)),
        *(row for option in quote.options for row in _option(option, columns, language)),
        Row(""),
        Row("What the rules said", "head"),
        *(row for verdict in in_order(verdicts) for row in verdict_rows(verdict, columns, language)),
    ]


def need_rows(need: Need, columns: int) -> Iterable[Row]:
    """A stretch with what is on it, how bad and how sure."""
    must = "must be put right" if need.must else "may stay"
    head = f"{need.line} {at(need.stretch)} ft: {', '.join(need.kinds)}"
    text = f"{head} — {must}; severity {need.severity}, urgency {need.urgency}, {need.grade}."
    return [Row(line) for line in indented(text, columns, hanging=4)]


def _option(option: Option, columns: int, language: str) -> list[Row]:
    out = [Row(""), Row(f"{option.letter}  {sentence(option.title, language)}", "head")]
    for repair in all_repairs(option):
        out += _repair(repair, columns, language)
    for need in option.scope.leaves:
        out += [
            Row(t) for t in indented(f"Leaves {need.line} {at(need.stretch)} ft: {', '.join(need.kinds)}.", columns)
        ]
    if option.scope.bound:
        out += [Row(t) for t in indented(f"Could be beaten by ${option.scope.bound:,.0f} at most.", columns)]
    return out


def _repair(repair: Repair, columns: int, language: str) -> list[Row]:
    text = f"{repair.method}, {repair.line} {at(repair.stretch)} ft"
    out = [Row(line) for line in indented(text, columns)]
    for why in repair.because:
        out += [Row(line) for line in indented(sentence(why, language), columns, by=4, hanging=2)]
    for verdict in repair.verdicts:
        out += verdict_rows(verdict, columns, language, by=4)
    return out


def in_order(verdicts: Sequence[Verdict]) -> list[Verdict]:
    """What blocks first; alike answers of one rule on one method only once a stretch."""
    once = dict.fromkeys((v.method, v.line, v.stretch, v.rule, v.effect) for v in verdicts)
    first = {(v.method, v.line, v.stretch, v.rule, v.effect): v for v in reversed(verdicts)}
    return sorted((first[key] for key in once), key=lambda v: (v.method, WEIGHT.index(v.effect), v.line, v.stretch))


def verdict_rows(verdict: Verdict, columns: int, language: str = "en_US", by: int = 2) -> list[Row]:
    """`tunnel, main 8 – 26 ft: caution — the sentence (rule-id)`."""
    settings = f"; reads {', '.join(verdict.settings)}" if verdict.settings else ""
    overruled = f" Overruled: {verdict.overruled}." if verdict.overruled else ""
    head = f"{verdict.method}, {verdict.line} {at(verdict.stretch)} ft: {verdict.effect.value}"
    text = f"{head} — {sentence(verdict.estimator, language)}{overruled} ({verdict.rule}{settings})"
    look = "bad" if verdict.effect is Effect.BLOCKS and not verdict.overruled else ""
    return [Row(line, look) for line in indented(text, columns, by=by, hanging=2)]
