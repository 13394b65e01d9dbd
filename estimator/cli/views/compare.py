"""The ways over one stretch in, side by side with what decides between them out; a blocked way stays visible with its reason."""

from collections.abc import Callable, Sequence

from estimator.cli.views.break_even import turning
from estimator.cli.views.gas import gas_first
from estimator.cli.views.options import area, days, drains, floors, most
from estimator.cli.views.screen import Row
from estimator.cli.views.strip import Bar, strip, title
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, at, dollars, feet, sentence
from estimator.model.comparison import BreakEven, Column, Comparison
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.wording.say import pick, say, speaker

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
        *gas_first(job, columns, language),
        *_drawing(compared, line, columns, language),
        Row(""),
        *(Row(text, "head") for text in indented(sentence(compared.does, language), columns, by=0)),
        *(Row(text) for text in _side_by_side(compared.open, columns, language)),
        *_differences(compared.open, columns, language),
        *_deciding(compared, columns, language),
        *(turning(even, columns, language) if even else []),
        *_by_way(Say.of("What can go wrong"), compared.open, _risk, columns, language),
        *_by_way(Say.of("In the price all in, for others"), compared.open, _others, columns, language),
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
    return table(headers, [*body[:MONEY], *money, *body[MONEY:]], columns, right=tuple(range(1, len(headers))))


def _money(name: str, open_: Sequence[Column], language: str) -> tuple[str, ...]:
    """What one class of work costs by each way."""
    label = say(CLASS_WORDS[name], language) if name in CLASS_WORDS else name
    return "  " + label, *(dollars(dict(c.by_class)[name], whole=True, language=language) for c in open_)


def _all_in(option: Option, language: str) -> str:
    return dollars(option.all_in, whole=True, language=language)


def _price(option: Option, language: str) -> str:
    return dollars(option.price.total, whole=True, language=language)


def _yard(option: Option, language: str) -> str:
    return area(option.yard_sf, language) or speaker(language)("none")


ANSWERS: tuple[tuple[Say, Callable[[Option, str], str]], ...] = (
    (Say.of("all in, about"), _all_in),
    (Say.of("our price"), _price),
    (Say.of("never above"), most),
    (Say.of("days on site"), lambda option, language: days(option.days_on_site, language)),
    (Say.of("without drains"), drains),
    (Say.of("floor opened"), floors),
    (Say.of("yard dug"), _yard),
    (Say.of("old pipe left"), lambda option, language: feet(option.old_pipe_left_ft, language)),
)
"""The all-in price stands first: never a price alone."""
MONEY = 3
"""So many of these stand before what each class of work costs."""


def _differences(open_: Sequence[Column], columns: int, language: str) -> list[Row]:
    texts = [f"{term(c.method, language)}: {say(said, language)}" for c in open_ for said in c.differs]
    return [Row(line) for text in texts for line in indented(text, columns, by=0, hanging=2)]


def _deciding(compared: Comparison, columns: int, language: str) -> list[Row]:
    if not compared.decides:
        return []
    lines = [line for said in compared.decides for line in indented(sentence(said, language), columns, by=0)]
    return [Row(""), Row(speaker(language)("What decides"), "head"), *(Row(line) for line in lines)]


def _by_way(
    head: Say, open_: Sequence[Column], what: Callable[[Option, str], str], columns: int, language: str
) -> list[Row]:
    """One sentence a way, under a heading; nothing where no way has one."""
    cells = [(term(c.method, language), text) for c in open_ if c.option and (text := what(c.option, language))]
    if not cells:
        return []
    return [Row(""), Row(say(head, language), "head"), *(Row(text) for text in table(("", ""), cells, columns))]


def _risk(option: Option, language: str) -> str:
    return sentence(option.main_risk, language)


def _others(option: Option, language: str) -> str:
    """What is not ours: about how much, or that a price has to be asked."""
    speak = speaker(language)
    return "; ".join(
        f"{pick(language, o.text_en, o.text_es)}: "
        + (speak("ask for a price") if o.amount is None else dollars(o.amount, whole=True, language=language))
        for o in option.to_others
    )


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
