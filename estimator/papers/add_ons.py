"""What may be added to an option, in the reader's words: boxes to mark, their total, and what was chosen."""

from estimator.model.add_on import AddOn
from estimator.model.offer import Option
from estimator.papers.letter import Letter
from estimator.papers.page import Page, at
from estimator.papers.sizes import size
from estimator.sheets.book import Cell, Formula
from estimator.sheets.filled import with_marked
from estimator.wording.numbers import money
from estimator.wording.say import pick

BOX, AMOUNT = 0, 5  # the short name stands left of the price


def add_on_rows(letter: Letter, page: Page, option: Option, total: str) -> None:
    """A box to mark beside each, and the total with what is marked; `total` is the address of the option's own."""
    if not option.open_add_ons:
        return
    speak = letter.speak
    page.heading(speak("What you may add"), starts=True)
    page.line(speak("Mark the box with an x. Each price holds by itself, whatever else you choose."))
    page.add(
        Cell(speak("Yes"), "head"),
        Cell(speak("What you may add"), "head", 3),
        Cell(speak("Short name"), "head"),
        Cell(speak("Price"), "head right"),
    )
    rows = [_row(letter, page, add_on) for add_on in option.open_add_ons]
    boxes, prices = (f"{at(column, rows[0])}:{at(column, rows[-1])}" for column in (BOX, AMOUNT))
    marked = Formula(with_marked(total, boxes, prices), option.price.total)
    page.add(Cell(speak("Total with what you marked"), "total words", 5), Cell(marked, "total"))
    if any(add_on.tax for add_on in option.open_add_ons):
        page.line(speak("Sales tax is in these prices."), "quiet")
    page.line(
        speak(
            "Nothing here is ordered by a mark alone: send this file back or call us, and we print the agreement again with what you chose."
        ),
        "quiet",
    )
    page.gap()


def _row(letter: Letter, page: Page, add_on: AddOn) -> int:
    return page.add(
        Cell("", "tick", open=True),
        Cell(" · ".join(filter(None, (text(letter, add_on), how_much(letter, add_on)))), "cell", 3),
        Cell(add_on.code, "cell quiet"),
        Cell(add_on.price, "money"),
    )


def text(letter: Letter, add_on: AddOn) -> str:
    return pick(letter.language, add_on.text_en, add_on.text_es)


def how_much(letter: Letter, add_on: AddOn) -> str:
    """How many of it, where it is more than one."""
    if not add_on.unit or (add_on.unit == "each" and add_on.size == 1):
        return ""
    return size(letter, add_on.size, add_on.unit)


def in_short(letter: Letter, option: Option) -> str:
    """One line for the first sheet and the comparison."""
    speak, prices = letter.speak, [a.price for a in option.open_add_ons]
    if not prices:
        return speak("nothing more")
    least, most = money(min(prices), letter.language), money(max(prices), letter.language)
    if len(prices) == 1:
        return speak("one thing, {amount}: see the sheet of this option", amount=least)
    return speak(
        "{count} things, {least} to {most}: see the sheet of this option", count=len(prices), least=least, most=most
    )


def chosen(letter: Letter, page: Page, option: Option) -> None:
    """For the agreement: what was added and at what price, and that what is not named is not in the total."""
    speak = letter.speak
    for add_on in option.chosen_add_ons:
        price = money(add_on.price, letter.language)
        page.pair(speak("Added"), speak("{what}: {amount}, in the total", what=text(letter, add_on), amount=price))


def not_in_total(letter: Letter, page: Page, option: Option) -> None:
    if option.open_add_ons:
        page.line(
            letter.speak(
                "What you may add beside the work (the boxes on the sheet of this option) is not in this total. Tell us what you choose and we print this page again."
            ),
            "quiet",
        )
