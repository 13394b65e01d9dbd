"""A change to a job file that has no place for it."""

from estimator.fieldnotes.edit import set_value
from estimator.model.problem import CannotGoOn


def problems(folder):
    try:
        set_value('wishes = "none"\n', "wishes.recommend", "B")
    except CannotGoOn as stopped:
        return stopped.problems
    return ()
