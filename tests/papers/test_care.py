"""What to mind is said once: on the sheet for all options, or on the sheet of the only option it counts for; nothing is lost."""

from dataclasses import replace

import pytest

from estimator.model.offer import Option, Quote
from estimator.model.work import Scope
from estimator.papers.care_sheet import care_sheet
from estimator.papers.cautions import cautions, of_one_alone, of_several
from estimator.papers.example import example_quote
from estimator.papers.homeowner import homeowner
from estimator.papers.letter import Letter
from estimator.sheets.book import Book, Sheet


def texts(sheet: Sheet) -> list[str]:
    return [str(cell.value) for row in sheet.rows for cell in row.cells if isinstance(cell.value, str)]


def sheet_of(book: Book, name: str) -> Sheet:
    return next(sheet for sheet in book.sheets if sheet.name == name)


def said_of(letter: Letter, option: Option) -> list[str]:
    return [text for group in cautions(letter, option) for text in group]


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_every_caution_of_every_option_stands_on_one_sheet_and_on_no_other(language: str) -> None:
    quote = example_quote()
    letter, book = Letter(quote, language), homeowner(quote, language)
    shared = care_sheet(letter)
    for option in quote.options:
        own = sheet_of(book, letter.speak("Option {letter}", letter=option.letter))
        assert said_of(letter, option)
        for text in said_of(letter, option):
            here = [t for t in texts(own) if t.endswith(text)]
            there = [t for t in texts(shared) if t.endswith(text)]
            assert len(here) + len(there) == 1, text


def test_what_only_some_options_have_names_them() -> None:
    quote = example_quote()
    bare = replace(quote.options[0], letter="C", cautions=(), terms=(), scope=Scope(repairs=(), needs=()), takeoffs=())
    letter = Letter(replace(quote, options=(quote.options[0], replace(quote.options[0], letter="B"), bare)), "en_US")
    several = [text for group in of_several(letter) for text in group]
    assert several == [f"A, B: {text}" for text in said_of(letter, quote.options[0])]


def test_with_one_option_all_is_on_the_sheet_for_all() -> None:
    quote = example_quote()
    one = Letter(replace(quote, options=quote.options[:1]), "en_US")
    assert [list(group) for group in of_one_alone(one, one.quote.options[0])] == [[], [], []]
    assert sorted(t for group in of_several(one) for t in group) == sorted(said_of(one, one.quote.options[0]))


def test_the_notices_of_the_place_stay_on_what_is_signed() -> None:
    quote: Quote = example_quote()
    letter, book = Letter(quote, "en_US"), homeowner(quote, "en_US")
    for option in (o for o in quote.options if o.fixed):
        page = texts(sheet_of(book, f"Agreement {option.letter}"))
        for notice in letter.terms((*option.terms, *quote.notices), "notice"):
            assert any(notice in text for text in page), notice
        assert any("“Before, while, after”" in text for text in page)


def test_a_notice_of_some_options_methods_names_them() -> None:
    quote = example_quote()
    notice = replace(quote.options[0].terms[0], kind="notice", text_en="The lining may smell of resin", text_es="Olor")
    one, two = (replace(quote.options[0], letter=by, terms=(*quote.options[0].terms, notice)) for by in "AB")
    three = replace(quote.options[0], letter="C")
    for options, expected in (((one, three), "A: "), ((one, two, three), "A, B: "), ((one, two), "")):
        page = texts(care_sheet(Letter(replace(quote, options=options), "en_US")))
        assert [t for t in page if "smell of resin" in t and t.endswith(f"{expected}The lining may smell of resin")]
        assert sum("smell of resin" in t for t in page) == 1
    of_the_place = replace(quote, options=(one, three), notices=(*quote.notices, notice))
    assert any(
        t.endswith("The lining may smell of resin") and "A:" not in t
        for t in texts(care_sheet(Letter(of_the_place, "en_US")))
    )
