"""An id as it stands on the quote in, such as A3 or A:cleanout; the option and the line it means, out."""

import re
from dataclasses import replace

from estimator.cli.problems import NO_ITEM
from estimator.model.add_on import AddOn
from estimator.model.offer import Option, Quote
from estimator.model.price import LineItem
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.pricing.add_on_price import line_of

MOST = 60  # more lines than this are no line of a quote, but a slip


def each(item: str) -> list[str]:
    """The ids that one line on paper stands for.

    >>> each("A6–8"), each("a:cleanout"), each("B3")
    (['A6', 'A7', 'A8'], ['a:cleanout'], ['B3'])
    """
    found = re.fullmatch(r"\s*([A-Za-z])(\d+)\s*[-–—]\s*[A-Za-z]?(\d+)\s*", item)
    if found is None or not int(found[2]) <= int(found[3]) < int(found[2]) + MOST:
        return [item]
    return [f"{found[1].upper()}{n}" for n in range(int(found[2]), int(found[3]) + 1)]


def find(quote: Quote, item: str) -> tuple[Option, LineItem]:
    """The option and line of an id such as A3. Errors: CannotGoOn when there is none, with those there are."""
    lines = [(option, line) for option in quote.options for line in option.price.lines]
    for option, line in lines:
        if line_id(option, line) == item.strip().upper():
            return option, line
    offered = [(option, _as_line(option, add_on)) for option in quote.options for add_on in option.add_ons]
    for option, line in offered:
        if line.id.upper() == item.strip().upper():
            return option, line
    numbered = [(o, sorted(o.price.lines, key=_number)) for o in quote.options if o.price.lines]
    ends = [(o, lines[0], lines[-1]) for o, lines in numbered]
    items = ", ".join(f"{line_id(o, first)} to {line_id(o, last)}" for o, first, last in ends)
    raise CannotGoOn(NO_ITEM(Place(), item=item, items=items or Say.of("none: nothing is offered")))


def _number(line: LineItem) -> int:
    """The line's number on the quote: they are numbered in the order they are printed, not in that they were priced."""
    return int(line.id.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ") or 0)


def _as_line(option: Option, add_on: AddOn) -> LineItem:
    """An add-on by `A:` and its short name, whether it was chosen or not."""
    line_id = f"{option.letter}:{add_on.code}"
    return replace(line_of(add_on), id=line_id, text_en=add_on.text_en, text_es=add_on.text_es)


def line_id(option: Option, line: LineItem) -> str:
    """`A3`: the option's letter and the line's number."""
    if ":" in line.id:
        return line.id
    return line.id.upper() if line.id[:1].isalpha() else f"{option.letter}{line.id}"
