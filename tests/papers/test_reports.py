"""The reports say the verdict first, the day, the risers, what ran short; what was not seen for certain has not failed."""

from dataclasses import replace
from datetime import date

import pytest

from estimator.diagnosis.tests_read import read_test
from estimator.model.job import WaterTest
from estimator.model.offer import Quote
from estimator.papers.insurer_page import insurer_page
from estimator.papers.reports import inspection_report, water_test_report
from estimator.quote import findings
from estimator.sheets.book import Book
from estimator.wording.say import say
from tests.made_up.quote import example_quote
from tests.made_up.stretch import demo_tables

PIXEL = b"\x89PNG\r\n\x1a\n" + b"\x00\x00\x00\rIHDR\x00\x00\x00\x02\x00\x00\x00\x02\x08\x02\x00\x00\x00"


def texts(book: Book) -> list[str]:
    return [str(c.value) for sheet in book.sheets for row in sheet.rows for c in row.cells if c.value not in ("", None)]


def with_test(**more: object) -> Quote:
    """The example with one water test, read by the program."""
    quote = example_quote()
    given: dict[str, object] = {"section": "under slab", "readings": ((0.0, 0.0), (10.0, 0.5), (20.0, 1.625)), **more}
    test = WaterTest(**given)  # type: ignore[arg-type]
    job = replace(quote.job, water_tests=(test,))
    diagnosis = replace(quote.diagnosis, tests=(read_test(test, job, demo_tables()),))
    return replace(quote, job=job, diagnosis=diagnosis, tests=findings.tests(diagnosis))


@pytest.mark.parametrize(
    ("given", "verdict"),
    [
        ({}, "FAILED. The water dropped 1⅝ in over 20 minutes."),
        ({"readings": ((0.0, 0.0), (20.0, 0.0))}, "PASSED. The water held for 20 minutes."),
        ({"readings": ((0.0, 0.0), (20.0, 0.125)), "result": "passed"}, "while air left the pipe, then held."),
        ({"result": "could not be sealed"}, "INCONCLUSIVE. The existing pipe could not be sealed."),
        ({"readings": (), "result": "failed"}, "FAILED. No level readings."),
        ({"readings": ((0.0, 0.0), (10.0, 0.0))}, "INCONCLUSIVE. The water held for 10 minutes."),
    ],
)
def test_the_verdict_opens_the_report(given: dict[str, object], verdict: str) -> None:
    said = texts(water_test_report(with_test(**given), "en_US"))
    assert any(verdict in text for text in said)


def test_a_day_is_said_or_said_to_be_missing() -> None:
    assert "not given" in texts(water_test_report(with_test(), "en_US"))
    dated = with_test(date=date(2026, 12, 3), when="before lift")
    assert "December 3, 2026, before the foundation lift" in texts(water_test_report(dated, "en_US"))


def test_risers_and_a_short_test_are_told() -> None:
    said = texts(water_test_report(with_test(open_risers_in=(4.0, 2.0), readings=((0.0, 0.0), (10.0, 2.0))), "en_US"))
    assert "2 (4 in, 2 in)" in said
    assert any("Short test, 10 minutes" in text for text in said)


def test_only_what_was_seen_has_failed() -> None:
    quote = example_quote()
    unsure = [f for f in quote.found if f.findings][:1]
    doubted = replace(unsure[0], findings=tuple(replace(x, grade="suspected") for x in unsure[0].findings))
    quote = replace(quote, found=tuple(doubted if f is unsure[0] else f for f in quote.found))
    said = texts(insurer_page(quote, "en_US"))
    failed, possible = said.index("What failed, and where"), said.index("Possible, not confirmed")
    name = say(doubted.text, "en_US")[1:]
    assert not any(name in text for text in said[failed:possible])
    assert any(name in text for text in said[possible:])


def test_the_stills_stand_on_the_reports_with_the_letter_of_what_they_show() -> None:
    quote = example_quote()
    first = next(f for f in quote.found if f.findings)
    shown = replace(first, findings=tuple(replace(x, photo_file="hole.png") for x in first.findings))
    quote = replace(quote, found=tuple(shown if f is first else f for f in quote.found))
    for make in (inspection_report, insurer_page):
        sheet = make(quote, "en_US", {"hole.png": PIXEL}).sheets[0]
        assert [picture.data for picture in sheet.pictures] == [PIXEL]
        assert any(str(c.value).startswith(f"{shown.letter}  ") for row in sheet.rows for c in row.cells)
