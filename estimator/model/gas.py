"""Somebody smells gas: what comes before anything else, on every screen and paper."""

from estimator.model.judgement import Diagnosis
from estimator.model.say import Say

GAS_SMELL = "gas-smell"
"""The reading; an [[approval]] that covers it is the gas company's word that the house is safe."""
GAS_FIRST = Say.of(
    "GAS SMELL: leave the house now, touch no switch, light no flame, and call 911 and the gas company from outside. No drain work before they say it is safe."
)
NO_PRICE_IN_GAS = Say.of(
    "Somebody smelled gas in this house. No work is agreed on before the gas company has said in writing that it is safe."
)


def gas_smelled(diagnosis: Diagnosis) -> bool:
    """Whether a gas smell was reported that nobody has cleared."""
    return any(e.rule == GAS_SMELL for e in diagnosis.evidence)
