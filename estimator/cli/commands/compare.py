"""`estimator compare`: the notes in, the ways over one stretch side by side out, and what decides between them."""

from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, JobFile, Language, OnDay, SetKeys, Stations, TablesFrom
from estimator.cli.completing import line_names
from estimator.model.problem import CannotGoOn, Place
from estimator.model.stretch import Stretch

if TYPE_CHECKING:
    from estimator.model.comparison import BreakEven, Comparison
    from estimator.model.job import Job
    from estimator.model.line import Line

    Compared = tuple[Comparison, Job, BreakEven | None]

NEAR_FT = 0.1
"""Stations are shown to a tenth, so a typed one may miss the end by that."""

LineName = Annotated[
    str,
    typer.Option(
        "--line",
        metavar="NAME",
        autocompletion=line_names,
        help="The line; else the one under a slab that answers most, or the dearest.",
    ),
]


def command(
    job: JobFile,
    line: LineName = "",
    where: Stations = None,
    tables: TablesFrom = None,
    changes: SetKeys = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.views.compare import as_data, write_comparison
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import answer

    found, read, even = compared_with(job, tables, changes, on, line, where)
    out = in_window(language)
    write_comparison(out, found, read, even)
    answer(as_data(found, even), as_json, out.rows)


def compared_with(
    job_file: Path,
    tables: Path | None,
    changes: Sequence[str] | None,
    on: date | None,
    line: str,
    where: Stretch | None,
) -> "Compared":
    """Errors: CannotGoOn for a line that is not there, or where nothing is dug for."""
    from estimator.cli.answer_cache import cached_answer

    def anew() -> "tuple[Compared, Mapping[str, str]]":
        return _compared(job_file, tables, changes, on, line, where)

    return anew()[0] if changes else cached_answer("compare", job_file, tables, anew, on, line, where)


def _compared(
    job_file: Path,
    tables: Path | None,
    changes: Sequence[str] | None,
    on: date | None,
    line: str,
    where: Stretch | None,
) -> "tuple[Compared, Mapping[str, str]]":
    from estimator.cli.priced_job import ready
    from estimator.cli.problems import NO_LINE, NOTHING_TO_COMPARE
    from estimator.pipeline.costing import with_job_settings
    from estimator.studies.compare import compare
    from estimator.studies.ways import even

    job, priced_with, texts = ready(job_file, tables, changes, on)
    names = [known.name for known in job.lines]
    if where is not None and not line:
        raise typer.BadParameter(f"--where needs --line: {', '.join(names)}.")
    if line and line not in names:
        raise CannotGoOn(NO_LINE(Place(file=str(job_file)), line=line, names=", ".join(names)))
    if where is not None:
        _within(job_file, job.line(line), where)
    own = with_job_settings(job, priced_with)
    found = compare(job, own, line, where)
    if found is None:
        raise CannotGoOn(NOTHING_TO_COMPARE(Place(file=str(job_file))))
    return (found, job, even(found, job, own)), texts


def _within(job_file: Path, line: "Line", where: Stretch) -> None:
    from estimator.cli.problems import BEYOND_LINE
    from estimator.cli.views.words import AS_NOTED
    from estimator.model.profile import Profile

    number = AS_NOTED.number
    extent = Profile(line).extent
    for station in (where.from_ft, where.to_ft):
        if not extent.from_ft - NEAR_FT <= station <= extent.to_ft + NEAR_FT:
            first, last = number(extent.from_ft), number(extent.to_ft)
            place = Place(file=str(job_file))
            raise CannotGoOn(BEYOND_LINE(place, station=number(station), line=line.name, first=first, last=last))
