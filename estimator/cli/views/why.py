"""A quote in, the reasons out: what each option answers and leaves, and which rule said what."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.cli.views.needs import needs_rows, place_of
from estimator.cli.views.options import all_repairs, heading
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, at, dollars, sentence
from estimator.model.basis import HOW
from estimator.model.judgement import Effect, Verdict
from estimator.model.offer import Option, Quote
from estimator.model.work import Repair
from estimator.wording.say import say, speaker

Said = tuple[str, Effect, str]
"""Rule, effect and sentence: the same three are said once."""


def rows(quote: Quote, columns: int, language: str = ENGLISH) -> list[Row]:
    """Needs, then each option's repairs with their reasons."""
    return [
        *needs_rows(quote.diagnosis.needs, columns, language),
        *(row for option in quote.options for row in _option(option, columns, language)),
    ]


def _option(option: Option, columns: int, language: str) -> list[Row]:
    """Its repairs with what was said of each alone, then what was said of several of them, then what it leaves."""
    repairs = [_with_finds(repair, option) for repair in all_repairs(option)]
    shared = _shared(repairs, language)
    head = indented(f"{option.letter}  {heading(option, language)}", columns, by=0, hanging=3)
    out = [Row(""), *(Row(text, "head") for text in head)]
    for repair in repairs:
        out += _repair(repair, shared, columns, language)
    if shared:
        out += [
            Row("  " + speaker(language)("of several of these")),
            *verdict_rows(list(shared.values()), columns, language),
        ]
    out += _rests_on(option, columns, language)
    speak = speaker(language)
    left = [speak("Leaves {place}.", place=place_of(need, language)) for need in option.scope.leaves]
    if option.scope.bound:
        most = dollars(Decimal(option.scope.bound), whole=True, language=language)
        left.append(speak("Could be beaten by {most} at most.", most=most))
    out += [Row(line) for text in left for line in indented(text, columns)]
    return out


def _rests_on(option: Option, columns: int, language: str) -> list[Row]:
    """What its price rests on: each fact, how it is known, and by how much it could raise the price."""
    speak = speaker(language)
    out = [Row("  " + speak("the price rests on"))] if option.basis.facts else []
    for fact in option.basis.facts:
        known = say(HOW[fact.how], language)
        words = f"{term(fact.line, language)}, {say(fact.words, language)}"
        up = dollars(Decimal(round(fact.rises)), whole=True, language=language)
        text = (
            speak("{fact}: {known}; it could raise the price by {up}", fact=words, known=known, up=up)
            if round(fact.rises)
            else speak("{fact}: {known}", fact=words, known=known)
        )
        out += [Row(line) for line in indented(text, columns, by=4, hanging=2)]
    return out


def _with_finds(repair: Repair, option: Option) -> Repair:
    """The repair with what the rules found by measuring it, beside what they said before."""
    finds = (v for takeoff in option.takeoffs if takeoff.repair.id == repair.id for v in takeoff.finds)
    return replace(repair, verdicts=tuple(dict.fromkeys((*repair.verdicts, *finds))))


def _shared(repairs: Sequence[Repair], language: str) -> dict[Said, Verdict]:
    """What the rules said of more than one of the repairs."""
    grouped: dict[Said, list[tuple[int, Verdict]]] = {}
    for number, repair in enumerate(repairs):
        for verdict in repair.verdicts:
            grouped.setdefault(_said(verdict, language), []).append((number, verdict))
    return {said: found[0][1] for said, found in grouped.items() if len({number for number, _ in found}) > 1}


def _repair(repair: Repair, shared: Mapping[Said, Verdict], columns: int, language: str) -> list[Row]:
    out = [Row(line) for line in indented(repair_place(repair, language), columns)]
    for why in repair.because:
        out += [Row(line) for line in indented(sentence(why, language), columns, by=4, hanging=2)]
    own = [v for v in repair.verdicts if _said(v, language) not in shared]
    return [*out, *verdict_rows(own, columns, language)]


def repair_place(repair: Repair, language: str = ENGLISH) -> str:
    """`tunnel, main 0 – 21 ft`."""
    where = f"{term(repair.line, language)} {at(repair.stretch, language)} {speaker(language)('ft')}"
    return f"{term(repair.method, language)}, {where}"


def _said(verdict: Verdict, language: str) -> Said:
    return verdict.rule, verdict.effect, sentence(verdict.estimator, language)


def verdict_rows(verdicts: Sequence[Verdict], columns: int, language: str = ENGLISH, by: int = 4) -> list[Row]:
    """`caution: the sentence (rule-id)`, each sentence once however many stretches it was said of."""
    out: list[Row] = []
    for (rule, effect, text), said in _once(verdicts, language).items():
        why = said[0].overruled
        overruled = " " + speaker(language)("Overruled: {why}.", why=why) if why else ""
        line = f"{term(effect.value, language)}: {text}{overruled} ({rule})"
        look = "bad" if effect is Effect.BLOCKS and not overruled else ""
        out += [Row(t, look) for t in indented(line, columns, by=by, hanging=2)]
    return out


def _once(verdicts: Sequence[Verdict], language: str) -> dict[Said, list[Verdict]]:
    grouped: dict[Said, list[Verdict]] = {}
    for verdict in verdicts:
        grouped.setdefault(_said(verdict, language), []).append(verdict)
    return grouped
