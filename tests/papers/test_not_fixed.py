"""An option that something still has to confirm: said wherever its price stands, and nothing of it to sign."""

from dataclasses import replace

import pytest

from estimator.model.offer import Quote
from estimator.model.say import Say
from estimator.papers.agreement import agreement_sheet
from estimator.papers.cancellation import cancellation_sheets
from estimator.papers.letter import Letter
from estimator.papers.message import LONGEST, message
from estimator.papers.option_sheet import option_sheets
from estimator.sheets.book import Sheet
from estimator.sheets.paging import page_starts
from tests.made_up.quote import example_quote

LANGUAGES = ("en_US", "es_US")
LINE_PT = 30.0  # two printed lines a row, more than any of these takes


def half_fixed() -> Quote:
    quote = example_quote()
    loose, firm = quote.options
    why = Say.of("Roots beyond the dip are suspected, not seen.")
    return replace(quote, options=(replace(loose, fixed=False, not_fixed_because=(why,)), firm))


def text(sheet: Sheet) -> str:
    return "\n".join(str(cell.value) for row in sheet.rows for cell in row.cells)


def test_an_option_without_a_firm_price_has_no_price_on_the_agreement_and_says_why() -> None:
    letter = Letter(half_fixed(), "en_US")
    page = text(agreement_sheet(letter))
    assert "Option A cannot be signed yet. Its page says why." in page
    assert "Roots beyond the dip are suspected, not seen." in text(option_sheets(letter)[0])
    assert "16525" not in page and "16,525" not in page
    assert "9875" in page and "Printed name" in page


@pytest.mark.parametrize(("language", "said"), [("en_US", "Nothing to sign yet"), ("es_US", "Todavía no hay nada que firmar")])  # fmt: skip
def test_where_no_price_is_firm_nothing_can_be_signed_or_paid(language: str, said: str) -> None:
    quote = half_fixed()
    four = tuple(replace(quote.options[0], letter=x) for x in "ABCD")
    letter = Letter(replace(quote, options=four), language)
    page = agreement_sheet(letter)
    assert said in text(page)
    assert letter.speak("Printed name") not in text(page)
    assert cancellation_sheets(letter) == ()
    assert page_starts(page, [row.height_pt or LINE_PT for row in page.rows], 100.0) == ()


@pytest.mark.parametrize("language", LANGUAGES)
def test_only_a_firm_price_has_a_most_and_payments(language: str) -> None:
    letter = Letter(half_fixed(), language)
    loose, firm = map(text, option_sheets(letter))
    most = letter.speak("Not to exceed without a signed change order")
    assert most not in loose and most in firm
    assert letter.speak("This price is not firm yet.") in loose
    assert letter.speak("Estimate, not firm") in loose


def test_the_visit_that_makes_a_price_firm_stands_on_the_page_of_an_option_that_waits_for_it() -> None:
    loose, firm = half_fixed().options
    visit = replace(firm, letter="C")
    waiting = (replace(loose, firm_after="C"), replace(loose, letter="B", firm_after="C"), visit)
    letter = Letter(replace(half_fixed(), options=waiting), "en_US")
    assert [sheet.name for sheet in option_sheets(letter)] == ["Option A", "Option B, C"]
    assert "C  Replace the whole line" in text(option_sheets(letter)[1])
    first = (replace(firm, letter="A"), replace(loose, letter="B", firm_after="A"), replace(firm, letter="C"))
    letter = Letter(replace(half_fixed(), options=first), "en_US")
    assert [sheet.name for sheet in option_sheets(letter)] == ["Option A, B", "Option C"]


def test_the_message_marks_a_price_that_is_not_fixed() -> None:
    assert "A about $16,525, not firm · B $9,875." in message(half_fixed(), "en_US")
    assert "A unos $16,525, no es fijo · B $9,875" in message(half_fixed(), "es_US")


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_message_of_many_options_says_that_not_all_are_fixed(language: str) -> None:
    quote = half_fixed()
    said = message(replace(quote, options=quote.options * 9), language)
    assert len(said) < LONGEST and ("not all firm" in said or "no todos fijos" in said)
