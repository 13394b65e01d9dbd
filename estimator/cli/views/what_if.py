"""Two quotes of one job in, as the file says and with the changes, the difference in every option out."""

from collections.abc import Sequence

from estimator.cli.views.options import all_repairs, price
from estimator.cli.views.screen import Row
from estimator.cli.views.table import table
from estimator.cli.views.words import dollars
from estimator.model.offer import Option, Quote


def rows(as_filed: Quote, changed: Quote, changes: Sequence[str], columns: int) -> list[Row]:
    """One row a way of repair; a way that only one of them offers stands alone."""
    before, after = _by_way(as_filed), _by_way(changed)
    cells = [_cells(way, before.get(way), after.get(way)) for way in dict.fromkeys([*before, *after])]
    head = f"What if {', '.join(changes)} — nothing is saved"
    body = table(("way", "as in the file", "with the change", "moves by"), cells, columns, right=(1, 2, 3))
    return [Row(head, "head"), *(Row(text) for text in body), Row("")]


def _by_way(quote: Quote) -> dict[str, Option]:
    """Options by what they do, since letters may move."""
    return {"; ".join(sorted({f"{r.method} {r.line}" for r in all_repairs(o)})): o for o in quote.options}


def _cells(way: str, before: Option | None, after: Option | None) -> tuple[str, str, str, str]:
    moved = ""
    if before and after:
        difference = after.price.total - before.price.total
        moved = f"{'+' if difference > 0 else '−' if difference < 0 else ''}{dollars(abs(difference), whole=True)}"
    return way, price(before) if before else "not offered", price(after) if after else "not offered", moved
