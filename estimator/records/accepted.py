"""An option letter and a day in, a lasting note of what the homeowner accepted out; one for each revision, never written over."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from estimator.disk.disk import Disk
from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import chained
from estimator.pricing.cancellation import cancel_until
from estimator.records.lock import locked
from estimator.records.note import day_of, in_plain_words, read_note, write_once
from estimator.records.problems import (
    ACCEPTED_TOO_EARLY,
    ACCEPTED_TOO_LATE,
    ALREADY_ACCEPTED,
    INVENTED,
    NO_OPTION,
    NOT_FIXED,
    QUOTED_TOO_EARLY,
)
from estimator.records.recorded_text import sentence
from estimator.records.revisions import Revision, revisions


class Acceptance(Frozen):
    """Which option of which revision, when it was signed, and the last day to cancel ("" where the place says none)."""

    revision: int
    option: str
    on: str
    total: str
    cancel_until: str = ""


def accept(folder: Path, revision: Revision, letter: str, on: date, disk: Disk | None = None) -> Acceptance:
    """Writes the acceptance beside the revisions.

    Errors: CannotGoOn for an unknown letter, an option without a fixed price, a day before the quote or after its
    offer, or a second acceptance of it.
    """
    quote = revision.record().data["quote"]
    if why := quote.get("invented"):
        because = chained(sentence(one) for one in why)
        raise CannotGoOn(INVENTED(Place(file=str(folder)), number=revision.number, because=because))
    option = _offered(folder, revision, letter, quote["options"])
    _fixed(folder, revision, option)
    _in_time(folder, revision, option["letter"], on, quote)
    days = quote.get("cancel_business_days")
    until = str(cancel_until(on, days)) if days else ""
    wanted = Acceptance(revision.number, option["letter"], str(on), option["price"]["total"], until)
    with in_plain_words(folder, revision.number), locked(folder):
        held = write_once(note_of(folder, revision), wanted, _of(folder, revision), disk)
    if held != wanted:
        raise CannotGoOn(
            ALREADY_ACCEPTED(Place(file=str(folder)), number=held.revision, letter=held.option, day=held.on)
        )
    return wanted


def accepted(folder: Path) -> Acceptance | None:
    """What was accepted, of the newest revision that was; or None. Errors: CannotGoOn when the note is damaged."""
    found = (_of(folder, revision) for revision in reversed(revisions(folder)))
    return next((held for held in found if held is not None), None)


def all_accepted(folder: Path) -> tuple[Acceptance, ...]:
    """Every acceptance, by revision. Errors: as above."""
    found = (_of(folder, revision) for revision in revisions(folder))
    return tuple(held for held in found if held is not None)


def not_before(folder: Path, on: date) -> None:
    """Errors: CannotGoOn for a new revision dated before the day of the newest acceptance."""
    signed = accepted(folder)
    if signed is not None and str(on) < signed.on:
        raise CannotGoOn(QUOTED_TOO_EARLY(Place(file=str(folder)), day=on, letter=signed.option, accepted=signed.on))


def note_of(folder: Path, revision: Revision) -> Path:
    """`accepted r2.json`, beside the revisions."""
    return folder / f"accepted {revision.name}.json"


def _of(folder: Path, revision: Revision) -> Acceptance | None:
    def made(held: Mapping[str, Any]) -> Acceptance:
        until, total = held["cancel_until"], Decimal(held["total"])
        if held["revision"] != revision.number or not total.is_finite():
            raise ValueError("it is the acceptance of something else")
        day, last = day_of(held["on"]), day_of(until) if until else ""
        return Acceptance(revision.number, str(held["option"]), day, str(total), last)

    return read_note(note_of(folder, revision), made)


def _offered(folder: Path, revision: Revision, letter: str, options: list[dict[str, Any]]) -> dict[str, Any]:
    for option in options:
        if option["letter"].upper() == letter.upper():
            return option
    letters = ", ".join(option["letter"] for option in options)
    raise CannotGoOn(NO_OPTION(Place(file=str(folder)), number=revision.number, letter=letter, letters=letters))


def _fixed(folder: Path, revision: Revision, option: Mapping[str, Any]) -> None:
    """What waits for a confirmation is signed only after it. Records made before prices could wait hold fixed ones."""
    if option.get("fixed", True):
        return
    because = chained((sentence(why) for why in option["not_fixed_because"]), " ")
    raise CannotGoOn(
        NOT_FIXED(Place(file=str(folder)), letter=option["letter"], number=revision.number, because=because)
    )


def _in_time(folder: Path, revision: Revision, letter: str, on: date, quote: Mapping[str, Any]) -> None:
    """Through its first and last day an offer can be accepted."""
    place, words = Place(file=str(folder)), {"letter": letter, "number": revision.number, "day": on}
    if on < date.fromisoformat(quote["day"]):
        raise CannotGoOn(ACCEPTED_TOO_EARLY(place, offered=quote["day"], **words))
    if on > date.fromisoformat(quote["valid_until"]):
        raise CannotGoOn(ACCEPTED_TOO_LATE(place, until=quote["valid_until"], **words))
