"""A quote and the rules' answers in, the reasons out: what each option answers and leaves, and which rule said what."""

from collections.abc import Iterable, Mapping, Sequence

from estimator.cli.views.options import all_repairs, heading
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.cli.views.words import at, sentence
from estimator.model.judgement import Effect, Need, Verdict
from estimator.model.offer import Option, Quote
from estimator.model.work import Repair

Said = tuple[str, Effect, str]
"""Rule, effect and sentence: the same three are said once."""

AGAINST: tuple[Effect, ...] = (Effect.BLOCKS, Effect.UNTIL_APPROVED, Effect.DOES_NOT_FIX, Effect.NO_FIXED_PRICE)


def rows(quote: Quote, verdicts: Sequence[Verdict], columns: int, language: str = "en_US") -> list[Row]:
    """Needs, then each option's repairs with their reasons, then what the rules have against the other ways."""
    return [
        Row(""),
        Row("What has to be put right", "head"),
        *(row for need in quote.diagnosis.needs for row in need_rows(need, columns)),
        *(row for option in quote.options for row in _option(option, columns, language)),
        *against(verdicts, columns, language),
    ]


def need_rows(need: Need, columns: int) -> Iterable[Row]:
    """A stretch with what is on it, how bad and how sure."""
    must = "must be put right" if need.must else "may stay"
    head = f"{need.line} {at(need.stretch)} ft: {', '.join(need.kinds)}"
    text = f"{head} — {must}; severity {need.severity}, urgency {need.urgency}, {need.grade}."
    return [Row(line) for line in indented(text, columns, hanging=4)]


def _option(option: Option, columns: int, language: str) -> list[Row]:
    """Its repairs with what was said of each alone, then what was said of several of them, then what it leaves."""
    repairs = all_repairs(option)
    shared = _shared(repairs, language)
    out = [Row(""), Row(f"{option.letter}  {heading(option, language)}", "head")]
    for repair in repairs:
        out += _repair(repair, shared, columns, language)
    if shared:
        out += [Row("  of several of these"), *verdict_rows(list(shared.values()), columns, language)]
    for need in option.scope.leaves:
        out += [
            Row(t) for t in indented(f"Leaves {need.line} {at(need.stretch)} ft: {', '.join(need.kinds)}.", columns)
        ]
    if option.scope.bound:
        out += [Row(t) for t in indented(f"Could be beaten by ${option.scope.bound:,.0f} at most.", columns)]
    return out


def _shared(repairs: Sequence[Repair], language: str) -> dict[Said, Verdict]:
    """What the rules said of more than one of the repairs."""
    grouped: dict[Said, list[tuple[int, Verdict]]] = {}
    for number, repair in enumerate(repairs):
        for verdict in repair.verdicts:
            grouped.setdefault(_said(verdict, language), []).append((number, verdict))
    return {said: found[0][1] for said, found in grouped.items() if len({number for number, _ in found}) > 1}


def _repair(repair: Repair, shared: Mapping[Said, Verdict], columns: int, language: str) -> list[Row]:
    out = [Row(line) for line in indented(f"{repair.method}, {repair.line} {at(repair.stretch)} ft", columns)]
    for why in repair.because:
        out += [Row(line) for line in indented(sentence(why, language), columns, by=4, hanging=2)]
    own = [v for v in repair.verdicts if _said(v, language) not in shared]
    return [*out, *verdict_rows(own, columns, language)]


def _said(verdict: Verdict, language: str) -> Said:
    return verdict.rule, verdict.effect, sentence(verdict.estimator, language)


def verdict_rows(verdicts: Sequence[Verdict], columns: int, language: str = "en_US", by: int = 4) -> list[Row]:
    """`caution: the sentence (rule-id)`, each sentence once however many stretches it was said of."""
    out: list[Row] = []
    for (rule, effect, text), said in _once(verdicts, language).items():
        overruled = f" Overruled: {said[0].overruled}." if said[0].overruled else ""
        line = f"{effect.value}: {text}{overruled} ({rule})"
        look = "bad" if effect is Effect.BLOCKS and not overruled else ""
        out += [Row(t, look) for t in indented(line, columns, by=by, hanging=2)]
    return out


def _once(verdicts: Sequence[Verdict], language: str) -> dict[Said, list[Verdict]]:
    grouped: dict[Said, list[Verdict]] = {}
    for verdict in verdicts:
        grouped.setdefault(_said(verdict, language), []).append(verdict)
    return grouped


def against(verdicts: Sequence[Verdict], columns: int, language: str) -> list[Row]:
    """By method: what blocks it, waits for a paper, does not fix or keeps the price open, and over which stretches."""
    kept = sorted((v for v in verdicts if v.effect in AGAINST), key=lambda v: (v.method, AGAINST.index(v.effect)))
    out = [Row(""), Row("What the rules have against the other ways", "head")] if kept else []
    for method in dict.fromkeys(v.method for v in kept):
        out.append(Row(f"  {method}"))
        for (rule, effect, text), said in _once([v for v in kept if v.method == method], language).items():
            where = ", ".join(dict.fromkeys(f"{v.line} {at(v.stretch)} ft" for v in said))
            line = f"{effect.value}: {text} ({rule}; {where})"
            out += [Row(t) for t in indented(line, columns, by=4, hanging=2)]
    return out
