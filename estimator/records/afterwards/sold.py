"""A job's folder in; the option that was signed, or the one that is named, with its revision and its record, out."""

from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path
from typing import Any

from estimator.model.frozen import Frozen
from estimator.model.price import TaskHours
from estimator.model.problem import CannotGoOn, Place
from estimator.model.schedule import Schedule, Task
from estimator.model.work import JOB
from estimator.records.accepted import Acceptance, accepted, all_accepted
from estimator.records.afterwards.lost import all_lost
from estimator.records.afterwards.problems import NO_OPTION
from estimator.records.finished import Finished, done_of, last_done
from estimator.records.problems import NO_OPTION as NO_SUCH_OPTION
from estimator.records.record import Record
from estimator.records.revisions import Revision, named, newest
from estimator.tables.rows_of_hours import Production
from estimator.works.methods import prepares


class Sold(Frozen):
    """One option as it was issued; `signed` is None where it was named by hand."""

    revision: Revision
    record: Record
    option: Mapping[str, Any]
    signed: Acceptance | None

    @property
    def letter(self) -> str:
        return str(self.option["letter"])

    @property
    def only_prepares(self) -> bool:
        """It cleans, tests or looks, and repairs nothing."""
        methods = {takeoff["repair"]["method"] for takeoff in self.option["takeoffs"]} - {JOB}
        return bool(methods) and all(map(prepares, methods))

    def finished(self, folder: Path) -> Finished | None:
        """The note that it was done; none where that speaks of the visit before it. Errors: CannotGoOn when it is damaged."""
        own, note = done_of(folder, self.revision.number), last_done(folder)
        if own or note is None:
            return own
        other = _option(named(folder, f"r{note.revision}"), note.option, folder, None)
        return None if other.only_prepares or self.only_prepares else note

    @property
    def tasks(self) -> tuple[TaskHours, ...]:
        """The hours it was estimated at, those of the add-ons that were chosen among them."""
        chosen = [task for add_on in self.option.get("add_ons", ()) if add_on["chosen"] for task in add_on["tasks"]]
        held = [*self.option["price"]["tasks"], *chosen]
        return tuple(TaskHours(**{"each": task["likely"], **task, "factors": tuple(task["factors"])}) for task in held)

    @property
    def schedule(self) -> Schedule:
        """Who was to do what when, as far as milestones are read from it; records made before it was kept have an empty one."""
        held = self.option["price"].get("schedule") or {"tasks": ()}
        hours = {name: held[name] for name in ("day_hours", "tolerance_hours") if name in held}
        return Schedule(tasks=tuple(_task(task) for task in held["tasks"]), **hours)

    @property
    def tasks_known(self) -> tuple[str, ...]:
        """Every task of the production table it was priced with."""
        rows = self.record.inputs.tables.current("production")
        return tuple(row.task for row in rows if isinstance(row, Production))

    @property
    def days(self) -> Decimal:
        """The crew days it was estimated at."""
        return sum((Decimal(crew["days"]) for crew in self.option["price"]["crews"]), Decimal(0))


def _task(held: Mapping[str, Any]) -> Task:
    return Task(**{**held, "items": tuple(held["items"]), "waits_for": tuple(held["waits_for"])})


def sold(folder: Path, letter: str = "") -> Sold:
    """Errors: CannotGoOn where nothing was accepted and no option is named, for an unknown letter, a damaged record."""
    signed = accepted(folder)
    if signed is not None and letter.upper() in ("", signed.option.upper()):
        return _option(named(folder, f"r{signed.revision}"), signed.option, folder, signed)
    revision = newest(folder) or named(folder, "r1")
    if not letter:
        raise CannotGoOn(NO_OPTION(Place(file=str(folder))))
    return _option(revision, letter, folder, None)


def all_sold(folder: Path) -> tuple[Sold, ...]:
    """Every option that was signed, by revision, less a visit noted as lost. Errors: as `sold`."""
    lost = {one.revision for one in all_lost(folder)}
    found = (_option(named(folder, f"r{one.revision}"), one.option, folder, one) for one in all_accepted(folder))
    return tuple(s for s in found if not (s.only_prepares and s.revision.number in lost))


def _option(revision: Revision, letter: str, folder: Path, signed: Acceptance | None) -> Sold:
    record = revision.record()
    for option in record.data["quote"]["options"]:
        if option["letter"].upper() == letter.upper():
            return Sold(revision, record, option, signed)
    letters = ", ".join(record.letters)
    raise CannotGoOn(NO_SUCH_OPTION(Place(file=str(folder)), number=revision.number, letter=letter, letters=letters))
