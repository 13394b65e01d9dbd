"""Answers about water tests come in (what was covered, minutes and drop, the verdict); values for the job file go out."""

import re
from collections.abc import Mapping
from itertools import pairwise
from typing import Any

from estimator.fieldnotes.answers import Got, Known, Unread, chosen, length_words, nearest, one_of
from estimator.fieldnotes.line_answers import names_of, same_name
from estimator.model.lengths import parse_length, plain_marks, show_inches
from estimator.model.say import Say, Typed


def covers(answer: str, key: str, known: Known) -> Got | Unread:
    """Names of lines and branches; `all` is every one."""
    names = names_of(known)
    if answer.lower().strip(" .") in ("all", "everything", "whole", "whole house", "every"):
        return Got({key: list(names)}, ", ".join(names)) if names else Unread.of("no line has a name yet")
    parts = [part.strip() for part in re.split(r"[,;+]|\band\b", answer) if part.strip()]
    found: list[str] = []
    for number, part in enumerate(parts):
        if not (name := same_name(part, names)):
            near = nearest(part, names)
            offer = ", ".join([*found, near, *parts[number + 1 :]]) if near else ""
            return Unread(
                Say.of(
                    "“{part}” is no line or branch. Known: {known}",
                    part=Typed(part),
                    known=Typed(", ".join(names)) if names else Say.of("none yet"),
                ),
                offer,
            )
        found.append(name)
    return (
        Got({key: list(dict.fromkeys(found))}, ", ".join(found))
        if found
        else Unread.of("name a line or a branch, or all")
    )


test_when = one_of(("routine", "before lift", "after lift", "after repair"), {"before": "before lift"})
test_kind = one_of(
    ("whole", "isolated", "new pipe"),
    {"all": "whole", "everything": "whole", "part": "isolated", "section": "isolated", "alone": "isolated"},
)


def last_drop(item: Mapping[str, Any]) -> tuple[float, float] | None:
    """Minutes and feet of drop of the last reading written for a test."""
    pairs = [_reading(part.strip()) for part in str(item.get("readings") or "").split(",")]
    read = [pair for pair in pairs if pair is not None]
    return max(read) if read else None


def drop_words(item: Mapping[str, Any]) -> Say | str:
    """`It fell 1 1/2 in in 20 min.`, or nothing where no drop was read."""
    if (last := last_drop(item)) is None:
        return ""
    minutes = Typed(f"{last[0]:g}")
    if not last[1]:
        return Say.of("It held for {minutes} min.", minutes=minutes)
    return Say.of("It fell {drop} in {minutes} min.", drop=Typed(show_inches(last[1])), minutes=minutes)


def result(answer: str, key: str, known: Known) -> Got | Unread:
    """The verdict; one that the drop speaks against is asked back once."""
    others = {"pass": "passed", "held": "passed", "ok": "passed", "good": "passed", "fail": "failed", "leaks": "failed",
              "bad": "failed", "no seal": "could not be sealed", "not sealed": "could not be sealed"}  # fmt: skip
    word = chosen(answer, ("passed", "failed", "could not be sealed"), others)
    if isinstance(word, Unread):
        return word
    last = last_drop(known.item)
    against = word == {True: "passed", False: "failed"}[bool(last[1])] if last else False
    if known.item.get("sealed") is False and word != "could not be sealed":
        against = True
    if against and not known.insists:
        fell = drop_words(known.item) if known.item.get("sealed") is not False else Say.of("The ball did not seal.")
        return Unread(Say.of("{fell} “{word}” all the same? The same again keeps it", fell=fell, word=Typed(word)))
    return Got({key: word}, word)


def risers(answer: str, key: str, known: Known) -> Got | Unread:
    """`4, 4, 2, 1.5`: the sizes of the open risers, inches; `2 x 4` is two of them."""
    sizes: list[str] = []
    for part in (p.strip() for p in re.split(r"[,;+]|\band\b", plain_marks(answer)) if p.strip()):
        times = re.fullmatch(r"(\d{1,2})\s*[x×]\s*(.+)", part)
        feet = parse_length(times[2] if times else part, "in")
        if isinstance(feet, Say):
            return Unread(Say.of("“{part}”: {wrong}", part=Typed(part), wrong=feet))
        sizes += [length_words(times[2] if times else part, feet, "in")] * (min(int(times[1]), 40) if times else 1)
    return (
        Got({key: sizes}, ", ".join(sizes)) if sizes else Unread.of("write the sizes of the open risers: 4, 4, 2, 1.5")
    )


_MINUTES_FIRST = re.compile(
    r"(\d{1,5}(?:\.\d+)?)\s*(?::|=|min(?:utes?|s)?\b\.?)\s*(?::|=|fell|down|dropped)?\s*(.+)", re.I | re.A
)
_DROP_FIRST = re.compile(
    r"(?:fell|down|dropped|lost)?\s*(.+?)\s*(?:\b(?:in|after|over)\b\s*)?(\d{1,5}(?:\.\d+)?)\s*(?:min\w*|m)\b\.?",
    re.I | re.A,
)
_HELD = re.compile(
    r"(?:held|no (?:drop|loss)|steady|did not (?:fall|drop|move))\D*?(\d{1,5})\s*(?:min\w*)?", re.I | re.A
)


def _reading(part: str) -> tuple[float, float] | None:
    """Minutes and feet of drop."""
    if match := _HELD.fullmatch(part):
        return float(match[1]), 0.0
    for pattern, minute, drop in ((_MINUTES_FIRST, 1, 2), (_DROP_FIRST, 2, 1)):
        if match := pattern.fullmatch(part):
            feet = parse_length(match[drop], "in")
            if isinstance(feet, float):
                return float(match[minute]), feet
    return None


def readings(answer: str, key: str, known: Known) -> Got | Unread:
    """Minutes and how far the water fell: `5:3/8, 10:3/4`, `fell 1 1/2 in 20 min`, `held 30 min`."""
    found: dict[float, float] = {0.0: 0.0}
    for part in (p.strip() for p in re.split(r"[,;]", plain_marks(answer)) if p.strip()):
        pair = _reading(part)
        if pair is None:
            return Unread.of(
                "“{part}” is no minutes and drop: write 0:0, 5:3/8, 10:3/4 or fell 1 1/2 in 20 min", part=part
            )
        found[pair[0]] = pair[1]
    in_order = sorted(found.items())
    if len(in_order) == 1:
        return Unread.of("write minutes and drop: 0:0, 5:3/8, 10:3/4")
    if any(later < earlier for (_, earlier), (_, later) in pairwise(in_order)):
        return Unread.of("the water cannot rise: write how far it fell since the start, each time")
    shown = ", ".join(f"{minutes:g}:{show_inches(feet)}" for minutes, feet in in_order)
    return Got({key: shown}, shown)
