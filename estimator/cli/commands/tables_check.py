"""`estimator tables check`: price tables in, everything wrong with them out."""

from collections.abc import Iterator
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDayOrToday
from estimator.cli.guard import DONE, TO_MEND
from estimator.model.say import Say, Typed
from estimator.tables.first_answers import share_of_own
from estimator.tables.invented_rows import still_invented
from estimator.tables.tables import Tables

FINGERPRINT_SHOWN = 12  # letters: enough to tell two sets of tables apart
Where = Annotated[
    Path | None, typer.Argument(metavar="TABLES", help="A folder of CSV files or a workbook; else the ones in use.")
]
Before = Annotated[
    Path | None,
    typer.Option(
        "--before",
        metavar="OLD",
        help="Your tables as they were: a price or a time that has doubled or halved since, or changed rows, is asked about. "
        "Else the ones in use, where others are checked.",
    ),
]


def command(
    where: Where = None,
    before: Before = None,
    on: OnDayOrToday = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> int:
    from estimator.cli.clock import today
    from estimator.cli.price_tables import firms_own, tables_before, tables_for
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.problems import as_data, tell
    from estimator.cli.views.screen import answer
    from estimator.cli.views.table import folded
    from estimator.tables.later_rows import waiting

    day = on or today()
    tables, problems = tables_for(day, where, tables_before(day, where, before))
    out = in_window(language)
    if tables:
        can = out.speak("The tables can be used ({fingerprint}).", fingerprint=tables.fingerprint[:FINGERPRINT_SHOWN])
        said = [can, *map(out.say, _demo_figures(tables, firms_own(where))), *map(str, waiting(tables))]
    else:
        said = [out.speak("Nothing can be priced with these.")]
    for text in said:
        out.lines(folded(text, out.columns))
    answer(as_data(problems), as_json, out.rows)
    tell(problems)
    return DONE if tables else TO_MEND


def _demo_figures(tables: Tables, path: Path | None) -> Iterator[Say]:
    """Nothing where every figure is the firm's own. `path`: a folder or workbook of the firm's; None for the demo's own."""
    count, every = still_invented(tables)
    if not count:
        return
    if path is None:
        yield Say.typed("These are the demo's. Begin your own: {command}", command="estimator tables start FOLDER")
        return
    yield Say.of(
        "{count} of {every} wages, prices, times and margins are still the demo's; your own cover {percent}% of a usual job's cost.",
        count=count,
        every=every,
        percent=f"{share_of_own(tables):.0f}",
    )
    if path.is_dir():
        command = Typed(f"estimator tables start {path}")
        yield Say.of("Replace them: {command}; or those of one job: {command} --job JOB", command=command)
    else:
        yield Say.of("The first sheet of the workbook lists those to begin with.")
