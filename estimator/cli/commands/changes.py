"""`estimator changes`: two revisions in, what moved between them and why out; or a change order to what was signed."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.arguments import AsJson, JobFile, Languages
from estimator.cli.completing import revision_names

if TYPE_CHECKING:
    from estimator.cli.views.screen import Row

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
    from estimator.cli.own_settings import own_settings
    from estimator.cli.reader import reads
    from estimator.cli.views.screen import answer, show

    if order:
        show([_ordered(job, new or old, order, tuple(languages or ()))])
        return
    language = languages[0] if languages else own_settings().language
    reads(language)
    data, rows = _compared(job, old, new, language)
    answer(data, as_json, rows)


def _compared(job_file: Path, old: str, new: str, language: str) -> "tuple[dict[str, object], list[Row]]":
    """What moved, as data and as rows."""
    from estimator.cli.comparing_revisions import compared
    from estimator.cli.views.changes import as_data, write_changes
    from estimator.cli.views.layout import in_window
    from estimator.records.names import revisions_folder
    from estimator.records.revisions import pair

    first, last = pair(revisions_folder(job_file), old, new)
    (moved, parts), out = compared(first, last), in_window(language)
    write_changes(out, moved, first.name, last.name, parts)
    return as_data(moved, parts), out.rows


def _ordered(job_file: Path, new: str, to: Path, languages: tuple[str, ...]) -> str:
    """The change order on the disk, and what it comes to."""
    from estimator.cli.ordering import ordered
    from estimator.cli.reader import reader
    from estimator.cli.views.words import Words

    (path, order), words = ordered(job_file, new, to, languages), Words(reader())
    was, now = words.dollars(order.signed.price.total), words.dollars(order.now.price.total)
    return words.speak("{file} is written: {was} as signed, {now} now.", file=str(path), was=was, now=now)
