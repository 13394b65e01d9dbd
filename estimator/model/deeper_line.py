"""A job in; the same job with the pipe of a line deeper than its readings, out."""

from dataclasses import replace

from estimator.model.job import Job
from estimator.model.line import Mark
from estimator.model.remembered import remembered_by

_asked = remembered_by(lambda job, line, by_ft: (id(job), line, by_ft))  # one job for all options that ask for it


@_asked
def deeper(job: Job, line: str, by_ft: float) -> Job:
    """Return the job with every depth on a line so many feet greater."""
    marks = tuple(_moved(m, by_ft) for m in job.line(line).marks)
    lines = tuple(replace(one, marks=marks) if one.name == line else one for one in job.lines)
    return replace(job, lines=lines)


@_asked
def found_at(job: Job, line: str, by_ft: float) -> Job:
    """Return the job as it would be with the pipe of a line uncovered, so many feet deeper than it was read."""
    moved = deeper(job, line, by_ft)
    return replace(moved, lines=tuple(replace(x, depth_found=True) if x.name == line else x for x in moved.lines))


def _moved(mark: Mark, by_ft: float) -> Mark:
    return mark if mark.depth_ft is None else replace(mark, depth_ft=mark.depth_ft + by_ft)
