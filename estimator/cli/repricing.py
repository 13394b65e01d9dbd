"""A folder of jobs and new tables in, what would change on every one of them out: over all cores, a bar on a terminal.

Each job that is done is kept in a small file beside the folder, so that a run that was stopped goes on where it was.
"""

import contextlib
import os
import signal
import sys
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from datetime import date
from multiprocessing import get_context, parent_process
from pathlib import Path

import typer

from estimator.cli import rarely_swept
from estimator.cli.guard import STOPPED
from estimator.cli.price_tables import readable_tables
from estimator.cli.problems import STOPPED_HALF_WAY
from estimator.cli.reader import for_reader
from estimator.cli.views.jobs import below
from estimator.cli.views.problems import tell
from estimator.cli.writing import WORKBOOK, free, new_file
from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.records.job_status import job_files
from estimator.records.reprice import Repriced, fingerprint, progress_file, reprice, save_row, saved_rows
from estimator.tables.tables import Tables

WORTH_A_PROCESS = 4
"""From so many jobs on another process pays for its start."""
STARTS = "fork" if sys.platform == "linux" else "spawn"
"""How a worker starts: as it is, with all that is loaded, where the system is safe for that."""


class RepricedJobs(Frozen):
    """One row a job in the order of the folder, and how many of them were kept from a run that was stopped."""

    rows: tuple[Repriced, ...]
    from_before: int


class Desk(Frozen):
    """What a worker holds between jobs."""

    tables: Tables
    day: date


def repriced(folder: Path, tables: Path | None, day: date, to: Path) -> RepricedJobs:
    """Prices every job below the folder and writes the workbook.

    Errors: CannotGoOn for broken tables or a file in the way; typer.Exit when stopped by hand, with a word on what is kept.
    """
    free(to, WORKBOOK)
    priced_with, files, beside = readable_tables(day, tables), list(job_files(folder)), progress_file(folder)
    sums = {path: _sum(path, priced_with, day) for path in files}
    before = saved_rows(beside)
    rows = {path: before[of] for path, of in sums.items() if of in before}
    found = len(rows)
    try:
        for row in _each([p for p in files if p not in rows], Desk(priced_with, day), len(files), found):
            rows[Path(row.job_file)] = row
            if not row.wrong:
                save_row(beside, sums[Path(row.job_file)], row)
    except KeyboardInterrupt:
        tell([STOPPED_HALF_WAY(Place(file=str(beside)), done=len(rows), all=len(files))])
        raise typer.Exit(STOPPED) from None
    done = RepricedJobs(tuple(rows[path] for path in files), found)
    new_file(to, _workbook(done.rows, folder, priced_with, day))
    beside.unlink(missing_ok=True)
    return done


def _sum(path: Path, tables: Tables, day: date) -> str:
    """ "" for a job that cannot even be read; its row will say why."""
    try:
        return fingerprint(path, tables, day)
    except (OSError, CannotGoOn):
        return ""


def _each(files: Sequence[Path], desk: Desk, all_: int, before: int) -> Iterator[Repriced]:
    """Rows as they come, with a bar where somebody looks."""
    with _rows(files, desk) as rows, _bar(all_, before) as forward:
        for row in rows:
            forward()
            yield row


@contextlib.contextmanager
def _rows(files: Sequence[Path], desk: Desk) -> Iterator[Iterator[Repriced]]:
    """Rows as they come, from workers where there are enough of them; they begin before anything else runs beside, such as a bar."""
    workers = min(os.cpu_count() or 1, len(files))
    if workers < 2 or len(files) < WORTH_A_PROCESS:
        yield (reprice(path, desk.tables, desk.day) for path in files)
        return
    pool = ProcessPoolExecutor(workers, mp_context=get_context(STARTS), initializer=_sit_down, initargs=(desk,))
    try:
        waiting = [pool.submit(_one, path) for path in files]
        yield (future.result() for future in as_completed(waiting))
    finally:
        pool.shutdown(cancel_futures=True)


_desks: list[Desk] = []
"""In a worker: its desk."""


def _sit_down(desk: Desk) -> None:
    """A worker leaves the stopping to the program that started it, and goes when that is gone, however it ended."""
    rarely_swept()
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_go_with_it, daemon=True).start()
    _desks[:] = [desk]


def _go_with_it() -> None:
    if (program := parent_process()) is not None:
        program.join()
        os._exit(STOPPED)


def _one(path: Path) -> Repriced:
    return reprice(path, _desks[0].tables, _desks[0].day)


@contextlib.contextmanager
def _bar(all_: int, before: int) -> Iterator[Callable[[], None]]:
    """A bar on the error output where that is a terminal; else nothing."""
    if not sys.stderr.isatty():
        yield lambda: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

    columns = (TextColumn(for_reader(Say.of("pricing"))), BarColumn(), MofNCompleteColumn(), TimeRemainingColumn())
    with Progress(*columns, console=Console(file=sys.stderr), transient=True) as progress:
        task = progress.add_task("", total=all_, completed=before)
        yield lambda: progress.advance(task)


def _workbook(rows: Sequence[Repriced], folder: Path, tables: Tables, day: date) -> bytes:
    """One row an option, and those that could not be priced with the reason."""
    from estimator.papers.repriced import Move, Repricing, repriced_book
    from estimator.sheets.write import write

    moves = [
        Move(
            job=below(Path(row.job_file), folder),
            number=row.number,
            site=row.site,
            revision=row.revision or "not issued",
            option=move.option,
            issued=move.issued,
            now=move.now,
        )
        for row in rows
        for move in row.moves
    ]
    wrong = [(below(Path(row.job_file), folder), row.wrong) for row in rows if row.wrong]
    held = Repricing(tuple(moves), tuple(wrong), tables.fingerprint, day, tables.text("accent_colour"))
    return write(repriced_book(held))
