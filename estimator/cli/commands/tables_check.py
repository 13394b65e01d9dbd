"""`estimator tables check`: price tables in, everything wrong with them out."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDayOrToday
from estimator.cli.guard import DONE, TO_MEND

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
    from estimator.cli.tables_asked import firms_own, tables_before, tables_for
    from estimator.cli.views.demo_figures import demo_figures
    from estimator.cli.views.problems import as_data, tell
    from estimator.cli.views.screen import Row, answer, width
    from estimator.cli.views.table import folded
    from estimator.tables.later_rows import waiting
    from estimator.wording.say import say, speaker

    day = on or today()
    tables, problems = tables_for(day, where, tables_before(day, where, before))
    speak = speaker(language)
    said = (
        speak("The tables can be used; their fingerprint is {fingerprint}.", fingerprint=tables.fingerprint)
        if tables
        else speak("Nothing can be priced with these.")
    )
    later = (str(row) for row in (waiting(tables) if tables else ()))
    demos = (say(text, language) for text in (demo_figures(tables, firms_own(where)) if tables else ()))
    answer(as_data(problems), as_json, [Row(line) for text in (said, *demos, *later) for line in folded(text, width())])
    tell(problems)
    return DONE if tables else TO_MEND
