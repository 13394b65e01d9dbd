"""A job in, what comes before anything else where somebody smelled gas, out."""

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.model.gas import GAS_FIRST, gas_smelled
from estimator.model.job import Job
from estimator.wording.say import say


def gas_first(job: Job | None, columns: int, language: str) -> list[Row]:
    if job is None or not gas_smelled(job):
        return []
    return [*(Row(text, "bad") for text in indented(say(GAS_FIRST, language), columns, by=0)), Row("")]
