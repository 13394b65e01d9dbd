"""What the crew reads of the work: once each, in its own words, no word to the customer, what others do by itself."""

from dataclasses import replace

import pytest

from estimator.model.line import Mark
from estimator.model.stretch import Stretch
from estimator.papers.crew import crew
from estimator.papers.crew_drawing import mark_words
from estimator.papers.crew_limits import LIMITS
from estimator.papers.crew_words import FOR_THE_CREW, crew_words
from estimator.papers.letter import Letter
from estimator.wording.say import say
from tests.made_up.quote import example_quote
from tests.made_up.stretch import demo_tables

LINE = example_quote().options[0].price.lines[0]


def said(text: str, item: str = "other") -> str:
    return crew_words(Letter(example_quote(), "en_US"), replace(LINE, text_en=text, work_item=item))


def test_the_crew_reads_the_whole_text_of_a_firms_own_item() -> None:
    text = "Coming with the crew. Mind the dog; the gate stays shut"
    assert said(text, "our own arrival") == text


def test_the_crew_knows_that_scraping_may_end_the_work() -> None:
    row = next(row for row in demo_tables().work_items if row.item == "descaling")
    text = said(row.text_en, row.item)
    assert "If it cannot be lined: stop, call" in text and "owe" not in text


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_a_task_is_said_in_no_more_than_twenty_words(language: str) -> None:
    """Twelve are meant; a second sentence is allowed one condition."""
    for item, what in FOR_THE_CREW.items():
        assert len(say(what, language).split()) <= 20, item


@pytest.mark.parametrize("word", ["your", "you", "we ", "owe", "price"])
def test_no_work_item_of_the_tables_speaks_to_the_customer(word: str) -> None:
    for row in demo_tables().work_items:
        text = said(row.text_en, row.item).lower()
        assert not text.startswith(word) and f" {word}" not in f"{text} ", row.item


def test_every_item_and_unit_price_with_words_of_its_own_is_in_the_tables() -> None:
    assert set(FOR_THE_CREW) <= {row.item for row in demo_tables().work_items}
    assert set(LIMITS) == {row.code for row in demo_tables().extras}


def test_the_same_work_on_several_pipes_is_one_line_that_names_them() -> None:
    quote = example_quote()
    option = quote.options[0]
    twice = replace(option.price, lines=(*option.price.lines, option.price.lines[0]))
    sheet = crew(replace(quote, options=(replace(option, price=twice),)), letter=option.letter).sheets[1]
    text = crew_words(Letter(quote, "en_US"), option.price.lines[0])
    assert sum(1 for row in sheet.rows for cell in row.cells if cell.value == text) == 1


def test_a_mark_and_its_note_do_not_say_one_word_twice() -> None:
    letter = Letter(example_quote(), "en_US")
    mark = Mark(word="invert", stretch=Stretch(3.1, 3.1), note="read with a stick in the pit")
    assert mark_words(letter, mark) == "invert read with a stick in the pit"
    assert mark_words(letter, replace(mark, note="by stick")) == "invert read by stick"
