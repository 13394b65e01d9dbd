"""Step 1: a job file and its logs come in; a Job goes out, or every problem with its line and column.

`dumpjob.dump_job` writes a job file; it loads tomlkit and is imported where needed.
"""

from typing import TYPE_CHECKING

from estimator.model.on_demand import on_demand

if TYPE_CHECKING:
    from estimator.fieldnotes.limits import LIMITS, Limits
    from estimator.fieldnotes.problems import PROBLEMS
    from estimator.fieldnotes.reading import Reading, read_job

__all__ = ["LIMITS", "PROBLEMS", "Limits", "Reading", "read_job"]
HOMES = {"LIMITS": "limits", "Limits": "limits", "PROBLEMS": "problems", "Reading": "reading", "read_job": "reading"}
__getattr__ = on_demand(__name__, HOMES)
