"""The money after the signature, and the price parted as an insurer asks for it."""

from decimal import Decimal

from estimator.model.offer import Option, Quote
from estimator.papers.inside import close, inside_page, table
from estimator.papers.insurer_page import class_price
from estimator.papers.page import Page, at, sum_of
from estimator.sheets.book import Cell, Formula, Sheet
from estimator.wording.plain import CLASSES

MONEY_WIDTHS = (36.0, 13.0, 13.0, 13.0, 13.0, 18.0)
INSURER_WIDTHS = (34.0, 16.0, 16.0, 16.0, 16.0)
MOST_OPTIONS = 4


def insurer(quote: Quote) -> Sheet:
    """Price by find, reach, pipe and put back; what a policy pays is not said."""
    page = inside_page("Insurer", INSURER_WIDTHS, "Price by class, as an insurer asks", job=quote.job)
    customer = quote.job.customer
    for label, value in (("Insurer", customer.insurer), ("Policy", customer.policy), ("Claim", customer.claim)):
        page.pair(label, value or "not given")
    shown = quote.options[:MOST_OPTIONS]
    page.gap()
    page.add(Cell("", "head"), *(Cell(f"Option {o.letter}", "head right") for o in shown))
    rows = [
        page.add(Cell(str(text), "cell"), *(Cell(class_price(o, name), "money") for o in shown))
        for name, text in CLASSES.items()
    ]
    if any(o.price.added for o in shown):
        more = (Cell(o.price.added, "money") for o in shown)
        rows.append(page.add(Cell("added by the homeowner", "cell"), *more))
    whole = (sum((class_price(o, name) for name in CLASSES), o.price.added) for o in shown)
    others = [o.price.total - amount for o, amount in zip(shown, whole, strict=True)]
    if any(others):
        rows.append(page.add(Cell("discounts and tax charged", "cell"), *(Cell(other, "money") for other in others)))
    cells = [sum_of([f"{at(i, rows[0])}:{at(i, rows[-1])}"], o.price.total) for i, o in enumerate(shown, start=1)]
    page.add(Cell("Total", "sum words"), *(Cell(cell, "sum") for cell in cells))
    page.line("The policy decides what is paid; nothing on this sheet is an opinion on coverage.", "quiet")
    return close(page, f"INTERNAL {quote.job.number}")


def money(quote: Quote) -> Sheet:
    """Milestones of each option, with columns to fill in as money comes in, and what is still owed."""
    page = inside_page("Money", MONEY_WIDTHS, "Payments: fill in what came in", job=quote.job)
    for option in quote.options:
        _option(page, option)
    return close(page, f"INTERNAL {quote.job.number}")


def _option(page: Page, option: Option) -> None:
    page.heading(f"Option {option.letter}")
    first = len(page.rows) + 1
    rows = [
        (Cell(str(p.text), "cell"), Cell(p.amount, "money"), Cell("", "write", open=True), Cell("", "write", open=True),
         Cell(None, "input", open=True), Cell("", "write", open=True))
        for p in option.payments
    ]  # fmt: skip
    table(page, ("Milestone", "Amount", "Due on", "Paid on", "Paid", "Reference"), rows, 1)
    if not rows:
        return
    last = first + len(rows) - 1
    due = sum((p.amount for p in option.payments), Decimal(0))
    owed = Formula(f"=ROUND(SUM({at(1, first)}:{at(1, last)})-SUM({at(4, first)}:{at(4, last)}),2)", due)
    page.add(Cell("Still owed", "sum words", 4), Cell(owed, "sum"), Cell("", "sum words"))
