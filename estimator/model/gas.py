"""Somebody smells gas: what comes before anything else, on every screen and paper."""

from estimator.model.job import Job, Sign
from estimator.model.say import Say

GAS_SMELL = "gas-smell"
"""The reading; an [[approval]] that covers it is the gas company's word that the house is safe."""
GAS_FIRST = Say.of(
    "GAS SMELL: leave the house now, touch no switch, light no flame, and call 911 and the gas company from outside. No drain work before they say it is safe."
)
NO_PRICE_IN_GAS = Say.of(
    "Somebody smelled gas in this house. No work is agreed on before the gas company has said in writing that it is safe."
)


FUEL = ("gas", "rotten egg", "mercaptan")
SEWER = ("sewer", "sewage", "septic", "drain", "methane")


def fuel_gas(sign: Sign) -> bool:
    """Somebody smells gas and does not say that it is the sewer's: taken for fuel gas until the gas company says otherwise.

    >>> fuel_gas(Sign(what="gas smell")), fuel_gas(Sign(what="sewer gas")), fuel_gas(Sign(what="smells of sewage"))
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
