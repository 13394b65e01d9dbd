"""docs/tables.md and docs/table-columns.md: the columns are what the code says, the pictures are there.

After a change of estimator/tables/rows.py renew the columns, from the top folder:

    python -c "from pathlib import Path; from estimator.tables.guide import with_columns as w; p = Path('docs/table-columns.md'); p.write_text(w(p.read_text('utf-8')), 'utf-8')"
"""

import re
from pathlib import Path

import pytest

from estimator.tables.guide import with_columns
from estimator.tables.rows import TABLES

DOCS = Path(__file__).parents[2] / "docs"
GUIDE, COLUMNS = DOCS / "tables.md", DOCS / "table-columns.md"


def test_the_printed_columns_are_those_of_the_code() -> None:
    text = COLUMNS.read_text("utf-8")
    assert with_columns(text) == text


def test_every_table_is_in_the_guide() -> None:
    text = COLUMNS.read_text("utf-8")
    assert all(f"#### {table}:" in text for table in TABLES)


def test_every_picture_of_the_guide_is_there() -> None:
    names = re.findall(r"!\[[^]]+\]\(([^)]+)\)", GUIDE.read_text("utf-8"))
    assert names and all((GUIDE.parent / name).is_file() for name in names)


def test_a_guide_without_its_marks_is_refused() -> None:
    with pytest.raises(ValueError, match="lost the marks"):
        with_columns("# Price tables\n")
