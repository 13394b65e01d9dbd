"""What the rules asked of the repairs of a scope in; the work it becomes, once a scope, and the crew's list, out.

A rule adds a fact; here, or in the takeoff of its own method, the fact becomes a quantity that a work item prices. What
costs the firm nothing is at least on the crew's list, in the rule's own words.
"""

from collections.abc import Iterator, Sequence

from estimator.model.judgement import Effect, Verdict
from estimator.model.work import Takeoff
from estimator.takeoff.case import Case
from estimator.takeoff.working import up

ONCE: tuple[tuple[str, str, str], ...] = (
    ("lead_safe", "lead_safe_setups", "old paint is disturbed"),
    ("arborist", "arborist_visits", "a trunk stands close to a dig"),
    ("test_after_lift", "tests_after_lift", "the foundation is to be lifted: a second visit with test and film"),
    ("backwater_valve", "backwater_valves", "the place asks for one where the drain is renewed"),
    ("tendon_scan", "tendon_scans", "a slab that may have tendons is opened"),
    ("asbestos_check", "asbestos_tests", "something that may hold asbestos is cut"),
    ("private_locate", "private_locates", "private lines near the dig"),
)
"""A fact, the quantity that is 1 where any repair of the scope has it, and why."""

FOR_THE_CREW = (Effect.REQUIRES_FIRST, Effect.ADDS_WORK, Effect.CAUTION, Effect.UNTIL_APPROVED, Effect.NO_FIXED_PRICE)


def asked(case: Case, takeoffs: Sequence[Takeoff], days_without_drains: float) -> None:
    """Scans, letters, set-ups, visits, sleeves and the like; a portable toilet where the only bathroom is out for long."""
    for fact, quantity, why in ONCE:
        if fact in case.paper.facts and not case.paper.value(quantity):
            case.paper.put(quantity, 1, why)
    _services(case)
    _letter(case, takeoffs)
    _toilet(case, days_without_drains)
    _counted(case, takeoffs)
    _voids(case, takeoffs)
    case.paper.cautions += list(dict.fromkeys(v.estimator for v in _said(takeoffs)))


def _services(case: Case) -> None:
    """Who scans a slab for steel cables finds water, gas, power and ducts on the same visit."""
    scanned = case.paper.value("tendon_scans") > 0
    case.paper.put(
        "service_scans",
        1 if "services_scan" in case.paper.facts and not scanned else 0,
        "what runs in and under the slab is found before it is cut or dug under; a scan for cables finds it too",
        ("scanned for cables", "yes" if scanned else "no"),
    )


def _letter(case: Case, takeoffs: Sequence[Takeoff]) -> None:
    """One letter a scope: where a repair did not count it already, and none is on file."""
    rules = {v.rule for t in takeoffs for v in t.repair.verdicts if "engineer" in v.facts}
    if rules and not any(t.value("engineer_letters") for t in takeoffs):
        case.letter("a rule asks for a registered engineer", rules)


def _toilet(case: Case, days: float) -> None:
    """By the week, where the only bathroom has no drain for longer than the firm's limit."""
    longest, a_week = case.number("portable_toilet_from_days"), case.number("portable_toilet_days")
    wanted = "portable_toilet" in case.paper.facts and days > longest + 1e-9
    case.paper.put(
        "portable_toilets",
        up(days / a_week) if wanted else 0,
        "working days without drains / days of one rent, up; one bathroom",
        ("days without drains", round(days, 2), "day"),
        ("days of one rent", a_week, "day"),
    )


def follows_days_off(once: Takeoff) -> bool:
    """Whether what a scope has once hangs on the days without drains."""
    return "portable_toilet" in once.facts


def _counted(case: Case, takeoffs: Sequence[Takeoff]) -> None:
    """What comes as often as there are places for it."""
    for takeoff in takeoffs:
        here, facts = Case.of(takeoff.repair, case.job, case.tables), takeoff.facts
        if "sleeve" in facts:
            case.paper.add("sleeves", _walls(here), "one a foundation wall passed", ("repair", takeoff.repair.id))
        if "flexible_connection" in facts:
            case.paper.add("flexible_joints", 1, "one a repair that ends at the slab edge")
        if "seal_water_first" in facts:
            case.paper.add("water_seals", 1, "one a pipe that ground water runs into")
        if "prove_branches" in facts:
            unproven = sum(1 for b in here.branches if b.live is None or b.proven is False)
            case.paper.add("branches_proven", unproven, "water run through each", ("side drains not proven", unproven))
        if "fixtures_off" in facts:
            over = [m for m in here.profile.marks("under") if m.stretch.touches(here.stretch)]
            case.paper.add("fixtures_moved", len(over), "each thing that stands over the pipe", ("things", len(over)))


def _voids(case: Case, takeoffs: Sequence[Takeoff]) -> None:
    """Each hollow seen at a repair, once a scope however many repairs come by it."""
    here = [Case.of(t.repair, case.job, case.tables) for t in takeoffs if "void" in t.facts]
    seen = {
        (c.line.name, f.id) for c in here for f in c.line.findings if "void" in f.signs and f.stretch.touches(c.stretch)
    }
    if not seen:
        return
    each = case.number("void_fill_cy")
    case.paper.put(
        "void_fill_cy",
        len(seen) * each,
        "hollows x allowance for one: nobody sees how large it is before it is open",
        ("hollows", len(seen)),
        ("allowance for one", each, "cy"),
    )
    case.paper.put("void_short_loads", 1, "a part load is charged")
    case.paper.assume(
        "the price allows {cy} cubic yards of fill for the empty space in the soil",
        cy=f"{len(seen) * each:g}",
    )


def _walls(here: Case) -> int:
    """Foundation walls the pipe passes through, along the old way or along the new one."""
    way = next((r for r in here.job.reroutes if r.name == here.repair.reroute), None)
    on_the_way = sum(count for what, count in way.penetrations if what == "wall") if way else 0
    return on_the_way + sum(1 for b in here.profile.beams if b.through and b.stretch.touches(here.stretch))


def _said(takeoffs: Sequence[Takeoff]) -> Iterator[Verdict]:
    """Every answer of a rule that the crew must know of, those found at takeoff among them."""
    for takeoff in takeoffs:
        for verdict in (*takeoff.repair.verdicts, *takeoff.finds):
            if verdict.facts and verdict.effect in FOR_THE_CREW and not verdict.overruled:
                yield verdict
