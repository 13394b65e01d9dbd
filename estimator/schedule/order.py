"""What is done before what: the quantity a work item is sold by and its class in, the step of the work out; which task waits for which.

The steps follow one another in each repair (common practice): uncover, open, dig, lay, test, show to the inspector, fill, close.
"""

from collections.abc import Sequence

from estimator.model.schedule import Task
from estimator.model.steps import STEPS
from estimator.tables.rows import WorkItem
from estimator.works.methods import known

STEP_OF_QUANTITY: dict[str, str] = {
    "jobs": "site",
    "clean_ft": "clean",
    "descale_ft": "clean",
    "potholes": "uncover",
    "flatwork_sf": "open",
    "drive_sf": "open",
    "street_sf": "open",
    "asphalt_sf": "open",
    "pavers_sf": "open",
    "slab_sf": "open",
    "caps": "join",
    "tests": "test",
    "toilets": "test",
    "whole_tests": "test",
    "films_after": "film",
    "tests_after_lift": "return",
    "inspections": "inspect",
}
STEP_OF_CLASS = {"find": "look", "reach": "dig", "pipe": "pipe", "put back": "close"}
FILLS = ("backfill", "tunnel_ft", "sand_tons", "import_lcy", "fill_cy")
"""Quantities of work put back that goes in before floor, paving and grass: names that hold one of these."""
OFF_STEPS = frozenset({"clean", "pipe", "join", "test"})
"""With pipe open, pulled, washed, cut or plugged nobody may use it."""
IN_PARTS = ("open", "dig", "pipe")
"""Steps in which crews follow one another along a long opening."""


def step_of(item: WorkItem) -> str:
    """Return the step in which a work item is done: by its quantity where that says it, else by its class.

    A work item of the firm's own is placed by its class.
    """
    known = STEP_OF_QUANTITY.get(item.quantity)
    if item.work_class == "put back":
        return "fill" if any(word in item.quantity for word in FILLS) else "close"
    return known or STEP_OF_CLASS.get(item.work_class, "pipe")


def drains_off(step: str, method: str) -> bool:
    """Whether nobody may use the drain during this step: beside the old pipe it is used until the new one is joined."""
    record = known(method)
    off = record.off if record else "at the pipe"
    return step in OFF_STEPS and off != "never" and not (step == "pipe" and off == "when joined")


def earlier(step: str) -> tuple[str, ...]:
    """The steps before this one, nearest first."""
    names = list(STEPS)
    return tuple(reversed(names[: names.index(step)]))


class Order:
    """Which tasks wait for which."""

    def __init__(self, tasks: Sequence[Task]) -> None:
        self.before: dict[str, Sequence[str]] = {t.id: t.waits_for for t in tasks}

    def after(self, tasks: Sequence[Task], others: Sequence[Task]) -> None:
        """Each of the tasks waits for all of the others too."""
        names = [t.id for t in others]
        for task in tasks if names else ():
            more = (name for name in names if name != task.id)
            self.before[task.id] = tuple(dict.fromkeys((*self.before[task.id], *more)))


def tasks_of(tasks: Sequence[Task], steps: Sequence[str]) -> list[Task]:
    return [t for t in tasks if t.step in steps]
