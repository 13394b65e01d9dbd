"""A house that is to be lifted: the order of things, what the price and the warranty hold for, tests before and after."""

from dataclasses import replace

import pytest

from estimator.model.job import Foundation, WaterTest
from estimator.model.offer import Option, Quote
from estimator.model.say import Say
from estimator.model.work import Quantity
from estimator.papers.agreement import agreement_sheet
from estimator.papers.care_sheet import care_sheet
from estimator.papers.letter import Letter
from estimator.papers.lift import days_apart
from estimator.papers.reports import water_test_report
from estimator.sheets.book import Sheet
from tests.made_up.quote import example_quote

STEPS = (
    Say.of("Water-test all drains before the lift, as a job of its own."),
    Say.of("The foundation company lifts the house."),
)


def lifted(work: str = "planned") -> Quote:
    quote = example_quote()
    test = WaterTest(section="under slab", covers=("main",))
    job = replace(quote.job, foundation=Foundation(work=work), water_tests=(test,))  # type: ignore[arg-type]
    compared = (Say.of("The foundation company lifts the house."),)
    return replace(quote, job=job, lift_steps=STEPS, tests_compared=compared, tests=(Say.of("a crack"),))


def comes_back(option: Option) -> Option:
    """The option with a second visit after the lift in it."""
    visit = replace(option.takeoffs[0], quantities=(Quantity(name="tests_after_lift", value=1.0, unit="each"),))
    return replace(option, takeoffs=(*option.takeoffs, visit))


def words(sheet: Sheet) -> str:
    return "\n".join(str(cell.value) for row in sheet.rows for cell in row.cells if isinstance(cell.value, str))


@pytest.mark.parametrize(
    ("language", "lift"),
    [
        ("en_US", "2. The foundation company lifts the house."),
        ("es_US", "2. La compañía de cimientos levanta la casa."),
    ],
)
def test_the_steps_stand_numbered_before_the_work_and_on_the_water_test_report(language: str, lift: str) -> None:
    letter = Letter(lifted(), language)
    assert lift in words(care_sheet(letter))
    assert lift in words(water_test_report(lifted(), language).sheets[0])


def test_tests_before_and_after_are_told_on_the_report() -> None:
    assert "Tests compared\n• The foundation company lifts the house." in words(
        water_test_report(lifted(), "en_US").sheets[0]
    )


def test_price_warranty_and_days_agree_with_the_steps() -> None:
    letter = Letter(lifted(), "en_US")
    starts = "It starts with the water test after the lift, or when we finish if there is no lift."
    assert words(agreement_sheet(letter)).count(starts) == 1
    assert "Our price covers the repairs before and after the lift." in words(care_sheet(letter))
    option = comes_back(letter.quote.options[0])
    assert days_apart(letter, letter.quote.options[0]) == "" and days_apart(letter, option).startswith("We work in two")
    again = Letter(replace(letter.quote, options=(option,)), "en_US")
    assert "Our price covers the repairs and the test after the lift." in words(care_sheet(again))


@pytest.mark.parametrize("quote", [example_quote(), lifted("done")])
def test_without_a_lift_to_come_nothing_of_it_is_said(quote: Quote) -> None:
    letter = Letter(quote, "en_US")
    assert "lift" not in words(agreement_sheet(letter)).lower().replace("the lift the", "")
    assert days_apart(letter, comes_back(quote.options[0])) == ""
