"""One option in full: work lines with live amounts, total, payments, extras with caps, what is in and out, signatures."""

from dataclasses import replace
from decimal import Decimal
from itertools import groupby

from estimator.model.offer import Option
from estimator.model.price import LineItem
from estimator.model.say import Say
from estimator.papers import option_words
from estimator.papers.add_ons import add_on_rows
from estimator.papers.care_sheet import list_cautions, see_care_sheet
from estimator.papers.cautions import of_one_alone
from estimator.papers.letter import Letter
from estimator.papers.page import Page, at, sum_of
from estimator.papers.segments import all_repairs
from estimator.papers.sizes import size
from estimator.sheets.book import Cell, Formula, Sheet
from estimator.wording.plain import CLASSES, LINES, UNITS, in_plain_words

WIDTHS = (7.5, 38.0, 12.0, 9.5, 14.0, 15.0)
QUANTITY, PRICE, AMOUNT = 3, 4, 5
LONG_TABLE = 40  # lines: a longer table has a subtotal for each class, and its head on every page
TESTS = ("tests", "isolation_tests", "tests_after_lift")
NOTHING_BUILT = ("clean", "isolation test", "look and see", "visit")
STANDS_ALONE = ("allowance", "discount")
TAKEN_OFF, OFF_WORDS = "", Say.of("Taken off")


class LinesDoNotAdd(ValueError):
    """The lines of an option do not add up to its total: a fault of the program, never printed as a quote."""


def option_sheet(letter: Letter, option: Option) -> Sheet:
    """The sheet of one option."""
    speak = letter.speak
    page = Page(speak("Option {letter}", letter=option.letter), WIDTHS)
    letter.head(page)
    page.line(option_words.title(letter, option), "option")
    page.line(letter.say(option.under_title), "under")
    page.line(speak("Quote {number} for {site}", number=letter.number, site=letter.quote.job.customer.site), "quiet")
    for text in letter.all(option.does):
        page.line(text)
    if not option.fixed:
        page.line(option_words.at_most(letter, option), "box")
    page.gap()
    head = len(page.rows)
    long = len(gathered(letter, option, list(option.price.lines))) > LONG_TABLE
    total = _work(letter, page, option, with_subtotals=long)
    add_on_rows(letter, page, option, total)
    _payments(letter, page, option)
    _extras(letter, page, option, total)
    _days(letter, page, option)
    _terms(letter, page, option)
    return letter.close(page, repeat=(head, head) if long else None)


def _work(letter: Letter, page: Page, option: Option, with_subtotals: bool) -> str:
    """The work lines by class; the address of the total."""
    speak = letter.speak
    heads = (speak("No."), speak("Work"), speak("How much"), speak("Quantity"), speak("Price each"), speak("Amount"))
    page.add(*(Cell(text, "head" if i < 3 else "head right") for i, text in enumerate(heads)))
    by_class: list[tuple[str, list[str], Decimal]] = []
    for work_class in (*CLASSES, TAKEN_OFF):
        lines = [line for line in option.price.lines if line.work_class == work_class]
        if lines:
            cells = _class_lines(letter, page, option, work_class, lines)
            value = sum((line.amount for line in lines), Decimal(0))
            by_class.append((work_class, cells, value))
            if with_subtotals:
                page.add(
                    Cell(speak("Subtotal"), "sum words", 5), Cell(sum_of([f"{cells[0]}:{cells[-1]}"], value), "sum")
                )
    parts = [f"{cells[0]}:{cells[-1]}" for _, cells, _ in by_class]
    # Class headings hold no numbers: one range, except where subtotals stand between.
    total = _totals(letter, page, option, parts if with_subtotals else [f"{by_class[0][1][0]}:{by_class[-1][1][-1]}"])
    page.gap()
    page.line(speak("The price by what it is for"), "bold", starts=True)
    for work_class, cells, value in by_class:
        page.add(
            Cell(letter.say(CLASSES.get(work_class, OFF_WORDS)), "cell", 5),
            Cell(sum_of([f"{cells[0]}:{cells[-1]}"], value), "money"),
        )
    page.gap()
    return total


def _class_lines(letter: Letter, page: Page, option: Option, work_class: str, lines: list[LineItem]) -> list[str]:
    page.line(letter.say(CLASSES.get(work_class, OFF_WORDS)), "bold")
    return [_line(letter, page, line, text) for line, text in gathered(letter, option, lines)]


