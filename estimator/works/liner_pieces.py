"""A stretch to line in short pieces in; the stock lengths that cover it, each overlapping the next, out."""

from collections.abc import Sequence

from estimator.works.case import Case
from estimator.works.rounding import up


def stock_length(length_ft: float, stock_ft: Sequence[float], overlap_ft: float = 0.0) -> tuple[float, float]:
    """How many pieces of which stock length cover the stretch: the shortest that does, else several of the longest.

    Each piece after the first covers its length less the overlap on the one before.

    >>> stock_length(2.5, (2, 3, 4, 6)), stock_length(4.0, (2, 3, 4, 6)), stock_length(6.5, (2, 3, 4, 6))
    ((1.0, 3), (1.0, 4), (2.0, 6))
    >>> stock_length(8.0, (4,)), stock_length(8.0, (4,), 0.5)
    ((2.0, 4), (3.0, 4))
    """
    enough = [s for s in sorted(stock_ft) if s >= length_ft - 1e-9]
    if enough:
        return 1.0, enough[0]
    longest = max(stock_ft)
    return 1.0 + up((length_ft - longest) / max(longest - overlap_ft, 0.01)), longest


def pieces(case: Case) -> tuple[float, ...]:
    """The pieces over the repair's stretch, ft each."""
    count, long = stock_length(
        case.stretch.length_ft, case.numbers("sectional_stock_ft"), case.number("sectional_overlap_ft")
    )
    return (long,) * int(count)
