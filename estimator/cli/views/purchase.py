"""A purchase list in, lines for the terminal out: one table a supplier."""

from collections.abc import Sequence
from decimal import Decimal
from itertools import groupby

from estimator.cli.views.screen import Row
from estimator.cli.views.table import table
from estimator.cli.views.vocabulary import unit
from estimator.cli.views.words import ENGLISH, dollars, number
from estimator.model.money import cents
from estimator.model.purchase import Purchase
from estimator.wording.say import shown, speaker


def rows(found: Sequence[Purchase], columns: int, language: str = ENGLISH) -> list[Row]:
    """Every supplier under its name, then what all of it comes to at the tables' costs."""
    speak = speaker(language)
    heads = (speak("part no."), speak("material"), speak("quantity"), speak("unit"), speak("jobs"))
    out: list[Row] = []
    for supplier, lines in groupby(found, key=lambda one: one.supplier):
        cells = [
            (
                one.part_no,
                shown(one.words, language),
                number(one.quantity, 2, language),
                unit(one.unit, language),
                ", ".join(one.jobs),
            )
            for one in lines
        ]
        out += [Row(supplier or speak("No supplier in the tables"), "head")]
        out += [*(Row(text) for text in table(heads, cells, columns, right=(2,))), Row("")]
    whole = sum((cents(one.quantity * one.unit_cost) for one in found), Decimal(0))
    return [*out, Row(speak("All suppliers, before sales tax: {money}", money=dollars(whole, language=language)))]
