"""The ways to one stretch for the office: a table of prices by class, what decides, and a chart of where two ways break even."""

from collections.abc import Sequence

from estimator.model.job import Job
from estimator.model.ways import Turning, Way, Ways
from estimator.papers.inside import close, inside_page, table
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Chart, Series, Sheet
from estimator.wording.plain import CLASSES

WIDTHS = (26.0, 14.0, 14.0, 12.0, 12.0, 12.0)
MOST_POINTS = 20
COLOURS = ("B5563A", "2F6B8F")


def ways_sheet(found: Ways, job: Job) -> Sheet:
    """One sheet; the charts stand under the table each is drawn from."""
    page = inside_page("Ways", WIDTHS, "The ways to one stretch, and where the choice turns out", job=job)
    page.line(f"{found.line}, {found.stretch.from_ft:.1f} to {found.stretch.to_ft:.1f} ft: {found.does}")
    page.gap()
    heads = ("Way", "All in, $", "Our price, $", "Days", "No drains", "Floor, sq ft")
    table(page, heads, (_row(way) for way in found.ways if way.price is not None), 1)
    _classes(page, found)
    page.listing("What stands against the others", [f"{w.method}: {w.against}" for w in found.ways if w.against])
    page.listing("What decides", [str(text) for text in found.decides])
    for turning in found.turnings:
        _turning(page, found, turning)
    return close(page, f"INTERNAL {job.number}")


def _row(way: Way) -> tuple[Cell, ...]:
    return (Cell(way.method, "cell"), Cell(way.all_in, "whole money"), Cell(way.price, "whole money"),
            Cell(way.days_on_site, "number"), Cell(way.days_without_drains, "number"), Cell(round(way.floor_sf, 1), "number"))  # fmt: skip


def _classes(page: Page, found: Ways) -> None:
    """Dollars of each open way by class of work, as many ways as there are columns."""
    shown = [way for way in found.ways if way.price is not None][: len(WIDTHS) - 1]
    page.line("Our price by class of work", "bold")
    rows = (
        (Cell(name, "cell"), *(Cell(dict(way.by_class).get(name), "whole money") for way in shown)) for name in CLASSES
    )
    table(page, ("Class", *(way.method for way in shown)), rows, 1)


def _turning(page: Page, found: Ways, turning: Turning) -> None:
    page.heading(f"{str(turning.what).capitalize()} (now {turning.now:.1f} {turning.unit})", starts=True)
    page.line(turned(found, turning))
    first, points = len(page.rows) + 1, thinned(turning.points)
    rows = (
        (Cell(round(x, 2), "number"), Cell(round(a), "whole money"), Cell(round(b), "whole money"))
        for x, a, b in points
    )
    table(page, (turning.unit, f"{found.first}, all in", f"{found.second}, all in"), rows, 1)
    last = first + len(points) - 1
    series = tuple(
        Series(name=name, colour=colour, categories=(first, 0, last, 0), values=(first, column, last, column))
        for name, colour, column in zip((found.first, found.second), COLOURS, (1, 2), strict=True)
    )
    page.chart(
        Chart(
            kind="scatter", title=f"{turning.what}: where {found.first} and {found.second} break even", series=series, row=0,
            height_px=280, width_px=600, x_title=turning.unit, y_title="all in, dollars", number_format="$#,##0",
            alt=f"Two lines of all-in dollars along {turning.what}. {turned(found, turning)}",
        )
    )  # fmt: skip


def thinned(points: Sequence[tuple[float, float, float]]) -> tuple[tuple[float, float, float], ...]:
    """About as many as a chart needs, the first and the last among them.

    >>> [x for x, _, _ in thinned([(float(n), 0.0, 0.0) for n in range(41)])][-3:]
    [36.0, 39.0, 40.0]
    """
    step = -(-len(points) // MOST_POINTS)
    kept = points[::step]
    return tuple(kept) if kept[-1] == points[-1] else (*kept, points[-1])


def turned(found: Ways, turning: Turning) -> str:
    """Where the cheaper way changes, in words."""
    if turning.turns:
        parts = (
            f"up to {at:.1f} {turning.unit} {below} is cheaper, beyond that {above}"
            for at, below, above in turning.turns
        )
        return "; ".join(parts).capitalize() + "."
    low, high = turning.points[0][0], turning.points[-1][0]
    cheaper = found.first if turning.points[0][1] < turning.points[0][2] else found.second
    return f"{cheaper} is cheaper all the way from {low:.1f} to {high:.1f} {turning.unit}.".capitalize()
