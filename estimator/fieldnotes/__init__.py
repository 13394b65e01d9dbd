"""Step 1: a job file and its logs come in; a Job goes out, or every problem with its line and column.

`dumpjob.dump_job` writes a job file; it loads tomlkit and is imported where needed.
"""

from estimator.fieldnotes.echo import echo, echo_line
from estimator.fieldnotes.limits import LIMITS, Limits
from estimator.fieldnotes.problems import PROBLEMS
from estimator.fieldnotes.reading import Reading, read_job

__all__ = ["LIMITS", "PROBLEMS", "Limits", "Reading", "echo", "echo_line", "read_job"]
