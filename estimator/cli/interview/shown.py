"""What is written for a question in, the words a person would type for it out; and the list of all answers."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from estimator.cli.interview.steps import Step, answer_of, item_of, items, steps
from estimator.cli.reader import for_reader
from estimator.cli.views.screen import Row
from estimator.cli.views.table import table
from estimator.fieldnotes.fixture_answers import fixtures_said
from estimator.fieldnotes.house_answers import LANGUAGES
from estimator.fieldnotes.questions import Data
from estimator.model.say import Say, Typed

ONE: Mapping[str, Say] = {
    "line": Say.of("Line"),
    "water test": Say.of("Water test"),
    "sign": Say.of("Sign"),
    "way round": Say.of("Reroute"),
}
"""One of several, over its questions."""


def words(value: Any) -> str:
    """
    >>> words(True), words(["main", "kitchen"]), words({"line": "main", "at": 21.0}), words({"bathroom_groups": 2})
    ('yes', 'main, kitchen', 'main at 21', '2 bathroom groups')
    """
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Mapping):
        return _table_words(value)
    if isinstance(value, list | tuple):
        spoken = next((word for word, codes in LANGUAGES.items() if codes == list(value)), "")
        return spoken or ", ".join(words(part) for part in value)
    return f"{value:g}" if isinstance(value, float) else " ".join(str(value).split())


def _table_words(value: Mapping[str, Any]) -> str:
    if "line" in value:
        ends = [f"{value[key]:g}" for key in ("from", "to") if isinstance(value.get(key), int | float)]
        at = value.get("at", value.get("station"))
        where = f" at {at:g}" if isinstance(at, int | float) else f" {' to '.join(ends)}" if ends else ""
        return f"{value['line']}{where}"
    return fixtures_said(value)


def present(step: Step, data: Data) -> str:
    """The answer there is, in words; "" for none."""
    value = answer_of(step, data)
    if value is None:
        return ""
    if step.question.key == "work" and (day := item_of(step, data).get("lift_date")):
        return f"{value} {words(day)}"
    return words(value)


def title(step: Step, data: Data) -> str:
    """`The house`, `Lines`, `Line 2: kitchen`; nothing where one more of a kind is asked for."""
    new = step.index is not None and not item_of(step, data)
    if step.index is None or (new and step.index == 0):
        return for_reader(step.section.title)
    if new:
        return ""
    name = words(item_of(step, data).get(step.section.questions[0].key, ""))
    return for_reader(
        Say.of("{one} {number}: {name}", one=ONE[step.section.one], number=step.index + 1, name=Typed(name))
    )


def listed(data: Data, columns: int) -> list[Row]:
    """Every question with its answer; the ones a price needs and has not got are marked."""
    out: list[Row] = []
    here = ""
    block: list[tuple[str, str]] = []
    for step in steps(data):
        if step.begins and step.index == len(items(data, step.section.table)):
            continue
        head = title(step, data)
        if head != here:
            out += _block(here, block, columns)
            here, block = head, []
        missing = for_reader(Say.of("needed for a price")) if step.question.needed else "-"
        block.append((step.question.key.replace("_", " "), present(step, data) or missing))
    return [*out, *_block(here, block, columns)]


def _block(head: str, rows: list[tuple[str, str]], columns: int) -> list[Row]:
    if not rows:
        return []
    return [Row(head, "head"), *(Row("  " + line) for line in table(("", ""), rows, columns - 2))]


def missing(data: Data) -> list[Step]:
    """Questions a price cannot do without, and that have no answer."""
    return [
        step
        for step in steps(data)
        if step.question.needed
        and answer_of(step, data) is None
        and not (step.begins and (step.index or step.section.table != "line"))
    ]
