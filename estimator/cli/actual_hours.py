"""Real hours typed or in the crew's workbook in, kept and set against the estimate; over a folder, suggestions, out."""

import math
from collections.abc import Sequence
from decimal import Decimal
from itertools import zip_longest
from pathlib import Path

import typer

from estimator.cli.views.problems import tell
from estimator.model.frozen import Frozen
from estimator.pricing.actuals import Actual, Outcome, Suggestion, outcomes_of, strangers_to, suggestions
from estimator.records.afterwards.actuals import keep, worked
from estimator.records.afterwards.crew_hours import crew_hours, far_from_estimate
from estimator.records.afterwards.sold import Sold, sold
from estimator.records.job_status import job_files
from estimator.records.revisions import revisions_folder
from estimator.tables.tables import Tables


class Compared(Frozen):
    """What goes out as JSON: the option, its tasks, work it did not have, crew days."""

    option: str
    revision: int
    tasks: tuple[Outcome, ...]
    not_estimated: tuple[str, ...]
    days_estimated: Decimal
    days_real: Decimal | None


def typed(
    tasks: Sequence[str], hours: Sequence[float], quantities: Sequence[float], causes: Sequence[str]
) -> tuple[Actual, ...]:
    """The options of the command line put together, the first --hours with the first --task. Errors: BadParameter."""
    for name, given in (("--hours", hours), ("--quantity", quantities), ("--cause", causes)):
        if len(given) not in ((len(tasks),) if name == "--hours" else (0, len(tasks))):
            raise typer.BadParameter(
                f'write {name} once for each --task, in their order: --task "tunnel dig" --hours 36'
            )
    if any(not math.isfinite(value) or value < 0 for value in (*hours, *quantities)):
        raise typer.BadParameter("hours and quantities are numbers of 0 or more.")
    rows = zip_longest(tasks, hours, quantities, (c.strip().lower() for c in causes))
    return tuple(Actual(task=t.strip(), hours=h, quantity=q, cause=c or "") for t, h, q, c in rows)


def noted(
    job_file: Path, letter: str, entries: tuple[Actual, ...], file: Path | None, days: Decimal | None, add: bool
) -> Compared:
    """Keeps what was entered, if anything was, and sets all that is kept against the estimate. Errors: CannotGoOn."""
    folder = revisions_folder(job_file)
    held = worked(folder)
    done = sold(folder, letter or ("" if held is None else held.option))
    if file is not None:
        entries = (*entries, *crew_hours(file, done))
    if entries or days is not None:
        held = keep(folder, done, entries, days, add)
        tell(far_from_estimate(folder, done, entries, days))
    return compared(done, held.entries if held else (), held.days if held else None)


def compared(done: Sold, entries: Sequence[Actual], days: Decimal | None) -> Compared:
    tasks = done.tasks
    found, others = outcomes_of(tasks, entries), strangers_to(tasks, entries)
    return Compared(done.letter, done.revision.number, found, others, done.days, days)


def suggest(folder: Path, tables: Tables) -> tuple[tuple[Suggestion, ...], int, int]:
    """Suggested rows, from how many jobs with real hours, and how many a task needs. Errors: CannotGoOn for a damaged file."""
    jobs = [found for path in job_files(folder) if (found := _of(revisions_folder(path))) is not None]
    least = int(tables.number("actuals_least_jobs"))
    return suggestions(jobs, tables, least), len(jobs), least


def _of(folder: Path) -> tuple[Outcome, ...] | None:
    held = worked(folder)
    return None if held is None else outcomes_of(sold(folder, held.option).tasks, held.entries)
