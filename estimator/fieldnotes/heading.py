"""A pass heading comes in (`pass front cleanout to house, riser 28in, before cleaning`); access, direction, riser go out."""

import re
from dataclasses import replace
from typing import Literal

from estimator.fieldnotes.limits import MOST_BARE_RISER_FT
from estimator.fieldnotes.tidy import Tidied
from estimator.model.frozen import Frozen
from estimator.model.lengths import match_length, parse_length, show, unit_written
from estimator.model.problem import Place, Problem, error, question, warning

FLOW = error(
    "log/flow",
    "the pass “{text}” does not say which way the camera went.",
    "Write `with flow` or `against flow` in the heading (`to house`, `to street` and `to main` say it too).",
    "Left and right, and where things lie, hang on it.",
)
RISER = error(
    "log/riser",
    "the pass “{text}” gives no riser.",
    "Write the pipe from the lip down to the line, such as `riser 28in`; where there is none, write `surface`.",
    "The reel counts the riser too; a forgotten riser moves every dig by its length.",
)
RISER_TAKEN_AS_NONE = warning(
    "log/riser-none",
    "the pass “{text}” gives no riser, so 0 is taken.",
    "Write `riser 22in`, or `surface` when the cable goes straight into the line.",
)
HEADING_WORD = warning(
    "log/heading-word",
    "“{text}” in a pass heading is not understood.",
    "Write the access, then any of: to …, with flow, against flow, riser 28in, surface, before cleaning, "
    "after cleaning, zero at 46.9, from end. A remark goes after ;",
)
RISER_UNIT = error(
    "log/riser-unit",
    "the pass “{text}” gives a riser of {feet} without a unit.",
    "Write `riser {feet}in` or `riser {feet}ft`.",
    "Every dig is measured from behind the riser; inches read as feet move it by many feet.",
)
HEADING_TWICE = warning(
    "log/heading-twice",
    "the heading “{text}” follows another of the same access with nothing between; both are taken as one pass.",
    "Strike one of them; if two passes were meant, type what the first of them saw.",
)
SAW_NOTHING = question(
    "log/pass-saw-nothing",
    "no line under the pass “{text}” has a footage.",
    "Strike the heading, or type what that pass saw, with its last footage.",
    "A pass without a footage inspects nothing.",
)
PROBLEMS = (HEADING_TWICE, SAW_NOTHING, FLOW, RISER, RISER_UNIT, RISER_TAKEN_AS_NONE, HEADING_WORD)

_OUT = re.compile(r"\b(?:street|main|city|tank|septic|sewer|alley|downstream|out)\b", re.IGNORECASE)
_NEXT = re.compile(
    r",|\s(?=(?:riser|zero at)\s|to\s(?:house|street|main|city|tank|septic|sewer)\b|(?:with|against) flow\b|(?:no riser|surface|from end)\b"
    r"|(?:before|after)\s+(?:jet|clean|descal|cut|scrap))",
    re.IGNORECASE,
)
"""Where the next part of a heading begins; the commas may be left out."""
_IN = re.compile(r"\b(?:house|upstream|in)\b", re.IGNORECASE)


class Heading(Frozen, kw_only=True):
    """As written. `riser_ft` None: not said. `zero_at_ft` is where this pass begins, as a reading of the first pass."""

    access: str = ""
    to: str = ""
    flow: Literal["with flow", "against flow"] | None = None
    riser_ft: float | None = None
    riser_has_unit: bool = True
    surface: bool = False
    when: str = ""
    after_cleaning: bool = False
    zero_at_ft: float | None = None
    from_end: bool = False
    note: str = ""
    text: str = ""
    place: Place = Place()

    @property
    def riser(self) -> str:
        """How far down to the line, in standard words; nothing where it was not said."""
        return "surface" if self.surface else f"riser {show(self.riser_ft)}" if self.riser_ft else ""


def flow_of(to: str) -> Literal["with flow", "against flow"] | None:
    """Where the camera went says which way it went, for the plain cases."""
    if _OUT.search(to):
        return "with flow"
    return "against flow" if _IN.search(to) else None


def read_heading(line: Tidied, place: Place, note: str = "") -> tuple[Heading, list[Problem]]:
    """`line` begins after the word `pass`."""
    parts = [part.strip() for part in _NEXT.split(line.text)]
    access, _, to = re.sub(r"^\d+(?=\s)", "", parts[0]).strip().partition(" to ")
    kept: dict[str, object] = {"access": access.strip(), "to": to.strip(), "note": note, "text": line.text.strip()}
    problems: list[Problem] = []
    for part in parts[1:]:
        slot = _slot(part)
        if slot is None and part:
            problems.append(HEADING_WORD(place, text=part))
        kept |= slot or {}
    kept.setdefault("flow", flow_of(to))
    return Heading(**kept, place=place), problems  # type: ignore[arg-type]


def _slot(part: str) -> dict[str, object] | None:
    low = part.lower()
    if low in ("with flow", "against flow"):
        return {"flow": low}
    if low in ("surface", "no riser", "from end"):
        return {"from_end": True} if low == "from end" else {"surface": True}
    if low.startswith(("riser ", "drop ")):
        written = part[low.index(" ") + 1 :]
        feet = parse_length(written, "ft")
        return {"riser_ft": feet, "riser_has_unit": bool(unit_written(written))} if isinstance(feet, float) else None
    if low.startswith("zero at "):
        found = match_length(part, 8, "ft")
        return {"zero_at_ft": found[0]} if found and found[1] == len(part) else None
    if low.startswith("to "):
        return {"to": part[3:].strip()} | ({"flow": flow_of(part)} if flow_of(part) else {})
    if low.startswith(WHEN_BEGINS):
        return {"when": part, "after_cleaning": is_after_cleaning(part)}
    if low.startswith("why "):
        return {"when": part[4:].strip(), "after_cleaning": is_after_cleaning(part[4:])}
    return None


WHEN_BEGINS = ("before ", "after ", "while ", "during ")


def is_after_cleaning(when: str) -> bool:
    return bool(re.match(r"\s*after\b.*\b(?:clean|jet|descal|cut|scrap)", when, re.IGNORECASE))


_SLOTS = ("to", "flow", "riser_ft", "surface", "when", "after_cleaning", "zero_at_ft", "from_end", "note")


def said_again(first: Heading, again: Heading) -> Heading | None:
    """Return one heading for two of the same access, the later word counting; None where they cannot be one pass."""
    other_way = {first.flow, again.flow} >= {"with flow", "against flow"}
    other_time = first.when and again.when and first.after_cleaning != again.after_cleaning
    if first.access.lower() != again.access.lower() or other_way or other_time:
        return None
    blank = Heading()
    kept = {slot: getattr(first, slot) for slot in _SLOTS if getattr(again, slot) == getattr(blank, slot)}
    return replace(again, **kept)


def heading_problems(heading: Heading) -> list[Problem]:
    """What a pass must say and does not."""
    problems: list[Problem] = []
    if heading.flow is None:
        problems.append(FLOW(heading.place, text=heading.text))
    if not heading.riser_ft and not heading.surface:
        kind = RISER if "cleanout" in heading.access.lower() else RISER_TAKEN_AS_NONE
        if kind is RISER or heading.riser_ft is None:
            problems.append(kind(heading.place, text=heading.text))
    if heading.riser_ft and heading.riser_ft > MOST_BARE_RISER_FT and not heading.riser_has_unit:
        problems.append(RISER_UNIT(heading.place, text=heading.text, feet=heading.riser_ft))
    return problems
