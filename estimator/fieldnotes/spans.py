"""Entries of one pass with open ends come in (`22 sag starts`, `26 sag ends 50%`, `8- channel`); closed ones go out."""

from collections.abc import Iterable
from dataclasses import replace

from estimator.fieldnotes.kinds import error, question
from estimator.fieldnotes.log import Entry, LogPass
from estimator.fieldnotes.logproblems import AMOUNT
from estimator.fieldnotes.things import Thing
from estimator.model.problem import Problem

NO_START = error(
    "log/no-start",
    "{word} ends at {at:g} but never started.",
    "Write where it starts, such as `22 {word} starts`, or the whole stretch, such as `22-26 {word}`.",
)
NO_END = question(
    "log/no-end",
    "{word} that starts at {at:g} never ends; it is taken to {end:g}, where the pass stopped.",
    "Write where it ends, such as `{end:g} {word} ends`.",
)
PROBLEMS = (NO_START, NO_END)


def furthest_ft(log_pass: LogPass) -> float | None:
    """The highest reading of the pass, ft on the reel, or None."""
    readings = [r for e in log_pass.entries for r in (e.from_ft, e.to_ft) if r is not None]
    readings += [r for s in log_pass.sames for r in (s.from_ft, s.to_ft) if r is not None]
    return max(readings, default=None)


def closed(log_pass: LogPass) -> tuple[list[Entry], list[Problem]]:
    """Every entry with both ends known, in the order written."""
    problems: list[Problem] = []
    out: list[Entry] = []
    end = furthest_ft(log_pass) or 0.0
    for number, entry in enumerate(log_pass.entries):
        if not entry.leg or entry.thing.word.kind in ("zone", "holds"):
            out.append(replace(entry, leg=""))
        elif entry.leg == "starts" and entry.to_ft is None:
            out.append(_from_start(entry, log_pass.entries, end, problems))
        elif entry.leg == "ends" and not _start_of(entry, log_pass.entries[:number] + log_pass.entries[number + 1 :]):
            problems.append(NO_START(entry.place, word=entry.thing.word.word, at=entry.from_ft))
        elif entry.to_ft is not None:
            out.append(replace(entry, leg=""))
    return out, problems


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


def _from_start(start: Entry, entries: list[Entry], pass_end: float, problems: list[Problem]) -> Entry:
    word = start.thing.word
    later = [e for e in _of(word.word, entries, "starts") if e.from_ft > start.from_ft]
    stop = later[0].from_ft if later else float("inf")
    ends = [e for e in _of(word.word, entries, "ends") if start.from_ft <= e.from_ft <= stop]
    if not ends:
        problems.append(NO_END(start.place, word=word.word, at=start.from_ft, end=max(pass_end, start.from_ft)))
    to_ft = ends[0].from_ft if ends else max(pass_end, start.from_ft)
    between = [e for e in _of(word.word, entries, "still") if start.from_ft <= e.from_ft <= to_ft]
    thing = _together(start.thing, [e.thing for e in (*between, *ends[:1])])
    if word.needs and not any(need in thing.values for need in word.needs):
        problems.append(AMOUNT(start.place, text=start.text.strip()[:60], word=word.word))
    return replace(start, to_ft=to_ft, leg="", thing=thing)


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
