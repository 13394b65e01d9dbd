"""The ten everyday jobs in; docs/price-check.md out. Printed anew by  python -m tests.everyday.page"""

from pathlib import Path

from tests.everyday.all_everyday import TEN, Everyday

PAGE = Path(__file__).resolve().parents[2] / "docs" / "price-check.md"
HEAD = """# Ten everyday jobs and what they cost

Printed by `python -m tests.everyday.page`; a test fails when it is stale or a price leaves its range. The houses are invented, their
notes in `tests/everyday/`; prices are those of the demo tables, permit and cleaning up with them, floor finishes not. *From memory*:
what such a job is charged in the US in 2024–26, no survey. It tells whether the demo tables hang together, not what you must
charge: put your own jobs beside your own tables the same way.

| job | way | range, from memory | program | of it direct cost | crew days |
|---|---|---:|---:|---:|---:|
"""


def _row(one: Everyday) -> str:
    price = one.option().price
    cells = (
        one.what,
        one.method,
        f"${one.low:,}–{one.high:,}",
        f"${price.total:,.0f}",
        f"${price.direct:,.0f}",
        f"{price.days:g}",
    )
    return "| " + " | ".join(cells) + " |\n"


def price_check_page() -> str:
    """The page as it is today."""
    return HEAD + "".join(map(_row, TEN))


if __name__ == "__main__":
    PAGE.write_text(price_check_page(), encoding="utf-8", newline="\n")
