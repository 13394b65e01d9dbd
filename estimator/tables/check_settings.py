"""One row of the settings table and its place in; what is wrong with its value out, and what a list in words says. The same for a job's own settings."""

import re
from collections.abc import Iterator, Mapping
from decimal import Decimal

from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.tables import cell_problems
from estimator.tables.cell_problems import near
from estimator.tables.check_view import View
from estimator.tables.lookups import ids
from estimator.tables.rows import NO_NUMBER, Setting
from estimator.tables.values import BadCell, parse_number, plain_number

CHOICES: Mapping[str, tuple[str, ...]] = {
    "tunnel_fill": ("native", "slurry", "flowable", "open"),
    "liner_cure": ("ambient", "hot", "light"),
    "burst_entry": ("straight", "S"),
    "f1216_edition": ("from 07b", "before 07b"),
    "pothole_pipe_first": ("yes", "no"),
    "protection_wanted": ("least earth", "sloped", "benched", "boxed"),
}
"""Settings that are one of a few words."""
SHARE = re.compile(r"\d+(\.\d+)?", re.ASCII)
CREWS = re.compile(r"(.+) (\d{1,2})", re.ASCII)


def payments_in(text: str) -> tuple[tuple[str, Decimal], ...] | None:
    """“deposit 10, start 30, done 60” as names and percents that make 100; None for anything else.

    >>> payments_in("deposit 10, done 90"), payments_in("deposit 10, done 80")
    ((('deposit', Decimal('10')), ('done', Decimal('90'))), None)
    """
    parts = [part.strip().rpartition(" ") for part in text.split(",")]
    if not all(name and SHARE.fullmatch(percent) for name, _, percent in parts):
        return None
    schedule = tuple((name, Decimal(percent)) for name, _, percent in parts)
    return schedule if sum(percent for _, percent in schedule) == 100 else None


def wrong_word(row: Setting, place: Place) -> Iterator[Problem]:
    """What is wrong with a setting of words."""
    choices = CHOICES.get(row.key, ())
    if choices and row.value not in choices:
        words = {"text": row.value, "near": near(row.value, choices), "choices": ", ".join(choices)}
        yield cell_problems.NOT_A_CHOICE(place, column=row.key, **words)
    if row.key == "payments" and payments_in(row.value) is None:
        yield cell_problems.PAYMENTS(place, text=row.value)


def crews_at_once(view: View) -> Iterator[Problem]:
    """Each part of crews_at_once is a crew and a number."""
    crews = ids(view, "crews")
    for row in (row for row in view.tables.settings if row.key == "crews_at_once"):
        for part in (part.strip() for part in row.value.split(",") if part.strip()):
            match = CREWS.fullmatch(part)
            if match is None or match[1].strip() not in crews or int(match[2]) < 1:
                place = view.at("settings", row, "value")
                yield cell_problems.CREWS_AT_ONCE(place, text=part, known=", ".join(sorted(crews)))


def units(view: View) -> Iterator[Problem]:
    """A setting is counted in the unit the program reads it in."""
    usual = view.known.usual
    read = {row.key: row.unit for row in usual.settings} if usual else {}
    for row in view.tables.settings:
        if row.unit != read.get(row.key, row.unit):
            yield cell_problems.SETTING_UNIT(
                view.at("settings", row, "unit"), key=row.key, text=row.unit, unit=read[row.key]
            )


WORD_CHECKS = (crews_at_once, units)


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
        yield cell_problems.SETTING_RANGE(place, key=row.key, text=row.value, low=low_text, high=high_text)


def _word(row: Setting, place: Place) -> Iterator[Problem]:
    if row.unit == "day" and row.value and not re.fullmatch(r"\d{4}-\d{2}-\d{2}", row.value, re.ASCII):
        yield cell_problems.NOT_A_DAY(place, column="value", text=row.value)
    if row.unit == "yes/no" and row.value not in ("yes", "no"):
        yield cell_problems.NOT_YES_NO(place, column="value", text=row.value)
    if row.key == "pipe_sizes" and not re.fullmatch(r"\s*[\d.]+\s*(,\s*[\d.]+\s*)*", row.value, re.ASCII):
        yield cell_problems.SIZE_TEXT(place, text=row.value)
    if row.key == "accent_colour" and not re.fullmatch(r"#?[0-9A-Fa-f]{6}", row.value):
        yield cell_problems.COLOR(place, text=row.value)
    yield from wrong_word(row, place)
    if row.key in ON_EVERY_PAPER and not row.value.strip():
        yield cell_problems.EMPTY_CELL(place, column=row.key, note=Say.of(row.why), or_off="")
