"""A job in, what comes before anything else where there may be gas, out."""

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.model.gas import first_warnings
from estimator.model.job import Job
from estimator.wording.say import say


def gas_first(job: Job | None, columns: int, language: str) -> list[Row]:
    warnings = first_warnings(job) if job else ()
    said = [Row(text, "bad") for warning in warnings for text in indented(say(warning, language), columns, by=0)]
    return [*said, Row("")] if said else []
