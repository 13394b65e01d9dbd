"""The ten everyday jobs in; docs/price-check.md out. Printed anew by  python -m tests.everyday.page"""

from pathlib import Path

from tests.everyday.all_everyday import TEN, Everyday
from tests.everyday.depth_curve import table

PAGE = Path(__file__).resolve().parents[2] / "docs" / "price-check.md"
HEAD = """# Ten everyday jobs and what they cost

Printed by `python -m tests.everyday.page`; a test fails when it is stale or a price leaves its range. The houses are invented, their
notes in `tests/everyday/`; prices are those of the demo tables, permit and cleaning up with them, floor finishes not. *From memory*:
what such a job is charged in the US in 2024–26, no survey. It tells whether the demo tables hang together, not what you must
charge: put your own jobs beside your own tables the same way.

| job | way | range, from memory | program | of it direct cost | crew days |
|---|---|---:|---:|---:|---:|
"""


CURVES = """
## A deeper pipe

The 60 ft of clay of the house above, lying deeper by the quarter foot (middle of the pipe below the lawn). A price stands still while
the crews' half days and the truck still hold it, and steps where they do not. The one step that is no half day is the one at which
people may not stand between bare sides any more: pipe, bedding and the locator's tolerance (half a foot) make 5 ft of 4.0 ft. In soil
over an old pipe, never better than type B, boxes take less earth here than sloping.
"""
CURVE_HEAD = """### {way}

| depth, ft | price | more | yards dug | crew days | why |
|---:|---:|---:|---:|---:|---|
"""
WAYS = (("By trench", "trench"), ("By bursting, its two pits", "burst"))


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
    curves = "".join(f"\n{CURVE_HEAD.format(way=way)}{table(method)}" for way, method in WAYS)
    return HEAD + "".join(map(_row, TEN)) + CURVES + curves


if __name__ == "__main__":
    PAGE.write_text(price_check_page(), encoding="utf-8", newline="\n")
