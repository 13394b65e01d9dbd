"""An option's priced lines in; the line items a homeowner asks about out: alike ones as one, small ones folded, the sums the same."""

from dataclasses import replace
from decimal import Decimal

from estimator.model.offer import Option
from estimator.model.price import LineItem
from estimator.model.work import all_repairs
from estimator.papers.letter import Letter
from estimator.papers.sizes import size
from estimator.quote.where import on_paper
from estimator.wording.numbers import feet, money
from estimator.wording.plain import CLASSES, UNITS, in_plain_words

MOST_LINES = 12
"""Line items on an option's page; what is more is folded, the smallest first."""
STANDS_ALONE = ("allowance", "discount", "pass-through")
TAKEN_OFF = ""


class LinesDoNotAdd(ValueError):
    """The lines of an option do not add up to its total: a fault of the program, never printed as a quote."""


Item = tuple[LineItem, str]
"""A line with its text."""


def checked(option: Option) -> None:
    """Errors: LinesDoNotAdd where lines and tax are not the total."""
    price = option.price
    lines = sum((line.amount for line in price.lines), Decimal(0))
    if lines + price.tax != price.total:
        raise LinesDoNotAdd(f"option {option.letter}: lines {lines} and tax {price.tax} are not {price.total}")


def by_class(letter: Letter, option: Option) -> list[list[Item]]:
    """Return the items of each class that has lines, about `MOST_LINES` over all; sums as priced."""
    checked(option)
    lines = as_told(letter, option)
    found = [(c, _gathered(letter, [x for x in lines if x.work_class == c])) for c in (*CLASSES, TAKEN_OFF)]
    classes = {name: items for name, items in found if items}
    spare = sum(map(len, classes.values())) - MOST_LINES
    for name, items in classes.items() if spare > 0 else ():
        classes[name] = _folded(letter, name, items, _keep(classes, name))
    return list(classes.values())


def as_told(letter: Letter, option: Option) -> list[LineItem]:
    """Return the priced lines, the feet of a lump sum in the step in which the feet of its pipe are told; amounts as they are."""
    pipes = {r.id: letter.quote.job.line(r.line) for r in all_repairs(option.scope.repairs) if r.line}
    return [
        replace(x, size=on_paper(pipes[x.repair], x.size))
        if x.size_unit == "ft" and x.billed != "measured" and x.repair in pipes
        else x
        for x in option.price.lines
    ]


def _keep(classes: dict[str, list[Item]], name: str) -> int:
    """How many items of a class stay, in proportion to how many it has; two at least, one of them the folded rest."""
    whole = sum(map(len, classes.values()))
    return max(2, MOST_LINES * len(classes[name]) // whole)


def _folded(letter: Letter, work_class: str, items: list[Item], most: int) -> list[Item]:
    """The largest items of a class, and the rest as one. What has to stand alone does."""
    alone = [item for item in items if item[0].price_class in STANDS_ALONE]
    rest = sorted((item for item in items if item not in alone), key=lambda item: -item[0].amount)
    room = max(1, most - len(alone) - 1)
    kept, small = rest[:room], rest[room:]
    if len(small) < 2:
        return items
    first = small[-1][0]
    amount = sum((line.amount for line, _ in small), Decimal(0))
    one = replace(
        first,
        billed="lump",
        size=1.0,
        size_unit="job",
        quantity=Decimal(1),
        unit="job",
        unit_price=amount,
        amount=amount,
    )
    stays = [item for item in items if item in kept or item in alone]
    text = letter.speak("{phase}: {count} smaller items", phase=in_plain_words(CLASSES, work_class), count=len(small))
    return [*stays, (one, text)]


def short(text: str) -> str:
    """Return the first clause of a line's text; what follows it stands among what is included and what is not."""
    for stop in (". ", ": ", "; "):
        text = text.split(stop)[0]
    return text.rstrip(".")


def _gathered(letter: Letter, lines: list[LineItem]) -> list[Item]:
    """The lines with their texts; the same work on several pipes is one line.

    Lump sums are added up; measured lines only where one unit price holds for all.
    """
    groups: dict[object, list[LineItem]] = {}
    for line in lines:
        groups.setdefault(_alike(line), []).append(line)
    return [(_sum_of(same), short(letter.text(same[0]))) for same in groups.values()]


def _alike(line: LineItem) -> tuple[object, ...]:
    price = line.unit_price if line.billed == "measured" else None
    alone = line.id if line.price_class in STANDS_ALONE else ""
    return line.work_item, line.text_en, line.size_unit, price, alone


def _sum_of(same: list[LineItem]) -> LineItem:
    first, amount = same[0], sum((line.amount for line in same), Decimal(0))
    if len(same) == 1:
        return first
    whole = sum(line.size for line in same)
    if first.billed == "measured":
        return replace(first, size=whole, quantity=sum((line.quantity for line in same), Decimal(0)), amount=amount)
    return replace(first, size=whole, unit_price=amount, amount=amount)


def how_much(letter: Letter, line: LineItem) -> str:
    """The size of a lump sum, nothing where there is nothing to count; of a measured line its count and unit price."""
    speak = letter.speak
    if line.billed == "measured":
        unit = letter.say(in_plain_words(UNITS, line.unit)) if line.unit != "each" else ""
        count = size(letter, float(line.quantity), line.unit) if unit else f"{line.quantity.normalize():f}"
        return speak("{count} × {price}", count=count, price=money(line.unit_price, letter.language))
    if line.size_unit in ("job", "") or (line.size_unit == "each" and line.size == 1):
        return ""
    if line.size_unit == "each":
        return f"{line.size:g}"
    if line.size_unit == "ft":
        return feet(line.size, letter.language)
    return size(letter, line.size, line.size_unit)
