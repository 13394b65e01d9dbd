"""An agreement and what became of it in, a change order out: what was found, what it adds or credits, new total, signatures."""

from collections.abc import Iterable
from datetime import date
from decimal import Decimal

from estimator.model.agreed import Agreed, agreed, side_of
from estimator.model.frozen import Frozen
from estimator.model.offer import Extra, Option, Quote
from estimator.model.say import Say
from estimator.papers import option_words
from estimator.papers.agreement import signatures
from estimator.papers.check_code import check_code
from estimator.papers.letter import Letter
from estimator.papers.page import Page, at, sum_of
from estimator.sheets.book import Book, Cell, Formula, Sheet
from estimator.wording.numbers import days, long_date, money
from estimator.wording.plain import UNITS, in_plain_words
from estimator.wording.say import pick

WIDTHS = (48.0, 16.0, 16.0, 16.0)
SIGNED, NOW, MOVED = 1, 2, 3


class ChangeOrder(Frozen, kw_only=True):
    """The quote and option that were signed, on their day, and the same option as it stands now.

    `noted` and `no_longer` are what the notes say besides findings and tests: now and not then, then and not now.
    """

    before: Quote
    signed: Option
    signed_on: date
    after: Quote
    now: Option
    noted: tuple[Say, ...] = ()
    no_longer: tuple[Say, ...] = ()


class Moved(Frozen):
    """One work line by its text in both languages: dollars signed and dollars now."""

    text_en: str
    text_es: str
    signed: Decimal
    now: Decimal


def change_order(order: ChangeOrder, languages: tuple[str, ...]) -> Book:
    """One sheet a language, the job's first language first."""
    sheets = tuple(_sheet(order, Letter(order.after, language)) for language in languages)
    quote = order.after
    return Book(title=sheets[0].name, day=quote.day, accent=quote.firm.accent, sheets=sheets)


def moves(signed: Option, now: Option) -> tuple[Moved, ...]:
    """Every line of either, those of one text together, in the order of the paper that was signed."""
    texts = {line.text_en: line.text_es for line in (*signed.price.lines, *now.price.lines)}
    return tuple(Moved(en, es, _sum(signed, en), _sum(now, en)) for en, es in texts.items())


def _sum(option: Option, text_en: str) -> Decimal:
    return sum((line.amount for line in option.price.lines if line.text_en == text_en), Decimal(0))


def _sheet(order: ChangeOrder, letter: Letter) -> Sheet:
    speak = letter.speak
    page = Page(speak("Change order"), WIDTHS)
    letter.head(page)
    page.line(speak("Change order to what you signed"), "title")
    _whose(order, letter, page)
    _found(order, letter, page)
    _money(order, letter, page)
    _extras(letter, page, order.signed.extras)
    page.line(speak("Everything that this page does not change stays as you signed it."))
    for text in letter.which_counts():
        page.line(text, "quiet")
    page.gap(14)
    signatures(letter, page)
    return letter.close(page)


def _whose(order: ChangeOrder, letter: Letter, page: Page) -> None:
    speak, language = letter.speak, letter.language
    signed = f"{order.before.job.number} r{order.before.revision}, {long_date(order.signed_on, language)}"
    page.pair(speak("House"), order.after.job.customer.site)
    page.pair(speak("Owner"), order.after.job.customer.name)
    page.pair(speak("Option"), option_words.title(letter, order.now), "value bold")
    page.pair(speak("Signed"), signed)
    page.pair(speak("Changed by"), f"{letter.number}, {long_date(order.after.day, language)}")
    page.pair(speak("Check code"), check_code(order.after))
    page.gap()


def _found(order: ChangeOrder, letter: Letter, page: Page) -> None:
    """What is on the paper now and was not on the one that was signed, and the reverse."""
    speak = letter.speak
    page.heading(speak("What was found since"))
    before, after = (
        letter.all((*(f.text for f in quote.found), *quote.tests)) for quote in (order.before, order.after)
    )
    new = [*_without(after, before), *letter.all(order.noted)]
    gone = [*_without(before, after), *letter.all(order.no_longer)]
    page.listing(speak("New"), new)
    page.listing(speak("No longer there"), gone)
    if not new and not gone:
        page.line(speak("Nothing new: the change was agreed between us."))
    does = _without(letter.all(order.now.does), letter.all(order.signed.does))
    page.listing(speak("The work now"), does)
    page.gap()


def _without(texts: Iterable[str], others: Iterable[str]) -> list[str]:
    known = set(others)
    return [text for text in texts if text not in known]


def _money(order: ChangeOrder, letter: Letter, page: Page) -> None:
    speak = letter.speak
    page.heading(speak("What it adds and what it takes off"))
    heads = (speak("Work"), speak("Signed"), speak("Now"), speak("Change"))
    page.add(*(Cell(text, "head" if i == 0 else "head right") for i, text in enumerate(heads)))
    by_prices = agreed(side_of(order.signed), side_of(order.now))
    shown = _by_prices(order, by_prices, letter) if by_prices else _shown(order, letter)
    rows = [_line(page, pick(letter.language, m.text_en, m.text_es), m.signed, m.now) for m in shown]
    columns = [f"{at(c, rows[0])}:{at(c, rows[-1])}" for c in (SIGNED, NOW, MOVED)]
    was, now = order.signed.price.total, by_prices.total if by_prices else order.now.price.total
    totals = [
        Cell(sum_of([cells], value), "total") for cells, value in zip(columns, (was, now, now - was), strict=True)
    ]
    page.add(Cell(speak("Total"), "total words"), *totals)
    page.gap()
    if by_prices:
        page.line(speak("This is charged at the unit prices you signed. Nothing else in your price moves."))
    for why in () if by_prices else _why(order, letter):
        page.line(why)
    page.line(_in_words(order, now, letter), "box")
    spent = (days(order.signed.days_on_site, letter.language), days(order.now.days_on_site, letter.language))
    page.line(speak("We work at your house: {before} as signed, {now} now.", before=spent[0], now=spent[1]))
    page.line(speak("What you have paid counts toward the new total."))
    page.gap()


