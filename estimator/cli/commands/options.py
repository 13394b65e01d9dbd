"""`estimator options`: the notes in, the ways of repair side by side out."""

from typing import Annotated

import typer

from estimator.cli.arguments import AsJson, JobFile, Language, OnDay, SetKeys, TablesFrom

Why = Annotated[
    bool, typer.Option("--why", help="The reasons too: what each answers and leaves, and what the rules said.")
]


def command(
    job: JobFile,
    why: Why = False,
    tables: TablesFrom = None,
    changes: SetKeys = None,
    on: OnDay = None,
    language: Language = "en_US",
    as_json: AsJson = False,
) -> None:
    from estimator.cli.views import options, what_if
    from estimator.cli.views import why as reasons
    from estimator.cli.views.screen import answer, width
    from estimator.cli.way import priced

    run, columns = priced(job, tables, changes, on), width()
    parts = [what_if.rows(run.as_filed, run.quote, changes or (), columns)] if run.as_filed else []
    parts += [options.rows(run.quote, columns, language)]
    parts += [reasons.rows(run.quote, run.verdicts, columns, language)] if why else []
    answer(run.quote, as_json, [row for part in parts for row in part])
