"""Times of the search and of a general solver (SciPy's HiGHS) on the same random houses, side by side.

Ours counts from plain candidates; the solver's from the finished matrix.

    python tests/bench/bench_search.py
"""

import platform
import statistics
import sys
import time
from collections.abc import Callable
from itertools import islice
from pathlib import Path
from random import Random

from scipy.optimize import milp

_HERE = Path(__file__).resolve()
sys.path[:0] = [str(_HERE.parents[2]), str(_HERE.parents[1] / "scopes")]
import puzzles  # noqa: E402

from estimator.scopes.search import cheapest, in_order  # noqa: E402

SIZES = ((4, 1), (4, 2), (8, 2), (12, 3), (20, 5), (30, 6))
ROUNDS = 5


def seconds(work: Callable[[], object]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def row(needs: int, lines: int) -> str:
    houses = [puzzles.house(Random(seed), lines, needs // lines) for seed in range(ROUNDS)]
    for house in houses:
        found = cheapest(*house).answer
        assert found and found.cost == puzzles.by_general_solver(house)
    ours = [seconds(lambda h=house: cheapest(*h)) for house in houses]
    programs = [puzzles.for_general_solver(house) for house in houses]
    solver = [seconds(lambda p=program: milp(**p)) for program in programs]
    many = [seconds(lambda h=house: list(islice(in_order(*h), 200))) for house in houses]
    count = statistics.median(len(h[1]) for h in houses)
    middle = [f"{statistics.median(times) * 1_000:8.1f}" for times in (ours, solver, many)]
    return f"| {needs:5} | {lines:5} | {count:10.0f} | {middle[0]} | {middle[1]} | {middle[2]} |"


def main() -> None:
    print(f"{platform.machine()}, Python {platform.python_version()}, middle of {ROUNDS} houses, milliseconds")
    print("| needs | lines | candidates | cheapest | HiGHS    | 200 sets |")
    print("|------:|------:|-----------:|---------:|---------:|---------:|")
    for needs, lines in SIZES:
        print(row(needs, lines))


if __name__ == "__main__":
    main()
