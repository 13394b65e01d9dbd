"""A change to a job file that has no place for it."""

from estimator.cli.interview.document import with_values
from estimator.model.problem import CannotGoOn


def problems(folder):
    try:
        with_values('wishes = "none"\n', ("wishes",), {"recommend": "B"})
    except CannotGoOn as stopped:
        return stopped.problems
    return ()
