"""docs/commands.md is what the program says of itself today."""

from pathlib import Path

from estimator.cli.page import page

PAGE = Path(__file__).parents[2] / "docs" / "commands.md"


def test_the_page_of_commands_is_fresh():
    assert PAGE.read_text(encoding="utf-8") == page(), "python -m estimator.cli.page > docs/commands.md"


def test_no_line_of_a_help_text_is_wider_than_eighty():
    inside = page().split("```")[1::2]
    assert max(len(line) for text in inside for line in text.splitlines()) <= 80
