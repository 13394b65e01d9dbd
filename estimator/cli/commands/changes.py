"""`estimator changes`: two revisions in, what moved between them and why out."""

from typing import Annotated

import typer

from estimator.cli.arguments import AsJson, JobFile
from estimator.cli.completing import revision_names

Old = Annotated[
    str,
    typer.Argument(
        metavar="OLD",
        autocompletion=revision_names,
        help="The earlier revision, such as r1; else the one before the newest.",
    ),
]
New = Annotated[
    str, typer.Argument(metavar="NEW", autocompletion=revision_names, help="The later revision; else the newest.")
]


def command(job: JobFile, old: Old = "", new: New = "", as_json: AsJson = False) -> None:
    from estimator.cli.comparing_revisions import compared
    from estimator.cli.views import changes
    from estimator.cli.views.screen import answer, width
    from estimator.records.names import revisions_folder
    from estimator.records.revisions import pair

    first, last = pair(revisions_folder(job), old, new)
    moved, parts = compared(first, last)
    rows = changes.rows(moved, first.name, last.name, width(), parts)
    answer(changes.as_data(moved, parts), as_json, rows)
