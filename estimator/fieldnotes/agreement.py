"""A line in; which of its passes saw the same things, and how far apart they put them, out."""

from estimator.model.line import Line


def agreement(line: Line) -> tuple[tuple[int, ...], float] | None:
    """Which passes saw something an earlier one saw, and by how much at most they differ, ft; None when none did.

    Each difference is taken after a slipped zero was put right. The earlier passes they overlap are counted with them.
    """
    tied = [p for p in line.passes if p.ties]
    if not tied:
        return None
    apart = max(abs(more + p.shift_ft) for p in tied for _, more in p.ties)
    numbers = {p.number for p in tied}
    numbers |= {
        q.number
        for p in tied
        for q in line.passes
        if q.seen and p.seen and q.number < p.number and q.seen.overlaps(p.seen)
    }
    return tuple(sorted(numbers)), apart
