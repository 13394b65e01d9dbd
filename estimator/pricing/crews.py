"""The crews a scope needs in; what each costs an hour and how long it sets up each day, out."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.model.remembered import remembered
from estimator.model.say import Say
from estimator.pricing.hours import hours_each, slowed_by, times
from estimator.pricing.house_rules import HouseRules
from estimator.pricing.prepared import Prepared
from estimator.pricing.problems import NO_CREW, SET_UP_EATS_THE_DAY, UNKNOWN_ROW, cell, stop
from estimator.tables.rows_of_hours import CrewMember, Production, Role
from estimator.tables.tables import Tables

SET_UP_TASK = "daily set-up"
"""The production row whose hours come on every crew for every day it comes."""
NIGHT = "night_work"


class Crew(Frozen, kw_only=True):
    """A crew in this scope: dollars an hour, hours of set-up a day, likely and at most, and the cells they come from."""

    name: str
    rate: Decimal
    set_up_hours: float
    most_set_up_hours: float
    cell: str


def crews_of(scope: Sequence[Prepared], tables: Tables, rules: HouseRules) -> Mapping[str, Crew]:
    """Rate = Σ count × wage × (1 + burden), at night times the night rate; set-up = the row's hours × its factors.

    Errors: CannotGoOn for a crew with nobody in it, or a set-up that takes the whole day.
    """
    met: dict[str, frozenset[str]] = {}
    for one in scope:
        for name, facts in one.met.items():
            met[name] = met[name] | facts if name in met else facts
    known = _known_crews(tables)
    for asked in met.items():
        if asked not in known:
            known[asked] = _crew(*asked, tables, rules)
    crews = {name: known[name, facts] for name, facts in met.items()}
    stop([_nobody(crew, scope) for crew in crews.values() if crew.rate <= 0])
    stop([_no_day(crew, rules) for crew in crews.values() if round(crew.most_set_up_hours, 3) >= rules.day_hours][:1])
    return crews


def set_up_row(tables: Tables) -> Production:
    """The production row of setting up. Errors: CannotGoOn when there is none."""
    try:
        return tables.production(SET_UP_TASK)
    except KeyError:
        place = Place(table="production", cell="task")
        raise CannotGoOn(
            UNKNOWN_ROW(place, item=Say.of("every crew day"), ref=SET_UP_TASK, table="production")
        ) from None


@remembered
def _known_crews(tables: Tables) -> dict[tuple[str, frozenset[str]], Crew]:
    """Crews by their name and what they meet, filled as they are asked for."""
    return {}


def _crew(name: str, facts: frozenset[str], tables: Tables, rules: HouseRules) -> Crew:
    set_up, slowed = set_up_row(tables), slowed_by(SET_UP_TASK, facts, tables)
    slower = times(slowed, rules.factor_cap)
    rate, where = _paid(tables).get(name, (Decimal(0), ""))
    return Crew(
        name=name,
        rate=cents(rate * rules.night_rate) if NIGHT in facts else rate,
        set_up_hours=hours_each(set_up, tables) * slower,
        most_set_up_hours=max(set_up.likely, set_up.high) * slower,
        cell=where,
    )


@remembered
def _paid(tables: Tables) -> Mapping[str, tuple[Decimal, str]]:
    """By crew: dollars an hour by day, and the cells they come from."""
    roles = {role.role: role for role in tables.roles}
    members: dict[str, list[CrewMember]] = {}
    for member in tables.crew_members:
        members.setdefault(member.crew, []).append(member)
    return {name: (_rate(mine, roles), ", ".join(_cells(mine, roles))) for name, mine in members.items()}


def _rate(members: Iterable[CrewMember], roles: Mapping[str, Role]) -> Decimal:
    there = [(m.count, roles[m.role]) for m in members if m.role in roles]
    return sum((count * cents(role.hour) for count, role in there), Decimal(0))


def _cells(members: Sequence[CrewMember], roles: Mapping[str, Role]) -> list[str]:
    """How many of each, then what each earns."""
    wages = [cell("roles", roles[m.role], "wage") for m in members if m.role in roles]
    return [*(cell("crews", m, "count") for m in members), *wages]


def _nobody(crew: Crew, scope: Iterable[Prepared]) -> Problem:
    task = next(t.task for one in scope for t in one.tasks if t.crew == crew.name)
    return NO_CREW(Place(table="production", cell="crew"), task=task, crew=crew.name)


def _no_day(crew: Crew, rules: HouseRules) -> Problem:
    likely = crew.set_up_hours >= rules.day_hours
    place = Place(table="production", cell=f"{SET_UP_TASK}, {'likely' if likely else 'high'}")
    hours = crew.set_up_hours if likely else crew.most_set_up_hours
    return SET_UP_EATS_THE_DAY(place, set_up=f"{hours:g}", day=f"{rules.day_hours:g}")
