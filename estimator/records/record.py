"""A quote with all it was made from in, the record of a revision out: enough to make its files again and to compare."""

import hashlib
from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from decimal import Decimal
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any

from msgspec import field

import estimator
from estimator.disk.whole import read_bytes
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.offer import Quote
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.model.wanted import PastVisit
from estimator.records.problems import CHANGED_SINCE, DAMAGED
from estimator.records.recorded_text import ChangedSince, dumped, plain, unsealed
from estimator.records.summary import NAME, chosen_in, summary
from estimator.tables.data import from_data, to_data
from estimator.tables.tables import Tables

FORM = 1
LIBRARIES: tuple[str, ...] = ("XlsxWriter", "openpyxl", "babel")
NOT_CONTENT: frozenset[str] = frozenset(
    {"origin", "revision", "tables_fingerprint", "cell", "cell_row", "sheet_columns", "own_numbers", "visits"}
)
"""Fields that may move without anything on the papers moving: where a note stands, the row a price stands in, a visit before
that is credited to nothing."""


class OwnNumber(Frozen):
    """A number set by hand: the letter and title of its option, what it is of, the program's own number then, why."""

    letter: str
    title: str
    what: str
    ours: str
    reason: str


class Inputs(Frozen, kw_only=True):
    """What a quote is made from: the texts of the job file and its logs by name, the tables, the day, the languages,
    the pictures by the name the notes give them, and the seed of what is drawn by chance."""

    job_file: str
    texts: Mapping[str, str]
    tables: Tables
    day: date
    languages: tuple[str, ...]
    pictures: Mapping[str, bytes] = field(default_factory=dict)
    dated: date | None = None  # the quote's own day where it is later than its prices
    own_numbers: tuple[OwnNumber, ...] = ()  # set by hand, as the revision before had them
    seed: int | None = None  # of the draws behind the range; None: no range was made
    add_ons: tuple[str, ...] | None = None  # `Job.chosen`: instead of what the job file says; None: as it says
    visits: tuple[PastVisit, ...] = ()  # accepted before it

    def complete(self, job: Job) -> Job:
        """The job of its texts with what is in none of its files: the add-ons chosen and the visits before."""
        return replace(job.with_add_ons(self.add_ons), visits=self.visits)


class Record(Frozen):
    """The record as kept: a JSON object with the keys that `made` writes."""

    data: Mapping[str, Any]

    @property
    def content(self) -> str:
        return str(self.data["content"])

    @property
    def inputs(self) -> Inputs:
        """What it was made from."""
        held = self.data
        day = date.fromisoformat(held["day"])
        tables = from_data(held["tables"]).on(day)
        return Inputs(
            job_file=held["job_file"],
            texts=held["texts"],
            tables=tables,
            day=day,
            languages=tuple(held["languages"]),
            dated=date.fromisoformat(held["dated"]) if held.get("dated") else None,
            seed=held.get("seed"),
            own_numbers=tuple(OwnNumber(**number) for number in held.get("own_numbers", ())),
            add_ons=chosen_in(held[NAME]),
            visits=visits_in(held),
        )

    @property
    def letters(self) -> tuple[str, ...]:
        return tuple(option["letter"] for option in self.data["quote"]["options"])

    @property
    def offered(self) -> tuple[date, date]:
        """The day of its prices, and the last day on which its offer holds."""
        return date.fromisoformat(self.data["day"]), date.fromisoformat(self.data["quote"]["valid_until"])

    @property
    def made_by(self) -> str:
        return _spoken(self.data["versions"])


def visits_in(held: Mapping[str, Any]) -> tuple[PastVisit, ...]:
    """The visits before a recorded quote; records made before they were credited have none."""
    kept = held["quote"]["job"].get("visits", ())
    return tuple(PastVisit(day=date.fromisoformat(v["day"]), charged=Decimal(v["charged"])) for v in kept)


def made(quote: Quote, inputs: Inputs, files: Mapping[str, bytes]) -> Record:
    """The record of one revision; `files` are its papers by their path below the revision folder."""
    tables, said = inputs.tables, plain(quote)
    return Record({
        "form": FORM,
        NAME: summary(quote),
        "number": quote.job.number,
        "revision": quote.revision,
        "day": str(inputs.day),
        "dated": str(inputs.dated) if inputs.dated else "",
        "versions": versions(),
        "seed": inputs.seed,
        "own_numbers": plain(inputs.own_numbers),
        "languages": list(inputs.languages),
        "pictures": list(inputs.pictures),
        "content": _content(said, inputs),
        "files": {name: hashlib.sha256(data).hexdigest() for name, data in files.items()},
        "job_file": inputs.job_file,
        "texts": dict(inputs.texts),
        "tables_fingerprint": tables.fingerprint,
        "tables": {**to_data(tables), "source": Path(tables.source).name},
        "quote": said,
    })  # fmt: skip


def content(quote: Quote, inputs: Inputs) -> str:
    """A sum over everything the papers can show; the same sum means a new revision would say nothing new."""
    return _content(plain(quote), inputs)


def _content(quote: Any, inputs: Inputs) -> str:
    pictures = {name: hashlib.sha256(data).hexdigest() for name, data in inputs.pictures.items()}
    seen = [list(inputs.languages), pictures, _without_places(quote)]
    return hashlib.sha256(dumped(seen)).hexdigest()


def _without_places(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _without_places(inner) for key, inner in value.items() if key not in NOT_CONTENT}
    return [_without_places(inner) for inner in value] if isinstance(value, list) else value


def versions() -> dict[str, str]:
    """The program's and the libraries' versions that decide the bytes."""
    out = {"estimator": estimator.__version__}
    for name in LIBRARIES:
        try:
            out[name] = version(name)
        except PackageNotFoundError:
            out[name] = "unknown"
    return out


def _spoken(held: Mapping[str, str]) -> str:
    return ", ".join(f"{name} {number}" for name, number in held.items())


def this_program() -> str:
    return _spoken(versions())


def read_record(path: Path, number: int) -> Record:
    """The record in a file. Errors: CannotGoOn when it is missing, damaged or not as it was written."""
    place = Place(file=str(path))
    try:
        data = unsealed(read_bytes(path))
        if (data.get("form"), data.get("revision")) != (FORM, number):
            raise ChangedSince(Say.of("it is the record of something else"))
    except ChangedSince as error:
        raise CannotGoOn(CHANGED_SINCE(place, number=number, said=error.args[0])) from None
    except (OSError, ValueError, RecursionError) as error:
        said = Say.of("it is not there") if isinstance(error, FileNotFoundError) else str(error).rstrip(".")
        raise CannotGoOn(DAMAGED(place, number=number, said=said)) from None
    return Record(data)
