"""`estimator options`: the notes in, the ways of repair side by side out."""

from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, JobFile, Language, OnDay, SetKeys, TablesFrom
from estimator.cli.completing import option_letters

Why = Annotated[
    bool, typer.Option("--why", help="The reasons too: what each answers and leaves, and what the rules said.")
]

Range = Annotated[
    bool, typer.Option("--range", help="For the office, never to be sent: how far our cost and the days may run.")
]
Only = Annotated[
    str,
    typer.Option(
        "--option", metavar="LETTER", autocompletion=option_letters, help="One option alone, drawn under each line."
    ),
]


def command(
    job: JobFile,
    why: Why = False,
    likely: Range = False,
    only: Only = "",
    tables: TablesFrom = None,
    changes: SetKeys = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> int:
    from estimator.cli.offering import offered
    from estimator.cli.views.screen import answer, width

    found = offered(job, tables, changes, on, why, width(), language, likely, only)
    answer(found.data, as_json, found.rows)
    return found.code
