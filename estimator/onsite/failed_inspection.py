"""An option in; what it costs the firm, and which days move, where the inspector does not pass the work, out."""

from collections.abc import Iterator
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.half_days import HALF_DAY, Clock
from estimator.model.money import cents, exact
from estimator.model.offer import Option
from estimator.model.say import Days, Dollars, FromTable, Say
from estimator.model.work import Takeoff
from estimator.onsite.sheet import Block
from estimator.schedule import dug_on
from estimator.tables.rows import Equipment, Recipe
from estimator.tables.tables import Tables
from estimator.takeoff import rented_for
from estimator.takeoff.rented import BROUGHT, BY_DAY, times_brought
from estimator.wording.plain import CREWS, in_plain_words


class Failed(Frozen):
    """Working days that are lost, what is paid meanwhile (what, dollars), and milestones with their day before and after."""

    days: Decimal
    paid: tuple[tuple[Say, Decimal], ...]
    moved: tuple[tuple[Say, Decimal, Decimal], ...]

    @property
    def cost(self) -> Decimal:
        return sum((amount for _, amount in self.paid), Decimal(0))


def failed_inspection(option: Option, tables: Tables) -> Failed | None:
    """Return what one failed inspection costs and moves; None where no inspector comes. What has to be changed in the work is not in it.

    The crew that waits for the inspector comes again for half a day, what stands on rent is paid for where the days that are
    added pass those that are paid already, and the city's fee is paid again.
    """
    visits = [t for t in option.schedule.tasks if t.step == "inspect"]
    if not visits:
        return None
    days = exact(tables.number("inspection_moves_days"))
    paid = [*_crews(option, {t.crew for t in visits}), *_rents(option, tables, days)]
    fee = exact(tables.number("reinspection_fee"))
    if fee:
        paid.append((Say.of("the city's re-inspection fee"), fee))
    return Failed(days, tuple(paid), tuple(_moved(option, min(t.start for t in visits), days)))


def _crews(option: Option, crews: set[str]) -> list[tuple[Say, Decimal]]:
    hours = HALF_DAY * exact(option.schedule.day_hours)
    return [
        (Say.of("{crew} returns for half a day", crew=in_plain_words(CREWS, c.crew)), cents(c.rate * hours))
        for c in option.price.crews
        if c.crew in crews
    ]


def _rents(option: Option, tables: Tables, days: Decimal) -> Iterator[tuple[Say, Decimal]]:
    """What is rented and stands while the work waits: days beyond those that are paid; what is the firm's own or follows a crew does not."""
    rows = {r.item: r for r in tables.every(Equipment) if not (r.own or r.crew) and r.cost}
    paid, longer = _rented(option, tables, Decimal(0)), _rented(option, tables, days)
    said_once: set[str] = set()
    for recipe in tables.current("recipes"):
        if isinstance(recipe, Recipe) and recipe.ref in rows and recipe.quantity in {*BY_DAY, BROUGHT}:
            more = exact(_count(recipe, longer) - _count(recipe, paid))
            if more > 0 and recipe.ref not in said_once:
                said_once |= {recipe.ref} if recipe.once else set()
                row = rows[recipe.ref]
                what = FromTable(row.text, row.text_es)
                said = (
                    Say.of("{what}: once more", what=what)
                    if recipe.quantity == BROUGHT
                    else Say.of("{what}: {days} more", what=what, days=Days(more))
                )
                yield said, cents(row.cost * more)


def _count(recipe: Recipe, takeoffs: tuple[Takeoff, ...]) -> float:
    if recipe.quantity == BROUGHT:
        return recipe.per * times_brought(takeoffs)
    every = [t.value(recipe.quantity) for t in takeoffs]
    return recipe.per * (max(every) if recipe.once else sum(every))


def _rented(option: Option, tables: Tables, days: Decimal) -> tuple[Takeoff, ...]:
    """The takeoffs with what is rented, as if all from the inspector's visit on came so many days later."""
    schedule = option.schedule
    visit = min(t.start for t in schedule.tasks if t.step == "inspect")
    late = float(days) * schedule.day_hours
    moved = [(t, t.start + late, t.end + late) if t.start >= visit else (t, t.start, t.end) for t in schedule.tasks]
    dug = dug_on(moved, Clock(schedule.day_hours, schedule.tolerance_hours, 0.0))
    return rented_for(option.takeoffs, dug, tables)


def _moved(option: Option, from_hour: float, days: Decimal) -> list[tuple[Say, Decimal, Decimal]]:
    day = option.schedule.day_hours
    visit = Decimal(int(from_hour // day) + 1)
    out = [(Say.of("inspector's visit"), visit, visit + days)]
    for mark in option.schedule.marks:
        if Decimal(mark.day) >= visit and mark.name == "done":
            out.append((mark.text, Decimal(mark.day), Decimal(mark.day) + days))
    return out


def failed_block(found: Failed) -> Block:
    """Return it as a block: what is paid, and which days move."""
    paid = tuple(Say.of("{what}: {amount}", what=what, amount=Dollars(amount)) for what, amount in found.paid)
    moved = tuple(
        Say.of(
            "{what}: day {before}, then day {after}", what=what, before=f"{before:f}", after=f"{after.normalize():f}"
        )
        for what, before, after in found.moved
    )
    total = Say.of(
        "A failed inspection costs {cost} and {days}, plus the correction itself.",
        cost=Dollars(found.cost),
        days=Days(found.days),
    )
    return Block(heading=Say.of("If the inspection fails"), lines=(total, *paid, *moved))
