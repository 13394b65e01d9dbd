"""The hours' range for the office: how far each task may go on a good and on a bad day, and which tasks move the cost most."""

from decimal import Decimal

from estimator.model.basis import HOW
from estimator.model.frozen import Frozen
from estimator.model.money import cents, exact
from estimator.model.offer import Option, Quote
from estimator.model.visit import KINDS
from estimator.papers.inside import close, inside_page, table
from estimator.papers.office_spread import spread
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Chart, Series, Sheet

WIDTHS = (34.0, 12.0, 10.0, 10.0, 10.0, 12.0, 12.0)
MOST_DRIVERS = 8


class Driver(Frozen):
    """A task of an option: hours on a good day, as a rule, on a bad day; what less and more of it is worth at its crew's rate."""

    task: str
    crew: str
    low: float
    likely: float
    high: float
    down: Decimal
    up: Decimal


def drivers(option: Option) -> tuple[Driver, ...]:
    """Tasks summed over the option, the one that can cost most on a bad day first."""
    rates = {crew.crew: crew.rate for crew in option.price.crews}
    sums: dict[tuple[str, str], list[float]] = {}
    for task in option.price.tasks:
        share = task.hours / task.each if task.each else 0.0
        hours = sums.setdefault((task.task, task.crew), [0.0, 0.0, 0.0])
        for i, rate in enumerate((task.low, task.likely, task.high)):
            hours[i] += rate * share
    out = [_driver(name, crew, hours, rates.get(crew, Decimal(0))) for (name, crew), hours in sums.items()]
    return tuple(sorted(out, key=lambda d: (-d.up, d.task)))


def _driver(task: str, crew: str, hours: list[float], rate: Decimal) -> Driver:
    low, likely, high = hours
    return Driver(task, crew, low, likely, high, cents(exact(likely - low) * rate), cents(exact(high - likely) * rate))


def _rests_on(page: Page, option: Option) -> None:
    """What the price rests on, how each thing is known, and how far it could move the price."""
    basis = option.basis
    if not basis.facts:
        return
    page.line("What the price rests on: how each thing is known, and what it could do to the price", "bold")
    rows = (
        (
            Cell(f"{fact.line}: {fact.words}", "cell", 2), Cell(str(HOW[fact.how]), "cell"), Cell(round(fact.falls), "whole money"),
            Cell(round(fact.rises), "whole money"), Cell(str(KINDS.get(fact.settled_by, "")), "cell", 2),
        )
        for fact in basis.facts
    )  # fmt: skip
    table(page, ("Fact", "", "Known", "Down, $", "Up, $", "A visit would", ""), rows, 3)
    page.line(
        f"Together it could go up by {basis.rises_percent:.0f}% of the price with nothing rounded; errors are taken as independent.",
        "quiet",
    )


def range_sheet(quote: Quote) -> Sheet:
    """All options, each with its tasks and a chart of what moves it most."""
    page = inside_page("Range", WIDTHS, "How far cost and days may run, and what moves them", job=quote.job)
    page.line(
        "Tasks: hours times the crew's rate, before days are rounded; materials and fees are not in them.", "quiet"
    )
    for number, option in enumerate(quote.options):
        _option(page, option, new_page=number > 0)
    return close(page, f"INTERNAL {quote.job.number}")


def _option(page: Page, option: Option, new_page: bool) -> None:
    page.heading(f"Option {option.letter}", new_page=new_page)
    _rests_on(page, option)
    if option.likely_range is not None:
        spread(page, option, option.likely_range)
        page.line("What a good and a bad day do to the labor of each task", "bold")
    shown = drivers(option)
    heads = ("Task", "Crew", "Good day", "As a rule", "Bad day", "Less, $", "More, $")
    first = len(page.rows) + 1
    rows = (
        (Cell(d.task, "cell"), Cell(d.crew, "cell"), Cell(round(d.low, 2), "hours"), Cell(round(d.likely, 2), "hours"),
         Cell(round(d.high, 2), "hours"), Cell(d.down, "money"), Cell(d.up, "money"))
        for d in shown
    )  # fmt: skip
    table(page, heads, rows, 2)
    if not shown:
        return
    last = first + min(len(shown), MOST_DRIVERS) - 1
    series = (
        Series(name="less on a good day", colour="4F8A6B", categories=(first, 0, last, 0), values=(first, 5, last, 5)),
        Series(name="more on a bad day", colour="B5563A", categories=(first, 0, last, 0), values=(first, 6, last, 6)),
    )
    alt = f"Bars of what moves the labor of option {option.letter} most: " + ", ".join(
        d.task for d in shown[:MOST_DRIVERS]
    )
    page.chart(
        Chart(
            kind="bar",
            title="What moves it most",
            alt=alt,
            series=series,
            row=0,
            height_px=260,
            width_px=600,
            number_format="$#,##0",
        )
    )
