"""Steps 1 to 6 without any rounding: takeoffs in; a smooth price for break-even and an additive cost for the search, out."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial

from estimator.model.frozen import Frozen
from estimator.model.price import TaskHours
from estimator.model.remembered import answered_once, remembered
from estimator.model.work import Takeoff
from estimator.pricing.amounts import Asked, Owner, Shares, Worked, put_together, shares, with_days
from estimator.pricing.crew_days import OVERHEAD
from estimator.pricing.crews import Crew, crews_of
from estimator.pricing.figures import hours_of
from estimator.pricing.house_rules import HouseRules, house_rules
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.markup import class_rows, contingency_percent
from estimator.pricing.prepared import Prepared, prepared, taxed_in_their_own_way
from estimator.pricing.tax import class_rate
from estimator.tables.price_shares import firm_share
from estimator.tables.rows import PlaceRow, TaxClass
from estimator.tables.tables import Tables


class RoughCost(Frozen):
    """What a repair adds to a scope, marked up, in whole cents; `shared` are (key, cents) paid once a scope."""

    cents: int
    shared: tuple[tuple[str, int], ...] = ()


class Bit(Frozen):
    """An unrounded cost: its price class, dollars, who carries it, how much of it is material, the key it is shared by."""

    price_class: str
    dollars: float
    by: Callable[[], Shares]  # asked only where a place taxes some work in its own way
    material: float = 0.0
    shared: str = ""


@remembered
def rough_cost(takeoff: Takeoff, tables: Tables, place: PlaceRow | None) -> RoughCost:
    """Hours and days unrounded, no packs, no minimum, marked up as the method alone would be. Errors: as `price_scope`."""
    priced = _sold((takeoff,), tables, place)
    shared: dict[str, float] = {}
    for bit, price in priced:
        if bit.shared:
            shared[bit.shared] = shared.get(bit.shared, 0.0) + price
    own = sum(price for bit, price in priced if not bit.shared)
    return RoughCost(round(own * 100), tuple((key, round(price * 100)) for key, price in shared.items()))


def smooth_price(takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None) -> float:
    """The price of a scope as a smooth function of its quantities, dollars: no half days, packs, minimum or price step."""
    return sum(price for _, price in _sold(takeoffs, tables, place))


def _sold(takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None) -> list[tuple[Bit, float]]:
    scope = prepared(takeoffs, tables, place)
    bits = _bits(scope, tables, place)
    rows = class_rows(tuple(dict.fromkeys(b.price_class for b in bits)), tables)
    contingency, stays = float(contingency_percent(takeoffs, tables)) / 100, float(firm_share(tables))
    factor = {
        name: (1 + contingency * row.contingency) / (1 - float(row.margin_percent) / 100) / stays
        for name, row in rows.items()
    }
    own_way = taxed_in_their_own_way(scope, tables, place)
    return [(b, b.dollars * factor[b.price_class] * (1 + _tax(b, place, own_way))) for b in bits]


def _tax(bit: Bit, place: PlaceRow | None, own_way: Mapping[str, TaxClass]) -> float:
    """What is charged on a bit, as a share of its price: each work item that carries it as the place taxes that item."""
    usual = _usual_tax(bit, place)
    if not own_way:
        return usual
    by = bit.by()
    if own_way.keys().isdisjoint([item for _, item, _ in by]):
        return usual
    taxed = [(weight, own_way.get(item)) for _, item, weight in by]
    charged = sum([weight * (class_rate(row) if row else usual) for weight, row in taxed])
    return charged / sum([weight for _, _, weight in by])


def _usual_tax(bit: Bit, place: PlaceRow | None) -> float:
    if place is None or place.tax_percent is None:
        return 0.0
    rate = float(place.tax_percent) / 100
    if place.tax_kind == "whole charge" and bit.price_class != PASSED_ON:
        return rate
    if place.tax_kind == "separated" and bit.dollars:
        return rate * bit.material / bit.dollars
    return 0.0


def _bits(scope: Sequence[Prepared], tables: Tables, place: PlaceRow | None) -> list[Bit]:
    rules = house_rules(tables)
    tasks = hours_of(scope)
    there = _Crews(_by_crew(tasks), crews_of(scope, tables, rules), rules)
    worked = {crew: there.worked(crew) for crew in there.tasks}
    bits = [
        Bit("own", there.days(name) * rules.day_hours * float(crew.rate), partial(there.who_works, name))
        for name, crew in there.crews.items()
    ]
    if rules.overhead:
        bits += [
            Bit(OVERHEAD, there.days(crew) * float(rules.overhead), partial(there.who_works, crew))
            for crew in there.tasks
        ]
    for kind, bit in (("equipment", _equipment), ("material", _material), ("sub", _sub)):
        for want in put_together(with_days(want, tasks, worked) for one in scope for want in one.wanted[kind]):
            bits.append(bit(want, tables, place, there))
    return bits


def _by_crew(tasks: Iterable[TaskHours]) -> dict[str, list[TaskHours]]:
    out: dict[str, list[TaskHours]] = {}
    for task in tasks:
        out.setdefault(task.crew, []).append(task)
    return out


class _Crews(Frozen, dict=True):
    """Who works how long, and how many days that is unrounded."""

    tasks: Mapping[str, Sequence[TaskHours]]
    crews: Mapping[str, Crew]
    rules: HouseRules

    def days(self, crew: str, owners: frozenset[Owner] | None = None) -> float:
        """Days of a crew on the work items that ask, on everything where none are named."""
        mine = self.tasks.get(crew, ())
        hours = sum([t.hours for t in mine if owners is None or (t.repair, t.work_item) in owners])
        return hours / (self.rules.day_hours - self.crews[crew].set_up_hours) if hours else 0.0

    def worked(self, crew: str) -> Worked:
        days = self.days(crew)
        return Worked(days, days * self.rules.day_hours, sum(t.hours for t in self.tasks[crew]))

    @answered_once
    def who_works(self, crew: str) -> Shares:
        return shares(((t.repair, t.work_item), t.hours) for t in self.tasks.get(crew, ()))


def _equipment(want: Asked, tables: Tables, place: PlaceRow | None, there: _Crews) -> Bit:
    row = tables.equipment(want.ref)
    by_day = row.unit == "day" and row.crew
    at_least = max(float(row.min_days), 1.0)
    quantity = (there.days(row.crew, want.owners) or at_least) if by_day else want.amount
    return Bit("own", quantity * float(row.cost), lambda: want.by, shared="" if by_day else _key(want))


def _material(want: Asked, tables: Tables, place: PlaceRow | None, there: _Crews) -> Bit:
    row = tables.material(want.ref)
    small = 1 + float(there.rules.small_parts_percent) / 100 * row.small_parts
    bought = want.amount * (1 + float(row.waste_percent) / 100) * float(row.unit_cost) * small
    pays = place is not None and place.tax_kind == "contractor pays" and place.tax_percent is not None and row.taxable
    tax = float(place.tax_percent) / 100 if pays and place is not None and place.tax_percent is not None else 0.0
    return Bit("own", bought * (1 + tax), lambda: want.by, material=bought, shared=_key(want))


def _sub(want: Asked, tables: Tables, place: PlaceRow | None, there: _Crews) -> Bit:
    row = tables.sub(want.ref)
    return Bit(row.price_class, want.amount * float(row.cost), lambda: want.by, shared=_key(want))


def _key(want: Asked) -> str:
    """The key of a charge paid once a scope: its row, where every recipe that asks for it says `once`."""
    return want.ref if want.paid_once else ""
