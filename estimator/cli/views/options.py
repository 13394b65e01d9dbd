"""A quote in, its options side by side out: one column an option where there is room, else one block an option."""

from collections.abc import Callable
from decimal import Decimal

from estimator.cli.views.screen import Row
from estimator.cli.views.strip import Bar, strip, title
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import dollars, feet, number, sentence
from estimator.model.offer import Option, Quote
from estimator.model.work import Repair

LABEL_WIDTH, LEAST_COLUMN, ROOMY_COLUMN = 16, 10, 14
Answer = Callable[[Option, str], str]
Answers = tuple[tuple[str, Answer], ...]
TEST_WORDS = {"yes": "yes", "only this part": "new part only", "not promised": "not promised"}


def rows(quote: Quote, columns: int, language: str = "en_US") -> list[Row]:
    """The drawing of each line with the repairs of the options, the comparison, what is not offered and why."""
    return [
        *_heading(quote),
        *(row for line in quote.job.lines for row in _drawing(quote, line.name, columns)),
        *_comparison(quote, columns, language),
        *_not_offered(quote, columns, language),
        *_closing(quote, columns, language),
    ]


def _heading(quote: Quote) -> list[Row]:
    job = quote.job
    return [Row(f"{job.number}  {job.customer.site}", "head"), Row(f"{quote.place}; prices of {quote.day}"), Row("")]


def _drawing(quote: Quote, name: str, columns: int) -> list[Row]:
    bars = [
        Bar(f"{option.letter} {repair.method}", repair.stretch)
        for option in quote.options
        for repair in all_repairs(option)
        if repair.line == name
    ]
    line = quote.job.line(name)
    head = [Row(text, "head") for text in title(line, columns)]
    return [*head, *(Row(text) for text in strip(line, columns, bars)), Row("")]


def all_repairs(option: Option) -> list[Repair]:
    """The repairs of an option, those that must come first before the ones that need them."""
    return [r for repair in option.scope.repairs for r in (*repair.first, repair)]


def _comparison(quote: Quote, columns: int, language: str) -> list[Row]:
    """Side by side as long as the columns hold a short answer; long answers move under them, then all into blocks."""
    if not quote.options:
        return [Row("No way of repair can be offered on these notes.", "head")]
    column = (columns - LABEL_WIDTH) // len(quote.options) - 2
    if column >= ROOMY_COLUMN:
        return [Row(text) for text in _side_by_side(quote, (*SHORT, *LONG), columns, language)]
    if column >= LEAST_COLUMN:
        below = [row for label, answer in LONG for row in _below(quote, label, answer, columns, language)]
        return [*(Row(text) for text in _side_by_side(quote, SHORT, columns, language)), *below]
    return [row for option in quote.options for row in _block(option, columns, language)]


def _side_by_side(quote: Quote, answers: Answers, columns: int, language: str) -> list[str]:
    headers = ("", *(option.letter for option in quote.options))
    body = [(label, *(answer(option, language) for option in quote.options)) for label, answer in answers]
    return table(headers, [("", *(heading(o, language) for o in quote.options)), *body], columns)


def _below(quote: Quote, label: str, answer: Answer, columns: int, language: str) -> list[Row]:
    cells = [(option.letter, answer(option, language)) for option in quote.options]
    return [Row(""), Row(label.capitalize(), "head"), *(Row(text) for text in table(("", ""), cells, columns))]


def _block(option: Option, columns: int, language: str) -> list[Row]:
    lines = table(("", ""), [(label, answer(option, language)) for label, answer in (*SHORT, *LONG)], columns)
    return [Row(f"{option.letter}  {heading(option, language)}", "head"), *(Row(t) for t in lines), Row("")]


def price(option: Option, language: str = "en_US") -> str:
    return (
        dollars(option.price.total, whole=True) if option.fixed else f"{dollars(option.price.total, True)}, not fixed"
    )


def _way(option: Option, language: str) -> str:
    return ", ".join(dict.fromkeys(repair.method for repair in all_repairs(option)))


def heading(option: Option, language: str) -> str:
    """The estimator's own name for it, else what it does."""
    return option.name or sentence(option.title, language)


def _drains(option: Option, language: str) -> str:
    return days(option.days_without_drains) if option.days_without_drains else "some hours"


def days(count: Decimal) -> str:
    """`1 day`, `7.5 days`."""
    return f"{number(count)} {'day' if count == 1 else 'days'}"


def _floors(option: Option, language: str) -> str:
    if not option.floor_sf:
        return ", ".join(option.floors_opened) or "none cut"
    return "; ".join([f"{option.floor_sf:,.0f} sq ft", *option.floors_opened])


def _life(option: Option, language: str) -> str:
    return f"{option.life_low}–{option.life_high} yr" if option.life_high else "not said"


SHORT: Answers = (
    ("way", _way),
    ("price", price),
    ("never above", lambda o, language: dollars(o.most, whole=True) if o.fixed else "to be confirmed"),
    ("days on site", lambda o, language: days(o.days_on_site)),
    ("without drains", _drains),
    ("floors opened", _floors),
    ("yard dug", lambda o, language: f"{o.yard_sf:,.0f} sq ft" if o.yard_sf else "none"),
    ("old pipe left", lambda o, language: feet(o.old_pipe_left_ft)),
    ("water test", lambda o, language: TEST_WORDS[o.water_test]),
    ("lasts", _life),
)
LONG: Answers = (("main risk", lambda o, language: sentence(o.main_risk, language)),)
"""What is compared, in the order people ask for it. The homeowner's file has the whole list."""


def _not_offered(quote: Quote, columns: int, language: str) -> list[Row]:
    if not quote.blocked:
        return []
    body = [(verdict.method, sentence(verdict.homeowner, language)) for verdict in quote.blocked]
    return [Row(""), Row("Not offered", "head"), *(Row(text) for text in table(("", ""), body, columns))]


def _closing(quote: Quote, columns: int, language: str) -> list[Row]:
    open_: dict[str, list[str]] = {}
    for option in quote.options:
        for why in option.not_fixed_because:
            open_.setdefault(sentence(why, language), []).append(option.letter)
    unsettled = [f"No fixed price yet for {', '.join(letters)}: {why}" for why, letters in open_.items()]
    caution = (
        "Digging, tunnels and saw cuts can kill: a competent person decides on protection at the site, and the local "
        "code and the licensed plumber stand over everything printed here."
    )
    texts = [*unsettled, caution]
    return [Row(""), *(Row(line) for text in texts for line in indented(text, columns, by=0))]
