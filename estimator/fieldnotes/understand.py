"""A log line as people type it in; what it says in the program's standard words, or what has to be asked, out.

The line's numbers and words (tokens, lexicon) may go together in several ways. Each way is weighed by how many words it
explains and how likely its numbers are; a clear winner is taken, anything else is asked with the best first.
"""

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from estimator.fieldnotes import corrections, remarks, wholelines
from estimator.fieldnotes.atoms import Atom, atoms, split
from estimator.fieldnotes.denials import denied
from estimator.fieldnotes.drafts import DEEP
from estimator.fieldnotes.figures import labelled, of_a_picture
from estimator.fieldnotes.heads import drafts
from estimator.fieldnotes.meaning import Context, Meaning
from estimator.fieldnotes.parts import apart
from estimator.fieldnotes.remarks import parted
from estimator.fieldnotes.sides import just_there
from estimator.fieldnotes.spoken import normal
from estimator.fieldnotes.tokens import Token, tokens
from estimator.model.say import Say

LONGEST_LINE = 600
"""Letters of a line that is still weighed; a longer one is asked back whole."""
MOST_ATOMS = 60


@lru_cache(maxsize=4096)
def understand(text: str, context: Context) -> Meaning:
    """The meaning of one line; never raises for anything a line can hold."""
    body = text.partition(";")[0]
    if len(body) > LONGEST_LINE:
        return Meaning(asked=Say.of("this line is too long to be one finding; type it in pieces?"))
    found = [_one(variant, context) for variant in _variants(tokens(normal(body, context.names)))]
    best = max(found, key=lambda m: (m.score, not m.asked))
    clear = [m for m in found if m.rows and not m.asked]
    short = next((m for m in found if m.short), None)
    if short and clear:  # `30ft 4in branch left`: the size, or a part of the reading
        return replace(short, asked=Say.of("which is meant?"), choices=(*clear[0].rows, *short.choices))
    if best.asked and len(clear) == 1 and len(found) > 1 and not best.instead and len(clear[0].rows) == 1:
        best = clear[0]  # `31ft 8in roots hvy`: 8 in cannot be those of the roots
    others = [m for m in found if m is not best and m.rows and m.rows != best.rows and best.score - m.score < 2]
    if best.rows and others and not best.asked:
        return Meaning(asked=Say.of("which is meant?"), choices=(*best.rows, *others[0].rows), score=best.score)
    return best


def _variants(found: list[Token]) -> Iterator[list[Token]]:
    """The tokens, and as another reading those with `34 ft 2in` taken apart where the line begins to count with it.

    Behind `for` or `next` it is a length and an amount: `30 belly next 5ft 1in`.
    """
    deep = any(a.means.get("place") in DEEP for a in atoms(split(found)))
    first = next((n for n, t in enumerate(found) if t.number and not (deep and t.kind == "in")), -1)
    long = next((n for n, t in enumerate(found) if n and _in_two(t) and found[n - 1].text in LONG), -1)
    if long > 0:
        yield _cut_in_two(found, long)
        return
    if (wide := _across(found)) is not None:
        yield _cut_in_two(found, wide)
        return
    yield found
    for n, token in enumerate(found[: first + 1] if deep else found):
        if _in_two(token) and not (deep and "'" in token.text):  # `3' 9" deep`
            yield _cut_in_two(found, n)
            return


LONG = ("for", "next", "another", "runs")


def _across(found: list[Token]) -> int | None:
    """`hole 40 ft 1in wide`: the only footage, and how wide it is there."""
    readings = [n for n, t in enumerate(found) if t.may_be_footage]
    wide = len(readings) == 1 and [t.text for t in found[readings[0] + 1 :][:1]] == ["wide"]
    return readings[0] if wide and _in_two(found[readings[0]]) else None


def _in_two(t: Token) -> bool:
    return t.kind == "ft" and t.plain and any(inch in t.text for inch in ("in", '"', "''", "pulg"))


def _cut_in_two(found: list[Token], n: int) -> list[Token]:
    token = found[n]
    feet = float(int(token.value))
    middle = re.search(r"(?:ft|feet|foot|pies|pie)\.?\s*", token.text)
    cut = token.at + (middle.end() if middle else 1)
    parts = [
        replace(token, text=token.text[: cut - token.at], end=cut, value=feet, plain=True),
        replace(token, kind="in", text=token.text[cut - token.at :], at=cut, value=round((token.value - feet) * 12, 4)),
    ]
    return [*found[:n], *parts, *found[n + 1 :]]


def _one(found: list[Token], context: Context) -> Meaning:
    every = atoms(split(found), context.names)
    if not every:
        return Meaning()
    said, noted = parted(every)
    if len(said) > MOST_ATOMS:
        return Meaning(asked=Say.of("this line is too long to be one finding; type it in pieces?"))
    meaning = Reader(said, context).meaning()
    return replace(meaning, left="; ".join(part for part in (meaning.left, *noted) if part))


SEPARATORS = frozenset(("and", "with", "w/", "w", "con", "y", "plus", "also", "but"))
POINT_LIKE = frozenset(("branch", "cleanout", "bend", "joint", "access", "stop", "end", "tree"))


