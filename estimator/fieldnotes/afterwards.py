"""The file of what was done and what came of it in; its records, or what to mend, out.

It lies beside the job file under the same name with `-after` (`job-after.toml`) and is read by the same means.
"""

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Annotated

from estimator.fieldnotes.checkform import check
from estimator.fieldnotes.nearest import nearest
from estimator.fieldnotes.reading import in_order
from estimator.fieldnotes.syntax import Document, parse
from estimator.fieldnotes.textfile import read_text
from estimator.fieldnotes.wanted import METHOD, UNKNOWN_LINE
from estimator.fieldnotes.written import AsRecord, Form
from estimator.model.afterwards import (
    Afterwards,
    BuiltLevel,
    BuiltTest,
    Callback,
    Inspection,
    LaidPipe,
    LiftHeight,
    LiftLevel,
    Still,
)
from estimator.model.job import Job
from estimator.model.line import plain_wall
from estimator.model.problem import CannotGoOn, Place, Problem, error
from estimator.works.methods import names

ENDING = "-after.toml"


class AfterForm(Form):
    laid: tuple[Annotated[LaidPipe, AsRecord], ...] = ()
    level: tuple[Annotated[BuiltLevel, AsRecord], ...] = ()
    test: tuple[Annotated[BuiltTest, AsRecord], ...] = ()
    inspection: tuple[Annotated[Inspection, AsRecord], ...] = ()
    still: tuple[Annotated[Still, AsRecord], ...] = ()
    callback: tuple[Annotated[Callback, AsRecord], ...] = ()
    lift: tuple[Annotated[LiftHeight, AsRecord], ...] = ()
    lift_level: tuple[Annotated[LiftLevel, AsRecord], ...] = ()


def afterwards_file(job_file: Path) -> Path:
    """Return where the file lies, whether it is there or not."""
    return job_file.with_name(job_file.stem + ENDING)


def read_afterwards(job_file: Path, job: Job) -> Afterwards:
    """Return what the file beside the job file says, nothing where there is none. Errors: CannotGoOn with all that is wrong."""
    path = afterwards_file(job_file)
    if not path.exists():
        return Afterwards()
    text = read_text(path, Place(path.name))
    document = text if isinstance(text, Problem) else parse(text, path.name)
    if isinstance(document, Problem):
        raise CannotGoOn(document)
    form = check(document, AfterForm)
    if isinstance(form, list):
        raise CannotGoOn(*in_order(form))
    if wrong := [*_lines(form, job, document), *_methods(form, document), *_walls(form, document)]:
        raise CannotGoOn(*in_order(wrong))
    return Afterwards(
        laid=form.laid,
        levels=form.level,
        tests=form.test,
        inspections=form.inspection,
        stills=form.still,
        callbacks=form.callback,
        lifts=form.lift,
        lift_levels=form.lift_level,
    )


def _lines(form: AfterForm, job: Job, document: Document) -> Iterator[Problem]:
    known = [line.name for line in job.lines]
    tables: tuple[tuple[str, Sequence[LaidPipe | BuiltLevel | Still | LiftLevel]], ...] = (
        ("laid", form.laid), ("level", form.level), ("still", form.still), ("lift_level", form.lift_level),
    )  # fmt: skip
    for table, rows in tables:
        for number, row in enumerate(rows):
            if row.line and row.line not in known:
                yield UNKNOWN_LINE(document.place(table, number, "line"), name=row.line, known=", ".join(known))


def _methods(form: AfterForm, document: Document) -> Iterator[Problem]:
    for number, row in enumerate(form.callback):
        if row.method not in names():
            place = document.place("callback", number, "method")
            yield METHOD(place, text=row.method, nearest=nearest(row.method, names()), known=", ".join(names()))


def _walls(form: AfterForm, document: Document) -> Iterator[Problem]:
    """Every place of a lift is taped to the same two walls."""
    for number, row in enumerate(form.lift):
        walls = {plain_wall(wall) for wall, _ in row.from_walls}
        if len(walls) != 2 or walls != {plain_wall(wall) for wall, _ in form.lift[0].from_walls}:
            yield TWO_WALLS(document.place("lift", number, "from_walls"), name=row.name)


TWO_WALLS = error(
    "job/lift-walls",
    "{name} is not taped to the same two walls as the other places of the lift.",
    'Write in from_walls how far each place is from the same two walls, such as "front wall" = "0" and "east wall" = "38 ft".',
    "Where a place lies is told by two walls; the places are laid on one plan.",
)
PROBLEMS = (TWO_WALLS,)