def gathered(letter: Letter, option: Option, lines: list[LineItem]) -> list[tuple[LineItem, str]]:
    """The lines with their texts; the same work on several pipes is one line, and names them: nobody reads it thrice.

    Lump sums are added up; measured lines only where one unit price holds for all. `A6–8` stands for three lines.
    """
    return [
        (_sum_of(same), _text_of(letter, option, same)) for _, group in groupby(lines, _alike) if (same := list(group))
    ]


def _alike(line: LineItem) -> tuple[object, ...]:
    """The same for lines, one after another, that one line can stand for."""
    price = line.unit_price if line.billed == "measured" else None
    alone = line.id if line.price_class in STANDS_ALONE else ""
    return line.work_item, line.text_en, line.size_unit, price, alone


def _sum_of(same: list[LineItem]) -> LineItem:
    first, amount = same[0], sum((line.amount for line in same), Decimal(0))
    if len(same) == 1:
        return first
    number = f"{first.id}–{same[-1].id.lstrip('ABCDEFGHIJKLMNOPQRSTUVWXYZ')}"
    size = sum(line.size for line in same)
    if first.billed == "measured":
        return replace(
            first, id=number, size=size, quantity=sum((line.quantity for line in same), Decimal(0)), amount=amount
        )
    return replace(first, id=number, size=size, unit_price=amount, amount=amount)


def _text_of(letter: Letter, option: Option, same: list[LineItem]) -> str:
    if len(same) == 1:
        return letter.text(same[0])
    pipe = {r.id: letter.say(in_plain_words(LINES, r.line)) for r in all_repairs(option.scope.repairs)}
    named = dict.fromkeys(pipe[line.repair] for line in same if line.repair in pipe)
    return f"{letter.text(same[0])} ({', '.join(named)})" if named else letter.text(same[0])


def line_texts(letter: Letter, option: Option, lines: list[LineItem]) -> list[str]:
    """The lines' texts; where two read alike, each says on which pipe it is."""
    pipe = {r.id: letter.say(in_plain_words(LINES, r.line)) for r in all_repairs(option.scope.repairs)}
    plain = [letter.text(line) for line in lines]
    return [
        f"{text} ({pipe[line.repair]})" if plain.count(text) > 1 and line.repair in pipe else text
        for line, text in zip(lines, plain, strict=True)
    ]


def _line(letter: Letter, page: Page, line: LineItem, text: str) -> str:
    """A lump sum is one price for its stated size; only what is measured is a count times a unit price."""
    row = len(page.rows)
    work = (Cell(line.id, "cell quiet"), Cell(text, "cell"), Cell(how_much(letter, line), "cell"))
    if line.billed == "measured":
        product = Formula(f"=ROUND({at(QUANTITY, row)}*{at(PRICE, row)},2)", line.amount)
        page.add(*work, Cell(line.quantity, "number"), Cell(line.unit_price, "money"), Cell(product, "money"))
    else:
        page.add(*work, Cell(letter.speak("one price"), "cell quiet", 2), Cell(line.amount, "money"))
    return at(AMOUNT, row)


def how_much(letter: Letter, line: LineItem) -> str:
    """The size of a lump sum, or the unit a measured line is counted in."""
    speak = letter.speak
    if line.billed == "measured" and line.unit == "each":
        return letter.say(UNITS["each"])
    if line.billed == "measured":
        return speak("per {unit}", unit=letter.say(in_plain_words(UNITS, line.unit)))
    if line.size_unit in ("job", "") or (line.size_unit == "each" and line.size == 1):
        return speak("all of it")
    return size(letter, line.size, line.size_unit)


def _totals(letter: Letter, page: Page, option: Option, ranges: list[str]) -> str:
    speak, price = letter.speak, option.price
    lines = sum((line.amount for line in price.lines), Decimal(0))
    if lines + price.tax != price.total:
        raise LinesDoNotAdd(f"option {option.letter}: lines {lines} and tax {price.tax} are not {price.total}")
    if not price.tax:
        row = page.add(Cell(speak("Total"), "total words", 5), Cell(sum_of(ranges, price.total), "total"))
        return at(AMOUNT, row)
    subtotal = page.add(Cell(speak("Subtotal"), "sum words", 5), Cell(sum_of(ranges, lines), "sum"))
    tax = page.add(
        Cell("; ".join(map(letter.say, price.tax_says)) or speak("Sales tax"), "cell", 5), Cell(price.tax, "money")
    )
    both = [at(AMOUNT, subtotal), at(AMOUNT, tax)]
    row = page.add(Cell(speak("Total"), "total words", 5), Cell(sum_of(both, price.total), "total"))
    return at(AMOUNT, row)


