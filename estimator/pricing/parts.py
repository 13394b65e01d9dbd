"""Takeoffs and recipes in; the parts each work item of each repair is made of, out."""

from collections.abc import Iterable, Mapping, Sequence, Set

from estimator.model.frozen import Frozen
from estimator.model.problem import Place, Problem
from estimator.model.remembered import remembered
from estimator.model.work import Takeoff
from estimator.pricing.problems import NO_COST, NO_ROW_FOR_SIZE, NO_SIZE, NOTHING_TO_SELL, UNKNOWN_ROW, at, stop
from estimator.tables.rows import Recipe, WorkItem
from estimator.tables.tables import Tables


def holds(when: Iterable[str], facts: Set[str]) -> bool:
    """Every name holds; a name after `not` must not hold. No names: always.

    >>> holds(("under_slab", "not tunnel"), {"under_slab"}), holds(("under_slab",), set()), holds((), set())
    (True, False, True)
    """
    for word in when:
        name = word.removeprefix("not ").strip()
        if (name in facts) == word.startswith("not "):
            return False
    return True


TABLE_OF = {
    "labor": "production",
    "material": "materials",
    "equipment": "equipment",
    "sub": "subs_and_fees",
    "fee": "subs_and_fees",
}
ROUNDED_LATER = ("days.", "hours.")
"""Quantities that follow a crew's days or hours and are known only once those are."""


class Part(Frozen, kw_only=True):
    """One recipe row of one work item of one repair, with the quantity it takes. `amount` = quantity × per."""

    repair: str
    method: str
    item: WorkItem
    recipe: Recipe
    ref: str
    size: str
    quantity_name: str
    quantity: float
    unit: str
    facts: frozenset[str]
    crew: str = ""  # who does it, where it is labor

    @property
    def amount(self) -> float:
        return self.quantity * self.recipe.per

    @property
    def owner(self) -> tuple[str, str]:
        """The repair and the work item that pay for it."""
        return self.repair, self.item.item


class Sold(Frozen, kw_only=True):
    """A work item of one repair that the homeowner pays for, and how much of it there is."""

    takeoff: Takeoff
    item: WorkItem
    size: float


ANY = ""
"""Stands for the methods of a work item that names none: whichever has its quantity needs it."""


@remembered
def items_of(takeoff: Takeoff, tables: Tables) -> tuple[Sold, ...]:
    """The work items of a takeoff: of its method or of any, whose facts hold, with a quantity above 0, in the quote's order."""
    by_method = _items_by_method(tables)
    fits = (
        Sold(takeoff=takeoff, item=item, size=takeoff.value(item.quantity))
        for item in (*by_method.get(takeoff.repair.method, ()), *by_method.get(ANY, ()))
        if holds(item.when, takeoff.facts)
    )
    return tuple(sorted((s for s in fits if s.size > 0), key=lambda s: (s.item.order, s.item.item)))


@remembered
def _items_by_method(tables: Tables) -> Mapping[str, Sequence[WorkItem]]:
    out: dict[str, list[WorkItem]] = {}
    for item in tables.work_items:
        for method in dict.fromkeys(item.methods or (ANY,)):
            out.setdefault(method, []).append(item)
    return out


def something_to_sell(takeoffs: Sequence[Takeoff], there_is: bool) -> None:
    """Errors: CannotGoOn where a scope is made of no part at all."""
    if not there_is:
        methods = ", ".join(sorted({t.repair.method for t in takeoffs})) or "an empty scope"
        stop([NOTHING_TO_SELL(Place(table="work_items", cell="methods"), methods=methods)])


def made_of(takeoff: Takeoff, tables: Tables) -> tuple[Sequence[Part], Sequence[Problem]]:
    """The parts of one takeoff, and what is wrong with them."""
    made = [_made(sold, tables) for sold in items_of(takeoff, tables)]
    return [part for parts, _ in made for part in parts], [problem for _, wrong in made for problem in wrong]


def parts_of_sold(sold: Iterable[Sold], tables: Tables) -> tuple[Part, ...]:
    """Every part of these work items. Errors: CannotGoOn for a row that is missing or an item that would cost nothing."""
    parts: list[Part] = []
    problems: list[Problem] = []
    for each in sold:
        made, wrong = _made(each, tables)
        parts += made
        problems += wrong
    stop(problems)
    return tuple(parts)


def _made(sold: Sold, tables: Tables) -> tuple[Sequence[Part], Sequence[Problem]]:
    """The parts of one work item, and what is wrong with them."""
    recipes = _recipes_by_item(tables).get(sold.item.item, ())
    made = [p for r in recipes if (p := _part(sold, r, tables)) is not None]
    return made, [*_missing(made, tables), *([] if made else [_costs_nothing(sold)])]


@remembered
def _recipes_by_item(tables: Tables) -> Mapping[str, Sequence[Recipe]]:
    out: dict[str, list[Recipe]] = {}
    for recipe in tables.recipes:
        out.setdefault(recipe.work_item, []).append(recipe)
    return out


def by_kind(parts: Iterable[Part]) -> Mapping[str, Sequence[Part]]:
    """The parts by kind: labor, equipment, material, and sub with the fees among them."""
    out: dict[str, list[Part]] = {"labor": [], "equipment": [], "material": [], "sub": []}
    for part in parts:
        out["sub" if part.recipe.part == "fee" else part.recipe.part].append(part)
    return out


def _part(sold: Sold, recipe: Recipe, tables: Tables) -> Part | None:
    if not holds(recipe.when, sold.takeoff.facts):
        return None
    name = recipe.quantity or sold.item.quantity
    later = name.startswith(ROUNDED_LATER)
    quantity = sold.takeoff.quantity(name)
    value = 1.0 if later else sold.takeoff.value(name)
    if value * recipe.per <= 0:
        return None
    ref = recipe.ref.replace("{size}", sold.takeoff.size or "{size}")
    return Part(
        repair=sold.takeoff.repair.id,
        method=sold.takeoff.repair.method,
        item=sold.item,
        recipe=recipe,
        ref=ref,
        size=sold.takeoff.size,
        quantity_name=name,
        quantity=value,
        unit=name.partition(".")[0] if later else (quantity.unit if quantity else ""),
        facts=sold.takeoff.facts,
        crew=_crew(ref, recipe, tables) if recipe.part == "labor" else "",
    )


def _crew(task: str, recipe: Recipe, tables: Tables) -> str:
    """Who does it: the recipe's crew, else the one of the production row; nobody where there is no such row."""
    try:
        return recipe.crew or tables.production(task).crew
    except KeyError:
        return ""


def _missing(parts: Iterable[Part], tables: Tables) -> list[Problem]:
    look_up = {
        "production": tables.production,
        "materials": tables.material,
        "equipment": tables.equipment,
        "subs_and_fees": tables.sub,
    }
    problems = []
    for part in parts:
        table = TABLE_OF[part.recipe.part]
        if "{size}" in part.ref:
            problems.append(NO_SIZE(at("recipes", part.recipe, "ref"), item=part.item.item, ref=part.ref))
            continue
        try:
            look_up[table](part.ref)
        except KeyError:
            place = at("recipes", part.recipe, "ref")
            words = {"item": part.item.item, "ref": part.ref, "table": table}
            sized = "{size}" in part.recipe.ref
            problems.append(NO_ROW_FOR_SIZE(place, size=part.size, **words) if sized else UNKNOWN_ROW(place, **words))
    return problems


def _costs_nothing(sold: Sold) -> Problem:
    size = f"{sold.size:g} {sold.item.unit}".strip()
    return NO_COST(at("work_items", sold.item, "item"), item=sold.item.item, quantity=size)
