"""The range of one option in; for the office: its percentiles, the contingency it would take, what drives it, and two charts."""

from estimator.model.likely_range import LikelyRange
from estimator.model.money import cents
from estimator.model.offer import Option
from estimator.papers.inside import table
from estimator.papers.office_sums import cost_of
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Chart, Series

MARKED = (10, 50, 80, 90)
MOST_DRIVERS = 8
CURVE_COLOUR, PRICED_COLOUR, HELD_COLOUR, DRIVER_COLOUR = "1F5D57", "B5563A", "C9A227", "6B7A8F"


def spread(page: Page, option: Option, found: LikelyRange) -> None:
    """Cost and days together, all crews, machines, materials and loads, drawn from the seed on the record."""
    page.line("How far our cost and the crew days may run", "bold")
    page.line(_what_is_in(option), "quiet")
    first = _curve(page, option, found)
    _contingency(page, found)
    marks = _marks(page, option, found)
    page.chart(_chance(option, found, first, marks))
    _drivers(page, option, found)


def _what_is_in(option: Option) -> str:
    """The cost the figures are about, and what the price costs besides."""
    own, others = option.price.direct, cost_of(option) - option.price.direct
    if not others:
        return f"Our cost: ${own:,.2f} in the price, all of it our own work."
    return (
        f"Our cost: ${own:,.2f} in the price for our own work. "
        f"Subs, fees and allowances cost ${others:,.2f} more; they are not in these figures."
    )


def _curve(page: Page, option: Option, found: LikelyRange) -> int:
    """A row a percent; the row of the first."""
    first = len(page.rows) + 1
    direct = float(option.price.direct)
    rows = (
        (
            Cell(f"{percent} of 100 such jobs stay within", "cell bold" if percent in MARKED else "cell"),
            Cell(cents(cost), "whole money"), Cell(round(days, 2), "number"),
            Cell(cost / direct - 1 if direct else 0.0, "percent"), Cell(percent / 100, "percent"),
        )
        for percent, cost, days in found.curve
    )  # fmt: skip
    table(page, ("How often", "Our cost", "Crew days", "Over priced", "Chance"), rows, 1)
    return first


def _contingency(page: Page, found: LikelyRange) -> None:
    """Red where the tables hold too little for the firm's own confidence."""
    text = (
        f"A contingency of {found.contingency_needed_percent:.1f} % would hold in {found.confidence_percent:g} of 100 such "
        f"jobs; the tables give {found.contingency_percent:g} %, which holds in {found.held_chance_percent:.0f} of 100."
    )
    page.line(text, "red" if found.short_percent else "body")
    page.line(f"Seed {found.seed}, {found.draws:,} draws; the same seed draws the same.", "quiet")


def _marks(page: Page, option: Option, found: LikelyRange) -> int:
    """The two upright lines of the chart: the cost in the price, and with its contingency. The row of the first point."""
    direct = option.price.direct
    held = cents(direct * (100 + option.price.contingency_percent) / 100)
    page.line("The upright lines of the chart", "quiet")
    first = len(page.rows)
    for text, amount in (("cost in the price", direct), ("with its contingency", held)):
        for share in (0.0, 1.0):
            page.add(
                Cell(text, "cell quiet"),
                Cell(amount, "whole money"),
                Cell("", "cell"),
                Cell("", "cell"),
                Cell(share, "percent"),
            )
    page.gap()
    return first


def _chance(option: Option, found: LikelyRange, first: int, marks: int) -> Chart:
    last = first + len(found.curve) - 1
    series = (
        Series(name="stays within", colour=CURVE_COLOUR, categories=(first, 1, last, 1), values=(first, 4, last, 4)),
        *(
            Series(name=name, colour=colour, dash=True, categories=(row, 1, row + 1, 1), values=(row, 4, row + 1, 4))
            for name, colour, row in (
                ("cost in the price", PRICED_COLOUR, marks),
                ("with its contingency", HELD_COLOUR, marks + 2),
            )
        ),
    )
    ends = f"{found.curve[0][1]:,.0f} to {found.curve[-1][1]:,.0f}" if found.curve else "nothing"
    return Chart(
        kind="scatter", title="Chance of staying within a cost", series=series, row=0, height_px=300, width_px=600,
        alt=f"Chance that the cost of option {option.letter} stays within dollars from {ends}; upright lines at the cost in the price and with its contingency",
        x_title="our cost, dollars", y_title="chance", y_most=1.0, number_format="0%",
    )  # fmt: skip


def _drivers(page: Page, option: Option, found: LikelyRange) -> None:
    shown = found.drivers[:MOST_DRIVERS]
    if not shown:
        return
    page.line("What moves it", "bold", new_page=True)
    first = len(page.rows) + 1
    rows = ((Cell(name, "cell"), Cell(share / 100, "percent")) for name, share in shown)
    table(page, ("What", "Share"), rows, 1)
    last = first + len(shown) - 1
    bars = Series(
        name="share of the spread", colour=DRIVER_COLOUR, categories=(first, 0, last, 0), values=(first, 1, last, 1)
    )
    names = ", ".join(name for name, _ in shown)
    page.chart(
        Chart(
            kind="bar", title="Share of the spread of our cost", series=(bars,), row=0, height_px=260, width_px=600,
            alt=f"Bars of what moves the cost of option {option.letter}, the most first: {names}", legend=False, number_format="0%",
        )
    )  # fmt: skip
