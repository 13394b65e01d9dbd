"""The homeowner's first page: what we recommend, what was found, the options with their prices, how to accept. Made for a phone."""

from collections.abc import Callable

from estimator.model.found import runs
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers import option_words
from estimator.papers.letter import Letter
from estimator.papers.page import Page, run_in
from estimator.quote.recommend import Treated, compared, cures_all_now, only_prepares, recommended, treated
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import long_date, money
from estimator.wording.places import PLACES
from estimator.wording.say import capital

WIDTHS = (3.0, 50.0, 16.0)


def answer_sheet(letter: Letter) -> Sheet:
    """The answer first; everything a decision needs in three narrow columns."""
    page = Page(letter.speak("Start here"), WIDTHS)
    letter.head(page, who=False)
    _whose(letter, page)
    _recommendation(letter, page)
    _options(letter, page)
    _found(letter, page)
    _accept(letter, page)
    return letter.close(page)


def _whose(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    page.line(speak("Your drain repair quote"), "title")
    page.line(
        speak(
            "{name} · {site} · inspected {inspected} · quote {number}, {day} · valid until {until}",
            name=quote.job.customer.name,
            site=quote.job.customer.site,
            inspected=long_date(quote.job.inspected_on or quote.job.day, letter.language),
            number=letter.number,
            day=long_date(quote.day, letter.language),
            until=long_date(quote.valid_until, letter.language),
        ),
        "quiet",
    )


def _recommendation(letter: Letter, page: Page) -> None:
    speak, quote, option = letter.speak, letter.quote, recommended(letter.quote)
    page.heading(speak("What we recommend"))
    if option is None:
        page.line(speak("No price is firm yet, so we do not recommend a repair yet."), "bold")
        for text in letter.all(dict.fromkeys(why for o in quote.options for why in o.not_fixed_because)):
            page.line(text)
        return
    page.add(Cell(option_words.title(letter, option), "value bold", 2), _price(letter, option))
    page.line(" ".join(_why(letter, option)))
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


def _price(letter: Letter, option: Option) -> Cell:
    """The price as a number; in words where it is not firm, so that nobody takes it for an offer."""
    if option.fixed:
        return Cell(option.price.total, "whole money left")
    return Cell(letter.speak("about {price}, not firm", price=money(option.price.total, letter.language)), "value")


def _options(letter: Letter, page: Page) -> None:
    speak = letter.speak
    page.heading(speak("Your options"))
    for option in compared(letter.quote):
        page.add(Cell(option_words.title(letter, option), "value bold", 2), _price(letter, option), keep=True)
        page.line(" ".join(_in_short(letter, option)), "small")


def _in_short(letter: Letter, option: Option) -> list[str]:
    """What it repairs and leaves by letter, days, days without drains, and the most it can come to."""
    speak, found = letter.speak, letter.quote.found
    by: dict[Treated, list[str]] = {}
    for one in found:
        by.setdefault(treated(one, option), []).append(one.letter)
    out = [letter.say(DOES[word](runs(by[word]))) for word in DOES if word in by and len(by) + (word != "left") > 1]
    days, off = (option_words.in_days(letter, d) for d in (option.days_on_site, option.days_without_drains))
    out.append(speak("{days} on site, {off} without drains.", days=days, off=off))
    if not option.fixed:
        return [*out, *letter.all(option.not_fixed_because[:1]), *option_words.firm_after(letter, option)]
    return [*out, option_words.not_over(letter, option)] if option.most > option.price.total else out


DOES: dict[Treated, Callable[[str], Say]] = {
    "repaired": lambda letters: Say.of("Repairs {letters}.", letters=letters),
    "cleaned": lambda letters: Say.of("Cleans {letters}.", letters=letters),
    "looked into": lambda letters: Say.of("Looks for the cause of {letters}.", letters=letters),
    "left": lambda letters: Say.of("Leaves {letters}.", letters=letters),
}


def _found(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    page.heading(speak("What we found"))
    now = [f for f in quote.found if f.act == "now"]
    later = [f for f in quote.found if f.act == "later"]
    for head, entries in ((speak("Repair now"), now), (speak("Can wait"), later)):
        if entries:
            page.line(head, "bold")
            for entry in entries:
                page.add(Cell(entry.letter, "letter"), Cell(capital(letter.say(entry.short)), "small", 2))
    if not quote.found:
        page.line(speak("We found no damage in the pipe we inspected."))
    run_in(page, speak("Not inspected"), letter.all(quote.not_seen))
    if quote.tests:
        page.line(_tests(letter), "small")


def _tests(letter: Letter) -> str:
    """Which sections failed and which passed, in one line; the readings stand on the next tab."""
    speak, reads = letter.speak, letter.quote.diagnosis.tests
    failed, passed = (
        tuple(PLACES.get(r.test.section, r.test.section) for r in reads if r.outcome == outcome)
        for outcome in ("failed", "passed")
    )
    out = [speak("Water test FAILED: {sections}.", sections=failed)] if failed else []
    out += [speak("Passed: {sections}.", sections=passed)] if passed else []
    return " ".join(out) or speak("Water test: inconclusive.")


def _accept(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    page.heading(speak("How to accept"), starts=True)
    if any(option.fixed for option in quote.options):
        page.line(
            speak(
                "Mark one option on the page {tab}, sign it and send it back. Questions: {phone}",
                tab=speak("Agreement"),
                phone=quote.firm.phone,
            )
        )
    else:
        page.line(speak("Questions: {phone}", phone=quote.firm.phone), "bold")
