"""A line that names no thing in; what may be meant by its numbers, as a question with the likeliest first, or a remark out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.bare_figures import SIZES_IN
from estimator.fieldnotes.deep import MOST_BARE_DEPTH
from estimator.fieldnotes.drafts import shown
from estimator.fieldnotes.logproblems import WHAT
from estimator.fieldnotes.meaning import Meaning
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.numbers_of_a_line import Numbers
    from estimator.fieldnotes.understand import Reader

TURNS = (45.0, 90.0, 22.5)
"""Degrees of the bends that are typed as a number alone."""


def unnamed(r: "Reader", numbers: "Numbers", if_gas: tuple[str, ...], at: float | None) -> Meaning:
    """`if_gas`: what is offered where a word may be that of another utility."""
    near = next((a for a in r.atoms if a.near), None)
    if near is not None:
        asked = Say.of(
            "“{typed}”: was {word} meant? A word that may be gas or another utility is never guessed?",
            typed=near.text,
            word=near.near,
        )
        return Meaning(asked=asked, choices=if_gas, score=2, at=at)
    values = [t.value for n, t in r.numbers() if n not in r.aside]
    if not values:
        return Meaning(score=1)
    if all("plain" in a.means or a.token is not None for a in r.atoms):
        choices = _turn(r, values) or _length(r, numbers) if at is not None else _turn(r, values)
        return Meaning(asked=WHAT, choices=(*choices, "note"), score=1, at=at)
    words = " ".join(a.text for a in r.atoms if a.unknown) or r.words()
    return Meaning(asked=Say.of("“{typed}”: what is there?", typed=words), choices=("note",), score=1, at=at)


def _turn(r: "Reader", values: list[float]) -> list[str]:
    """`33 45` and `45 left`: a bend, the latter at the last reading."""
    last = r.context.last_ft
    if len(values) == 2 and values[1] in TURNS and values[0] != values[1]:
        return [f"{shown(values[0])} bend {shown(values[1])}"]
    if values[0] in TURNS[:2] and r.has("side") and last is not None:
        return [f"{shown(last)} bend {shown(values[0])} {r.atoms[r.where('side')[0]].means['side']}"]
    return []


def _length(r: "Reader", numbers: "Numbers") -> list[str]:
    """`24 4in` may be a size or a branch; `24 36in` and `24 3.5ft` are longer than any drain is wide: the depth."""
    (_, first), *others = r.numbers()
    at, inches = shown(first.value), numbers.inches[0][1] if numbers.inches else None
    feet = next((t.value for _, t in others if t.kind == "ft" and t.value <= MOST_BARE_DEPTH), None)
    if first.kind == "in":
        return []
    if inches is None:
        return [f"{at} depth {shown(feet)}ft"] if feet is not None else []
    if inches > max(SIZES_IN):
        return [f"{at} depth {shown(inches)}in"]
    return [f"{at} size {shown(inches)}in", f"{at} branch {shown(inches)}in"]
