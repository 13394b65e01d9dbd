"""Hours by class of work and the days on site in, a strip of days out: what is done when, and whether drains work."""

from collections.abc import Iterable, Set
from decimal import Decimal

from estimator.model.money import exact, to_step
from estimator.model.offer import DaySpan
from estimator.model.price import Price
from estimator.model.say import Say
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables

HALF_DAY = Decimal("0.5")
WORDS: dict[str, Say] = {
    "find": Say.of("filming, testing and setting up"),
    "reach": Say.of("getting to the pipe"),
    "pipe": Say.of("work on the pipe"),
    "put back": Say.of("closing up and cleaning"),
}


IN_PLACE = ("yard spot", "slab spot", "tunnel", "break-through", "trench", "crawl replace")
DONE: tuple[tuple[tuple[str, ...], Say], ...] = (
    (("isolation test",), Say.of("parts of the drain tested one by one")),
    (("look and see",), Say.of("one place opened to look")),
    (("visit",), Say.of("inspecting and measuring what the price waits for")),
    (("clean",), Say.of("pipe cleaned and filmed")),
    (IN_PLACE, Say.of("old pipe out, new pipe in")),
    (("burst",), Say.of("new pipe pulled in where the old one is")),
    (("reroute",), Say.of("new pipe another way")),
    (("abandon",), Say.of("old pipe closed off")),
    (("reline", "sectional liner"), Say.of("new wall inside the old pipe, hardened and filmed")),
)
"""What is done at the pipe, by method, in the order of the work."""


def what_is_done(methods: Set[str], takeoffs: Iterable[Takeoff]) -> Say:
    """The work at the pipe in this option, and a test only where one is in the price.

    >>> str(what_is_done({"clean"}, ())), str(what_is_done({"tunnel"}, ()))
    ('pipe cleaned and filmed', 'old pipe out, new pipe in')
    """
    works = [text for some, text in DONE if methods & set(some)] or [WORDS["pipe"]]
    if any(takeoff.value("tests") for takeoff in takeoffs):
        works.append(Say.of("water test"))
    return Say.of("{works}", works=tuple(works)) if len(works) > 1 else works[0]


def hours_by_class(price: Price, tables: Tables) -> dict[str, Decimal]:
    """Crew hours of each class of work."""
    out = dict.fromkeys(WORDS, Decimal(0))
    for task in price.tasks:
        try:
            out[tables.work_item(task.work_item).work_class] += exact(task.hours)
        except KeyError:
            continue
    return out


def day_spans(
    price: Price, tables: Tables, on_site: Decimal, no_drains: Decimal, at_the_pipe: Say = WORDS["pipe"]
) -> tuple[DaySpan, ...]:
    """Find and reach share the days before the pipe, put back those after; the pipe has the days without drains."""
    hours = hours_by_class(price, tables)
    before, after = hours["find"] + hours["reach"], hours["put back"]
    if on_site <= 1 or not before + after:
        return (DaySpan(start=Decimal(0), length=on_site, text=at_the_pipe, no_drains=bool(no_drains)),)
    pipe = min(on_site, max(HALF_DAY, no_drains))
    first = to_step((on_site - pipe) * before / (before + after), HALF_DAY)
    words = {**WORDS, "pipe": at_the_pipe}
    spans = (("reach", Decimal(0), first), ("pipe", first, pipe), ("put back", first + pipe, on_site - first - pipe))
    return tuple(
        DaySpan(start=start, length=length, text=words[name], no_drains=name == "pipe" and bool(no_drains))
        for name, start, length in spans
        if length > 0
    )
