"""A purchase list in, lines for the terminal out: one table a supplier."""

from collections.abc import Sequence
from decimal import Decimal
from itertools import groupby

from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.model.money import cents
from estimator.model.purchase import Purchase
from estimator.wording.say import shown


def write_purchases(out: Layout, found: Sequence[Purchase]) -> None:
    """Every supplier under its name, then what all of it comes to at the tables' costs."""
    speak = out.speak
    heads = (speak("part no."), speak("material"), speak("quantity"), speak("unit"), speak("jobs"))
    for supplier, lines in groupby(found, key=lambda one: one.supplier):
        out.line(supplier or speak("No supplier in the tables"), "head")
        out.table(heads, [_cells(one, out) for one in lines], right=(2,))
        out.line()
    whole = sum((cents(one.quantity * one.unit_cost) for one in found), Decimal(0))
    out.line(speak("All suppliers, before sales tax: {money}", money=out.dollars(whole)))


def _cells(one: Purchase, words: Words) -> tuple[str, ...]:
    what = shown(one.words, words.language)
    return one.part_no, what, words.number(one.quantity, 2), words.unit(one.unit), ", ".join(one.jobs)
