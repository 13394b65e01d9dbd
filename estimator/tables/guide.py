"""Nothing in, the columns of every table out as text for docs/table-columns.md."""

from estimator.tables.columns import Column, columns
from estimator.tables.table_owners import OWNERS, TITLES

BEGIN = "<!-- columns: printed from estimator/tables/rows.py and rows_for_paper.py; tests/tables/test_guide.py says how to renew them -->"
END = "<!-- end of the printed part -->"

WORDS = {
    "text": "text",
    "words": "words, commas between",
    "number": "number",
    "dollars": "number",
    "whole": "whole number",
    "yes/no": "yes or no",
    "day": "day",
}


def columns_guide() -> str:
    """A heading for each table, its columns as a list; what every table has comes once, at the end."""
    parts = []
    for keeper, title in TITLES.items():
        parts.append(f"### {title}")
        for name, (who, what) in OWNERS.items():
            if who == keeper:
                own = "\n".join(_line(c) for c in columns(name) if not c.kept)
                parts.append(
                    f"#### {name}: {what}\n\n| column | holds | empty? | what it means |\n|---|---|---|---|\n{own}"
                )
    kept = "\n".join(_line(c) for c in columns("roles") if c.kept)
    parts.append(f"### In every table\n\n| column | holds | empty? | what it means |\n|---|---|---|---|\n{kept}")
    return "\n\n".join(parts)


def _line(column: Column) -> str:
    told = [column.note.replace("|", "/")] if column.note else []
    if column.refers:
        told.append(f"from {column.refers}")
    if column.choices:
        told.append("one of: " + ", ".join(c for c in column.choices if c))
    blank = "no" if not column.empty else "yes" if column.blank is None else f"means {column.blank}"
    return f"| {column.header} | {'dollars' if column.money else WORDS[column.kind]} | {blank} | {'; '.join(told)} |"


def with_columns(text: str) -> str:
    """A guide with its printed part made anew. Errors: ValueError where the two marks are not in the text."""
    before, _, rest = text.partition(BEGIN)
    _, mark, after = rest.partition(END)
    if not mark:
        raise ValueError("the guide has lost the marks around its printed part")
    return f"{before}{BEGIN}\n\n{columns_guide()}\n\n{END}{after}"
