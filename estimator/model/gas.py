"""Somebody smells gas, or a gas line runs through, over or near a drain: what comes before anything else."""

from collections.abc import Iterator

from estimator.model.crossing import near_drain
from estimator.model.job import Job, Sign
from estimator.model.line import Line
from estimator.model.say import Feet, Say

GAS_SMELL = "gas-smell"
"""The reading; an [[approval]] that covers it is the gas company's word that the house is safe."""
GAS_FIRST = Say.of(
    "GAS SMELL: leave the house now, touch no switch, light no flame, and call 911 and the gas company from outside. No drain work before they say it is safe."
)
UTILITY_FIRST = Say.of(
    "STOP: another line runs through this drain and may be gas. Leave the tool where it is, no flame, no switch. People out; call 911 and the gas company from outside."
)
NO_PRICE_IN_GAS = Say.of(
    "Somebody smelled gas in this house. No work is agreed on before the gas company has said in writing that it is safe."
)


UTILITY_IN_THE_BORE = "utility-in-the-bore"
"""The rule; an [[approval]] that covers it is its owner's word that the line is cleared."""

FUEL = ("gas", "fuel", "propane", "rotten egg", "mercaptan")
SEWER = ("sewer", "sewage", "septic", "drain", "methane")


def fuel_gas(sign: Sign) -> bool:
    """Somebody smells gas and does not say that it is the sewer's: taken for fuel gas until the gas company says otherwise.

    >>> fuel_gas(Sign(what="fuel smell")), fuel_gas(Sign(what="sewer gas")), fuel_gas(Sign(what="smells of sewage"))
    (True, False, False)
    """
    text = f" {sign.what} {sign.note}".lower()
    return any(word in text for word in FUEL) and not any(word in text for word in SEWER)


def gas_signs(job: Job) -> tuple[Sign, ...]:
    """Return the reports of a gas smell, until somebody writes down that the gas company has cleared the house."""
    if any(GAS_SMELL in paper.covers for paper in job.approvals):
        return ()
    return tuple(s for s in job.signs if fuel_gas(s))


def gas_smelled(job: Job) -> bool:
    """Whether a gas smell was reported that nobody has cleared."""
    return bool(gas_signs(job))


def utility_in_a_drain(job: Job) -> bool:
    """Return whether a utility was found in a drain and its owner has not cleared it."""
    cleared = any(UTILITY_IN_THE_BORE in paper.covers for paper in job.approvals)
    return not cleared and any(found.kind == "utility" for line in job.lines for found in line.findings)


def first_warnings(job: Job) -> tuple[Say, ...]:
    """Return what anybody reads before anything else: nothing, or what to do about gas."""
    smelled = (GAS_FIRST,) if gas_smelled(job) else ()
    inside = (UTILITY_FIRST,) if utility_in_a_drain(job) else ()
    return (*smelled, *inside, *(near for line in job.lines for near in _gas_lines(line)))


def _gas_lines(line: Line) -> Iterator[Say]:
    """Each gas line noted over, under or beside this drain."""
    for mark in line.marks:
        if mark.word == "crossing" and "gas" in (mark.choice or ""):
            yield Say.of(
                "GAS LINE at the drain ({line}), {place}: {near}. Locate it and expose it by hand before anybody digs or cuts there. At a smell of gas leave, then call 911 and the gas company.",
                line=line.name, place=_counted(line, mark.stretch.from_ft), near=near_drain(mark),
            )  # fmt: skip


def _counted(line: Line, at_ft: float) -> Say:
    if line.zero != "slab edge":
        return Say.of("{far} along the line", far=Feet(at_ft))
    return (
        Say.of("{far} inside the outside wall", far=Feet(at_ft))
        if at_ft >= 0
        else Say.of("{far} outside the house wall", far=Feet(-at_ft))
    )
