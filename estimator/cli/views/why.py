"""A quote in, the reasons out: what each option answers and leaves, and which rule said what."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.cli.views.check import place_of, write_needs
from estimator.cli.views.layout import Layout
from estimator.cli.views.options import all_repairs, write_title
from estimator.cli.views.words import Words
from estimator.model.basis import HOW, Fact
from estimator.model.judgement import Effect, Verdict
from estimator.model.offer import Option, Quote
from estimator.model.work import Repair

Said = tuple[str, Effect, str]
"""Rule, effect and sentence: the same three are said once."""


def write_reasons(out: Layout, quote: Quote) -> None:
    """Needs, then each option's repairs with their reasons."""
    write_needs(out, quote.diagnosis.needs)
    for option in quote.options:
        out.line()
        write_title(out, option)
        _option(out, option)


def _option(out: Layout, option: Option) -> None:
    """Its repairs with what was said of each alone, then what was said of several of them, then what it leaves."""
    repairs = [_with_finds(repair, option) for repair in all_repairs(option)]
    shared = _shared(repairs, out)
    for repair in repairs:
        write_repair(out, repair)
        write_verdicts(out, [v for v in repair.verdicts if _said(v, out) not in shared])
    if shared:
        out.line("  " + out.speak("of several of these"))
        write_verdicts(out, list(shared.values()))
    if option.basis.facts:
        out.line("  " + out.speak("the price rests on"))
    for fact in option.basis.facts:
        out.paragraph(_rests_on(fact, out), by=4, hanging=2)
    for need in option.scope.leaves:
        out.paragraph(out.speak("Leaves {place}.", place=place_of(need, out)), by=2)
    if option.scope.bound:
        most = out.dollars(Decimal(option.scope.bound), whole=True)
        out.paragraph(out.speak("Could be beaten by {most} at most.", most=most), by=2)


def _rests_on(fact: Fact, words: Words) -> str:
    """A fact its price rests on, how it is known, and by how much it could raise the price."""
    said = {"fact": f"{words.term(fact.line)}, {words.say(fact.words)}", "known": words.say(HOW[fact.how])}
    if not round(fact.rises):
        return words.speak("{fact}: {known}", **said)
    up = words.dollars(Decimal(round(fact.rises)), whole=True)
    return words.speak("{fact}: {known}; it could raise the price by {up}", **said, up=up)


def _with_finds(repair: Repair, option: Option) -> Repair:
    """The repair with what the rules found by measuring it, beside what they said before."""
    finds = (v for takeoff in option.takeoffs if takeoff.repair.id == repair.id for v in takeoff.finds)
    return replace(repair, verdicts=tuple(dict.fromkeys((*repair.verdicts, *finds))))


def _shared(repairs: Sequence[Repair], words: Words) -> dict[Said, Verdict]:
    """What the rules said of more than one of the repairs."""
    grouped: dict[Said, list[tuple[int, Verdict]]] = {}
    for number, repair in enumerate(repairs):
        for verdict in repair.verdicts:
            grouped.setdefault(_said(verdict, words), []).append((number, verdict))
    return {said: found[0][1] for said, found in grouped.items() if len({number for number, _ in found}) > 1}


def write_repair(out: Layout, repair: Repair) -> None:
    """`tunnel, main 0 – 21 ft`, and why it is done."""
    where = f"{out.term(repair.line)} {out.stations(repair.stretch)}"
    out.paragraph(f"{out.term(repair.method)}, {where}", by=2)
    for why in repair.because:
        out.paragraph(out.sentence(why), by=4, hanging=2)


def _said(verdict: Verdict, words: Words) -> Said:
    return verdict.rule, verdict.effect, words.sentence(verdict.estimator)


def write_verdicts(out: Layout, verdicts: Sequence[Verdict], by: int = 4) -> None:
    """`caution: the sentence (rule-id)`, each sentence once however many stretches it was said of."""
    for (rule, effect, text), verdict in _once(verdicts, out).items():
        why = verdict.overruled
        overruled = " " + out.speak("Overruled: {why}.", why=why) if why else ""
        look = "bad" if effect is Effect.BLOCKS and not overruled else ""
        out.paragraph(f"{out.term(effect.value)}: {text}{overruled} ({rule})", by, hanging=2, look=look)


def _once(verdicts: Sequence[Verdict], words: Words) -> Mapping[Said, Verdict]:
    grouped: dict[Said, Verdict] = {}
    for verdict in verdicts:
        grouped.setdefault(_said(verdict, words), verdict)
    return grouped
