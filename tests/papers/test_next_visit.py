"""What the next visit settles: the homeowner reads it in his own words, the office as the visit is to be made."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

import estimator.diagnosis.questions
from estimator.diagnosis.camera import DIG_TO_SEE
from estimator.diagnosis.diagnose import READINGS
from estimator.model.judgement import Diagnosis, Question
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.papers.budget_letter import budget_letter
from estimator.papers.next_visit import FOR_THE_FIRM, SETTLED, for_the_homeowner, for_the_office
from estimator.papers.office_front import front
from estimator.sheets.book import Sheet
from estimator.wording.say import say
from tests.made_up.quote import example_quote

COMPETENT = next(asked for asked in FOR_THE_FIRM if "competent_person" in asked)
AGAIN = "Run water, then film again with the flow stopped."
QUESTIONS = (
    Question(about=Say.of(COMPETENT)),
    Question(about=Say.of(AGAIN), line="main", stretch=Stretch(8.0, 12.0)),
    Question(about=Say.of(AGAIN), line="yard", stretch=Stretch(30.0, 30.0), not_fixed=Say.of("We look again first.")),
)


def written_questions() -> set[str]:
    """Every sentence that the diagnosis may ask, read off its source: `Question(about=...)`, and readings that ask."""
    source = Path(estimator.diagnosis.questions.__file__).read_text(encoding="utf-8")
    asked = set(re.findall(r'(?:about=|_LOCATE\w* = )Say\.of\(\s*"((?:[^"\\]|\\.)*)"', source))
    return asked | {r.confirm.text for r in READINGS if r.asks and r.confirm is not None} | {DIG_TO_SEE.text}


def test_every_question_has_its_words_for_the_homeowner_or_is_the_firms_own() -> None:
    assert len(written_questions()) > 20
    assert written_questions() == {*SETTLED, *FOR_THE_FIRM}


def test_a_question_stands_once_with_the_lines_it_is_about() -> None:
    said = [say(what, "en_US") for what in for_the_homeowner(QUESTIONS)]
    assert said == ["main line and yard line: the depth of the standing water."]


def test_the_office_reads_every_question_as_the_visit_is_made() -> None:
    assert [str(what) for what in for_the_office(QUESTIONS)] == [
        COMPETENT,
        f"main line, 8 ft to 12 ft: {AGAIN}",
        f"yard line, at 30 ft: {AGAIN}",
    ]


def text(sheet: Sheet) -> str:
    return "\n".join(str(cell.value) for row in sheet.rows for cell in row.cells)


@pytest.mark.parametrize(
    ("language", "once", "never"),
    [
        ("en_US", "Main line and yard line: the depth of the standing water", ("[site]", "flow stopped")),
        ("es_US", "la profundidad del agua estancada", ("[site]", "competent_person", "vuelva a filmar")),
    ],
)
def test_the_budget_letter_talks_to_the_homeowner(language: str, once: str, never: tuple[str, ...]) -> None:
    quote = replace(example_quote(), diagnosis=Diagnosis(needs=(), questions=QUESTIONS))
    loose = replace(quote.options[0], fixed=False, not_fixed_because=(Say.of("We look again first."),))
    shown = text(budget_letter(replace(quote, options=(loose,)), language).sheets[0])
    assert shown.count(once) == 1
    assert not [word for word in never if word in shown]


def test_what_is_for_the_firm_stands_on_the_office_s_sheet() -> None:
    shown = text(front(replace(example_quote(), diagnosis=Diagnosis(needs=(), questions=QUESTIONS))))
    assert "competent_person" in shown and "yard line, at 30 ft" in shown
