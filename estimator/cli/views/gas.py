"""A job in, what comes before anything else where there may be gas, out."""

from estimator.cli.views.layout import Layout
from estimator.model.gas import first_warnings
from estimator.model.job import Job


def write_gas_first(out: Layout, job: Job | None) -> None:
    """The warnings, and a blank row under them; nothing where no gas is suspected."""
    warnings = first_warnings(job) if job else ()
    for warning in warnings:
        out.paragraph(out.say(warning), look="bad")
    if warnings:
        out.line()
