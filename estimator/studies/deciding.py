"""The columns of a comparison in, the sentences that decide between them on the driveway out."""

from collections.abc import Sequence
from decimal import Decimal

from estimator.model.comparison import Column
from estimator.model.job import Job
from estimator.model.money import to_step
from estimator.model.offer import Option
from estimator.model.say import Dollars, Feet, Say
from estimator.model.stretch import Stretch
from estimator.works.methods import record_of

DRIVE = ("drive opening", "drive back")
DIPS = frozenset({"sag", "reverse fall", "backfall"})


def _way(method: str) -> Say:
    """A way as one speaks of it beside another."""
    record = record_of(method)
    return record.beside or record.short


def decides(columns: Sequence[Column], job: Job) -> tuple[Say, ...]:
    """Under a floor the difference in dollars as square feet of this homeowner's own; in the yard drive, dip and difference."""
    options = {c.method: c.option for c in columns if c.option is not None}
    tunnel = next((o for o in options.values() if o.works.tunnels), None)
    floor = next((o for o in options.values() if o.works.cuts_floor and not o.works.tunnels), None)
    if tunnel is not None and floor is not None:
        return _by_the_floor(tunnel, floor, job)
    return (*_cheapest_and_others(options), *_the_drive(options), *_the_dips(options))


def _by_the_floor(tunnel: Option, floor: Option, job: Job) -> tuple[Say, ...]:
    more = tunnel.price.total - floor.price.total
    if more <= 0:
        return (Say.of("The tunnel costs no more than opening the floor, and the floor stays."),)
    said = Say.of(
        "The tunnel costs {more} more than the floor. If your floor, put back, costs more than {more}, the tunnel is cheaper even before the dust.",
        more=Dollars(more),
    )
    price = job.house.floor_price_sf
    if not price:
        return (said, Say.of("What your floor costs a square foot is not written down: ask."))
    feet = Say.of(
        "{more} are about {sf} sq ft of your own floor at {price} a square foot; this work opens {opened} sq ft.",
        more=Dollars(more),
        sf=to_step(more / price, Decimal(1)),
        price=Dollars(price),
        opened=round(floor.floor_sf),
    )
    return said, feet


def _cheapest_and_others(options: dict[str, Option]) -> tuple[Say, ...]:
    ordered = sorted(options, key=lambda m: options[m].all_in)
    if len(ordered) < 2:
        return ()
    first, *others = ordered
    more = tuple(
        Say.of("{way} costs {more} more", way=_way(m), more=Dollars(options[m].all_in - options[first].all_in))
        for m in others
    )
    return (Say.of("Cheapest all in is {first}; {others}.", first=_way(first), others=more),)


def _the_drive(options: dict[str, Option]) -> tuple[Say, ...]:
    """What opening the drive and putting it back is of the dig that crosses it."""
    dig = next((o for m, o in options.items() if record_of(m).ground == "outside"), None)
    amount = sum((x.amount for x in dig.price.lines if x.work_item in DRIVE), Decimal(0)) if dig else Decimal(0)
    return (
        (Say.of("{amount} of that dig is opening the drive and putting it back.", amount=Dollars(amount)),)
        if amount
        else ()
    )


def _the_dips(options: dict[str, Option]) -> tuple[Say, ...]:
    """Each dip that the dig takes out, with the ways that keep it."""
    kept: dict[Stretch, list[Say]] = {}
    for method, option in options.items():
        for need in option.scope.leaves:
            if DIPS & set(need.kinds) and any(r.stretch.covers(need.stretch) for r in option.scope.repairs):
                kept.setdefault(need.stretch, []).append(_way(method))
    return tuple(
        Say.of(
            "A dip from {low} to {high} stays with {ways}.",
            low=Feet(round(at.from_ft, 1)),
            high=Feet(round(at.to_ft, 1)),
            ways=tuple(ways),
        )
        for at, ways in kept.items()
    )
