"""A job file and new tables in, what each of its options would cost against what was issued out; nothing is written."""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from estimator.disk.whole import read_bytes
from estimator.fieldnotes import read_job
from estimator.fieldnotes.beside import logs_in_folders
from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Level, Problem, first_of
from estimator.pipeline import run_with
from estimator.records.afterwards.owing import visits
from estimator.records.changes import does, totals
from estimator.records.recorded_text import plain
from estimator.records.revisions import newest, revisions_folder
from estimator.records.same_option import names, work_of
from estimator.records.summary import chosen_last
from estimator.tables.tables import Tables


class OptionMove(Frozen, kw_only=True):
    """One option by its letter and title: issued and now, in dollars; None where it was not, or is no longer, offered."""

    option: str
    issued: Decimal | None = None
    now: Decimal | None = None


class Repriced(Frozen, kw_only=True):
    """One job on new tables. `wrong` says in plain words why it could not be priced; then there are no moves."""

    job_file: str
    number: str = ""
    site: str = ""
    revision: str = ""
    moves: tuple[OptionMove, ...] = ()
    wrong: str = ""


def reprice(job_file: Path, tables: Tables, day: date) -> Repriced:
    """Errors: none; what goes wrong with one job is said in its row."""
    try:
        return _repriced(job_file, tables, day)
    except CannotGoOn as stop:
        return Repriced(job_file=str(job_file), wrong=_first(stop.problems))
    except Exception as error:  # one broken job never hides the others
        return Repriced(job_file=str(job_file), wrong=f"the program made a mistake of its own ({type(error).__name__})")


def _repriced(job_file: Path, tables: Tables, day: date) -> Repriced:
    last = newest(revisions_folder(job_file))
    record = last.record() if last else None
    reading = read_job(job_file)
    errors = tuple(p for p in reading.problems if p.level is Level.ERROR)
    if reading.job is None or errors:
        raise CannotGoOn(*(errors or reading.problems))
    chosen = chosen_last(revisions_folder(job_file), reading.job)
    job = replace(reading.job.with_add_ons(chosen), visits=visits(revisions_folder(job_file)))
    quote = run_with(job, tables, day, 1, for_papers=False).quote
    options = quote.options if quote else ()
    was, now = names(does(record) if record else (), [work_of(option) for option in options])
    before = totals(record, was) if record else {}
    after = {name: option.price.total for name, option in zip(now, options, strict=True)}
    return Repriced(
        job_file=str(job_file),
        number=reading.job.number,
        site=reading.job.customer.site,
        revision=last.name if last else "",
        moves=tuple(
            OptionMove(option=name, issued=before.get(name), now=after.get(name))
            for name in dict.fromkeys([*was, *now])
        ),
    )


def _first(problems: tuple[Problem, ...]) -> str:
    return f"{problems[0].place}: {first_of(problems)}"


NOTES = ("", ".txt", ".log", ".md", ".toml")


def fingerprint(job_file: Path, tables: Tables, day: date) -> str:
    """A sum over all that decides the row of a job: its place, notes, newest revision, tables, day. The same sum, the same row."""
    last = newest(revisions_folder(job_file))
    told = hashlib.sha256(f"{tables.fingerprint} {day} {last.name if last else ''} {job_file.resolve()}".encode())
    for path in sorted(p for p in job_file.parent.iterdir() if p.is_file() and p.suffix.lower() in NOTES):
        told.update(read_bytes(path))
    for name, path in logs_in_folders(job_file):
        told.update(name.encode() + read_bytes(path))
    return told.hexdigest()


def progress_file(folder: Path) -> Path:
    """`jobs` has `jobs.repricing` beside it.

    >>> progress_file(Path("jobs")).name
    'jobs.repricing'
    """
    whole = folder.resolve()
    return whole.with_name(f"{whole.name}.repricing")


def saved_rows(path: Path) -> dict[str, Repriced]:
    """Rows by their fingerprint; a line that was cut short is as if it were not there."""
    found: dict[str, Repriced] = {}
    if not path.is_file():
        return found
    for line in path.read_text(encoding="utf-8", errors="replace").splitlines():
        try:
            held = json.loads(line)
            found[held["of"]] = _row(held["row"])
        except (ValueError, KeyError, TypeError, ArithmeticError):
            continue
    return found


def save_row(path: Path, of: str, row: Repriced) -> None:
    """Adds one row; a single write, so that a stop leaves at most one line cut short."""
    with path.open("a", encoding="utf-8") as file:
        file.write(json.dumps({"of": of, "row": plain(row)}, ensure_ascii=False) + "\n")


def _row(held: Mapping[str, Any]) -> Repriced:
    moves = tuple(
        OptionMove(option=move["option"], issued=_money(move["issued"]), now=_money(move["now"]))
        for move in held["moves"]
    )
    return Repriced(**{**held, "moves": moves})


def _money(text: str | None) -> Decimal | None:
    return None if text is None else Decimal(text)
