"""Random puzzles for the search, a plain enumeration and a general solver to compare with."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from random import Random
from typing import Any

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from estimator.model.stretch import Stretch
from estimator.model.work import Candidate

Puzzle = tuple[tuple[str, ...], list[Candidate], dict[str, int]]

METHODS = ("clean", "sectional", "reline", "spot", "tunnel", "floor", "trench", "burst")


def house(random: Random, lines: int, needs_a_line: int, methods: int = 8, drop: float = 0.2) -> Puzzle:
    """A house: needs along lines; by each method every run of neighbours, padded; mobilizations shared by method."""
    needs: list[str] = []
    candidates: list[Candidate] = []
    shared = {method: random.randrange(0, 90_000, 100) for method in METHODS[:methods]}
    for number in range(lines):
        line = f"line {number}"
        places = sorted(random.sample(range(5, 100), needs_a_line))
        names = [f"{number}-{i}" for i in range(needs_a_line)]
        needs += names
        shared[f"clean {line}"] = random.randrange(0, 40_000, 100)
        for method in METHODS[:methods]:
            for a in range(needs_a_line):
                for b in range(a, needs_a_line):
                    if random.random() < drop or (b > a and method in ("clean", "sectional") and random.random() < 0.7):
                        continue
                    pad = random.choice((0.5, 1.0, 2.0))
                    stretch = Stretch(places[a] - pad, places[b] + 1 + pad)
                    cost = 20_000 + int(stretch.length_ft * random.randrange(1_000, 9_000))
                    keys = {method} | ({f"clean {line}"} if method == "reline" else set())
                    candidates.append(
                        Candidate(
                            id=f"{method} {names[a]} {names[b]}",
                            line=line,
                            stretch=stretch,
                            answers=frozenset(names[a : b + 1]),
                            cost=cost,
                            shared=frozenset(keys),
                            method=method,
                        )
                    )
    return tuple(needs), candidates, shared


def anything(random: Random, needs: int, candidates: int) -> Puzzle:
    """No house at all: holes in cover, needs nobody answers, equal costs, overlaps, charges of nothing."""
    names = tuple(f"n{i}" for i in range(needs))
    keys = {f"k{i}": random.choice((0, 1, 5, 40)) for i in range(4)}
    out = []
    for i in range(candidates):
        start = random.randrange(0, 12)
        out.append(
            Candidate(
                id=f"c{i:02}",
                line=random.choice(("a", "b")),
                stretch=Stretch(start, start + random.randrange(0, 5)),
                answers=frozenset(random.sample(names, random.randrange(0, min(4, needs + 1)))),
                cost=random.choice((0, 1, 5, 5, 10, 10, 20, 33)),
                shared=frozenset(random.sample(sorted(keys), random.randrange(0, 3))),
            )
        )
    return names, out, keys


def apart(random: Random, lines: int, candidates: int) -> Puzzle:
    """Lines with needs of their own that nothing but shared charges joins."""
    keys = {f"k{i}": random.choice((3, 11, 40)) for i in range(3)}
    out = []
    for i in range(candidates):
        line = random.randrange(lines)
        out.append(
            Candidate(
                id=f"c{i:02}",
                line=f"line {line}",
                stretch=Stretch(i, i + 1),
                answers=frozenset(random.sample((f"{line}a", f"{line}b"), random.randrange(1, 3))),
                cost=random.choice((0, 5, 10, 20)),
                shared=frozenset(random.sample(sorted(keys), random.randrange(0, 3))),
            )
        )
    return tuple(f"{line}{n}" for line in range(lines) for n in "ab"), out, keys


def clash(a: Candidate, b: Candidate) -> bool:
    apart = a.stretch.to_ft <= b.stretch.from_ft or b.stretch.to_ft <= a.stretch.from_ft
    return a.line == b.line and not apart


def total(chosen: Sequence[Candidate], shared: Mapping[str, int]) -> int:
    return sum(c.cost for c in chosen) + sum(shared[k] for k in {k for c in chosen for k in c.shared})


def every_tight_set(puzzle: Puzzle) -> Iterator[tuple[int, int, tuple[str, ...]]]:
    """By plain enumeration: (sum, how many, ids) of every set that answers what can be answered, nothing to spare."""
    needs, candidates, shared = puzzle
    reachable = {n for n in needs if any(n in c.answers for c in candidates)}

    def answers_all(some: Sequence[Candidate]) -> bool:
        return reachable <= {n for c in some for n in c.answers}

    for size in range(len(reachable) + 1):
        for some in combinations(sorted(candidates, key=lambda c: c.id), size):
            if not answers_all(some) or any(clash(a, b) for a, b in combinations(some, 2)):
                continue
            if not any(answers_all([c for c in some if c is not spare]) for spare in some):
                yield total(some, shared), size, tuple(c.id for c in some)


def for_general_solver(puzzle: Puzzle) -> dict[str, Any]:
    """The puzzle as a mixed-integer program: x a candidate is taken, y a charge is paid."""
    needs, candidates, shared = puzzle
    keys = sorted(shared)
    wide = len(candidates) + len(keys)
    rows: list[tuple[dict[int, float], float, float]] = []
    for need in needs:
        who = {i: 1.0 for i, c in enumerate(candidates) if need in c.answers}
        if who:
            rows.append((who, 1, np.inf))
    for i, c in enumerate(candidates):
        rows += [({i: 1.0, len(candidates) + keys.index(k): -1.0}, -np.inf, 0) for k in c.shared]
        rows += [({i: 1.0, j: 1.0}, -np.inf, 1) for j in range(i) if clash(c, candidates[j])]
    rows = rows or [({}, -np.inf, 0)]
    matrix = np.zeros((len(rows), wide))
    for r, (entries, _, _) in enumerate(rows):
        for column, value in entries.items():
            matrix[r, column] = value
    return {
        "c": np.array([c.cost for c in candidates] + [shared[k] for k in keys], dtype=float),
        "constraints": LinearConstraint(matrix, [low for _, low, _ in rows], [high for _, _, high in rows]),
        "integrality": np.ones(wide),
        "bounds": Bounds(0, 1),
        "options": {"mip_rel_gap": 0},
    }


def by_general_solver(puzzle: Puzzle) -> int | None:
    """The least sum as SciPy's HiGHS finds it; None when nothing fits together."""
    found = milp(**for_general_solver(puzzle))
    return None if found.x is None else round(found.fun)
