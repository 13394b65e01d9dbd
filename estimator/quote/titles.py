"""The ways an option uses in, the weightiest first; a title in few plain words out, and titles that differ where options do.

A title is the firm's own for the way most of the money goes to; the others are named after it in a word each.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from estimator.model.line import Line
from estimator.model.offer import Option
from estimator.model.say import Feet, FromTable, Say
from estimator.model.work import all_repairs
from estimator.quote.where import on_paper
from estimator.tables.rows import MethodRow
from estimator.wording.plain import LINES, in_plain_words
from estimator.works.methods import known, record_of


def title(methods: Sequence[MethodRow]) -> Say:
    """`Replace the line by open trench, plus lining`, or the first way's title alone where all come to the same."""
    first = FromTable(methods[0].title_en, methods[0].title_es)
    others = _others([m.method for m in methods])
    return Say.of("{title}, plus {ways}", title=first, ways=others) if others else Say.of("{title}", title=first)


def _others(methods: Sequence[str]) -> tuple[Say, ...]:
    words = dict.fromkeys(record.short for m in methods if (record := known(m)))
    first = known(methods[0])
    return tuple(word for word in words if first is None or word != first.short)


def under_title(methods: Sequence[MethodRow]) -> Say:
    """The line under the title, and the other ways that belong to it."""
    first = FromTable(methods[0].under_en, methods[0].under_es)
    others = _others([m.method for m in methods])
    return Say.of("{first} Plus {ways}.", first=first, ways=others) if others else Say.of("{first}", first=first)


def told_apart(options: Sequence[Option], lines: Sequence[Line]) -> tuple[Option, ...]:
    """Options under one title get what differs after it: which line is done how, else how much of it is new, else a number."""
    by_name = {line.name: line for line in lines}
    return tuple(replace(o, title=_apart(o, [x for x in options if _alike(x, o)], by_name)) for o in options)


def _alike(one: Option, other: Option) -> bool:
    """The same title would be read over both; a name the estimator gave stands in its place."""
    return one.title == other.title and one.name == other.name


def _apart(option: Option, same: Sequence[Option], lines: Mapping[str, Line]) -> Say:
    if len(same) < 2:
        return option.title
    for what in (_lines, lambda o: _lengths(o, lines)):
        said = [what(o) for o in same]
        if len(set(said)) == len(said):
            return Say.of("{title} ({what})", title=option.title, what=what(option))
    return Say.of("{title} ({what})", title=option.title, what=str(same.index(option) + 1))


def _lines(option: Option) -> tuple[Say, ...]:
    """`tunnel on the main line and lining on the kitchen line`."""
    return tuple(
        Say.of("{ways} on the {line}", ways=ways, line=in_plain_words(LINES, line))
        for line, ways in _by_line(option).items()
    )


def _by_line(option: Option) -> dict[str, tuple[Say, ...]]:
    out: dict[str, dict[Say, None]] = {}
    for repair in all_repairs(option.scope.repairs):
        out.setdefault(repair.line, {}).setdefault(record_of(repair.method).short)
    return {line: tuple(ways) for line, ways in out.items()}


def _lengths(option: Option, lines: Mapping[str, Line]) -> tuple[Say, ...]:
    """New pipe and lining apart, each the sum of the lengths that stand under the title."""
    lined = made = 0.0
    new_ft = {t.repair.id: t.value("reroute_ft") for t in option.takeoffs}
    for repair in all_repairs(option.scope.repairs):
        record = record_of(repair.method)
        length = new_ft.get(repair.id, 0.0) if record.goes_round else repair.stretch.length_ft
        if not record.renews or not length:
            continue
        shown = on_paper(lines[repair.line], length)
        lined, made = (lined + shown, made) if record.lined else (lined, made + shown)
    said = (
        (made, Say.of("{length} of new pipe", length=Feet(round(made, 2)))),
        (lined, Say.of("{length} lined", length=Feet(round(lined, 2)))),
    )
    return tuple(text for ft, text in said if ft)
