"""The guide's text with a gap in; the page docs/job-file.md, its tables of keys printed from their declarations, out.

`python -m estimator.fieldnotes.job_page` prints every key between the marks of the page: what may be written, what it is for
(the question the interview asks for it, or a few words where it asks none), and an example.
"""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import is_dataclass
from pathlib import Path
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel

from estimator.fieldnotes.forms import JobFileForm
from estimator.fieldnotes.questions import SECTIONS
from estimator.fieldnotes.written import ALSO, fields_of

BEGIN, END = "<!-- keys: printed from the program -->", "<!-- end of keys -->"
FREE = ("settings", "words")
"""Tables whose keys are the tables' own settings, or one's own words."""
NOT_ASKED: Mapping[str, str] = {
    "job.languages": "the same as `language`", "job.notes": "remarks for the office",
    "job.inspected_on": "day of the inspection, where the price is of another day",
    "house.exits": "how many drains leave the building", "house.bathrooms": "how many; the interview counts them from the fixtures",
    "house.keep_floors": "the same as in [wishes]", "house.foundation_work": "[foundation] in one line",
    "site.caving_signs": "the competent person saw signs of caving, or looked and saw none",
    "site.water_table": "groundwater below the surface", "site.paint_sqft": "old paint that the work disturbs, square feet",
    "site.roots_in_soil": "roots stand where the dig is", "wishes.recommend": "your own recommendation: an option's letter or name",
    "wishes.because": "why you recommend it", "wishes.by": "who recommends it", "wishes.add_ons": "the add-ons the homeowner chose",
    "foundation.lift_date": "the day of the lift", "line.zero": "where stations begin", "line.access": "where the only pass went in",
    "line.to": "where it went", "line.flow": "the way it went", "line.riser": "pipe from the lip down to the line",
    "line.surface": "there is no riser", "line.ends": "where the line ends", "line.note": "a remark", "line.pass": "each camera pass with a log of its own",
    "water_test.from": "the part of one line that was tested, by station", "water_test.to": "its other end",
    "water_test.level": "what heights are counted from", "water_test.riser_size": "the only open riser", "water_test.drop": "one drop, with its `minutes`",
    "water_test.minutes": "the time of `drop`", "water_test.held_at": "where the water stopped falling", "water_test.settled": "time before the first reading",
    "water_test.rose_at": "a fixture where the water rose", "water_test.not_in_test": "lines and branches left out", "water_test.billed": "the test is on the bill",
    "water_test.witness": "who watched", "water_test.note": "a remark", "reroute.legs": "where the new pipe runs, place and length",
    "reroute.fall_available": "invert to invert", "reroute.size": "size of the new pipe", "reroute.penetrations": "holes through walls, floor or roof",
    "reroute.turns": "bends", "reroute.vents": "vents", "sign.note": "a remark", "approval.what": "the paper", "approval.by": "who signed it",
    "approval.on": "its day", "approval.covers": "rules that wait for it", "override.reason": "why; the office sheet shows it",
    "override.because": "the same as `reason`", "override.rule": "the rule overruled", "override.option": "the option it is for",
    "override.line": "the line it is for", "override.where": "a station or a stretch", "override.item": "a line of the quote or a task",
    "override.quantity": "your quantity with its unit", "override.hours": "your hours", "override.price": "your price of the option",
    "option.do": "what to do with it", "option.name": "its letter or name", "option.new_name": "its new name", "option.repairs": "the repairs it consists of",
    "allowance.text": "what it is for", "allowance.amount": "dollars", "discount.reason": "why", "discount.reason_es": "the same in Spanish", "discount.amount": "dollars",
    "add_on.code": "its short name", "add_on.quantity": "how many; 0 leaves it out", "add_on.text": "its words", "add_on.text_es": "its words in Spanish",
    "add_on.price": "its price", "add_on.options": "only with these options",
}  # fmt: skip
"""What the interview does not ask, or writes from another answer."""


def every_key() -> Iterator[tuple[str, str, str]]:
    """Each table, key and what may be written there."""
    for table, field in JobFileForm.model_fields.items():
        record: Any = _inside(field.annotation)
        if table in FREE or record is None:
            continue
        if issubclass(record, BaseModel):
            for name, one in record.model_fields.items():
                yield table, one.alias or name, _words(one.annotation)
            continue
        yield from ((table, one.key, one.kind.words) for one in fields_of(record))
        written = {one.key for one in fields_of(record)}
        yield from ((table, key, "") for key in ALSO.get(record, {}) if key not in written)


def _inside(annotation: Any) -> type | None:
    """The form or record of a table, also of a list of them."""
    if isinstance(annotation, type) and (issubclass(annotation, BaseModel) or is_dataclass(annotation)):
        return annotation
    return next((found for part in get_args(annotation) if (found := _inside(part))), None)


def _words(annotation: Any) -> str:
    if annotation is bool:
        return "true or false"
    parts = [annotation, *get_args(annotation)]
    choices = next((get_args(part) for part in parts if get_origin(part) is Literal), ())
    return ", ".join(word for word in choices if word)


def _meanings() -> dict[str, str]:
    """What each key is for: the question's words, or those above."""
    asked = {
        f"{section.table}.{question.key}": question.text.text.partition("; or Enter")[0].removesuffix(", or Enter")
        for section in SECTIONS
        for question in section.questions
    }
    return {**NOT_ASKED, **asked}


def keys_part(example: Mapping[str, Any]) -> str:
    """A table of keys for each table of the file; examples are those of the file that has every key."""
    meanings, out, here = _meanings(), [BEGIN, ""], ""
    for table, key, may in every_key():
        if table != here:
            several = isinstance(example.get(table), list)
            out += [*([""] if here else []), f"### `{'[[' if several else '['}{table}{']]' if several else ']'}`", ""]
            out += ["| key | what it is | may be | such as |", "|---|---|---|---|"]
            here = table
        out.append(f"| `{key}` | {meanings[f'{table}.{key}']} | {may} | {_such_as(example.get(table), key)} |")
    return "\n".join([*out, "", END])


def _such_as(table: Any, key: str) -> str:
    rows = table if isinstance(table, list) else [table or {}]
    value = next((row[key] for row in rows if key in row), None)
    if value is None:
        return ""
    return "`" + _toml(value).replace("|", "\\|").partition("\n")[0] + "`"


def _toml(value: Any) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return f'"{value.strip().splitlines()[0]}"' if "\n" not in value.strip() else '"main.txt"'
    if isinstance(value, list):
        return "[" + ", ".join(map(_toml, value)) + "]"
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{key} = {_toml(inner)}" for key, inner in value.items()) + " }"
    return str(value)


def page(text: str, example: Mapping[str, Any]) -> str:
    """The guide with its keys printed anew."""
    before, _, rest = text.partition(BEGIN)
    return before + keys_part(example) + rest.partition(END)[2]


if __name__ == "__main__":
    root = Path(__file__).parents[2]
    guide = root / "docs" / "job-file.md"
    every = tomllib.loads((root / "tests" / "fieldnotes" / "everything.toml").read_text("utf-8"))
    guide.write_text(page(guide.read_text("utf-8"), every), "utf-8")
