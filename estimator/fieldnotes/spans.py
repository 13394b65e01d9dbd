"""Entries of one pass with open ends come in (`22 sag starts`, `26 sag ends 50%`, `8- channel`); closed ones go out."""

from collections.abc import Iterable
from dataclasses import replace

from estimator.fieldnotes.limits import FARTHEST_LEAP_FT
from estimator.fieldnotes.logbook import Asked, Entry, LogPass
from estimator.fieldnotes.logproblems import how_much
from estimator.fieldnotes.things import Thing
from estimator.model.problem import Problem, question

NO_START = question(
    "log/no-start",
    "{word} ends or goes on at {at} but never started; it is taken to lie there alone.",
    "Write where it starts, such as `22 {word} starts`, or the whole stretch, such as `22-26 {word}`.",
)
NO_END = question(
    "log/no-end",
    "{word} that starts at {at} never ends; it is taken to {end}, where the pass stopped.",
    "Write where it ends, such as `{end} {word} ends`.",
)
PROBLEMS = (NO_START, NO_END)


def furthest_ft(log_pass: LogPass) -> float | None:
    """The highest reading of the pass, ft on the reel, or None; one asked back counts where it is no leap beyond the others."""
    readings = [r for e in log_pass.entries for r in (e.from_ft, e.to_ft) if r is not None]
    readings += [r for s in log_pass.sames for r in (s.from_ft, s.to_ft) if r is not None]
    known = max(readings, default=None)
    for reading in sorted(r for a in log_pass.asked for r in (a.from_ft, a.to_ft) if r is not None and not a.later):
        if reading <= (known or 0.0) + FARTHEST_LEAP_FT:
            known = max(known or 0.0, reading)
    return known


def closed(log_pass: LogPass) -> tuple[list[Entry], list[Problem]]:
    """Every entry with both ends known, in the order written. Nothing that was seen vanishes."""
    problems: list[Problem] = []
    out: list[Entry] = []
    end = furthest_ft(log_pass) or 0.0
    for number, entry in enumerate(log_pass.entries):
        others = log_pass.entries[:number] + log_pass.entries[number + 1 :]
        if not entry.leg or entry.thing.word.kind in ("zone", "holds"):
            out.append(replace(entry, leg=""))
        elif entry.leg == "to end":
            out.append(replace(entry, leg="", to_ft=max(end, entry.from_ft)))
        elif entry.leg == "starts" and entry.to_ft is None:
            out += _from_start(entry, log_pass, end, problems)
        elif entry.to_ft is not None:
            whole = replace(entry, leg="")
            out += [whole] if _says_how_much(entry.thing) else _ask(whole, entry.to_ft, log_pass)
        elif entry.leg == "ends" and not entry.thing.values and _ends_there(entry, log_pass.entries[:number]):
            continue  # `24 out of water` after `20 2in water to 24`
        elif (entry.leg == "ends" and not _start_of(entry, others)) or (
            entry.leg == "still" and not _within(entry, others)
        ):
            problems.append(NO_START(entry.place, word=entry.thing.word.word, at=entry.from_ft))
            out += [replace(entry, leg="")] if _says_how_much(entry.thing) else _ask(entry, None, log_pass)
    return out, problems


def _ends_there(entry: Entry, before: Iterable[Entry]) -> bool:
    """A whole stretch of it was told that ends at this reading."""
    return any(e.thing.word is entry.thing.word and e.to_ft == entry.from_ft for e in before)


def _says_how_much(thing: Thing) -> bool:
    return not thing.word.needs or any(need in thing.values for need in thing.word.needs)


def _ask(entry: Entry, to_ft: float | None, log_pass: LogPass) -> list[Entry]:
    """What nobody said how much of is asked back; it is no finding until then."""
    word = entry.thing.word.word
    where = f"{entry.from_ft:g}" if to_ft is None else f"{entry.from_ft:g}-{to_ft:g}"
    question = how_much(word)
    goes_on = f"{entry.from_ft:g} {word} {{}} starts" if entry.leg == "starts" else f"{where} {word} {{}}"
    choices = tuple(goes_on.format(grade) for grade in ("light", "moderate", "severe"))
    text = entry.text.partition(";")[0].strip()
    asked = Asked(entry.from_ft, to_ft, text, question, choices, entry.place, entry.back, later=True)
    if asked not in log_pass.asked:
        log_pass.asked.append(asked)
    return []


def _within(still: Entry, others: list[Entry]) -> bool:
    """Between a start and its end, or the end of the run."""
    word = still.thing.word.word
    starts = [e for e in _of(word, others, "starts") if e.from_ft <= still.from_ft]
    if not starts:
        return False
    ends = [e for e in _of(word, others, "ends") if e.from_ft >= starts[-1].from_ft]
    return not ends or still.from_ft <= ends[0].from_ft


def _of(word: str, entries: Iterable[Entry], leg: str) -> list[Entry]:
    found = [e for e in entries if e.thing.word.word == word and e.leg == leg and e.to_ft is None]
    return sorted(found, key=lambda e: e.from_ft)


def _start_of(end: Entry, entries: Iterable[Entry]) -> Entry | None:
    """The open start that this end closes; None when an earlier end has closed it already."""
    others = list(entries)
    starts = [e for e in _of(end.thing.word.word, others, "starts") if e.from_ft <= end.from_ft]
    if not starts:
        return None
    closed_before = any(starts[-1].from_ft <= e.from_ft < end.from_ft for e in _of(end.thing.word.word, others, "ends"))
    return None if closed_before else starts[-1]


def _from_start(start: Entry, log_pass: LogPass, pass_end: float, problems: list[Problem]) -> list[Entry]:
    """The stretch from there to its end; one whose amount nobody said is asked back."""
    word, entries = start.thing.word, log_pass.entries
    later = [e for e in _of(word.word, entries, "starts") if e.from_ft > start.from_ft]
    stop = later[0].from_ft if later else float("inf")
    ends = [e for e in _of(word.word, entries, "ends") if start.from_ft <= e.from_ft <= stop]
    if not ends:
        problems.append(NO_END(start.place, word=word.word, at=start.from_ft, end=max(pass_end, start.from_ft)))
    to_ft = ends[0].from_ft if ends else max(pass_end, start.from_ft)
    between = [e for e in _of(word.word, entries, "still") if start.from_ft <= e.from_ft <= to_ft]
    thing = _together(start.thing, [e.thing for e in (*between, *ends[:1])])
    if not _says_how_much(thing):
        return _ask(start, to_ft, log_pass)
    return [replace(start, to_ft=to_ft, leg="", thing=thing)]


def _together(first: Thing, others: list[Thing]) -> Thing:
    """All amounts of one stretch: the worst percent, every sign, and of the rest what was said last."""
    values = dict(first.values)
    for other in others:
        for slot, value in other.values.items():
            if slot == "percent" and slot in values:
                values[slot] = max(values[slot], value, key=lambda pair: pair[1])
            elif slot in ("signs", "lengths"):
                values[slot] = tuple(dict.fromkeys((*values.get(slot, ()), *value)))
            else:
                values[slot] = value
    return Thing(first.word, first.at, values)