OVER = {"drive": "drive", "walk": "walk", "street": "street", "yard": "ground", "slab": "slab"}
"""Zones that say from which surface a depth was read."""


class Reader:
    def __init__(self, every: list[Atom], context: Context) -> None:
        self.atoms, self.context = just_there(every), context
        self.used: set[int] = set()
        self.aside: set[int] = set()  # what is nothing in the pipe: men, blades, the scale a hole lies under
        self.clause = self._clauses()
        self.denied = denied(self.atoms)
        self.ask: list[tuple[Say, tuple[str, ...]]] = []
        self.amount_words: set[int] = set()
        self.turned = False  # the degrees of a bend are said
        self.filled: set[str] = set()  # what numbers with a label said already

    # ── small looks ───────────────────────────────────────────────────────────────────────────

    def has(self, cls: str, meaning: str = "") -> bool:
        return bool(self.where(cls, meaning))

    def where(self, cls: str, meaning: str = "") -> list[int]:
        return [
            n
            for n, a in enumerate(self.atoms)
            if cls in a.means and n not in self.denied and (not meaning or a.means[cls] == meaning)
        ]

    def text(self, n: int) -> str:
        return self.atoms[n].text if 0 <= n < len(self.atoms) else ""

    def words(self) -> str:
        return " ".join(a.text for a in self.atoms)

    def number(self, n: int) -> Token | None:
        token = self.atoms[n].token if 0 <= n < len(self.atoms) else None
        return token if token is not None and token.number else None

    def numbers(self) -> list[tuple[int, Token]]:
        """Every number of the line that measures something, with where it stands."""
        every = ((n, self.number(n)) for n in range(len(self.atoms)) if n not in self.denied)
        return [(n, t) for n, t in every if t is not None and not of_a_picture(self, n)]

    def readings(self) -> list[tuple[int, Token]]:
        """The numbers that may be a footage."""
        return [(n, t) for n, t in self.numbers() if t.may_be_footage]

    def is_mark(self, n: int, marks: str) -> bool:
        token = self.atoms[n].token if 0 <= n < len(self.atoms) else None
        return token is not None and token.kind == "mark" and token.text in marks

    def _clauses(self) -> list[int]:
        out, now = [], 0
        for a in self.atoms:
            if (a.token and a.token.kind == "mark" and a.token.text in ",;&+") or a.text in SEPARATORS:
                now += 1
            out.append(now)
        return out

    # ── the whole line ────────────────────────────────────────────────────────────────────────

    def meaning(self) -> Meaning:
        for way in (
            wholelines.tapes,
            corrections.correction,
            wholelines.begins,
            wholelines.heading,
            wholelines.turned,
            remarks.remark,
            wholelines.ditto,
        ):
            found = way(self)
            if found is not None:
                return accounted(self, found)
        whole = self.alone()
        return (apart(self) if whole.asked else None) or whole

    def other(self, every: list[Atom], context: Context | None = None) -> "Reader":
        """Another line of these atoms, after the same lines as this one."""
        return Reader(every, context or self.context)

    def without_denied(self, where: str) -> Meaning:
        """What the line says without what it denies, at a place written in standard words."""
        kept = [
            a
            for n, a in enumerate(self.atoms)
            if n not in self.denied
            and "no" not in a.means
            and "correct" not in a.means
            and not (a.token and n and "no" in self.atoms[n - 1].means)
        ]
        at = tokens(where.replace("-end", ""))
        head = [Atom(t.text, n, n, token=t) for n, t in enumerate(at)]
        return self.other([*head, *kept]).alone()

    def surface_follows(self, n: int) -> bool:
        """`28 floor`, `3ft from asphalt`: the next words name what lies over the pipe."""
        for k in range(n + 1, min(n + 6, len(self.atoms))):
            a = self.atoms[k]
            if "surface" in a.means or (a.means.get("zone") in OVER and a.means["zone"] != "slab"):
                return True
            if a.means.get("zone") == "slab" and a.text.split()[0] in ("under", "below", "bajo", "debajo", "beneath"):
                return True
            if a.token is not None or not (
                "from surface" in a.means or "plain" in a.means or "under" in a.means or a.means.get("place") == "depth"
            ):
                return False
        return False

    def surface(self) -> tuple[str, set[int]]:
        """What a depth is counted from, and the word that says so."""
        for n, a in enumerate(self.atoms):
            if "surface" in a.means:
                return a.means["surface"], {n}
            if a.means.get("zone") == "slab" and a.text.split()[-1] in ("floor", "flr"):
                return "floor", {n}
        for n, a in enumerate(self.atoms):
            if n not in self.used and (found := OVER.get(a.means.get("zone", ""))):  # not of a tape
                return found, {n}
        return "", set()

    def single_place(self) -> bool:
        return not any(t.kind == "range" for _, t in self.numbers()) and not self.has("fraction")

    def alone(self) -> Meaning:
        """What it says as one thing or several at one place."""
        numbers = labelled(self)
        found = drafts(self, numbers)
        return Finish(self, numbers, found).meaning()


from estimator.fieldnotes.account import accounted  # noqa: E402
from estimator.fieldnotes.finish import Finish  # noqa: E402
