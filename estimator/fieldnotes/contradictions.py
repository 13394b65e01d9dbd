"""A line put together comes in; what in it cannot be true at once, or needs asking, goes out."""

from estimator.fieldnotes.limits import Limits
from estimator.fieldnotes.lines import ReadLine
from estimator.model.problem import Kind, Problem

PROBLEMS: tuple[Kind, ...] = ()


def contradictions(read: ReadLine, limits: Limits) -> list[Problem]:
    return []
