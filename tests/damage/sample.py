"""A seed in, damages out: every table, every column and every kind, each at a row drawn afresh."""

import random
from collections.abc import Iterator

from estimator.tables.rows import TABLES
from tests.damage.kinds import Damage, cell_damages, row_damages
from tests.damage.outcome import raw


def damages(seed: int, rows_a_column: int) -> Iterator[Damage]:
    """Every kind of damage to so many rows of every column and of every table, in the order of the tables."""
    chance = random.Random(seed)
    for name in TABLES:
        table = raw().tables[name]
        for column in table.headers:
            for row in chance.sample(range(len(table.rows)), min(rows_a_column, len(table.rows))):
                yield from cell_damages(raw(), name, row, column)
        for row in chance.sample(range(len(table.rows)), min(rows_a_column, len(table.rows))):
            yield from row_damages(raw(), name, row, chance)


def some(seed: int, count: int) -> list[Damage]:
    """So many of them, drawn from all tables and kinds alike."""
    return random.Random(seed).sample(list(damages(seed, 1)), count)
