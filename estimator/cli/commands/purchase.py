"""`estimator purchase`: accepted jobs in; what to buy for all of them together, by supplier, out, as a workbook or CSV too."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDayOrToday, TablesFrom
from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.model.money import cents
from estimator.model.problem import CannotGoOn, Place
from estimator.model.purchase import Purchase
from estimator.wording.say import shown

if TYPE_CHECKING:
    from estimator.model.purchase import Purchase
    from estimator.tables.tables import Tables


Jobs = Annotated[
    list[Path],
    typer.Argument(
        metavar="JOB...", help="Job files, or folders of jobs at any depth: those accepted and not yet done."
    ),
]
To = Annotated[
    Path | None,
    typer.Option("--to", metavar="FILE", help="Write the list: a new name, ending in .xlsx or .csv."),
]


def command(
    jobs: Jobs,
    to: To = None,
    tables: TablesFrom = None,
    on: OnDayOrToday = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.clock import today
    from estimator.cli.price_tables import readable_tables
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import answer

    day, out = on or today(), in_window(language)
    with_these = readable_tables(day, tables)
    found = listed(jobs, with_these)
    if to is not None:
        written(to, found, with_these, day, language)
    write_purchases(out, found)
    answer(found, as_json, out.rows)


def listed(jobs: Sequence[Path], tables: "Tables") -> "tuple[Purchase, ...]":
    """Errors: CannotGoOn where no job is accepted and still to be done; FileNotFoundError for a path that is not there."""
    from estimator.cli.problems import NOTHING_TO_BUY
    from estimator.records.afterwards.purchase import purchases, to_buy_for
    from estimator.records.job_status import job_files
    from estimator.records.revisions import revisions_folder

    files = dict.fromkeys(file for path in jobs for file in job_files(path))
    sold = to_buy_for(revisions_folder(file) for file in files)
    if not sold:
        raise CannotGoOn(NOTHING_TO_BUY(Place(file=", ".join(map(str, jobs)))))
    return purchases(sold, tables)


def written(to: Path, found: "Sequence[Purchase]", tables: "Tables", day: date, language: str) -> Path:
    """A CSV file where the name ends so, else a workbook. Errors: CannotGoOn for another ending or a file that stands there."""
    from estimator.cli.writing import WORKBOOK, free, new_file
    from estimator.papers.purchase import heads, purchase_book
    from estimator.records.afterwards.purchase import purchase_csv
    from estimator.sheets.write import write

    if to.suffix.lower() == ".csv":
        return new_file(to, purchase_csv(found, heads(language), language).encode("utf-8"))
    free(to, WORKBOOK)
    return new_file(to, write(purchase_book(found, day, tables.text("accent_colour"), language)))


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
