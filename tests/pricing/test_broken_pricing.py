"""Every problem of pricing has a bad scope in tests/broken/pricing-… and comes out in its exact words.

`scope.txt` holds a takeoff a line (method | quantity value, …), a discount (discount | amount | reason) or an override
(override | item | quantity | reason), or a price by hand (price | amount | reason). `edits.txt` changes the hand-made tables: table | id | column | value, or out.
"""

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.model.problem import CannotGoOn
from estimator.model.wanted import Discount, Override
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.payments import payments_of
from estimator.pricing.problems import PROBLEMS
from estimator.tables.rows import TABLES, PlaceRow, TableRow
from estimator.tables.tables import Tables

BROKEN = Path(__file__).parents[1] / "broken"
MakeTakeoff = Callable[..., Takeoff]


def lines_of(path: Path) -> list[list[str]]:
    text = path.read_text("utf-8") if path.exists() else ""
    return [[word.strip() for word in line.split("|")] for line in text.splitlines()]


def edited(tables: Tables, edits: list[list[str]]) -> Tables:
    rows = dict(tables.rows)
    for table, key, column, *value in edits:
        name = TABLES[table][1][0]
        hit = [row for row in rows[table] if getattr(row, name) == key]
        assert hit, f"no {key} in {table}"
        kept = tuple(row for row in rows[table] if row not in hit)
        rows[table] = kept if column == "out" else (*kept, *(_set(row, column, value[0]) for row in hit))
    return replace(tables, rows=rows)


def _set(row: TableRow, column: str, value: str) -> TableRow:
    return replace(row, **{column: type(getattr(row, column))(value)})


def takeoff_of(words: list[str], make_takeoff: MakeTakeoff) -> Takeoff:
    quantities = (pair.split() for pair in words[1].split(","))
    made = make_takeoff(words[0], **{name: float(value) for name, value in quantities})
    return replace(made, size="") if words[2:] == ["no size"] else made


def printed(scope: list[list[str]], tables: Tables, place: PlaceRow, make_takeoff: MakeTakeoff) -> str:
    kinds = ("discount", "override", "price")
    takeoffs = [takeoff_of(words, make_takeoff) for words in scope if words[0] not in kinds]
    discounts = [Discount(amount=Decimal(w[1]), reason=w[2]) for w in scope if w[0] == "discount"]
    overrides = [Override(item=w[1], quantity=w[2], reason=w[3]) for w in scope if w[0] == "override"]
    overrides += [Override(price=Decimal(w[1]), reason=w[2]) for w in scope if w[0] == "price"]
    with pytest.raises(CannotGoOn) as stopped:
        payments_of(price_scope(takeoffs, tables, place, discounts=discounts, overrides=overrides), tables, place)
    return "\n".join(map(str, stopped.value.problems))


CODES = [kind.code for kind in PROBLEMS if not (BROKEN / kind.code.replace("/", "-") / "case.py").exists()]
"""Those with a `case.py` need a whole job; `tests/broken` runs them."""


@pytest.mark.parametrize("code", CODES)
def test_a_broken_scope_is_named_in_its_exact_words(
    code: str, tables: Tables, place: PlaceRow, make_takeoff: MakeTakeoff
) -> None:
    folder = BROKEN / code.replace("/", "-")
    said = printed(lines_of(folder / "scope.txt"), edited(tables, lines_of(folder / "edits.txt")), place, make_takeoff)
    assert f"({code})" in said
    assert said == (folder / "expected.txt").read_text("utf-8").rstrip("\n")


def test_no_problem_of_pricing_is_declared_twice() -> None:
    assert len({kind.code for kind in PROBLEMS}) == len(PROBLEMS)
    assert all(kind.why for kind in PROBLEMS)
