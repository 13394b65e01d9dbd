"""Every problem is declared once and stands on its page."""

from collections import Counter
from pathlib import Path

from estimator.cli.problem_page import EVERY_PROBLEM, page

PAGE = Path(__file__).parents[2] / "docs" / "problems.md"


def test_the_page_is_fresh() -> None:
    assert PAGE.read_text(encoding="utf-8") == page(), "python -m estimator.cli.problem_page > docs/problems.md"


def test_no_code_is_declared_twice() -> None:
    assert [code for code, n in Counter(kind.code for kind in EVERY_PROBLEM).items() if n > 1] == []


def test_every_problem_says_what_to_write_instead() -> None:
    assert [kind.code for kind in EVERY_PROBLEM if not kind.write.strip()] == []
