"""Each caution stands once, with the letters of the options it is for; nothing is lost."""

from dataclasses import replace
from datetime import date

import pytest

from estimator.cli.price_tables import readable_tables
from estimator.model.offer import Option, Quote
from estimator.model.work import Scope
from estimator.papers.agreement import agreement_sheet
from estimator.papers.care_sheet import care_sheet
from estimator.papers.cautions import AFTER, BEFORE, LIMITS, SAID_BY, cautions, grouped
from estimator.papers.hazards import SAFETY
from estimator.papers.homeowner import homeowner
from estimator.papers.letter import Letter
from estimator.scopes.rules import RULES
from estimator.sheets.book import Sheet
from tests.made_up.quote import example_quote


def texts(sheet: Sheet) -> list[str]:
    return [str(cell.value) for row in sheet.rows for cell in row.cells if isinstance(cell.value, str)]


def said_of(letter: Letter, option: Option) -> list[str]:
    return [text for group in cautions(letter, option) for text in group]


def test_every_id_that_a_caution_is_sorted_by_is_a_rule_or_a_sentence_of_the_tables() -> None:
    tables = readable_tables(date(2026, 11, 18), None)
    known = {rule.id for rule in RULES} | {term.id for term in tables.rows["terms"]}
    named = {*BEFORE, *AFTER, *LIMITS, *SAID_BY, *SAID_BY.values(), *SAFETY}
    assert named <= known, named - known


def test_what_to_do_when_gas_is_smelled_stands_once_whatever_the_firm_s_tables_say() -> None:
    quote = example_quote()
    own = replace(
        quote.options[0].terms[0], id="cau-gas", kind="caution", text_en="Smell gas? Call 911.", text_es="¿Gas?"
    )
    with_own = replace(quote, options=tuple(replace(o, terms=(*o.terms, own)) for o in quote.options))
    said = [[t for t in texts(care_sheet(Letter(q, "en_US"))) if "gas" in t and "911" in t] for q in (quote, with_own)]
    assert [len(lines) for lines in said] == [1, 1]


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_every_caution_of_every_option_stands_once_on_the_care_tab_and_nowhere_else(language: str) -> None:
    quote = example_quote()
    letter, book = Letter(quote, language), homeowner(quote, language)
    care = texts(care_sheet(letter))
    elsewhere = [
        t for sheet in book.sheets if sheet.name != letter.speak("Before, during, after") for t in texts(sheet)
    ]
    for option in quote.options:
        assert said_of(letter, option)
        for text in said_of(letter, option):
            assert sum(t.endswith(text) for t in care) == 1, text
            assert not [t for t in elsewhere if text in t], text


def test_what_only_some_options_have_names_them() -> None:
    quote = example_quote()
    bare = replace(quote.options[0], letter="C", cautions=(), terms=(), scope=Scope(repairs=(), needs=()), takeoffs=())
    letter = Letter(replace(quote, options=(quote.options[0], replace(quote.options[0], letter="B"), bare)), "en_US")
    few = [text for group in grouped(letter) for text in group[""]]
    under = [f"{those}: {text}" for group in grouped(letter) for those in group if those for text in group[those]]
    assert sorted(few + under) == sorted(f"A, B: {text}" for text in said_of(letter, quote.options[0]))


def test_the_notices_of_the_place_and_of_the_methods_stand_once_on_what_is_signed() -> None:
    quote: Quote = example_quote()
    notice = replace(quote.options[0].terms[0], kind="notice", text_en="The lining may smell of resin", text_es="Olor")
    with_notice = replace(quote.options[0], terms=(*quote.options[0].terms, notice))
    letter = Letter(replace(quote, options=(with_notice, quote.options[1])), "en_US")
    page = texts(agreement_sheet(letter))
    for option in letter.quote.options:
        for said in letter.terms((*option.terms, *letter.quote.notices), "notice"):
            assert sum(text.count(said) for text in page) == 1, said
    assert any("Before, during, after" in text for text in page)
