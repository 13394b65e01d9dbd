"""Stations of a line in; what grows or lies over them, the soil type people may count on there, and the facts of the ground, out."""

from estimator.knowledge.excavation import SoilType, type_over_a_pipe
from estimator.model.line import Finding
from estimator.model.opening import Span
from estimator.model.stretch import Stretch
from estimator.works.case import Case, surface_word

LEAKS: tuple[str, ...] = ("leak", "hole", "gap", "collapse", "channel", "crack", "blister", "fitting")
"""Findings that let water into the soil: the ground around them counts as type C."""


def leaks_here(case: Case, hole: Stretch) -> bool:
    """Sewage or water has been getting into this soil: an opening in the hole, or a water test that failed over this line."""
    openings = [f for f in case.line.findings if f.stretch.touches(hole) and _opens(f)]
    failed = [t for t in case.job.water_tests if t.result == "failed" and (case.line.name in t.covers or not t.covers)]
    return bool(openings or failed)


def _opens(finding: Finding) -> bool:
    return finding.kind in LEAKS or bool({"soil seen", "void", "washing"} & set(finding.signs))


def water_table_ft(case: Case, hole: Stretch) -> float | None:
    """Ground water below the ground, ft: the shallowest word of the site and of marks along the hole."""
    marks = [m.depth_ft or m.length() for m in case.profile.marks("water table") if m.stretch.touches(hole) or m.holds]
    known = [w for w in (case.job.site.water_table_ft, *marks) if w is not None]
    return min(known, default=None)


def is_wet(case: Case, hole: Stretch, bottom_ft: float) -> bool:
    """Water stands above the bottom of the dig."""
    water = water_table_ft(case, hole)
    return water is not None and water < bottom_ft


def soil_type(case: Case, hole: Stretch, wet: bool) -> SoilType:
    """Never A and never stable rock over an existing pipe; the loosest soil along the hole; C at a leak, in water, in fill, or when nobody classified the soil."""
    site, leak = case.job.site, leaks_here(case, hole)
    types: list[SoilType] = []
    for word in _soils(case, hole):
        row = case.soil_row(word)
        listed: SoilType = row.osha_type  # type: ignore[assignment]  # the table allows these four words only
        classified = bool(word and site.competent_person) and site.caving_signs is not None
        types.append(
            type_over_a_pipe(listed, classified=classified, leak=leak, water=wet, caving=bool(site.caving_signs))
        )
    return max(types, key=LOOSER.index)


LOOSER: tuple[SoilType, ...] = ("rock", "A", "B", "C")
"""Each falls in sooner than the one before: where the soil changes along a dig the loosest counts."""


def _soils(case: Case, hole: Stretch) -> tuple[str | None, ...]:
    """Every soil noted along the hole; the house's where none was."""
    stations = [hole.from_ft, hole.middle_ft, hole.to_ft]
    stations += [m.stretch.from_ft for m in case.profile.marks("soil") if m.stretch.touches(hole)]
    return tuple(dict.fromkeys(case.profile.soil(at) or case.job.house.soil for at in stations))


def is_rock(case: Case) -> bool:
    """Whole or broken: the soil's word says so, or its type."""
    return "rock" in (case.soil_word or "").lower() or case.soil.osha_type == "rock"


def ground_facts(case: Case) -> None:
    """The yes/no facts the soil and the site give any dig."""
    facts, site, word = case.paper.facts, case.job.site, (case.soil_word or "").lower()
    if case.soil.soil != case.soil_word:  # nobody named one, or one the tables do not have
        facts.add("soil_unknown")
    if not word:
        case.paper.assume("the soil type is not given; we assume {soil}, type C", soil=case.soil.soil)
    if "hard" in word and "clay" in word:
        facts.add("hard_clay")
    if is_rock(case):
        facts.add("rock")
    if site.roots_in_soil:
        facts.add("roots_in_soil")
    if case.job.house.expansive_soil:
        facts.add("expansive_soil")
    if site.carry_ft is not None and site.carry_ft > case.number("carry_far_ft"):
        facts.add("carry_over_50")
    if site.carry_ft is not None and site.carry_ft > case.number("carry_farther_ft"):
        facts.add("carry_over_100")
        facts.discard("carry_over_50")


def hand_only(case: Case) -> bool:
    """No machine gets there: the notes say so, or the gate is narrower than the machine."""
    site = case.job.site
    return not site.machine or (site.gate_ft is not None and site.gate_ft * 12 < case.number("gate_min_in"))


def surface(case: Case, at_ft: float) -> tuple[str, str]:
    """Zone and what lies on it at a station: ("yard", "lawn") where the notes say yard and nothing more."""
    answer = case.profile.zone(at_ft)
    zone = answer.value or "yard"
    mark = answer.marks[0] if answer.marks else None
    word = surface_word(mark.choice, mark.surface) if mark else ""
    return zone, word or ("lawn" if zone == "yard" else "")


def spans(case: Case, stretch: Stretch) -> tuple[Span, ...]:
    """The stretch cut where the zone changes, each part with its surface; a point has the zone it lies in."""
    if stretch.length_ft <= 0:
        return (Span(stretch, *surface(case, stretch.from_ft)),)
    parts = case.profile.zones(stretch)
    return tuple(Span(part, zone or "yard", surface(case, part.middle_ft)[1]) for part, zone in parts)
