"""The ways over one stretch in, side by side with what decides between them out; a blocked way stays visible with its reason."""

from collections.abc import Callable, Sequence
from decimal import Decimal

from estimator.cli.views.options import area, days, drains
from estimator.cli.views.screen import Row
from estimator.cli.views.strip import Bar, strip, title
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, at, dollars, feet, number, sentence
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.studies.break_even import AlongAxis, BreakEven, Turn
from estimator.studies.compare import Column, Comparison
from estimator.wording.say import say, speaker

CLASS_WORDS: dict[str, Say] = {
    "find": Say.of("finding out"),
    "reach": Say.of("getting to it"),
    "pipe": Say.of("the pipe"),
    "put back": Say.of("putting back"),
}


def rows(
    compared: Comparison, job: Job, columns: int, language: str = ENGLISH, even: BreakEven | None = None
) -> list[Row]:
    """The drawing, the columns, what is not the same work, what decides, where it turns, and the ways the rules forbid."""
    line = job.line(compared.line)
    return [
        *_drawing(compared, line, columns, language),
        Row(""),
        *(Row(text, "head") for text in indented(sentence(compared.does, language), columns, by=0)),
        *(Row(text) for text in _side_by_side(compared.open, columns, language)),
        *_differences(compared.open, columns, language),
        *_deciding(compared, columns, language),
        *(_turning(even, columns, language) if even else []),
        *_against(compared, columns, language),
    ]


def _drawing(compared: Comparison, line: Line, columns: int, language: str) -> list[Row]:
    bar = Bar(f"{at(compared.stretch, language)} {speaker(language)('ft')}", compared.stretch)
    head = [Row(text, "head") for text in title(line, columns, language)]
    return [*head, *(Row(text) for text in strip(line, columns, [bar], language))]


def _side_by_side(open_: Sequence[Column], columns: int, language: str) -> list[str]:
    if not open_:
        return [speaker(language)("No way is open here.")]
    options = [column.option for column in open_ if column.option]
    body = [(say(label, language), *(answer(option, language) for option in options)) for label, answer in ANSWERS]
    classes = [name for name, _ in open_[0].by_class]
    money = [_money(name, open_, language) for name in classes]
    headers = ("", *(term(column.method, language) for column in open_))
    return table(headers, [*body[:2], *money, *body[2:]], columns, right=tuple(range(1, len(headers))))


def _money(name: str, open_: Sequence[Column], language: str) -> tuple[str, ...]:
    """What one class of work costs by each way."""
    label = say(CLASS_WORDS[name], language) if name in CLASS_WORDS else name
    return "  " + label, *(dollars(dict(c.by_class)[name], whole=True, language=language) for c in open_)


def _all_in(option: Option, language: str) -> str:
    return dollars(option.all_in, whole=True, language=language)


def _price(option: Option, language: str) -> str:
    return dollars(option.price.total, whole=True, language=language)


def _floor(option: Option, language: str) -> str:
    return area(option.floor_sf, language) or speaker(language)("none")


def _yard(option: Option, language: str) -> str:
    return area(option.yard_sf, language) or speaker(language)("none")


ANSWERS: tuple[tuple[Say, Callable[[Option, str], str]], ...] = (
    (Say.of("all in, about"), _all_in),
    (Say.of("our price"), _price),
    (Say.of("days on site"), lambda option, language: days(option.days_on_site, language)),
    (Say.of("without drains"), drains),
    (Say.of("floor opened"), _floor),
    (Say.of("yard dug"), _yard),
    (Say.of("old pipe left"), lambda option, language: feet(option.old_pipe_left_ft, language)),
)
"""The all-in price stands first: never a price alone."""


def _differences(open_: Sequence[Column], columns: int, language: str) -> list[Row]:
    texts = [f"{term(c.method, language)}: {say(said, language)}" for c in open_ for said in c.differs]
    return [Row(line) for text in texts for line in indented(text, columns, by=0, hanging=2)]


def _deciding(compared: Comparison, columns: int, language: str) -> list[Row]:
    if not compared.decides:
        return []
    lines = [line for said in compared.decides for line in indented(sentence(said, language), columns, by=0)]
    return [Row(""), Row(speaker(language)("What decides"), "head"), *(Row(line) for line in lines)]


def _turning(even: BreakEven, columns: int, language: str) -> list[Row]:
    """Where the cheaper of two ways changes, all in, along each thing that may be otherwise than noted."""
    ways = {"first": term(even.first, language), "second": term(even.second, language)}
    out = [Row(""), Row(speaker(language)("Where {first} and {second} break even, floor and all", **ways), "head")]
    for along in even.along:
        for text in _along(along, even, language):
            out += [Row(line) for line in indented(text, columns, by=0, hanging=2)]
    return out


def _along(along: AlongAxis, even: BreakEven, language: str) -> list[str]:
    axis, speak = along.axis, speaker(language)

    def shown(value: float) -> str:
        return number(value, language=language)

    name, unit = sentence(axis.name, language), term(axis.unit, language)
    head = speak("{what} (now {now} {unit}): ", what=name, now=shown(axis.now), unit=unit)
    if not along.turns:
        cheaper = even.first if along.points[0][1] < along.points[0][2] else even.second
        text = speak(
            "{way} is cheaper all the way from {low} to {high} {unit}.",
            way=term(cheaper, language),
            low=shown(axis.low),
            high=shown(axis.high),
            unit=unit,
        )
        return [head + text]
    return [head + _turn(turn, unit, language) for turn in along.turns]


def _turn(turn: Turn, unit: str, language: str) -> str:
    return speaker(language)(
        "below {at} {unit} {below} is cheaper, above it {above} ({before} just below, {after} just above).",
        at=number(turn.at, language=language),
        unit=unit,
        below=term(turn.below, language),
        above=term(turn.above, language),
        before=_prices(turn.prices_below, language),
        after=_prices(turn.prices_above, language),
    )


def _prices(pair: tuple[Decimal, Decimal], language: str) -> str:
    first, second = (dollars(amount, whole=True, language=language) for amount in pair)
    return speaker(language)("{first} against {second}", first=first, second=second)


def _against(compared: Comparison, columns: int, language: str) -> list[Row]:
    shut = [column for column in compared.columns if column.against is not None]
    if not shut:
        return []
    cells = [
        (term(c.method, language), f"{sentence(c.against.estimator, language)} ({c.against.rule})")
        for c in shut
        if c.against
    ]
    head = Row(speaker(language)("Not open here"), "head")
    return [Row(""), head, *(Row(text) for text in table(("", ""), cells, columns))]


def as_data(compared: Comparison, even: BreakEven | None) -> dict[str, object]:
    """The comparison and the turns for other programs."""
    turns = [
        {"axis": str(along.axis.name), "unit": along.axis.unit, "now": along.axis.now, "turns": along.turns}
        for along in (even.along if even else ())
    ]
    return {"comparison": compared, "break_even": turns}
