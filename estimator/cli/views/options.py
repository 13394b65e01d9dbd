"""A quote in, its options side by side out: one column an option where there is room, else one block an option."""

from collections.abc import Callable, Sequence
from decimal import Decimal

from estimator.cli.views import schedule_bars
from estimator.cli.views.gas import gas_first
from estimator.cli.views.screen import Row
from estimator.cli.views.strip import Bar, strip, title
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, day, dollars, feet, number, sentence
from estimator.model.offer import Option, Quote
from estimator.model.say import Say
from estimator.model.work import Repair
from estimator.quote.recommend import compared, recommended
from estimator.wording.say import pick, say, speaker

LABEL_WIDTH, LEAST_COLUMN, ROOMY_COLUMN = 16, 10, 14
Answer = Callable[[Option, str], str]
Answers = tuple[tuple[Say, Answer], ...]
TEST_WORDS: dict[str, Say] = {
    "yes": Say.of("yes"),
    "only this part": Say.of("new part only"),
    "not promised": Say.of("not promised"),
}


def rows(quote: Quote, columns: int, language: str = ENGLISH) -> list[Row]:
    """The drawing of each line with the repairs of the options, the comparison, what is not offered and why."""
    return [
        *gas_first(quote.job, columns, language),
        *_heading(quote, language),
        *_recommended(quote, columns, language),
        *(row for line in quote.job.lines for row in _drawing(quote, line.name, columns, language)),
        *_comparison(quote, columns, language),
        *_who_works_when(quote, columns, language),
        *_not_offered(quote, columns, language),
        *_closing(quote, columns, language),
    ]


def _heading(quote: Quote, language: str) -> list[Row]:
    job = quote.job
    prices = speaker(language)("{place}; prices of {day}", place=quote.place, day=day(quote.day, language))
    return [Row(f"{job.number}  {job.customer.site}", "head"), Row(prices), Row("")]


def _recommended(quote: Quote, columns: int, language: str) -> list[Row]:
    """The answer first: what the quote recommends, as its first page does."""
    speak, option = speaker(language), recommended(quote)
    if option is None:
        said = speak("No price is firm yet, so we do not recommend a repair yet.") if quote.options else ""
    else:
        words = {"title": heading(option, language), "price": price(option, language)}
        said = speak("We recommend {letter}: {title}, {price}.", letter=option.letter, **words)
    return [*(Row(text, "head") for text in indented(said, columns, by=0)), Row("")] if said else []


def _who_works_when(quote: Quote, columns: int, language: str) -> list[Row]:
    """The schedule's picture where one option stands alone; of several it would be longer than all the rest."""
    if len(quote.options) != 1:
        return []
    return schedule_bars.rows(quote.options[0].schedule, columns, language)


def _drawing(quote: Quote, name: str, columns: int, language: str) -> list[Row]:
    bars = [
        Bar(f"{option.letter} {term(repair.method, language)}", repair.stretch)
        for option in quote.options
        for repair in all_repairs(option)
        if repair.line == name
    ]
    line = quote.job.line(name)
    head = [Row(text, "head") for text in title(line, columns, language)]
    return [*head, *(Row(text) for text in strip(line, columns, bars, language)), Row("")]


def all_repairs(option: Option) -> list[Repair]:
    """The repairs of an option, those that must come first before the ones that need them."""
    return [r for repair in option.scope.repairs for r in (*repair.first, repair)]


def _comparison(quote: Quote, columns: int, language: str) -> list[Row]:
    """Side by side as long as the columns hold a short answer; long answers move under them, then all into blocks."""
    if not quote.options:
        return [Row(speaker(language)("No way of repair can be offered on these notes."), "head")]
    beside = compared(quote)
    column = (columns - LABEL_WIDTH) // len(beside) - 2
    if column < LEAST_COLUMN:
        return [row for option in beside for row in _block(option, columns, language)]
    answers = (*SHORT, *LONG) if column >= ROOMY_COLUMN else SHORT
    under = UNDER if column >= ROOMY_COLUMN else (*LONG, *UNDER)
    below = [row for label, answer in under for row in _below(beside, label, answer, columns, language)]
    return [*(Row(text) for text in _side_by_side(beside, answers, columns, language)), *below]


def _side_by_side(options: Sequence[Option], answers: Answers, columns: int, language: str) -> list[str]:
    headers = ("", *(option.letter for option in options))
    body = [(say(label, language), *(answer(o, language) for o in options)) for label, answer in answers]
    return table(headers, [("", *(heading(o, language) for o in options)), *body], columns)


def _below(options: Sequence[Option], label: Say, answer: Answer, columns: int, language: str) -> list[Row]:
    cells = [(option.letter, answer(option, language)) for option in options]
    return [Row(""), Row(sentence(label, language), "head"), *(Row(text) for text in table(("", ""), cells, columns))]


