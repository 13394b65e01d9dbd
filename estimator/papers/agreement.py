"""One agreement: the options whose price is firm with a box each, what is paid when, the right to cancel, lines to sign.

Options without a firm price have no price here and no payments: the page says what is missing.
"""

from estimator.model.offer import Option
from estimator.papers import add_ons, option_words
from estimator.papers.cancellation import right_to_cancel
from estimator.papers.letter import Letter
from estimator.papers.option_sheet import option_name
from estimator.papers.option_terms import deal_in_common
from estimator.papers.page import Page, ended
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import listed, long_date, money

WIDTHS = (9.0, 69.0, 16.0)


def agreement_sheet(letter: Letter) -> Sheet:
    """The page to sign; where no price is firm, the page that says why there is nothing to sign yet."""
    speak, quote = letter.speak, letter.quote
    firm = [option for option in quote.options if option.fixed]
    taxes = {tax(letter, option) for option in firm}
    page = Page(speak("Agreement"), WIDTHS)
    letter.head(page, reach=not firm)
    page.line(speak("Agreement") if firm else speak("Nothing to sign yet"), "title")
    page.line(
        speak(
            "{name} · {site} · quote {number}, {day}",
            name=quote.job.customer.name,
            site=quote.job.customer.site,
            number=letter.number,
            day=long_date(quote.day, letter.language),
        ),
        "quiet",
    )
    not_yet = _not_yet(letter, [option for option in quote.options if not option.fixed])
    mark = [speak("Mark one option with an x.")] if len(firm) > 1 else []
    if mark or not_yet:
        page.line(" ".join([*mark, *not_yet]), "bold")
    for option in firm:
        _option(letter, page, option, one_of_several=len(firm) > 1, own_tax=len(taxes) > 1)
    if firm:
        add_ons.add_on_rows(letter, page)
        _terms(letter, page, [*taxes] if len(taxes) == 1 else [])
        deal_in_common(letter, page)
        right_to_cancel(letter, page)
        signatures(letter, page)
    return letter.close(page)


def _option(letter: Letter, page: Page, option: Option, *, one_of_several: bool, own_tax: bool) -> None:
    """Box, title and price; then feet from and to, what was added, the most, tax and payments."""
    speak = letter.speak
    box = Cell("", "tick", open=True) if one_of_several else Cell(speak("Price"), "label")
    page.add(
        box,
        Cell(option_words.title(letter, option), "value bold"),
        Cell(option.price.total, "whole money left"),
        starts=True,
    )
    added = [f"{add_ons.text(letter, a)} ({money(a.price, letter.language)})" for a in option.chosen_add_ons]
    paid = "; ".join(f"{letter.say(p.text)} {money(p.amount, letter.language)}" for p in option.payments)
    texts = [
        option_words.reach(letter, option),
        *([speak("Added: {what}", what=", ".join(added))] if added else []),
        option_words.not_over(letter, option),
        *([tax(letter, option)] if own_tax else []),
        *([speak("Payments: {payments}", payments=paid)] if paid else []),
    ]
    page.line(" ".join(map(ended, texts)), "small")


def _not_yet(letter: Letter, options: list[Option]) -> list[str]:
    """That these have no firm price: said once."""
    if len(options) < 2:
        return [
            letter.speak("{tab} cannot be signed yet. Its page says why.", tab=option_name(letter, o)) for o in options
        ]
    letters = listed([option.letter for option in options], letter.language)
    return [letter.speak("Options {letters} cannot be signed yet. Their pages say why.", letters=letters)]


def tax(letter: Letter, option: Option) -> str:
    """Whether sales tax is in the price."""
    if option.price.tax:
        return letter.speak("Sales tax of {amount} is included.", amount=money(option.price.tax, letter.language))
    return letter.speak("No sales tax is added.")


def _terms(letter: Letter, page: Page, said: list[str]) -> None:
    """What is `said` of tax, what belongs to the agreement, the notices of the place, and the days of start and end."""
    speak, quote = letter.speak, letter.quote
    care = speak("Before, during, after")
    pages = speak("The page of your option and the page {care} are part of this agreement.", care=care)
    notices = letter.terms((*(t for o in quote.options for t in o.terms), *quote.notices), "notice")
    if any(option.fixed and option.extras for option in quote.options):
        said.append(speak("We charge extras only for what we find and show you. We call before we pass a limit."))
    place = [option_words.check_the_place(letter), *letter.which_counts()]
    page.line(" ".join([*said, pages, *notices, *place]), "small")
    page.add(Cell(speak("Work starts and ends on"), "label", 2), Cell("", "write", open=True))


def signatures(letter: Letter, page: Page) -> None:
    """Lines for the owner and the firm: signature, name in print, date; and how to send it back."""
    speak, firm = letter.speak, letter.quote.firm
    for who in (speak("Owner"), firm.name):
        page.add(
            Cell("", "write", open=True),
            Cell("", "write", open=True),
            Cell("", "write", open=True),
            height_pt=17.0,
            keep=True,
        )
        page.add(
            Cell(speak("Date"), "quiet"),
            Cell(speak("Signature: {who}", who=who), "quiet"),
            Cell(speak("Printed name"), "quiet"),
            keep=True,
        )
    page.line(speak("Send a photo of the signed page to {email}, or call {phone}.", email=firm.email, phone=firm.phone))
