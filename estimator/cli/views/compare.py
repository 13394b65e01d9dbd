"""The ways over one stretch in, side by side with what decides between them out; a blocked way stays visible with its reason."""

from collections.abc import Callable, Sequence
from decimal import Decimal

from estimator.cli.views.options import days
from estimator.cli.views.screen import Row
from estimator.cli.views.strip import Bar, strip, title
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import at, dollars, number, sentence
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.offer import Option
from estimator.studies.break_even import AlongAxis, BreakEven
from estimator.studies.compare import Column, Comparison

CLASS_WORDS: dict[str, str] = {
    "find": "finding out",
    "reach": "getting to it",
    "pipe": "the pipe",
    "put back": "putting back",
}


def rows(
    compared: Comparison, job: Job, columns: int, language: str = "en_US", even: BreakEven | None = None
) -> list[Row]:
    """The drawing, the columns, what is not the same work, what decides, where it turns, and the ways the rules forbid."""
    line = job.line(compared.line)
    return [
        *_drawing(compared, line, columns),
        Row(""),
        *(Row(text, "head") for text in indented(sentence(compared.does, language), columns, by=0)),
        *(Row(text) for text in _side_by_side(compared.open, columns)),
        *_differences(compared.open, columns, language),
        *_deciding(compared, columns, language),
        *(_turning(even, columns, language) if even else []),
        *_against(compared, columns, language),
    ]


def _drawing(compared: Comparison, line: Line, columns: int) -> list[Row]:
    bar = Bar(f"{at(compared.stretch)} ft", compared.stretch)
    head = [Row(text, "head") for text in title(line, columns)]
    return [*head, *(Row(text) for text in strip(line, columns, [bar]))]


def _side_by_side(open_: Sequence[Column], columns: int) -> list[str]:
    options = [column.option for column in open_ if column.option]
    body = [(label, *(answer(option) for option in options)) for label, answer in ANSWERS]
    classes = [name for name, _ in open_[0].by_class] if open_ else []
    money = [(_class(name), *(dollars(dict(c.by_class)[name], whole=True) for c in open_)) for name in classes]
    headers = ("", *(column.method for column in open_))
    right = range(1, len(headers))
    return (
        table(headers, [*body[:2], *money, *body[2:]], columns, right=tuple(right))
        if open_
        else ["No way is open here."]
    )


def _class(name: str) -> str:
    return "  " + CLASS_WORDS.get(name, name)


ANSWERS: tuple[tuple[str, Callable[[Option], str]], ...] = (
    ("all in, about", lambda option: dollars(option.all_in, whole=True)),
    ("our price", lambda option: dollars(option.price.total, whole=True)),
    ("days on site", lambda option: days(option.days_on_site)),
    ("without drains", lambda option: days(option.days_without_drains) if option.days_without_drains else "some hours"),
    ("floor opened", lambda option: f"{number(option.floor_sf, 0)} sq ft" if option.floor_sf else "none"),
    ("yard dug", lambda option: f"{number(option.yard_sf, 0)} sq ft" if option.yard_sf else "none"),
    ("old pipe left", lambda option: f"{number(option.old_pipe_left_ft)} ft"),
)
"""The all-in price stands first: never a price alone."""


def _differences(open_: Sequence[Column], columns: int, language: str) -> list[Row]:
    out = []
    for column in open_:
        for said in column.differs:
            text = f"{column.method}: {said_plainly(said, language)}"
            out += [Row(line) for line in indented(text, columns, by=0, hanging=2)]
    return out


def said_plainly(said: object, language: str) -> str:
    """The sentence as it is, without a capital, for use after a colon."""
    from estimator.model.say import Say
    from estimator.wording.say import say

    return say(said, language) if isinstance(said, Say) else str(said)


def _deciding(compared: Comparison, columns: int, language: str) -> list[Row]:
    if not compared.decides:
        return []
    lines = [line for said in compared.decides for line in indented(sentence(said, language), columns, by=0)]
    return [Row(""), Row("What decides", "head"), *(Row(line) for line in lines)]


def _turning(even: BreakEven, columns: int, language: str) -> list[Row]:
    """Where the cheaper of two ways changes, all in, along each thing that may be otherwise than noted."""
    out = [Row(""), Row(f"Where {even.first} and {even.second} break even, floor and all", "head")]
    for along in even.along:
        for text in _along(along, even, language):
            out += [Row(line) for line in indented(text, columns, by=0, hanging=2)]
    return out


def _along(along: AlongAxis, even: BreakEven, language: str) -> list[str]:
    axis = along.axis
    head = f"{sentence(axis.name, language)} (now {number(axis.now)} {axis.unit}): "
    if not along.turns:
        cheaper = even.first if along.points[0][1] < along.points[0][2] else even.second
        return [f"{head}{cheaper} is cheaper all the way from {number(axis.low)} to {number(axis.high)} {axis.unit}."]
    return [
        f"{head}below {number(turn.at)} {axis.unit} {turn.below} is cheaper, above it {turn.above} "
        f"({_prices(turn.prices_below)} just below, {_prices(turn.prices_above)} just above)."
        for turn in along.turns
    ]


def _prices(pair: tuple[Decimal, Decimal]) -> str:
    return " against ".join(dollars(amount, whole=True) for amount in pair)


def _against(compared: Comparison, columns: int, language: str) -> list[Row]:
    shut = [column for column in compared.columns if column.against is not None]
    if not shut:
        return []
    cells = [(c.method, f"{sentence(c.against.estimator, language)} ({c.against.rule})") for c in shut if c.against]
    return [Row(""), Row("Not open here", "head"), *(Row(text) for text in table(("", ""), cells, columns))]


def as_data(compared: Comparison, even: BreakEven | None) -> dict[str, object]:
    """The comparison and the turns for other programs."""
    turns = [
        {"axis": str(along.axis.name), "unit": along.axis.unit, "now": along.axis.now, "turns": along.turns}
        for along in (even.along if even else ())
    ]
    return {"comparison": compared, "break_even": turns}
