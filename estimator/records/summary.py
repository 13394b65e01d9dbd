"""A record's file in, the few facts a list of jobs shows out, from its first lines alone: a thousand jobs in a moment."""

import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from estimator.disk.whole import read_text
from estimator.model.job import Job
from estimator.model.say import Say
from estimator.records.recorded_text import plain
from estimator.records.revisions import INTERNAL

if TYPE_CHECKING:
    from estimator.model.offer import Quote


NAME = "summary"
ENOUGH = 16384  # bytes from the start in which the summary ends, but for a hundred options
END = b"}\n"


def summary(quote: "Quote") -> dict[str, Any]:
    """Number, site, revision, last day of the offer, each option's total by its letter; the add-ons chosen at its writing,
    and those the job file wished for then; what is open as long as no option can be signed."""
    return {
        "number": quote.job.number,
        "site": quote.job.customer.site,
        "revision": quote.revision,
        "valid_until": str(quote.valid_until),
        "add_ons": None if quote.job.chosen is None else list(quote.job.chosen),
        "wished": list(quote.job.wishes.add_ons),
        "totals": {option.letter: str(option.price.total) for option in quote.options},
        "open": plain(_open(quote)),
    }


def _open(quote: "Quote") -> tuple[Say, ...]:
    """What must be settled before anything can be signed: of the option that lacks the least; nothing where one is fixed."""
    reasons = [option.not_fixed_because for option in quote.options]
    return min(reasons, key=len, default=())


def chosen_in(held: Mapping[str, Any]) -> tuple[str, ...] | None:
    """The add-ons that a summary says were chosen when it was written; None: as the job file says."""
    chosen = held.get("add_ons")
    return None if chosen is None else tuple(map(str, chosen))


def read_summary(path: Path) -> dict[str, Any]:
    """The summary at the head of a record that is whole to its end. Errors: OSError, or ValueError when it is damaged."""
    with path.open("rb") as file:
        head = file.read(ENOUGH).decode("utf-8", "replace")
        file.seek(-len(END), 2)
        if file.read() != END:
            raise ValueError("it is cut short")
    start = head.find(f'"{NAME}": ')
    if start < 0:
        raise ValueError("it has no summary")
    try:
        found, _ = json.JSONDecoder().raw_decode(head, start + len(NAME) + 4)
    except ValueError:
        found = json.loads(read_text(path))[NAME]
    if not isinstance(found, dict):
        raise ValueError("its summary is no summary")
    return found


def summaries(folder: Path) -> Iterator[tuple[str, dict[str, Any]]]:
    """Each revision with its summary, the oldest first. Errors: OSError or ValueError for a damaged one."""
    for number in _numbers(folder):
        yield f"r{number}", read_summary(_record(folder, number))


def chosen_last(folder: Path, job: Job) -> tuple[str, ...] | None:
    """The add-ons chosen at the writing of the newest revision, as long as the job file wishes for what it did then.

    None where there is no revision, or where the job file counts. A damaged record is told by whoever writes the next one.
    """
    held = last_summary(folder)
    if held is None:
        return None
    return chosen_in(held) if tuple(held.get("wished", ())) == job.wishes.add_ons else None


def last_summary(folder: Path) -> dict[str, Any] | None:
    """The summary of the newest revision; None where there is none, or it is damaged."""
    try:
        return read_summary(_record(folder, _numbers(folder)[-1]))
    except (OSError, ValueError, IndexError):
        return None


def options_of(folder: Path) -> list[dict[str, Any]]:
    """The options of the newest revision as they stand in its record. Errors: as above."""
    held = json.loads(read_text(_record(folder, _numbers(folder)[-1])))
    return list(held["quote"]["options"])


def _numbers(folder: Path) -> list[int]:
    return sorted(int(p.name[1:]) for p in folder.iterdir() if p.name[:1] == "r" and p.name[1:].isdecimal())


def _record(folder: Path, number: int) -> Path:
    """Errors: OSError where it has none."""
    for path in (folder / f"r{number}" / INTERNAL).glob("*.json"):
        return path
    raise FileNotFoundError(f"r{number} has no record")
