"""Kinds of values in the job file: lengths, dollars, counts, words. A raw TOML value comes in, a checked one goes out."""

import re
from decimal import Decimal
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, PlainValidator
from pydantic_core import PydanticCustomError

from estimator.fieldnotes.limits import MOST_BARE_RISER_FT
from estimator.fieldnotes.tendon_proof import NAME_THE_PAPER, why_no_proof
from estimator.model.job import EdgeBeam
from estimator.model.lengths import Unit, parse_length, unit_written
from estimator.model.say import Say


def _no_length(reason: Say) -> PydanticCustomError:
    return PydanticCustomError("length", "no length", {"reason": reason})


def _length(bare: Unit) -> BeforeValidator:
    def read(value: Any) -> Any:
        if isinstance(value, bool) or not isinstance(value, int | float | Decimal | str):
            raise _no_length(Say.of("write a length such as 2 ft 8 in or 30 in"))
        text = format(value, "f") if isinstance(value, Decimal | float) and _finite(value) else str(value)
        feet = parse_length(text, bare)
        if isinstance(feet, Say):
            raise _no_length(feet)
        return feet

    return BeforeValidator(read)


def _riser(value: Any) -> Any:
    """A bare number above what a riser is long in feet is not taken for feet."""
    feet = parse_length(str(value), "ft")
    if isinstance(feet, float) and feet > MOST_BARE_RISER_FT and not unit_written(str(value)):
        raise _no_length(Say.of("inches or feet? {inches} in, or {feet} ft", inches=str(value), feet=str(value)))
    return value


def _finite(value: Decimal | float) -> bool:
    return abs(Decimal(value)) < Decimal(10) ** 12 if Decimal(value).is_finite() else False


def _words(value: Any) -> Any:
    """One word or a list of them."""
    return (value,) if isinstance(value, str) else value


def _pairs(value: Any) -> Any:
    """`wall 12, yard 26 ft` as a list of legs; anything else as it is."""
    if not isinstance(value, str):
        return value
    parts = (part.strip().partition(" ") for part in value.split(","))
    return [{"zone": zone, "length": length} for zone, _, length in parts]


Legs = BeforeValidator(_pairs)


def _edge_beam(value: Any) -> Any:
    """`none`, or `24in deep 12in wide` as an EdgeBeam."""
    if not isinstance(value, str):
        raise PydanticCustomError("edge_beam", "an edge beam is none, or so deep and so wide")
    if value.strip().lower() == "none":
        return EdgeBeam(0.0, 0.0)
    parts = re.fullmatch(r"\s*(.+?)\s*deep[,\s]+(.+?)\s*wide\s*", value, re.IGNORECASE)
    read = [parse_length(part, "in") for part in parts.groups()] if parts else []
    lengths = [ft for ft in read if not isinstance(ft, Say) and ft > 0]
    if len(lengths) != 2:
        raise PydanticCustomError("edge_beam", "an edge beam is none, or so deep and so wide")
    return EdgeBeam(*lengths)


BeamWords = Annotated[EdgeBeam, PlainValidator(_edge_beam)]


def _tendons(value: Any) -> Any:
    """`yes`, `unknown`, or `none` with the paper that shows it; a bare `none` proves nothing."""
    if not isinstance(value, str):
        return value
    words = value.strip()
    said = re.fullmatch(r"none\s*[,:;]\s*(\S.*)", words, re.IGNORECASE | re.DOTALL)
    wrong = why_no_proof(said[1]) if said else NAME_THE_PAPER
    if wrong and not re.match(r"(?:yes|unknown)\b", words, re.IGNORECASE):
        raise PydanticCustomError("tendons", "no proof", {"reason": wrong})
    return words


TendonWords = Annotated[str, BeforeValidator(_tendons)]


def _text(value: Any) -> Any:
    return str(value) if isinstance(value, int | Decimal) and not isinstance(value, bool) else value


def _lengths(value: Any) -> Any:
    """`{ "front wall" = "12 ft 9 in" }` as pairs; anything else is no such table."""
    if not isinstance(value, dict):
        raise PydanticCustomError("length_pairs", "write wall = length pairs in braces")
    return tuple(value.items())


def _counts(value: Any) -> Any:
    """`{ kitchen_sink = 1 }` as pairs; anything else is no such table."""
    if not isinstance(value, dict):
        raise PydanticCustomError("dict_type", "write word = number pairs in braces")
    return tuple(value.items())


Feet = Annotated[float, _length("ft")]
Riser = Annotated[Feet, BeforeValidator(_riser)]
Inches = Annotated[float, _length("in")]  # feet too, once read: only a bare number means inches
Text = Annotated[str, BeforeValidator(_text)]
Words = Annotated[tuple[str, ...], BeforeValidator(_words)]
Language = Literal["en_US", "es_US"]
Languages = Annotated[tuple[Language, ...], BeforeValidator(_words)]
Count = Annotated[int, Field(ge=0, le=1_000_000)]
Dollars = Annotated[Decimal, Field(ge=0, le=100_000_000)]
Amount = Annotated[float, Field(ge=0, le=100_000)]
Counts = dict[str, Count]
CountPairs = Annotated[tuple[tuple[str, Count], ...], BeforeValidator(_counts)]
LengthPairs = Annotated[tuple[tuple[str, Feet], ...], BeforeValidator(_lengths)]
Station = Annotated[float, Field(ge=-10_000, le=10_000)]
