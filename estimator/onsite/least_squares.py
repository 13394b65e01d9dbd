"""Heights that several imperfect readings ask for at once in; the heights that agree best with all of them, and their errors, out.

Small on purpose: a line has some tens of heights, so the normal equations are solved directly. Checked against SciPy in the tests.
"""

from collections.abc import Sequence
from math import sqrt

from estimator.model.frozen import Frozen


class Equation(Frozen):
    """One reading: the sum of `parts` (unknown's number, factor) is `value`, with standard error `sigma`."""

    parts: tuple[tuple[int, float], ...]
    value: float
    sigma: float


class Solution(Frozen):
    """`values` of the unknowns and the inverse of the normal matrix, of which standard errors come."""

    values: tuple[float, ...]
    inverse: tuple[tuple[float, ...], ...]

    def sigma(self, parts: Sequence[tuple[int, float]]) -> float:
        """Return the standard error of a sum of unknowns."""
        return sqrt(max(sum(a * b * self.inverse[i][j] for i, a in parts for j, b in parts), 0.0))

    def at(self, parts: Sequence[tuple[int, float]]) -> float:
        return sum(self.values[i] * factor for i, factor in parts)

    def misfit(self, equation: Equation) -> float:
        """Return how far a reading lies from what all others say, in standard errors of that difference; 0 where nothing else speaks of it.

        The reading itself is taken out of the answer it is compared with (the studentized residual).
        """
        residual = equation.value - self.at(equation.parts)
        free = equation.sigma**2 - self.sigma(equation.parts) ** 2
        return residual / sqrt(free) if free > 1e-12 else 0.0


def solve(count: int, equations: Sequence[Equation]) -> Solution:
    """Return the weighted least-squares answer. Errors: ValueError where the readings leave an unknown open.

    >>> found = solve(2, [Equation(((0, 1),), 10, 1), Equation(((1, 1), (0, -1)), 2, 1), Equation(((1, 1),), 13, 1)])
    >>> [round(v, 3) for v in found.values]
    [10.333, 12.667]
    """
    matrix = [[0.0] * count for _ in range(count)]
    right = [0.0] * count
    for e in equations:
        weight = 1 / e.sigma**2
        for i, a in e.parts:
            right[i] += weight * a * e.value
            for j, b in e.parts:
                matrix[i][j] += weight * a * b
    inverse = _inverted(matrix)
    values = tuple(sum(a * b for a, b in zip(row, right, strict=True)) for row in inverse)
    return Solution(values, tuple(tuple(row) for row in inverse))


def _inverted(matrix: Sequence[Sequence[float]]) -> list[list[float]]:
    """Return the inverse by Gauss and Jordan with the largest pivot first."""
    size = len(matrix)
    work = [[*row, *(1.0 if i == j else 0.0 for j in range(size))] for i, row in enumerate(matrix)]
    scale = max((abs(v) for row in matrix for v in row), default=0.0)
    for column in range(size):
        pivot = max(range(column, size), key=lambda r: abs(work[r][column]))
        if abs(work[pivot][column]) <= scale * 1e-13:
            raise ValueError("the readings leave a height open")
        work[column], work[pivot] = work[pivot], work[column]
        lead = work[column][column]
        work[column] = [v / lead for v in work[column]]
        for row in range(size):
            if row != column and (factor := work[row][column]):
                work[row] = [a - factor * b for a, b in zip(work[row], work[column], strict=True)]
    return [row[size:] for row in work]
