"""`estimator explain`: a line of the quote in, the way it came about out."""

from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, JobFile, Language, OnDay, SetKeys, TablesFrom
from estimator.cli.completing import item_ids

Item = Annotated[
    str,
    typer.Argument(
        metavar="ITEM",
        autocompletion=item_ids,
        help="A line's id on the quote, such as A3 or A6-8; or an add-on's, such as A:cleanout.",
    ),
]


def command(
    job: JobFile,
    item: Item,
    tables: TablesFrom = None,
    changes: SetKeys = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.priced_job import priced
    from estimator.cli.views.explain import each, find, write_line
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.problems import write_gas_first
    from estimator.cli.views.screen import answer

    run = priced(job, tables, changes, on)
    found = [find(run.quote, one) for one in each(item)]
    out = in_window(language)
    write_gas_first(out, run.quote.job)
    for one in each(item):
        write_line(out, run.quote, one, run.tables)
    option, line = found[0]
    several = {"lines": [line for _, line in found], "option": option}
    answer({"line": line, "option": option} if len(found) == 1 else several, as_json, out.rows)