def _by_prices(order: ChangeOrder, found: Agreed, letter: Letter) -> list[Moved]:
    """What was signed, which stays, and each extra with its quantity and the price that was signed; tax on them."""
    stays, taxed = letter.speak("Work that stays as signed"), letter.speak("Tax and discounts")
    signed = order.signed.price
    net = signed.total - signed.tax
    out = [Moved(stays, stays, net, net)]
    for move in found.moves:
        text = letter.speak(
            "{what}: {quantity} × {price}",
            what=letter.text(move.extra),
            quantity=f"{move.quantity.normalize():f} {letter.say(in_plain_words(UNITS, move.extra.unit))}",
            price=money(move.extra.price, letter.language),
        )
        out.append(Moved(text, text, Decimal(0), move.amount))
    return [*out, Moved(taxed, taxed, signed.tax, found.tax)] if found.tax else out


def _shown(order: ChangeOrder, letter: Letter) -> list[Moved]:
    """The lines that moved, then the rest in one; tax and discounts where the total is not the sum of the lines."""
    every = moves(order.signed, order.now)
    moved = [m for m in every if m.signed != m.now]
    same = sum((m.now for m in every if m.signed == m.now), Decimal(0))
    texts = (letter.speak("Work that stays as signed"), letter.speak("Tax and discounts"))
    off = [o.price.total - sum((line.amount for line in o.price.lines), Decimal(0)) for o in (order.signed, order.now)]
    rest = [Moved(texts[0], texts[0], same, same)] if same else []
    rest += [Moved(texts[1], texts[1], off[0], off[1])] if any(off) else []
    return [*moved, *rest]


def _why(order: ChangeOrder, letter: Letter) -> list[str]:
    """Why lines move whose own work does not: prices of another day, or what the lines share with each other."""
    speak, days_of = letter.speak, (order.before.price_day, order.after.price_day)
    if days_of[0] != days_of[1]:
        was, now = (long_date(day, letter.language) for day in days_of)
        return [speak("What you signed has the prices of {was}; now they are those of {now}.", was=was, now=now)]
    same_work = {m.text_en for m in moves(order.signed, order.now) if m.signed != m.now} & _same_work(order)
    if not same_work:
        return []
    return [
        speak(
            "The price is made for all of the work and rounded as a whole; one line takes what rounding leaves. "
            "So a line whose own work stays can move when other work changes; it is charged once."
        )
    ]


def _same_work(order: ChangeOrder) -> set[str]:
    """Lines by their text of which there is just as much as was signed."""
    was, now = _much(order.signed), _much(order.now)
    return {text for text in was if was[text] == now.get(text)}


def _much(option: Option) -> dict[str, list[tuple[float, Decimal]]]:
    out: dict[str, list[tuple[float, Decimal]]] = {}
    for line in option.price.lines:
        out.setdefault(line.text_en, []).append((line.size, line.quantity))
    return {text: sorted(sizes) for text, sizes in out.items()}


def _line(page: Page, text: str, signed: Decimal, now: Decimal) -> int:
    row = len(page.rows)
    change = Formula(f"=ROUND({at(NOW, row)}-{at(SIGNED, row)},2)", now - signed)
    return page.add(Cell(text, "cell"), Cell(signed, "money"), Cell(now, "money"), Cell(change, "money"))


def _in_words(order: ChangeOrder, now: Decimal, letter: Letter) -> str:
    """The new total in one sentence, and whether it keeps to the most that was agreed."""
    speak, language = letter.speak, letter.language
    was, most = order.signed.price.total, order.signed.most
    moved = money(abs(now - was), language)
    if now == was:
        first = speak("The total stays {total}.", total=money(now, language))
    elif now > was:
        first = speak("This adds {moved}. The new total is {total}.", moved=moved, total=money(now, language))
    else:
        first = speak("This takes off {moved}. The new total is {total}.", moved=moved, total=money(now, language))
    limit = money(most, language)
    if now <= most:
        return f"{first} {speak('It stays within {most}, the most that you agreed to.', most=limit)}"
    return f"{first} {speak('It is above {most}, the most that you agreed to: nothing of it is done before you sign here.', most=limit)}"


def _extras(letter: Letter, page: Page, extras: tuple[Extra, ...]) -> None:
    """The prices agreed when it was signed: what the change may be held against."""
    speak = letter.speak
    if not extras:
        return
    page.heading(speak("Extras agreed when you signed"))
    heads = (speak("What may be added"), speak("Price each"), speak("At most"), speak("Comes to at most"))
    page.add(*(Cell(text, "head" if i == 0 else "head right") for i, text in enumerate(heads)))
    for extra in extras:
        unit = letter.say(in_plain_words(UNITS, extra.unit))
        text = f"{letter.text(extra)} ({unit})"
        cap = Cell(extra.cap_quantity, "number"), Cell(extra.cap_amount, "money")
        page.add(Cell(text, "cell"), Cell(extra.price, "money"), *cap)
    page.gap()
