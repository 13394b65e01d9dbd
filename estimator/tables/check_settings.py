"""One row of the settings table and its place in; what is wrong with its value out. The same for a job's own settings."""

import re
from collections.abc import Iterator

from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.tables import cell_problems
from estimator.tables import setting_problems as sp
from estimator.tables.check_view import View
from estimator.tables.rows import NO_NUMBER, Setting
from estimator.tables.setting_words import wrong_word
from estimator.tables.values import BadCell, parse_number, plain_number

ON_EVERY_PAPER = ("firm_name", "firm_address", "firm_phone")
"""A paper without these is nobody's."""


def settings(view: View) -> Iterator[Problem]:
    """A setting is a value of its unit and lies between its min and max."""
    for row in view.tables.settings:
        yield from wrong_with(row, view.at("settings", row, "value"))


def wrong_with(row: Setting, place: Place) -> Iterator[Problem]:
    """What is wrong with the value of one setting; nothing where it is a value of its unit within its limits."""
    if row.unit in NO_NUMBER:
        yield from _word(row, place)
        return
    try:
        number = float(parse_number(row.value, "value", "1.5"))
    except BadCell as wrong:
        yield wrong.kind(place, **wrong.words)
        return
    low, high = row.min, row.max
    if (low is not None and number < low) or (high is not None and number > high):
        low_text = Say.of("any") if low is None else plain_number(low)
        high_text = Say.of("any") if high is None else plain_number(high)
        yield sp.SETTING_RANGE(place, key=row.key, text=row.value, low=low_text, high=high_text)


def _word(row: Setting, place: Place) -> Iterator[Problem]:
    if row.unit == "day" and row.value and not re.fullmatch(r"\d{4}-\d{2}-\d{2}", row.value, re.ASCII):
        yield cell_problems.NOT_A_DAY(place, column="value", text=row.value)
    if row.unit == "yes/no" and row.value not in ("yes", "no"):
        yield cell_problems.NOT_YES_NO(place, column="value", text=row.value)
    if row.key == "pipe_sizes" and not re.fullmatch(r"\s*[\d.]+\s*(,\s*[\d.]+\s*)*", row.value, re.ASCII):
        yield sp.SIZE_TEXT(place, text=row.value)
    if row.key == "accent_colour" and not re.fullmatch(r"#?[0-9A-Fa-f]{6}", row.value):
        yield sp.COLOR(place, text=row.value)
    yield from wrong_word(row, place)
    if row.key in ON_EVERY_PAPER and not row.value.strip():
        yield cell_problems.EMPTY_CELL(place, column=row.key, note=Say.of(row.why), or_off="")
