"""The names recipes may ask for in; docs/quantities.md out."""

from estimator.takeoff.quantities import FACTS, QUANTITIES

HEAD = """# Quantities and facts

Printed from `estimator/takeoff/quantities.py` by `python -m tests.takeoff.pages`; a test fails when it is stale.

A work item or a recipe row names one of these in its column `quantity`; one that a repair does not have counts as nothing,
and its line stays off the quote. The column `when` names facts, each optionally after `not`; all of them must hold.
Every quantity keeps its formula, the numbers put into it and the source of the formula: `estimator explain` prints them.
"""


def quantities_page() -> str:
    """
    >>> quantities_page().splitlines()[0]
    '# Quantities and facts'
    """
    amounts = [f"| `{name}` | {unit} | {meaning} |" for name, (unit, meaning) in QUANTITIES.items()]
    facts = [f"| `{name}` | {meaning} |" for name, meaning in FACTS.items()]
    return "\n".join(
        [
            HEAD,
            "## Quantities\n",
            "| name | unit | what it is |",
            "|---|---|---|",
            *amounts,
            "\n## Facts\n",
            "| name | it holds when |",
            "|---|---|",
            *facts,
            "",
        ]
    )
