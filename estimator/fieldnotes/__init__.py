"""Step 1: a job file and its logs come in; a Job goes out, or every problem with its line and column."""

from estimator.fieldnotes.limits import LIMITS, Limits
from estimator.fieldnotes.problems import PROBLEMS
from estimator.fieldnotes.reading import Reading, read_job

__all__ = ["LIMITS", "PROBLEMS", "Limits", "Reading", "read_job"]
