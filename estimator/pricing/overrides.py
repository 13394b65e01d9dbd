"""The owner's own numbers in; takeoffs and hours with them, and a record of ours, mine and why, out."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from typing import NoReturn

from estimator.model.lengths import parse_quantity
from estimator.model.money import exact
from estimator.model.price import Overruled, TaskHours
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.model.wanted import Override
from estimator.model.work import Quantity, Takeoff
from estimator.pricing.problems import BAD_OVERRIDE, OVERRIDE_UNIT
from estimator.tables.cell_problems import near
from estimator.tables.tables import Tables


def with_quantities(
    takeoffs: Sequence[Takeoff], overrides: Iterable[Override], tables: Tables
) -> tuple[tuple[Takeoff, ...], tuple[Overruled, ...]]:
    """Set a quantity, by its name or by its work item. All quantities of that item in the same unit change alike.

    So a tunnel of 31 ft in place of 29 has each of its feet longer by 31/29, near the pit and far from it.
    Errors: CannotGoOn for an item this option does not have, or a quantity in another unit.
    """
    changed, said = tuple(takeoffs), []
    for override in overrides:
        if override.quantity:
            changed, note = _set_quantity(changed, override, tables)
            said.append(note)
    return changed, tuple(said)


def _set_quantity(
    takeoffs: tuple[Takeoff, ...], override: Override, tables: Tables
) -> tuple[tuple[Takeoff, ...], Overruled]:
    name = _quantity_name(override.item, tables)
    hit = [t for t in takeoffs if t.value(name) > 0 and override.line in ("", t.repair.line)]
    ours = sum(t.value(name) for t in hit)
    if not hit:
        _refuse(override, sorted({q.name for t in takeoffs for q in t.quantities if q.value > 0}))
    mine, unit = _mine(override, next(q.unit for t in hit if (q := t.quantity(name)) is not None))
    alike = {name} | {r.quantity for r in tables.recipes if r.work_item == override.item and r.quantity}
    made = tuple(_scaled(t, name, alike, mine / ours) if t in hit else t for t in takeoffs)
    what = f"quantity of {override.item}"
    return made, Overruled(what=what, ours=exact(round(ours, 3)), mine=exact(mine), unit=unit, reason=override.reason)


def _mine(override: Override, ours: str) -> tuple[float, str]:
    """The owner's number and its unit; a length only for what is counted in feet. Errors: CannotGoOn otherwise."""
    read = parse_quantity(override.quantity)
    other = not isinstance(read, Say) and bool(ours and read[1]) and (read[1] == "ft") != (ours == "ft")
    if isinstance(read, Say) or other:
        place = Place(file="job file, [[override]]")
        named = {"quantity": override.quantity, "item": override.item, "unit": ours or Say.of("plain numbers")}
        raise CannotGoOn(OVERRIDE_UNIT(place, reason=override.reason, **named))
    return read


def _quantity_name(item: str, tables: Tables) -> str:
    return next((w.quantity for w in tables.work_items if w.item == item), item)


def _scaled(takeoff: Takeoff, name: str, alike: set[str], ratio: float) -> Takeoff:
    lead = takeoff.quantity(name)
    unit = lead.unit if lead else ""
    changed = tuple(_times(q, ratio) if q.name in alike and q.unit == unit else q for q in takeoff.quantities)
    return replace(takeoff, quantities=changed)


def _times(quantity: Quantity, ratio: float) -> Quantity:
    return replace(quantity, value=quantity.value * ratio, formula=f"set by hand: × {ratio:g} of {quantity.value:g}")


def with_hours(
    tasks: Sequence[TaskHours], overrides: Iterable[Override], takeoffs: Sequence[Takeoff]
) -> tuple[tuple[TaskHours, ...], tuple[Overruled, ...]]:
    """Set the hours of a task or of a work item, on one line or on all; each of its tasks keeps its share.

    Errors: CannotGoOn when there is none.
    """
    lines = {t.repair.id: t.repair.line for t in takeoffs}
    changed, said = tuple(tasks), []
    for override in overrides:
        if override.hours is not None:
            changed, note = _set_hours(changed, override, override.hours, lines)
            said.append(note)
    return changed, tuple(said)


def _set_hours(
    tasks: tuple[TaskHours, ...], override: Override, mine: float, lines: Mapping[str, str]
) -> tuple[tuple[TaskHours, ...], Overruled]:
    there = [t for t in tasks if override.line in ("", lines.get(t.repair))]
    hit = [t for t in there if override.item in (t.task, t.work_item)]
    ours = sum(t.hours for t in hit)
    if ours <= 0:
        _refuse(override, sorted({name for t in tasks for name in (t.task, t.work_item)}))
    made = tuple(replace(t, hours=t.hours * mine / ours) if t in hit else t for t in tasks)
    what = f"hours of {override.item}"
    return made, Overruled(what=what, ours=exact(round(ours, 2)), mine=exact(mine), unit="h", reason=override.reason)


def wanted_price(overrides: Iterable[Override]) -> tuple[Decimal | None, str]:
    """The price the owner wants for the option and why; the last one written counts."""
    prices = [(o.price, o.reason) for o in overrides if o.price is not None]
    return prices[-1] if prices else (None, "")


def concerns(override: Override, takeoffs: Sequence[Takeoff], tables: Tables) -> bool:
    """Whether an option has what the owner's number is for: the item or task with a quantity above 0; any option has a price."""
    if override.price is not None:
        return bool(override.option)
    there = [t for t in takeoffs if override.line in ("", t.repair.line)]
    tasks = {r.work_item for r in tables.recipes if r.part == "labor" and r.ref == override.item}
    names = {_quantity_name(item, tables) for item in {override.item, *tasks}}
    return any(t.value(name) > 0 for t in there for name in names)


def meant(override: Override, tables: Tables) -> Say | str:
    """The items and tasks spelt nearly like one that the tables do not have, in a sentence; nothing for one they have."""
    names = [item.item for item in tables.work_items] + [r.ref for r in tables.recipes if r.part == "labor"]
    return "" if not override.item or override.item in names else near(override.item, dict.fromkeys(names))


def _refuse(override: Override, known: Sequence[str]) -> NoReturn:
    place = Place(file="job file, [[override]]")
    named = override.item or override.quantity or Say.of("nothing")
    raise CannotGoOn(BAD_OVERRIDE(place, reason=override.reason, item=named, known=", ".join(known) or Say.of("none")))
