"""The guide to field notes keeps its promises: its words are the program's, its examples read without a word of complaint."""

import re
import tomllib
from pathlib import Path

import pytest
from fieldnote_texts import codes, reading

from estimator.fieldnotes import job_page
from estimator.fieldnotes.questions import SECTIONS
from estimator.fieldnotes.words import WORDS, Word
from estimator.fieldnotes.words_page import example, page
from estimator.model.line import Line

GUIDE = (Path(__file__).parents[2] / "docs" / "field-notes.md").read_text("utf-8")
JOB_GUIDE = (Path(__file__).parents[2] / "docs" / "job-file.md").read_text("utf-8")
EVERYTHING = tomllib.loads((Path(__file__).parent / "everything.toml").read_text("utf-8"))
START = "pass front cleanout to street, riser 2 ft\n 2 yard lawn\n"


def test_the_words_in_the_guide_are_printed_from_the_program() -> None:
    assert page(GUIDE) == GUIDE


def test_the_keys_in_the_guide_are_printed_from_their_declarations() -> None:
    assert job_page.page(JOB_GUIDE, EVERYTHING) == JOB_GUIDE


def test_every_question_writes_a_key_that_is_declared_and_every_key_has_a_meaning_once() -> None:
    keys = {f"{table}.{key}" for table, key, _ in job_page.every_key()}
    asked = {f"{section.table}.{question.key}" for section in SECTIONS for question in section.questions}
    assert asked <= keys
    assert keys == asked | job_page.NOT_ASKED.keys()
    assert not asked & job_page.NOT_ASKED.keys()


TYPED = re.findall(
    r"^\| `(.*?)` \| `(.*?)` \|$", GUIDE.partition("## Ten examples")[2].partition("## Words")[0], re.MULTILINE
)


def test_there_are_ten_examples() -> None:
    assert len(TYPED) == 10


@pytest.mark.parametrize(("typed", "understood"), TYPED)
def test_what_the_guide_says_a_line_means_it_means(typed: str, understood: str) -> None:
    typed_so, written_so = (reading(START + line + "\n") for line in (typed, understood))
    assert typed_so.job is not None and written_so.job is not None
    assert [p for p in typed_so.problems if p.code == "log/asked"] == []
    assert _said(typed_so.job.lines[0]) == _said(written_so.job.lines[0])


def _said(line: Line) -> tuple[object, ...]:
    findings = [(f.kind, f.stretch, f.size_in, f.percent, f.grade, f.clock, f.signs) for f in line.findings]
    marks = [(m.word, m.origin.reading_ft, m.size_in, m.name) for m in line.marks]
    return findings, marks


@pytest.mark.parametrize("word", WORDS, ids=lambda w: w.word)
def test_the_example_of_every_word_is_read_as_that_word(word: Word) -> None:
    found = reading(START + f"12 {example(word)}\n")
    assert found.job is not None, "\n".join(map(str, found.problems))
    assert [p for p in found.problems if p.code != "log/zone-gap"] == []
    line = found.job.lines[0]
    assert word.word in {x.word for x in line.marks} | {f.kind for f in line.findings}


def test_the_log_in_the_guide_reads_with_questions_only() -> None:
    (log,) = re.findall(r"```log\n(.*?)```", GUIDE, re.DOTALL)
    assert set(codes(log)) == {"log/no-end", "log/not-seen-going-in"}
    found = reading(log)
    assert found.job is not None
    assert found.job.lines[0].passes[1].shift_ft == pytest.approx(-0.6)


def test_what_is_written_by_hand_is_read_as_the_guide_shows_it() -> None:
    """The block of the job file's guide, put into a job file, is taken key by key."""
    block = JOB_GUIDE.rsplit("```toml\n", 1)[1].split("```")[0]
    found = reading(START + "30 roots 30%\n", more=block)
    assert found.job is not None, "\n".join(map(str, found.problems))
    assert [o.item for o in found.job.overrides] == ["", "tunnel dig"]
    assert [o.do for o in found.job.options] == ["rename"]
    assert found.job.discounts
    assert found.job.approvals