def _payments(letter: Letter, page: Page, option: Option) -> None:
    if not option.payments:
        return
    speak = letter.speak
    page.heading(speak("Payments"), starts=True)
    rows = [page.add(Cell(letter.say(p.text), "cell", 5), Cell(p.amount, "money")) for p in option.payments]
    paid = sum((p.amount for p in option.payments), Decimal(0))
    cells = [f"{at(AMOUNT, rows[0])}:{at(AMOUNT, rows[-1])}"]
    page.add(Cell(speak("All payments"), "sum words", 5), Cell(sum_of(cells, paid), "sum"))
    page.gap()


def _extras(letter: Letter, page: Page, option: Option, total: str) -> None:
    """Unit prices agreed beforehand, each with the most it can come to, and the most altogether where the price is fixed."""
    speak = letter.speak
    page.heading(speak("If we find more: prices agreed before work starts"), starts=True)
    if not option.extras:
        page.line(speak("Nothing is added without a change that you sign."))
        page.gap()
        return
    page.add(
        Cell(speak("What may be added"), "head", 2),
        Cell(speak("Unit"), "head"),
        Cell(speak("At most"), "head right"),
        Cell(speak("Price each"), "head right"),
        Cell(speak("Comes to at most"), "head right"),
    )
    cells = []
    for extra in option.extras:
        row = len(page.rows)
        product = Formula(f"=ROUND({at(QUANTITY, row)}*{at(PRICE, row)},2)", extra.cap_amount)
        page.add(
            Cell(letter.text(extra), "cell", 2),
            Cell(letter.say(in_plain_words(UNITS, extra.unit)), "cell"),
            Cell(extra.cap_quantity, "number"),
            Cell(extra.price, "money"),
            Cell(product, "money"),
        )
        cells.append(at(AMOUNT, row))
    if option.extras_tax:
        row = page.add(Cell(speak("Sales tax on these, at most"), "cell", 5), Cell(option.extras_tax, "money"))
        cells.append(at(AMOUNT, row))
    if option.fixed:
        most = sum_of([total, f"{cells[0]}:{cells[-1]}"], option.most)
        above = speak("The price cannot go above this unless you sign a change")
        page.add(Cell(above, "total words", 5), Cell(most, "total"))
    page.line(speak("We add only what is found, show you, and stop and call before we go past a cap."), "quiet")
    page.gap()


def _days(letter: Letter, page: Page, option: Option) -> None:
    texts = option_words.day_texts(letter, option)
    if texts:
        page.heading(letter.speak("Your days"), starts=True)
        for text in texts:
            page.line(text)
        heap = max((t.value("pile_sf") for t in option.takeoffs), default=0.0)
        if heap:
            page.line(
                letter.speak("The heap of soil covers about {area}, on a tarp.", area=option_words.area(letter, heap))
            )
        page.gap()


def _terms(letter: Letter, page: Page, option: Option) -> None:
    speak = letter.speak
    page.heading(speak("What is in the price and what is not"), starts=True)
    page.listing(speak("In the price"), letter.terms(option.terms, "includes"))
    page.listing(speak("Not in the price"), letter.terms(option.terms, "excludes"), starts=True)
    others = [option_words.one_to_others(letter, other) for other in option.to_others]
    to_others = [*others, *letter.terms(option.terms, "to others")]
    page.listing(speak("What you will also pay, to others"), to_others, starts=True)
    rests_on = [*letter.all(option.assumptions), *letter.terms(option.terms, "assumption")]
    page.listing(speak("What the price rests on"), rests_on, starts=True)
    list_cautions(letter, page, of_one_alone(letter, option))
    page.listing(speak("After the job you will receive"), received(letter, option), starts=True)
    page.line(see_care_sheet(letter), "box")


def received(letter: Letter, option: Option) -> list[str]:
    """What the homeowner has in hand when all is done."""
    speak = letter.speak
    some = {name: any(t.value(name) for t in option.takeoffs) for name in ("films_after", "permits", *TESTS)}
    built = any(r.method not in NOTHING_BUILT for r in all_repairs(option.scope.repairs))
    papers = {
        speak("The videos from before and after"): some["films_after"],
        speak("The video from before"): not some["films_after"],
        speak("The reading of the water test"): any(some[name] for name in TESTS),
        speak("A sketch of what was built, with lengths"): built,
        speak("The permit card with the inspector's signature"): some["permits"],
        speak("The warranty in writing"): True,
    }
    return [text for text, given in papers.items() if given]
