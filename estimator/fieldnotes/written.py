"""A record of the model in; the keys of its table in a job file, what may be written there, and how it is written again, out.

The record is the one declaration: a key is a field's name without the unit at its end, and the field's type says the rest.

>>> from estimator.model.job import Site
>>> [(field.key, field.needed) for field in fields_of(Site)][:2]
[('gate', False), ('carry', False)]
>>> written(Site(gate_ft=3.5, located=True))
{'gate': '3 ft 6 in', 'machine': True, 'located': True, 'roots_in_soil': False}
"""

import dataclasses
import re
import types
from collections.abc import Callable, Mapping
from datetime import date
from decimal import Decimal
from functools import cache
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

from pydantic import BaseModel, ConfigDict, Field, GetCoreSchemaHandler, create_model
from pydantic_core import CoreSchema, core_schema

from estimator.fieldnotes import values
from estimator.model.frozen import Frozen
from estimator.model.job import EdgeBeam, House
from estimator.model.lengths import show
from estimator.model.wanted import Override

_UNIT = re.compile(r"_(?:ft|sf)$")


class Form(BaseModel):
    """A table of the job file, closed: a key that is not there is an error."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True, allow_inf_nan=False)


class Kind(Frozen):
    """What may be written for a field, how its value is written again, and what it is, in words."""

    reads: Any
    shows: Callable[[Any], Any] = lambda value: value
    words: str = "words"


class Written(Frozen):
    """One field: its name in the record, its key in the file."""

    name: str
    key: str
    kind: Kind
    optional: bool
    default: Any  # dataclasses.MISSING where it has to be written

    @property
    def needed(self) -> bool:
        return self.default is dataclasses.MISSING


def beam_words(beam: EdgeBeam) -> str:
    """As it is written: `none`, or how deep and wide."""
    return f"{show(beam.deep_ft)} deep {show(beam.wide_ft)} wide" if beam.there else "none"


def dollars(value: Decimal) -> Any:
    import tomlkit

    return tomlkit.value(format(value, "f"))


_LENGTHS = {
    "ft": Kind(values.Feet, show, "a length, feet"),
    "in": Kind(values.Inches, show, "a length, inches"),
    "station": Kind(values.Station, words="a station, feet"),
}
_KINDS: Mapping[Any, Kind] = {
    str: Kind(values.Text),
    bool: Kind(bool, words="true or false"),
    date: Kind(date, words="a day"),
    int: Kind(values.Count, words="a number"),
    float: Kind(values.Amount, words="a number"),
    Decimal: Kind(values.Dollars, dollars, "dollars"),
    EdgeBeam: Kind(values.BeamWords, beam_words, "none, or how deep and wide"),
    tuple[str, ...]: Kind(values.Words, list, "a list of words"),
    tuple[tuple[str, float], ...]: Kind(values.LengthPairs, dict, "word = length pairs"),
    tuple[tuple[str, int], ...]: Kind(values.CountPairs, dict, "word = number pairs"),
}
"""By the field's type."""


def _kind(hint: Any) -> Kind:
    if get_origin(hint) is Literal:
        return Kind(hint, words=", ".join(word for word in get_args(hint) if word))
    if get_origin(hint) is not Annotated:
        return _KINDS[hint]
    says = hint.__metadata__[0]
    if isinstance(says, tuple):
        return Kind(Annotated[int, Field(ge=says[0], le=says[1])], words=f"a number from {says[0]} to {says[1]}")
    return _LENGTHS.get(says) or Kind(values.TendonWords, words="yes, unknown, or none with the paper that proves it")


@cache
def fields_of(record: type) -> tuple[Written, ...]:
    """Every field of the record. Errors: KeyError for a type that has no way to be written."""
    hints = get_type_hints(record, include_extras=True)
    out = []
    for field in dataclasses.fields(record):
        hint, optional = hints[field.name], False
        if get_origin(hint) in (Union, types.UnionType):
            hint, optional = next(part for part in get_args(hint) if part is not type(None)), True
        out.append(Written(field.name, _UNIT.sub("", field.name), _kind(hint), optional, field.default))
    return tuple(out)


ALSO: Mapping[type, Mapping[str, Any]] = {
    House: {
        "keep_floors": (bool | None, None),
        "foundation_work": (values.Text, ""),
    },  # wishes and foundation, in short
    Override: {"reason": (values.Text, ""), "because": (values.Text, "")},
}
"""Keys that job files have beside, or otherwise than, the fields of a record."""


@cache
def form_of(record: type) -> type[Form]:
    """The closed form of a record's table."""
    fields: dict[str, Any] = {}
    for field in fields_of(record):
        reads = field.kind.reads | None if field.optional else field.kind.reads
        given: dict[str, Any] = {"alias": field.key} if field.key != field.name else {}
        fields[field.name] = (reads, Field(... if field.needed else field.default, **given))
    return create_model(f"{record.__name__}Form", __base__=Form, **(fields | dict(ALSO.get(record, {}))))


class AsRecord:
    """`Annotated[House, AsRecord]`: the table of that record's keys comes in, the record goes out."""

    @classmethod
    def __get_pydantic_core_schema__(cls, record: type, handler: GetCoreSchemaHandler) -> CoreSchema:
        def made(form: Any) -> Any:
            given = {field.name: getattr(form, field.name) for field in fields_of(record)}
            return record(**given | ({"reason": form.reason or form.because} if record is Override else {}))

        return core_schema.no_info_after_validator_function(made, handler.generate_schema(form_of(record)))


def written(record: Any) -> dict[str, Any]:
    """The table that reads back as this record: what says something, and what has to be there."""
    out = {}
    for field in fields_of(record.__class__):
        value = getattr(record, field.name)
        if field.needed or (value is not None and value not in ("", ())):
            out[field.key] = field.kind.shows(value)
    return out
