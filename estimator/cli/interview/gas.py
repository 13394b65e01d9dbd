"""A job file's data in; whether somebody smells gas in that house and nobody has cleared it, out."""

from estimator.cli.interview.steps import items
from estimator.fieldnotes.questions import Data
from estimator.model.gas import GAS_SMELL, fuel_gas
from estimator.model.job import Sign


def smells_of_gas(data: Data) -> bool:
    """What comes before any question; the answer that tells of it is answered so at once."""
    told = [Sign(what=str(s.get("what", "")), note=str(s.get("note", ""))) for s in items(data, "sign")]
    cleared = any(GAS_SMELL in paper.get("covers", ()) for paper in items(data, "approval"))
    return not cleared and any(fuel_gas(sign) for sign in told)
