"""What rows may ask for in, the page docs/quantities.md out: `python -m estimator.cli.quantities_page` prints it."""

from estimator.takeoff.quantities import FACTS, QUANTITIES

HEAD = """# What a work item or a recipe may ask for

Printed from the program by `python -m estimator.cli.quantities_page > docs/quantities.md`; a test sees that it is fresh.

A **quantity** says how much: it stands in the column `quantity` of work_items and recipes. Besides these a recipe may ask for
`days.B` or `hours.B`: the days or hours of crew B in the scope. A **fact** is a yes or no: it stands in the column `when`, as it
is or after `not`, several with commas between (all must hold), and in `fact` of factors and contingency. Terms and extras may
also say `place demo`: only where that row of places applies.
"""


def page() -> str:
    """The page: quantities with their unit, then facts."""
    quantities = [f"| `{name}` | {unit} | {_plain(text)} |" for name, (unit, text) in QUANTITIES.items()]
    facts = [f"| `{name}` | {_plain(text)} |" for name, text in FACTS.items()]
    head = ["## Quantities\n", "| quantity | unit | what it is |", "|---|---|---|"]
    lines = [HEAD, *head, *quantities, "", "## Facts\n", "| fact | it holds when |", "|---|---|", *facts]
    return "\n".join(lines) + "\n"


def _plain(text: str) -> str:
    return text.replace("|", "/")


if __name__ == "__main__":
    print(page(), end="")
