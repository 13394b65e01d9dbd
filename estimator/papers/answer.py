"""The homeowner's first page: what we recommend, what was found, the options with their prices, how to accept. Made for a phone."""

from collections.abc import Callable
from itertools import groupby

from estimator.model.found import Found, runs
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers import option_words
from estimator.papers.letter import Letter
from estimator.papers.page import Page, run_in
from estimator.quote.findings import in_short
from estimator.quote.recommend import Treated, compared, cures_all_now, only_prepares, recommended, treated
from estimator.quote.urgency import what_must
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import long_date
from estimator.wording.say import capital

WIDTHS = (7.0, 46.0, 16.0)


def answer_sheet(letter: Letter) -> Sheet:
    """The answer first; everything a decision needs in three narrow columns."""
    page = Page(letter.speak("Start here"), WIDTHS)
    letter.head(page, who=False)
    _whose(letter, page)
    _recommendation(letter, page)
    if compared(letter.quote) != (recommended(letter.quote),):
        _options(letter, page)
    _found(letter, page)
    _accept(letter, page)
    return letter.close(page)


def _whose(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    texts = (
        quote.job.customer.name,
        quote.job.customer.site,
        speak("inspected {day}", day=long_date(quote.job.inspected_on or quote.job.day, letter.language)),
        speak("quote {number}, {day}", number=letter.number, day=long_date(quote.day, letter.language)),
        speak("valid until {until}", until=long_date(quote.valid_until, letter.language)),
    )
    page.line(speak("Your drain repair quote"), "title")
    page.line(" · ".join(filter(None, texts)), "quiet")


def _recommendation(letter: Letter, page: Page) -> None:
    speak, quote, option = letter.speak, letter.quote, recommended(letter.quote)
    page.heading(speak("What we recommend"))
    if option is None:
        page.line(speak("No price is firm yet, so we do not recommend a repair yet."), "bold")
        for text in letter.all(dict.fromkeys(why for o in quote.options for why in o.not_fixed_because)):
            page.line(text)
        return
    page.add(Cell(option_words.title(letter, option), "value bold", 2), option_words.price_cell(letter, option))
    alone = _in_short(letter, option) if compared(quote) == (option,) else []
    page.line(" ".join([*_why(letter, option), *alone]))
    if quote.urgency:
        page.line(" ".join(letter.all(filter(None, (quote.urgency, quote.if_nothing)))))


def _why(letter: Letter, option: Option) -> list[str]:
    """Two sentences, each of them so: the firm's own reason, or what the price and the works show."""
    speak, quote = letter.speak, letter.quote
    wishes = quote.job.wishes
    if wishes.recommend and wishes.because:
        return [letter.typed(wishes.because), *([f"({wishes.by})"] if wishes.by else [])]
    if only_prepares(option):
        return [speak("This visit comes before a repair."), speak("It tells us what we need to set a firm price.")]
    out = [speak("It repairs everything that must be repaired now.")] if cures_all_now(quote, option) else []
    others = [
        o for o in quote.options if o.fixed and o is not option and cures_all_now(quote, o) and not only_prepares(o)
    ]
    if others and all(option.price.total < o.price.total for o in others):
        out.append(speak("It is the lowest firm price."))
    elif quote.job.wishes.keep_floors and not option.floor_sf:
        out.append(speak("We do not cut a floor, as you asked."))
    return out


def _options(letter: Letter, page: Page) -> None:
    speak = letter.speak
    page.heading(speak("Your options"))
    for option in compared(letter.quote):
        price = option_words.price_cell(letter, option)
        page.add(Cell(option_words.title(letter, option), "value bold", 2), price, keep=True)
        page.line(" ".join(_in_short(letter, option)), "small")
    if any(option.schedule.days_later for option in compared(letter.quote)):
        page.line(speak("+: visit after the lift, some hours without drains."), "small")


def _in_short(letter: Letter, option: Option) -> list[str]:
    """What it repairs and leaves by letter, days, days without drains; the most it can come to, or how its price becomes firm."""
    found = letter.quote.found
    by: dict[Treated, list[str]] = {}
    for one in found:
        done = treated(one, option)
        by.setdefault("cleaned" if done == "cleaned in passing" else done, []).append(one.letter)
    out = [letter.say(DOES[word](runs(by[word]))) for word in DOES if word in by and len(by) + (word != "left") > 1]
    out.append(f"{option_words.length_of_work(letter, option)}.")
    if not option.fixed:
        return [*out, *(option_words.firm_after(letter, option) or letter.all(option.not_fixed_because[:1]))]
    return [*out, option_words.not_over(letter, option)] if option.most > option.price.total else out


DOES: dict[Treated, Callable[[str], Say]] = {
    "repaired": lambda letters: Say.of("Repairs {letters}.", letters=letters),
    "cleaned": lambda letters: Say.of("Cleans {letters}.", letters=letters),
    "looked into": lambda letters: Say.of("Checks {letters}.", letters=letters),
    "left": lambda letters: Say.of("Leaves {letters}.", letters=letters),
}


def _found(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    page.heading(speak("What we found"))
    now = [f for f in quote.found if f.act == "now"]
    later = [f for f in quote.found if f.act == "later"]
    for head, entries in ((capital(letter.say(what_must(quote.diagnosis.needs))), now), (speak("Can wait"), later)):
        if entries:
            page.line(head, "bold")
            for line, those in groupby(entries, lambda entry: letter.say(entry.of_line)):
                _of_a_line(letter, page, line, list(those))
    if not quote.found:
        page.line(speak("We found no damage in the pipe we inspected."))
    run_in(page, speak("Not seen"), letter.all(quote.not_seen))
    run_in(page, speak("Water tests"), letter.all(map(in_short, quote.diagnosis.tests)))


def _of_a_line(letter: Letter, page: Page, line: str, those: list[Found]) -> None:
    """What was found in one line, in a row behind its letters."""
    names = "; ".join(letter.say(entry.name) for entry in those)
    letters = Cell(runs([entry.letter for entry in those]), "letter")
    page.add(letters, Cell(capital(letter.speak("{line}: {what}", line=line, what=names)), "small", 2))


def _accept(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    page.heading(speak("How to accept"), starts=True)
    if any(option.fixed for option in quote.options):
        how = (
            Say.of("Sign the page {tab} and send it back. Questions: {phone}", tab=Say.of("Agreement"), phone=quote.firm.phone)
            if sum(option.fixed for option in quote.options) == 1
            else Say.of("Mark one option on the page {tab}, sign it and send it back. Questions: {phone}", tab=Say.of("Agreement"), phone=quote.firm.phone)
        )  # fmt: skip
        page.line(letter.say(how))
    else:
        page.line(speak("Questions: {phone}", phone=quote.firm.phone), "bold")
