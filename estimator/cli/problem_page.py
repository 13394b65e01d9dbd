"""Every problem the program can name in, the page docs/problems.md out: `python -m estimator.cli.problem_page` prints it."""

from itertools import groupby

from estimator import pipeline
from estimator.cli import problems as cli
from estimator.fieldnotes import problems as fieldnotes
from estimator.model.problem import Kind
from estimator.pricing import problems as pricing
from estimator.quote import refuse as quote
from estimator.records import problems as records
from estimator.records.afterwards import problems as afterwards
from estimator.scopes import wanted as scopes
from estimator.sheets import problems as sheets
from estimator.tables import problems as tables
from estimator.works import problems as works

EVERY_PROBLEM: tuple[Kind, ...] = (
    *fieldnotes.PROBLEMS,
    *tables.PROBLEMS,
    *sheets.PROBLEMS,
    *works.PROBLEMS,
    *scopes.PROBLEMS,
    *pricing.PROBLEMS,
    *quote.PROBLEMS,
    *pipeline.PROBLEMS,
    *records.PROBLEMS,
    *afterwards.PROBLEMS,
    *cli.PROBLEMS,
)
HEAD = """# What the program may tell you to mend

Printed from the program by `python -m estimator.cli.problem_page > docs/problems.md`; a test sees that it is fresh.
An **error** stops the price, a **warning** does not, a **question** goes on the list for the return visit. What stands in
braces is filled in with your own words. Each code has a bad input of its own in `tests/broken/`.
"""


def page() -> str:
    """The page, one table for each kind of input."""
    out = [HEAD]
    ordered = sorted(EVERY_PROBLEM, key=_family)
    for family, kinds in groupby(ordered, key=_family):
        out += [f"## {family}\n", "| code | level | what is wrong | what to write instead |", "|---|---|---|---|"]
        out += [_row(kind) for kind in kinds]
        out.append("")
    return "\n".join(out)


def _family(kind: Kind) -> str:
    return kind.code.partition("/")[0]


def _row(kind: Kind) -> str:
    cells = (f"`{kind.code}`", kind.level, kind.wrong, kind.write)
    return "| " + " | ".join(str(cell).replace("|", "\\|").replace("\n", " ") for cell in cells) + " |"


if __name__ == "__main__":
    print(page(), end="")
