"""Steps 1 to 6 without any rounding: takeoffs in; a smooth price for break-even and an additive cost for the search, out."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from estimator.model.price import TaskHours
from estimator.model.remembered import remembered
from estimator.model.work import Takeoff
from estimator.pricing.amounts import Asked, asked
from estimator.pricing.crew_days import OVERHEAD
from estimator.pricing.crews import Crew, crews_of
from estimator.pricing.equipment import at_work
from estimator.pricing.hours import by_crew, task_hours
from estimator.pricing.house_rules import HouseRules, house_rules
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.markup import class_rows, contingency_percent
from estimator.pricing.parts import ROUNDED_LATER, Part, by_kind, parts_of
from estimator.pricing.spread_on import Owner, Shares, shares
from estimator.pricing.tax_classes import class_rate
from estimator.tables.price_shares import kept
from estimator.tables.rows import PlaceRow, TaxClass
from estimator.tables.tables import Tables


@dataclass(frozen=True, slots=True)
class RoughCost:
    """What a repair adds to a scope, marked up, in whole cents; `shared` are (key, cents) paid once a scope."""

    cents: int
    shared: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Bit:
    """An unrounded cost: its price class, dollars, who carries it, how much of it is material, the key it is shared by."""

    price_class: str
    dollars: float
    by: Shares
    material: float = 0.0
    shared: str = ""


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
    bits = _bits(takeoffs, tables, place)
    rows = class_rows(tuple(dict.fromkeys(b.price_class for b in bits)), tables)
    contingency, stays = float(contingency_percent(takeoffs, tables)) / 100, float(kept(tables))
    factor = {
        name: (1 + contingency * row.contingency) / (1 - float(row.margin_percent) / 100) / stays
        for name, row in rows.items()
    }
    own_way = _taxed_in_its_own_way(tables, place) if place else {}
    return [(b, b.dollars * factor[b.price_class] * (1 + _tax(b, place, own_way))) for b in bits]


@remembered
def _taxed_in_its_own_way(tables: Tables, place: PlaceRow) -> Mapping[str, TaxClass]:
    """The work items that a place taxes in a way of their own, and its row for each."""
    rows = ((item.item, tables.tax_class(place.place, item.tax_class)) for item in tables.work_items)
    return {item: row for item, row in rows if row is not None}


def _tax(bit: Bit, place: PlaceRow | None, own_way: Mapping[str, TaxClass]) -> float:
    """What is charged on a bit, as a share of its price: each work item that carries it as the place taxes that item."""
    usual = _usual_tax(bit, place)
    taxed = ((weight, own_way.get(item)) for _, item, weight in bit.by)
    charged = sum(weight * (class_rate(row) if row else usual) for weight, row in taxed)
    return charged / sum(weight for _, _, weight in bit.by)


def _usual_tax(bit: Bit, place: PlaceRow | None) -> float:
    if place is None or place.tax_percent is None:
        return 0.0
    rate = float(place.tax_percent) / 100
    if place.tax_kind == "whole charge" and bit.price_class != PASSED_ON:
        return rate
    if place.tax_kind == "separated" and bit.dollars:
        return rate * bit.material / bit.dollars
    return 0.0


def _bits(takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None) -> list[Bit]:
    rules = house_rules(tables)
    parts = parts_of(takeoffs, tables)
    tasks = task_hours(parts, tables, rules.factor_cap)
    crews = crews_of(parts, tables, rules)
    there = _Crews(tasks, crews, rules.day_hours)
    followed = [p for p in parts if not p.quantity_name.startswith(ROUNDED_LATER)]
    late = [p for p in parts if p.quantity_name.startswith(ROUNDED_LATER)]
    bits = [
        Bit("own", there.days(crew.name) * rules.day_hours * float(crew.rate), _who_works(crew.name, tasks))
        for crew in crews.values()
    ]
    if rules.overhead:
        bits += [
            Bit(OVERHEAD, there.days(crew) * float(rules.overhead), _who_works(crew, tasks)) for crew in by_crew(tasks)
        ]
    kinds = by_kind(followed)
    bits += [_equipment(a, tables, there) for a in asked(kinds["equipment"])]
    bits += [_material(a, tables, place, rules) for a in asked(kinds["material"])]
    bits += [_sub(a, tables) for a in asked(kinds["sub"])]
    return bits + _followers(late, there, tables, place, rules)


@dataclass(frozen=True, slots=True)
class _Crews:
    """Who works how long, and how many days that is unrounded."""

    tasks: Sequence[TaskHours]
    crews: Mapping[str, Crew]
    day_hours: float

    def days(self, crew: str, owners: frozenset[Owner] | None = None) -> float:
        """Days of a crew on the work items that ask, on everything where none are named."""
        if owners is None:
            hours = by_crew(self.tasks).get(crew, 0.0)
        else:
            hours = sum(h for _, h in at_work(owners, crew, self.tasks))
        return hours / (self.day_hours - self.crews[crew].set_up_hours) if hours else 0.0


def _who_works(crew: str, tasks: Sequence[TaskHours]) -> Shares:
    return shares(((t.repair, t.work_item), t.hours) for t in tasks if t.crew == crew)


def _equipment(want: Asked, tables: Tables, there: "_Crews") -> Bit:
    row = tables.equipment(want.ref)
    by_day = row.unit == "day" and row.crew
    at_least = max(float(row.min_days), 1.0)
    quantity = (there.days(row.crew, want.owners) or at_least) if by_day else want.amount
    return Bit("own", quantity * float(row.cost), want.by, shared="" if by_day else _key(want))


def _material(want: Asked, tables: Tables, place: PlaceRow | None, rules: HouseRules) -> Bit:
    row = tables.material(want.ref)
    small = 1 + float(rules.small_parts_percent) / 100 * row.small_parts
    bought = want.amount * (1 + float(row.waste_percent) / 100) * float(row.unit_cost) * small
    pays = place is not None and place.tax_kind == "contractor pays" and place.tax_percent is not None and row.taxable
    tax = float(place.tax_percent) / 100 if pays and place is not None and place.tax_percent is not None else 0.0
    return Bit("own", bought * (1 + tax), want.by, material=bought, shared=_key(want))


def _sub(want: Asked, tables: Tables) -> Bit:
    row = tables.sub(want.ref)
    return Bit(row.price_class, want.amount * float(row.cost), want.by, shared=_key(want))


def _followers(
    late: Iterable[Part],
    there: "_Crews",
    tables: Tables,
    place: PlaceRow | None,
    rules: HouseRules,
) -> list[Bit]:
    """Parts that follow a crew's days or hours, at the unrounded days."""
    bits: list[Bit] = []
    for part in late:
        measure, _, crew = part.quantity_name.partition(".")
        amount = there.days(crew) * (1 if measure == "days" else rules.day_hours) * part.recipe.per
        want = Asked(part.ref, amount, (part,))
        table = {
            "equipment": lambda w: _equipment(w, tables, there),
            "material": lambda w: _material(w, tables, place, rules),
        }
        bits.append(table.get(part.recipe.part, lambda w: _sub(w, tables))(want))
    return bits


def _key(want: Asked) -> str:
    """The key of a charge paid once a scope: its row, where every recipe that asks for it says `once`."""
    return want.ref if all(p.recipe.once for p in want.parts) else ""
