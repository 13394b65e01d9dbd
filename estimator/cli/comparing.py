"""A job and a stretch typed on the command line in, the comparison of its ways out."""

from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from estimator.cli.priced_job import ready
from estimator.cli.problems import BEYOND_LINE, NO_LINE, NOTHING_TO_COMPARE
from estimator.cli.views.words import number
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.problem import CannotGoOn, Place
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch

if TYPE_CHECKING:
    from estimator.model.comparison import BreakEven, Comparison

    Compared = tuple[Comparison, Job, BreakEven | None]

NEAR_FT = 0.1
"""Stations are shown to a tenth, so a typed one may miss the end by that."""


def compared_with(
    job_file: Path,
    tables: Path | None,
    changes: Sequence[str] | None,
    on: date | None,
    line: str,
    where: Stretch | None,
) -> "Compared":
    """Errors: CannotGoOn for a line that is not there, or where nothing is dug for."""
    from estimator.cli.asked_before import asked_before

    def anew() -> "tuple[Compared, Mapping[str, str]]":
        return _compared(job_file, tables, changes, on, line, where)

    return anew()[0] if changes else asked_before("compare", job_file, tables, anew, on, line, where)


def _compared(
    job_file: Path,
    tables: Path | None,
    changes: Sequence[str] | None,
    on: date | None,
    line: str,
    where: Stretch | None,
) -> "tuple[Compared, Mapping[str, str]]":
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


def _within(job_file: Path, line: Line, where: Stretch) -> None:
    extent = Profile(line).extent
    for station in (where.from_ft, where.to_ft):
        if not extent.from_ft - NEAR_FT <= station <= extent.to_ft + NEAR_FT:
            first, last = number(extent.from_ft), number(extent.to_ft)
            place = Place(file=str(job_file))
            raise CannotGoOn(BEYOND_LINE(place, station=number(station), line=line.name, first=first, last=last))
