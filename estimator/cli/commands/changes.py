"""`estimator changes`: two revisions in, what moved between them and why out; or a change order to what was signed."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AsJson, JobFile, Languages
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


Order = Annotated[
    Path | None,
    typer.Option(
        "--order",
        metavar="FILE",
        help="Write a change order, from the accepted revision to NEW or the newest; a new name, ending in .xlsx.",
    ),
]


def command(
    job: JobFile,
    old: Old = "",
    new: New = "",
    order: Order = None,
    languages: Languages = None,
    as_json: AsJson = False,
) -> None:
    from estimator.cli import comparing_revisions as revisions
    from estimator.cli.reader import reads
    from estimator.cli.views.screen import answer, show, width

    spoken = tuple(languages or ())
    if spoken and not order:
        reads(spoken[0])
    if order:
        show(revisions.ordered(job, new or old, order, spoken))
    else:
        data, rows = revisions.told(job, old, new, width(), spoken)
        answer(data, as_json, rows)
