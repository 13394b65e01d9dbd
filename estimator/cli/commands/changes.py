"""`estimator changes`: two revisions in, what moved between them and why out."""

from typing import Annotated

import typer

from estimator.cli.arguments import AsJson, JobFile

Old = Annotated[
    str, typer.Argument(metavar="OLD", help="The earlier revision, such as r1; else the one before the newest.")
]
New = Annotated[str, typer.Argument(metavar="NEW", help="The later revision; else the newest.")]


def command(job: JobFile, old: Old = "", new: New = "", as_json: AsJson = False) -> None:
    from estimator.cli.views import changes
    from estimator.cli.views.screen import answer, width
    from estimator.records.changes import changes as moved_between
    from estimator.records.names import revisions_folder
    from estimator.records.revisions import pair

    first, last = pair(revisions_folder(job), old, new)
    moved = moved_between(first.record(), last.record())
    answer(moved, as_json, changes.rows(moved, first.name, last.name, width()))
