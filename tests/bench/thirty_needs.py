"""Houses with up to 30 needs, from the rules to priced options."""

from tests.bench.bench_house import row

HOUSES = ((1, 4), (2, 4), (3, 5), (6, 5))


def thirty_needs() -> list[str]:
    rows = [row(lines, needs) for lines, needs in HOUSES]
    return ["| needs | lines | repairs | allowed  | options | bound % |", "|--:|--:|--:|--:|--:|--:|", *rows]
