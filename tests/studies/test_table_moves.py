"""What new tables do to jobs: differences to the cent, and one job that cannot be priced hides no other."""

from decimal import Decimal

from estimator.model.problem import CannotGoOn, Place, error
from estimator.studies.table_moves import OptionMove, table_moves
from estimator.tables.tables import Tables

D = Decimal
BROKEN = error("test/broken", "the notes say nothing.", "Write some.", "for this test")


def way(job: str, tables: Tables) -> dict[str, Decimal]:
    if job == "broken":
        raise CannotGoOn(BROKEN(Place(file=job)), BROKEN(Place(file=job)))
    old = tables.fingerprint == "old"
    return {"dig": D("4200.00"), "line": D("9000.00")} if old else {"dig": D("4350.25"), "tunnel": D("16525.00")}


def test_each_option_moves_by_the_difference_of_its_totals(tables: Tables) -> None:
    from dataclasses import replace

    old, new = replace(tables, fingerprint="old"), replace(tables, fingerprint="new")
    first, broken, last = table_moves(["one", "broken", "two"], old, new, way)
    assert first.options == last.options
    assert first.options == (
        OptionMove(option="dig", old=D("4200.00"), new=D("4350.25")),
        OptionMove(option="line", old=D("9000.00"), new=None),
        OptionMove(option="tunnel", old=None, new=D("16525.00")),
    )
    assert [(o.difference, o.percent) for o in first.options] == [(D("150.25"), D("3.6")), (None, None), (None, None)]
    assert (broken.options, str(broken.wrong)) == ((), "the notes say nothing. (and 1 more)")
