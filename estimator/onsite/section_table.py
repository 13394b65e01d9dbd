"""A test plan in; the table of its sections, what water each holds and what is known of it, out."""

from collections.abc import Iterable

from estimator.knowledge.hydrostatics import pipe_gal_per_ft
from estimator.model.say import Feet, Inches, Say
from estimator.onsite.sections import Section, label
from estimator.onsite.sheet import Block, Words
from estimator.onsite.test_plan import TestPlan

RISERS_IN = (3.0, 4.0)


def sections_of(plan: TestPlan, several: bool) -> Block:
    heads = (Say.of("section"), Say.of("where"), Say.of("size"), Say.of("gallons"), Say.of("known"))
    return Block(
        heading=Say.of("Line {line}: sections, from the lower end up", line=plan.main)
        if several
        else Say.of("Sections, from the building outlet up"),
        lines=tuple(_risers(plan)),
        heads=heads,
        rows=tuple(_section(s, plan.main) for s in plan.sections),
    )


def _risers(plan: TestPlan) -> Iterable[Say]:
    """Which risers the gallons count, and what one holds that is left out."""
    branches = [s for s in plan.sections if s.branch]
    if any(s.riser_ft is not None for s in branches):
        yield Say.of("Gallons include one riser per branch up to the slab top, where levels give its height.")
    if not plan.outdoors and (not branches or any(s.riser_ft is None for s in branches)):
        yield Say.of(
            "Risers of unknown height are left out of the gallons. One of {sizes} holds about {gallons} gal a foot.",
            sizes=tuple(Inches(size) for size in RISERS_IN),
            gallons=tuple(f"{pipe_gal_per_ft(size):.2f}" for size in RISERS_IN),
        )


def _section(section: Section, main: str) -> tuple[Words, ...]:
    if section.branch and section.line == main:
        where = Say.of("joins at {at}", at=Feet(round(section.stretch.from_ft, 1)))
    elif section.branch:
        where = Say.of("joins line {line} at {at}", line=section.line, at=Feet(round(section.stretch.from_ft, 1)))
    else:
        low, high = Feet(round(section.stretch.from_ft, 1)), Feet(round(section.stretch.to_ft, 1))
        where = Say.of("{low} to {high}", low=low, high=high)
        if section.line != main:
            where = Say.of("line {line}, {low} to {high}", line=section.line, low=low, high=high)
    return (
        label(section.name),
        where,
        Say.of("{size}", size=Inches(section.size_in)),
        f"{section.gallons + section.riser_gal:.1f}",
        _known(section),
    )


def _known(section: Section) -> Say:
    if section.known == "tight":
        return Say.of("passed by itself")
    if section.known == "leaks":
        return Say.of("failed a test")
    if section.repair:
        return Say.of("replaced anyway")
    return Say.of("openings seen: {count}", count=section.seen) if section.seen else Say.of("not tested")
