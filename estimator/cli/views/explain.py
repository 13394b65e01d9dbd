"""A line of the quote in, the way it came about out: findings, rules, formulas with their inputs, cost lines with their cells.

Nothing is reckoned here: every figure was kept by the step that made it.
"""

import re
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.cli.problems import NO_ITEM
from estimator.cli.views.check import write_need
from estimator.cli.views.layout import Layout
from estimator.cli.views.options import all_repairs
from estimator.cli.views.reckoned import write_costs, write_hours, write_steps
from estimator.cli.views.why import write_repair, write_verdicts
from estimator.cli.views.words import Words
from estimator.model.add_on import AddOn
from estimator.model.judgement import Need
from estimator.model.line import Finding
from estimator.model.offer import Option, Quote
from estimator.model.price import LineItem
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.model.work import Input, Quantity, Repair
from estimator.pricing.add_on_price import line_of
from estimator.tables.tables import Tables


def write_line(out: Layout, quote: Quote, item: str, tables: Tables | None = None) -> None:
    """From the line the homeowner reads down to notes and price cells; the tables name its quantities."""
    option, line = find(quote, item)
    _head(out, option, line)
    add_on = next((a for a in option.add_ons if a.repair == line.repair), None)
    if add_on is not None:
        _add_on(out, add_on, line)
        return
    repair = next((r for r in all_repairs(option) if r.id == line.repair), None)
    out.heading(out.speak("Why it is there"))
    if repair is None:
        _without_repair(out, line)
    else:
        _repair(out, repair, [need for need in quote.diagnosis.needs if need.id in repair.answers])
    tasks = [task for task in option.price.tasks if (task.repair, task.work_item) == (line.repair, line.work_item)]
    _quantities(out, option, line, _asked_for(line, tables) | {task.quantity_name for task in tasks})
    write_hours(out, tasks)
    write_costs(out, line, option.price.costs)
    _to_price(out, option)
    if repair is not None and repair.verdicts:
        out.heading(out.speak("What the rules say of this {way}", way=out.term(repair.method)))
        write_verdicts(out, repair.verdicts, by=2)


def _add_on(out: Layout, add_on: AddOn, line: LineItem) -> None:
    """What it takes and the way to its own price, which stands beside that of the option."""
    out.line()
    out.line("  " + out.speak("What the homeowner may add; no repair needs it."), "dim")
    write_hours(out, add_on.tasks)
    write_costs(out, line, add_on.costs)
    out.heading(out.speak("From cost to price, {what}", what=add_on.code))
    write_steps(out, add_on.steps)


def _asked_for(line: LineItem, tables: Tables | None) -> set[str]:
    """The quantities that the work item and its recipes ask for."""
    if tables is None:
        return set()
    own = {item.quantity for item in tables.work_items if item.item == line.work_item}
    return own | {recipe.quantity for recipe in tables.recipes if recipe.work_item == line.work_item}


def _head(out: Layout, option: Option, line: LineItem) -> None:
    text = out.pick(line.text_en, line.text_es)
    out.paragraph(f"{line_id(option, line)}  {text}", hanging=4, look="head")
    out.paragraph(_amount(line, out), by=4)
    belongs = out.speak(
        "option {letter}, {work}, price class {price_class}, work item {item}",
        letter=option.letter,
        work=out.term(line.work_class),
        price_class=out.term(line.price_class),
        item=line.work_item,
    )
    out.paragraph(belongs, by=4)


def _amount(line: LineItem, words: Words) -> str:
    """How the amount of the line comes about: one price, or a count times a unit price."""
    amount = words.dollars(line.amount)
    if not line.size_unit:
        return amount
    if line.billed == "lump":
        size = f"{words.number(line.size, 2)} {words.unit(line.size_unit)}"
        return words.speak("one price for {size}: {amount}", size=size, amount=amount)
    count = f"{words.number(line.quantity, 2)} {words.unit(line.unit)}"
    return f"{count} × {words.dollars(line.unit_price)} = {amount}"


def _without_repair(out: Layout, line: LineItem) -> None:
    if line.price_class == "discount":
        out.line("  " + out.speak("It comes off the rounded price, before sales tax."))
    else:
        out.line("  " + out.speak("Once a job, whatever is repaired."))


def _repair(out: Layout, repair: Repair, answered: Sequence[Need]) -> None:
    """The repair this line belongs to, and the findings it answers with the log lines they came from."""
    write_repair(out, repair)
    for need in answered:
        write_need(out, need)
        for found in need.findings:
            out.paragraph(f"{out.stations(found.stretch)} {out.finding(found)}{_note(found)}", by=4, hanging=4)


def _note(found: Finding) -> str:
    """The log line that it came from."""
    origin = found.origin
    return f" ← {origin.file}:{origin.row}: {' '.join(origin.text.split())}" if origin.file else ""


def _quantities(out: Layout, option: Option, line: LineItem, names: set[str]) -> None:
    """The quantities its tasks and materials were reckoned from, each with formula and inputs."""
    takeoffs = [takeoff for takeoff in option.takeoffs if takeoff.repair.id == line.repair]
    wanted = [q for takeoff in takeoffs for q in takeoff.quantities if q.name in names]
    if wanted:
        out.heading(out.speak("How much"))
    for quantity in wanted:
        _quantity(out, quantity)
    for said in dict.fromkeys(said for takeoff in takeoffs for said in takeoff.assumptions):
        out.paragraph(out.speak("Assumed: {what}", what=out.sentence(said)), by=2, hanging=4)


def _quantity(out: Layout, quantity: Quantity) -> None:
    how = f" = {out.formula(quantity.formula)}" if quantity.formula else ""
    value = f"{out.number(quantity.value, 3)} {out.unit(quantity.unit)}"
    out.paragraph(f"{quantity.name} = {value}{how}", by=2, hanging=4)
    if quantity.inputs:
        out.paragraph(", ".join(_input(one, out) for one in quantity.inputs), by=6, look="dim")
    if quantity.source:
        out.paragraph(out.speak("source: {source}", source=out.spoken(quantity.source)), by=6, look="dim")


def _input(one: Input, words: Words) -> str:
    value = words.number(one.value, 3) if isinstance(one.value, float | int) else words.spoken(one.value)
    return f"{words.spoken(one.name)} {value} {words.unit(one.unit)}".rstrip()


def _to_price(out: Layout, option: Option) -> None:
    """The steps from the direct cost of the option to its price."""
    out.heading(out.speak("From cost to price, option {letter}", letter=option.letter))
    write_steps(out, option.price.steps)
    if option.price.margin > Decimal(0):
        percent = out.number(100 * option.price.margin)
        out.line("  " + out.speak("{percent}% of the price is left over cost", percent=percent))


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
