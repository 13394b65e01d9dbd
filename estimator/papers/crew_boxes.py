"""An option in, the boxes of its safety page out: documents before digging, and checks of each shift that no caution says."""

from collections.abc import Callable

from estimator.knowledge.houses import LEAD_PAINT_BEFORE
from estimator.model.frozen import Frozen
from estimator.model.offer import Option, Quote
from estimator.model.say import Say
from estimator.papers.competent_person import digs, goes_in

TESTS = ("tests", "whole_tests", "isolation_tests", "tests_after_lift")
"""Quantities of water tests."""

Asked = Callable[[Quote, Option], bool]


class Box(Frozen, kw_only=True):
    """Something to tick: what the option must have for it, and the ids of the firm's cautions that say the same."""

    what: Say
    when: Asked
    said_by: frozenset[str] = frozenset()


def _always(quote: Quote, option: Option) -> bool:
    return True


def _dug(quote: Quote, option: Option) -> bool:
    return digs(option)


def _entered(quote: Quote, option: Option) -> bool:
    return any(map(goes_in, option.takeoffs))


def _house_cut(quote: Quote, option: Option) -> bool:
    return any(o.cuts_floor or o.kind == "hole through" for o in option.works.openings)


def _old_house_cut(quote: Quote, option: Option) -> bool:
    built = quote.job.house.built
    return _house_cut(quote, option) and (built is None or built < LEAD_PAINT_BEFORE)


def _asked(*quantities: str) -> Asked:
    return lambda quote, option: any(takeoff.value(name) for takeoff in option.takeoffs for name in quantities)


def _laid(quote: Quote, option: Option) -> bool:
    return bool(option.works.laid)


def _filmed(*, dug: bool) -> Asked:
    """The camera goes in at the end: after the backfill of a dig, else when the work is done."""
    return lambda quote, option: _asked("films_after")(quote, option) and digs(option) == dug


LOCATED = Say.of("811 ticket: number, marked on, valid to. Wait as the state says; hand-dig near the marks")
SLAB = Say.of("Slab scanned for cables; water, gas, power and ducts in or under it located and shut off")
ASBESTOS = Say.of(
    "Floor, adhesive, duct and cement pipe tested for asbestos by the state's rule before cutting, or presumed"
)
LEAD = Say.of(
    "House before 1978: painted area measured; over the limit a lead-safe firm and the EPA lead pamphlet (40 CFR 745.83)"
)  # fmt: skip
HEAT = Say.of("Water, shade and rest breaks against the heat")
INSPECTION = Say.of(
    "Inspection booked: water standing, pipe open, safe to look at without entering, or pictures agreed"
)
DOCUMENTS = (
    Box(what=LOCATED, when=_dug),
    Box(what=Say.of("Private lines located: water, gas, power, irrigation, pool"), when=_dug),
    Box(what=Say.of("Permit: number, card on site"), when=_asked("permits")),
    Box(what=Say.of("Registered professional engineer's letter"), when=_asked("engineer_letters")),
    Box(what=SLAB, when=lambda quote, option: option.works.below_floor),
    Box(what=ASBESTOS, when=_house_cut),
    Box(what=LEAD, when=_old_house_cut),
    Box(what=Say.of("Shut-offs found: water main, gas, power"), when=_always),
    Box(what=INSPECTION, when=_asked("inspections")),
)
SHIFT = (
    Box(what=Say.of("Sides, water, edge cracks, spoil pile and ladder inspected"), when=_dug, said_by=frozenset({"crw-daily"})),
    Box(what=Say.of("Air tested before entry and kept tested; blower on"), when=_entered, said_by=frozenset({"crw-air"})),
    Box(what=Say.of("House drains locked out and tagged; no flushing"), when=_dug, said_by=frozenset({"crw-lockout"})),
    Box(what=Say.of("Attendant outside; rescue plan reviewed, retrieval gear ready"), when=_entered, said_by=frozenset({"crw-air"})),
    Box(what=Say.of("No gasoline engine at or in the excavation"), when=_dug, said_by=frozenset({"crw-air", "crw-co"})),
    Box(what=Say.of("Lights and tools on a GFCI"), when=_dug, said_by=frozenset({"crw-vapor"})),
    Box(what=Say.of("Open excavation covered or fenced at night"), when=_dug, said_by=frozenset({"crw-night"})),
    Box(what=HEAT, when=_always, said_by=frozenset({"crw-heat"})),
)  # fmt: skip
"""Before each shift: 29 CFR 1926.651(k)(1)."""
SHOWN = (
    Box(what=Say.of("Picture before anything is touched: ground, floor, walls"), when=_always),
    Box(what=Say.of("Picture and camera run of the new pipe, still open"), when=_laid),
    Box(what=Say.of("Level on every fitting, both directions; note the readings as built"), when=_laid),
    Box(what=Say.of("Bedding under the full length of the pipe; no rock, no block"), when=_laid),
    Box(what=Say.of("Picture of each tie-in with a ruler"), when=_laid),
    Box(what=Say.of("Water test: start level, end level, minutes: ______"), when=_asked(*TESTS)),
    Box(what=Say.of("Inspector has seen it; drains back in service at: ______"), when=_asked("inspections")),
    Box(what=Say.of("Camera run after backfill, water running: slope holds, no water stands"), when=_filmed(dug=True)),
    Box(what=Say.of("Camera run when the work is done"), when=_filmed(dug=False)),
    Box(what=Say.of("Picture of everything restored"), when=_always),
)
"""What is shown of the work, in its order."""


def boxes(quote: Quote, option: Option, of: tuple[Box, ...]) -> list[Say]:
    """Return what has to be ticked for this option and stands in no caution of the firm."""
    said = {term.id for term in option.terms if term.kind == "crew caution"}
    return [box.what for box in of if box.when(quote, option) and not box.said_by & said]
