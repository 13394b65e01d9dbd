"""One option for the office: its hours task by task, its cost lines with rates to try, and the build-up that recalculates."""

from decimal import Decimal

from estimator.model.money import cents
from estimator.model.offer import Option, Quote
from estimator.model.price import CostLine, TaskHours
from estimator.papers.inside import close, head, inside_page, live, table
from estimator.papers.office_build_up import build_up
from estimator.papers.page import Page, at, sum_of
from estimator.sheets.book import Cell, Sheet
from estimator.tables.tables import Tables

HOUR_WIDTHS = (17.0, 20.0, 11.0, 19.0, 9.0, 7.0, 8.0, 8.0, 9.0, 22.0)
COST_WIDTHS = (11.0, 30.0, 10.0, 8.0, 12.0, 13.0, 12.0, 22.0)
OVERHEAD = "our own, paid for in the overhead"
HOURS_ALONE = "Hours tried here move no price, since crews are paid by the half day. Set hours in the job file, under [[override]]."
QUANTITY, RATE, AMOUNT, PRICE_CLASS = 2, 4, 5, 6


def hours_sheet(quote: Quote, option: Option) -> Sheet:
    """Tasks with what their hours are made of, then the crews' days."""
    page = inside_page(f"Hours {option.letter}", HOUR_WIDTHS, f"Hours of option {option.letter}", job=quote.job)
    heads = ("Work item", "Task", "Crew", "Quantity", "How much", "× per", "× hours each", "× factor", "Hours", "From")
    row = head(page, heads, 4)
    for task in option.price.tasks:
        _task(page, task)
    page.add(Cell(HOURS_ALONE, "quiet", 10))
    page.gap()
    crews = ("Crew", "", "", "", "Work h", "Set-up h", "Paid days", "Paid h", "Rate", "Amount")
    rows = (
        (
            Cell(c.crew, "cell", 4), Cell(cents(c.work_hours), "hours"), Cell(cents(c.setup_hours), "hours"),
            Cell(c.days, "number"), Cell(c.hours, "number"), Cell(c.rate, "money"), Cell(c.amount, "money"),
        )
        for c in option.price.crews
    )  # fmt: skip
    table(page, crews, rows, 4)
    return close(page, f"INTERNAL {quote.job.number}", (row, row))


def _task(page: Page, task: TaskHours) -> None:
    row = len(page.rows)
    product = task.quantity * task.per * task.each * task.factor
    text = f"={at(4, row)}*{at(5, row)}*{at(6, row)}*{at(7, row)}"
    hours = live(text, Decimal(repr(round(product, 6))), Decimal(repr(round(task.hours, 6))))
    page.add(
        Cell(task.work_item, "cell quiet"), Cell(task.task, "cell quiet"), Cell(task.crew, "cell"), Cell(task.quantity_name, "cell quiet"),
        Cell(round(task.quantity, 6), "figure"), Cell(task.per, "figure"), Cell(round(task.each, 6), "input", open=True), Cell(round(task.factor, 6), "figure"),
        Cell(hours, "hours"), Cell(", ".join([*task.factors, task.cell]), "cell quiet"),
    )  # fmt: skip


def cost_sheet(quote: Quote, option: Option, tables: Tables | None) -> Sheet:
    """Cost lines with rates to try, their sum, the way to the price, and the lines the homeowner reads with their cost."""
    page = inside_page(
        f"Costs {option.letter}",
        COST_WIDTHS,
        f"Costs of option {option.letter}: yellow cells may be tried",
        job=quote.job,
    )
    heads = ("Part", "What", "How much", "Unit", "Rate", "Amount", "Class", "From")
    top = head(page, heads, 7)
    first = len(page.rows)
    for cost in option.price.costs:
        _cost(page, cost)
    last = len(page.rows) - 1
    whole = sum((cost.amount for cost in option.price.costs), Decimal(0))
    cells = [f"{at(AMOUNT, first)}:{at(AMOUNT, last)}"]
    page.add(
        Cell("All costs", "sum words", 5),
        Cell(sum_of(cells, whole), "sum"),
        Cell("", "sum words"),
        Cell("", "sum words"),
    )
    build_up(page, option, tables, first, last)
    _lines(page, option)
    _add_ons(page, option)
    return close(page, f"INTERNAL {quote.job.number}", (top, top))


def _cost(page: Page, cost: CostLine) -> None:
    row = len(page.rows)
    text = f"=ROUND({at(QUANTITY, row)}*{at(RATE, row)},2)"
    amount = live(text, cost.quantity * cost.rate, cost.amount)
    page.add(
        Cell(cost.part, "cell"), Cell(cost.text, "cell"), Cell(cost.quantity, "figure"), Cell(cost.unit, "cell quiet"),
        Cell(cost.rate, "input", open=True), Cell(amount, "money"), Cell(cost.price_class, "cell quiet"),
        Cell(f"{OVERHEAD}; {cost.cell}" if cost.in_overhead else cost.cell or cost.formula, "cell quiet"),
    )  # fmt: skip


def _lines(page: Page, option: Option) -> None:
    page.heading("What the homeowner reads, and what it costs us")
    rows = []
    for line in option.price.lines:
        left = (line.amount - line.cost_share) / line.amount if line.amount else Decimal(0)
        rows.append(
            (Cell(line.id, "cell quiet"), Cell(line.text_en, "cell", 3), Cell(line.work_class, "cell quiet"), Cell(line.amount, "money"),
             Cell(cents(line.cost_share), "money"), Cell(left, "percent"))
        )  # fmt: skip
    head_cells = ("No.", "Line", "", "", "Class", "Amount", "Cost", "Margin")
    table(page, head_cells, rows, 5)


def _add_ons(page: Page, option: Option) -> None:
    """What may be added or was: beside the costs above, at its exact hours and its own price."""
    if not option.add_ons:
        return
    page.heading("What the homeowner may add, and what it costs us")
    rows = []
    for add_on in option.add_ons:
        left = (add_on.amount - add_on.cost) / add_on.amount if add_on.amount else Decimal(0)
        hours = sum(task.hours for task in add_on.tasks)
        rows.append(
            (Cell(add_on.code, "cell quiet"), Cell(add_on.text_en, "cell"), Cell(round(hours, 2), "hours"), Cell("h", "cell quiet"),
             Cell(add_on.cost, "money"), Cell(add_on.amount, "money"), Cell(left, "percent"), Cell("chosen: in the price above" if add_on.chosen else "", "cell"))
        )  # fmt: skip
    table(page, ("Code", "Add-on", "Hours", "", "Cost", "Price", "Margin", ""), rows, 7)
