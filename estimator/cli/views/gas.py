"""A diagnosis in, what comes before anything else where somebody smelled gas, out."""

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.model.gas import GAS_FIRST, gas_smelled
from estimator.model.judgement import Diagnosis
from estimator.wording.say import say


def gas_first(diagnosis: Diagnosis, columns: int, language: str) -> list[Row]:
    if not gas_smelled(diagnosis):
        return []
    return [*(Row(text, "bad") for text in indented(say(GAS_FIRST, language), columns, by=0)), Row("")]