def _block(option: Option, columns: int, language: str) -> list[Row]:
    cells = [(say(label, language), answer(option, language)) for label, answer in (*SHORT, *LONG, *UNDER)]
    lines = table(("", ""), cells, columns)
    head = indented(f"{option.letter}  {heading(option, language)}", columns, by=0, hanging=3)
    return [*(Row(text, "head") for text in head), *(Row(t) for t in lines), Row("")]


def price(option: Option, language: str = ENGLISH) -> str:
    amount = dollars(option.price.total, whole=True, language=language)
    return amount if option.fixed else speaker(language)("{amount}, not fixed", amount=amount)


def _way(option: Option, language: str) -> str:
    return ", ".join(dict.fromkeys(term(repair.method, language) for repair in all_repairs(option)))


def most(option: Option, language: str) -> str:
    if not option.fixed:
        return speaker(language)("to be confirmed")
    return dollars(option.most, whole=True, language=language)


def heading(option: Option, language: str) -> str:
    """The estimator's own name for it, else what it does."""
    return option.name or sentence(option.title, language)


def drains(option: Option, language: str = ENGLISH) -> str:
    if not option.days_without_drains:
        return speaker(language)("some hours")
    return days(option.days_without_drains, language)


def days(count: Decimal, language: str = ENGLISH) -> str:
    """`1 day`, `7.5 days`."""
    speak = speaker(language)
    return speak("1 day") if count == 1 else speak("{count} days", count=number(count, language=language))


def area(square_ft: float, language: str = ENGLISH) -> str:
    """`62 sq ft`; "" for nothing."""
    if not square_ft:
        return ""
    return speaker(language)("{number} sq ft", number=number(square_ft, 0, language))


def floors(option: Option, language: str) -> str:
    rooms = [term(room, language) for room in option.floors_opened]
    if not option.floor_sf:
        return ", ".join(rooms) or speaker(language)("none cut")
    return "; ".join([area(option.floor_sf, language), *rooms])


def _yard(option: Option, language: str) -> str:
    return area(option.yard_sf, language) or speaker(language)("none")


def _life(option: Option, language: str) -> str:
    speak = speaker(language)
    if not option.life_high:
        return speak("not said")
    return speak("{years} yr, typical", years=f"{option.life_low}–{option.life_high}")


def _warranty(option: Option, language: str) -> str:
    return pick(language, option.warranty_en, option.warranty_es)


def _papers(option: Option, language: str) -> str:
    """Permits, letters and tests that the work needs."""
    return " ".join(say(paper, language) for paper in option.needs_papers) or speaker(language)("none known yet: ask")


SHORT: Answers = (
    (Say.of("way"), _way),
    (Say.of("price"), price),
    (Say.of("never above"), most),
    (Say.of("days on site"), lambda o, language: days(o.days_on_site, language)),
    (Say.of("without drains"), drains),
    (Say.of("floors opened"), floors),
    (Say.of("yard dug"), _yard),
    (Say.of("old pipe left"), lambda o, language: feet(o.old_pipe_left_ft, language)),
    (Say.of("water test"), lambda o, language: say(TEST_WORDS[o.water_test], language)),
    (Say.of("lasts"), _life),
)
LONG: Answers = ((Say.of("main risk"), lambda o, language: sentence(o.main_risk, language)),)
UNDER: Answers = ((Say.of("warranty"), _warranty), (Say.of("papers needed"), _papers))
"""What is compared, in the order people ask for it. The homeowner's file has the whole list."""


def _not_offered(quote: Quote, columns: int, language: str) -> list[Row]:
    if not quote.blocked:
        return []
    body = [(", ".join(term(m, language) for m in g.methods), sentence(g.why, language)) for g in quote.not_offered]
    return [
        Row(""),
        Row(speaker(language)("Not offered"), "head"),
        *(Row(text) for text in table(("", ""), body, columns)),
    ]


def _closing(quote: Quote, columns: int, language: str) -> list[Row]:
    open_: dict[str, list[str]] = {}
    for option in quote.options:
        for why in option.not_fixed_because:
            open_.setdefault(sentence(why, language), []).append(option.letter)
    speak = speaker(language)
    unsettled = [
        speak("No fixed price yet for {letters}: {why}", letters=", ".join(letters), why=why)
        for why, letters in open_.items()
    ]
    for visit in quote.options:
        if waiting := [o.letter for o in quote.options if o.firm_after == visit.letter]:
            cost = price(visit, language)
            words = Say.of("To get a firm price for {letters}, start with Option {letter} ({price}).", letters=", ".join(waiting), letter=visit.letter, price=cost)  # fmt: skip
            unsettled += [sentence(words, language), *(sentence(one, language) for one in visit.does)]
    caution = speak(
        "Digging, tunnels and saw cuts can kill: a competent person decides on protection at the site, and the local code and the licensed plumber stand over everything printed here."
    )
    texts = [*unsettled, caution]
    return [Row(""), *(Row(line) for text in texts for line in indented(text, columns, by=0))]
