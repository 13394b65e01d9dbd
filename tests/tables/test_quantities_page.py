"""docs/quantities.md is what the program knows."""

from pathlib import Path

from estimator.cli.quantities_page import page

PAGE = Path(__file__).parents[2] / "docs" / "quantities.md"


def test_the_page_is_fresh() -> None:
    assert PAGE.read_text(encoding="utf-8") == page(), "python -m estimator.cli.quantities_page > docs/quantities.md"
