"""All published checks in; docs/checks.md out. Printed anew by  python -m tests.published.page"""

from pathlib import Path

from tests.published.all_checks import SUBJECTS
from tests.published.check import Check

HEAD = """# Our figures beside published ones

Printed by `python -m tests.published.page`; a test fails when it is stale. Each row is also a test.

*How known*: **read** in a copy of the source; **read second-hand** on a page that quotes it; **memory**, to be looked up again;
**computed**, plain arithmetic on values beside it. Codes differ by place and edition: what a place asks stands in its row of
the places table, and what the firm decides in its settings; none of these figures is law where you work.
"""
COLUMNS = "| id | what | published | ours | difference | unit | source | how known | note |\n|---|---|---:|---:|---:|---|---|---|---|"


def _number(value: float) -> str:
    return f"{round(value, 4):,g}" if abs(value) < 1e6 else f"{value:,.0f}"


def _row(check: Check) -> str:
    gap = 0.0 if abs(check.difference) < 5e-10 else check.difference
    cells = (
        check.id,
        check.what,
        _number(check.published),
        _number(check.ours()),
        f"{gap:.4f}".rstrip("0").rstrip(".") or "0",
        check.unit,
        check.source,
        check.basis,
        check.note,
    )
    return "| " + " | ".join(cells) + " |"


def checks_page() -> str:
    parts = [HEAD]
    for title, checks in SUBJECTS:
        parts += [f"## {title}\n", COLUMNS, *(_row(c) for c in checks), ""]
    return "\n".join(parts)


if __name__ == "__main__":
    (Path(__file__).resolve().parents[2] / "docs" / "checks.md").write_text(
        checks_page(), encoding="utf-8", newline="\n"
    )
