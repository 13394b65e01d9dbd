"""One option on one page for the office: what it costs and leaves, what to buy from whom, who works when, what falls due when."""

from collections.abc import Iterable
from decimal import Decimal

from estimator.model.offer import Option, Quote
from estimator.model.price import CostLine
from estimator.papers.day_bars import day_bars
from estimator.papers.goods import amount, packs_of
from estimator.papers.inside import close, inside_page, table
from estimator.papers.letter import Letter
from estimator.papers.office_sums import parts, sums_of
from estimator.papers.option_words import title
from estimator.papers.page import Page
from estimator.pricing.payments import WORDS
from estimator.sheets.book import Cell, Sheet
from estimator.tables.rows import Material
from estimator.tables.tables import Tables
from estimator.wording.say import say

WIDTHS = (28.0, 50.0, 14.0, 13.0, 14.0)
ENGLISH = "en_US"
NO_SUPPLIER = "Supplier not set"


def option_page(quote: Quote, option: Option, tables: Tables | None) -> Sheet:
    """Return the page of one option."""
    page = inside_page(f"Option {option.letter}", WIDTHS, title(Letter(quote, ENGLISH), option), job=quote.job)
    _sums(page, option)
    _crews(page, option)
    letter = Letter(quote, ENGLISH)
    who_works_when(letter, page, option)
    what_to_buy(letter, page, option, tables)
    due(page, option)
    return close(page, f"INTERNAL {quote.job.number}")


def _crews(page: Page, option: Option) -> None:
    """Each crew's days on the day plan and its hours; what of these the price pays, in half days of each crew's hours together."""
    page.heading("Crews")
    schedule = option.schedule
    rows = (
        (
            Cell(c.crew, "cell"), Cell(_later(schedule.later_days_of(c.crew)), "cell quiet"),
            Cell(schedule.crew_days_of(c.crew), "figure"), Cell(c.hours, "figure"), Cell(c.amount, "money"),
        )
        for c in option.price.crews
    )  # fmt: skip
    table(page, ("Crew", "", "Crew-days, day plan", "Paid hours", "Cost"), rows, 2)
    page.line(
        "Paid hours: work and set-up to the half day. Half days that a crew waits for another are not in the cost.",
        "quiet",
    )


def _later(days: Decimal) -> str:
    return f"{days.normalize():f} of them at the second visit" if days else ""


def _sums(page: Page, option: Option) -> None:
    """Price, cost and what is left, beside what the cost is made of."""
    sums, made_of = sums_of(option), parts(option)
    left: list[tuple[str, Decimal | str, str]] = [
        ("Price", sums.price, "money"),
        ("Cost in the price", sums.cost, "money"),
        *([("Likely cost", sums.middle, "money")] if sums.middle is not None else []),
        *(
            [(f"Bad case: {sums.confidence:g}% of such jobs stay under", sums.sure, "money")]
            if sums.sure is not None
            else []
        ),
        ("Gross profit", sums.profit, "money"),
        ("Gross profit, share of price", sums.share, "percent"),
        ("Gross profit per crew-day", sums.per_day, "money"),
    ]
    count = max(len(left), len(made_of))
    for n in range(count):
        label, amount, style = left[n] if n < len(left) else ("", "", "cell")
        part, cost = made_of[n] if n < len(made_of) else ("", Decimal(0))
        page.add(
            Cell(label, "cell bold"), Cell(amount, style), Cell("", "cell"),
            Cell(part, "cell"), Cell(cost, "money") if part else Cell("", "cell"),
        )  # fmt: skip


def who_works_when(letter: Letter, page: Page, option: Option) -> None:
    """A bar a crew by half day; the days that come before the first."""
    schedule = option.schedule
    if not (drawn := day_bars(letter, schedule)):
        return
    data, height, alt = drawn
    page.heading("Who works when")
    page.drawing(data, alt, height)
    if schedule.leads:
        waits = "; ".join(f"{say(lead.what, ENGLISH)} {lead.working_days}" for lead in schedule.leads)
        page.line(f"Working days before the first: {waits}.", "quiet")


def what_to_buy(letter: Letter, page: Page, option: Option, tables: Tables | None) -> None:
    """A row a supplier: quantity, item, part number, and what it comes to."""
    page.heading(f"Option {option.letter}: what to buy, from whom")
    by_supplier: dict[str, list[tuple[str, CostLine]]] = {}
    for supplier, part_no, cost in bought(option, tables):
        by_supplier.setdefault(supplier, []).append((part_no, cost))
    for supplier, things in by_supplier.items():
        said = "; ".join(_thing(letter, part_no, cost, tables) for part_no, cost in things)
        whole = sum((cost.amount for _, cost in things), Decimal(0))
        page.add(Cell(supplier, "cell bold"), Cell(said, "cell", page.columns - 2), Cell(whole, "money"))


def _thing(letter: Letter, part_no: str, cost: CostLine, tables: Tables | None) -> str:
    """`2-inch liner: 19 ft`, `4-inch pipe: 40 ft (4 × 10)`."""
    number = f" [{part_no}]" if part_no else ""
    packs = f" ({in_packs})" if (in_packs := packs_of(cost, tables)) else ""
    return f"{cost.text}{number}: {amount(letter, cost.quantity, cost.unit)}{packs}"


def bought(option: Option, tables: Tables | None) -> list[tuple[str, str, CostLine]]:
    """Return each thing that is paid for with its supplier and part number, by supplier; what the firm owns is left out."""
    known = {row.item: row for row in (tables.current("materials") if tables else ()) if isinstance(row, Material)}
    out = []
    for cost in option.all_costs:
        if cost.part in ("material", "equipment", "sub", "fee") and not cost.in_overhead:
            row = known.get(cost.ref)
            kind = {"equipment": "Equipment", "sub": "By others", "fee": "Fees"}.get(cost.part, NO_SUPPLIER)
            out.append((row.supplier or NO_SUPPLIER if row else kind, row.part_no if row else "", cost))
    return sorted(out, key=lambda one: one[0])


def due(page: Page, option: Option) -> None:
    """Payments with the day of the work at which each falls due, where the schedule knows it."""
    page.heading("What falls due when")
    rows = (
        (Cell(text, "cell", 2), Cell(day, "cell"), Cell("", "cell"), Cell(amount, "money"))
        for text, day, amount in payments(option)
    )
    table(page, ("Payment", "", "Day of the work", "", "Amount"), rows, 4)


def payments(option: Option) -> Iterable[tuple[str, str, Decimal]]:
    """Each payment, the day of the work at whose end it falls due ("" before it), and its amount."""
    days = {WORDS[mark.name]: f"day {mark.day}" for mark in option.schedule.marks if mark.name in WORDS}
    days[WORDS["second visit"]] = "second visit"
    for payment in option.payments:
        yield say(payment.text, ENGLISH), days.get(payment.text, ""), payment.amount
