"""Step 1: a job file and its logs come in; a Job goes out, or every problem with its line and column.

`edit.set_value` changes a job file and `dumpjob.dump_job` writes one; they load tomlkit and are imported where needed.
"""

from estimator.fieldnotes.echo import echo, echo_line
from estimator.fieldnotes.limits import LIMITS, Limits
from estimator.fieldnotes.problems import PROBLEMS
from estimator.fieldnotes.reading import Reading, read_job

__all__ = ["LIMITS", "PROBLEMS", "Limits", "Reading", "echo", "echo_line", "read_job"]
