"""An option letter and a day in, a lasting note of what the homeowner accepted out; written once, never over."""

import json
from dataclasses import asdict, dataclass
from datetime import date
from pathlib import Path

from estimator.model.problem import CannotGoOn, Place
from estimator.pricing.cancellation import cancel_until
from estimator.records.disk import Disk
from estimator.records.lock import locked
from estimator.records.plain import dumped
from estimator.records.problems import ALREADY_ACCEPTED, DAMAGED, NO_OPTION
from estimator.records.refusals import told
from estimator.records.revisions import Revision

NAME = "accepted.json"


@dataclass(frozen=True, slots=True)
class Acceptance:
    """Which option of which revision, when it was signed, and the last day to cancel ("" where the place says none)."""

    revision: int
    option: str
    on: str
    total: str
    cancel_until: str = ""


def accept(folder: Path, revision: Revision, letter: str, on: date, disk: Disk | None = None) -> Acceptance:
    """Writes the acceptance beside the revisions. Errors: CannotGoOn for an unknown letter or a second acceptance."""
    record = revision.record()
    option = next((o for o in record.data["quote"]["options"] if o["letter"].upper() == letter.upper()), None)
    place = Place(file=str(folder))
    if option is None:
        letters = ", ".join(record.letters)
        raise CannotGoOn(NO_OPTION(place, number=revision.number, letter=letter, letters=letters))
    days = record.data["quote"].get("cancel_business_days")
    until = str(cancel_until(on, days)) if days else ""
    wanted = Acceptance(revision.number, option["letter"], str(on), option["price"]["total"], until)
    with told(folder, revision.number), locked(folder):
        held = accepted(folder) or _write(folder, wanted, disk or Disk())
    if held == wanted:
        return held
    raise CannotGoOn(ALREADY_ACCEPTED(place, number=held.revision, letter=held.option, day=held.on))


def accepted(folder: Path) -> Acceptance | None:
    """What was accepted, or None. Errors: CannotGoOn when the note is damaged."""
    path = folder / NAME
    if not path.exists():
        return None
    try:
        return Acceptance(**json.loads(path.read_text(encoding="utf-8")))
    except (OSError, ValueError, TypeError) as error:
        raise CannotGoOn(DAMAGED(Place(file=str(path)), number="acceptance", said=str(error))) from None


def _write(folder: Path, acceptance: Acceptance, disk: Disk) -> Acceptance:
    """Written beside its place and renamed, so that a half-written note is never found."""
    making = folder / f".{NAME}-tmp"
    making.unlink(missing_ok=True)
    disk.write(making, dumped(asdict(acceptance)))
    disk.rename(making, folder / NAME)
    return acceptance
