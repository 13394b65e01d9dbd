"""Hours by class of work and the days on site in, a strip of days out: what is done when, and whether drains work."""

from decimal import Decimal

from estimator.model.money import exact, to_step
from estimator.model.offer import DaySpan
from estimator.model.price import Price
from estimator.model.say import Say
from estimator.tables.tables import Tables

HALF_DAY = Decimal("0.5")
WORDS: dict[str, Say] = {
    "find": Say.of("filming, testing and setting up"),
    "reach": Say.of("getting to the pipe"),
    "pipe": Say.of("old pipe out, new pipe in, test"),
    "put back": Say.of("closing up and cleaning"),
}


def hours_by_class(price: Price, tables: Tables) -> dict[str, Decimal]:
    """Crew hours of each class of work."""
    out = dict.fromkeys(WORDS, Decimal(0))
    for task in price.tasks:
        try:
            out[tables.work_item(task.work_item).work_class] += exact(task.hours)
        except KeyError:
            continue
    return out


def day_spans(price: Price, tables: Tables, on_site: Decimal, no_drains: Decimal) -> tuple[DaySpan, ...]:
    """Find and reach share the days before the pipe, put back those after; the pipe has the days without drains."""
    hours = hours_by_class(price, tables)
    before, after = hours["find"] + hours["reach"], hours["put back"]
    if on_site <= 1 or not before + after:
        return (DaySpan(start=Decimal(0), length=on_site, text=WORDS["pipe"], no_drains=bool(no_drains)),)
    pipe = min(on_site, max(HALF_DAY, no_drains))
    first = to_step((on_site - pipe) * before / (before + after), HALF_DAY)
    spans = (("reach", Decimal(0), first), ("pipe", first, pipe), ("put back", first + pipe, on_site - first - pipe))
    return tuple(
        DaySpan(start=start, length=length, text=WORDS[name], no_drains=name == "pipe" and bool(no_drains))
        for name, start, length in spans
        if length > 0
    )
