"""A line of the quote in, the way it came about out: findings, rules, formulas with their inputs, cost lines with their cells.

Nothing is reckoned here: every figure was kept by the step that made it.
"""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from estimator.cli.problems import NO_ITEM
from estimator.cli.views.options import all_repairs
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.why import need_rows, repair_place, verdict_rows
from estimator.cli.views.words import ENGLISH, at, dollars, finding, number, sentence
from estimator.model.judgement import Need
from estimator.model.offer import Option, Quote
from estimator.model.price import CostLine, LineItem, TaskHours
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.model.work import Input, Quantity, Repair, Takeoff
from estimator.tables.tables import Tables
from estimator.wording.say import pick, say, speaker


def find(quote: Quote, item: str) -> tuple[Option, LineItem]:
    """The option and line of an id such as A3. Errors: CannotGoOn when there is none, with those there are."""
    lines = [(option, line) for option in quote.options for line in option.price.lines]
    for option, line in lines:
        if line_id(option, line) == item.strip().upper():
            return option, line
    numbered = [(o, sorted(o.price.lines, key=_number)) for o in quote.options if o.price.lines]
    ends = [(o, lines[0], lines[-1]) for o, lines in numbered]
    items = ", ".join(f"{line_id(o, first)} to {line_id(o, last)}" for o, first, last in ends)
    raise CannotGoOn(NO_ITEM(Place(), item=item, items=items or "none: nothing is offered"))


def _number(line: LineItem) -> int:
    """The line's number on the quote: they are numbered in the order they are printed, not in that they were priced."""
    return int(line.id.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ") or 0)


def line_id(option: Option, line: LineItem) -> str:
    """`A3`: the option's letter and the line's number."""
    return line.id.upper() if line.id[:1].isalpha() else f"{option.letter}{line.id}"


def rows(quote: Quote, item: str, columns: int, language: str = ENGLISH, tables: Tables | None = None) -> list[Row]:
    """From the line the homeowner reads down to notes and price cells; the tables name its quantities."""
    option, line = find(quote, item)
    return [
        *_head(option, line, columns, language),
        *_repair(quote, option, line, columns, language),
        *_quantities(option, line, asked_for(line, tables), columns, language),
        *_hours(_of(option.price.tasks, line), columns, language),
        *_costs(line, option, columns, language),
        *_to_price(option, columns, language),
        *_rules(option, line, columns, language),
    ]


def asked_for(line: LineItem, tables: Tables | None) -> set[str]:
    """The quantities that the work item and its recipes ask for."""
    if tables is None:
        return set()
    own = {item.quantity for item in tables.work_items if item.item == line.work_item}
    return own | {recipe.quantity for recipe in tables.recipes if recipe.work_item == line.work_item}


def _head(option: Option, line: LineItem, columns: int, language: str) -> list[Row]:
    speak = speaker(language)
    text = pick(language, line.text_en, line.text_es)
    belongs = speak(
        "option {letter}, {work}, price class {price_class}, work item {item}",
        letter=option.letter,
        work=term(line.work_class, language),
        price_class=term(line.price_class, language),
        item=line.work_item,
    )
    return [
        *(Row(t, "head") for t in indented(f"{line_id(option, line)}  {text}", columns, by=0, hanging=4)),
        *(Row(t) for t in indented(_sum(line, language), columns, by=4)),
        *(Row(t) for t in indented(belongs, columns, by=4)),
    ]


def _sum(line: LineItem, language: str) -> str:
    """How the amount of the line comes about: one price, or a count times a unit price."""
    amount = dollars(line.amount, language=language)
    if line.billed == "lump":
        size = f"{number(line.size, 2, language)} {line.size_unit}"
        return speaker(language)("one price for {size}: {amount}", size=size, amount=amount)
    count = number(line.quantity, 2, language)
    return f"{count} {line.unit} × {dollars(line.unit_price, language=language)} = {amount}"


def _repair(quote: Quote, option: Option, line: LineItem, columns: int, language: str) -> list[Row]:
    """The repair this line belongs to, and the findings it answers with the log lines they came from."""
    repair = _its_repair(option, line)
    speak = speaker(language)
    out = [Row(""), Row(speak("Why it is there"), "head")]
    if repair is None:
        return [*out, Row("  " + speak("Once a job, whatever is repaired."))]
    out += [Row(t) for t in indented(repair_place(repair, language), columns)]
    out += [Row(t) for why in repair.because for t in indented(sentence(why, language), columns, by=4, hanging=2)]
    for need in _answered(quote, repair):
        out += [*need_rows(need, columns, language), *_notes(need, columns, language)]
    return out


def _its_repair(option: Option, line: LineItem) -> Repair | None:
    return next((r for r in all_repairs(option) if r.id == line.repair), None)


def _rules(option: Option, line: LineItem, columns: int, language: str) -> list[Row]:
    repair = _its_repair(option, line)
    if repair is None or not repair.verdicts:
        return []
    said = speaker(language)("What the rules say of this {way}", way=term(repair.method, language))
    head = Row(said, "head")
    return [Row(""), head, *verdict_rows(repair.verdicts, columns, language, by=2)]


def _answered(quote: Quote, repair: Repair) -> list[Need]:
    return [need for need in quote.diagnosis.needs if need.id in repair.answers]


def _notes(need: Need, columns: int, language: str) -> Iterable[Row]:
    for found in need.findings:
        came_from = found.origin
        note = " ".join(came_from.text.split())
        where = f" ← {came_from.file}:{came_from.row}: {note}" if came_from.file else ""
        text = f"{at(found.stretch, language)} {speaker(language)('ft')} {finding(found, language)}{where}"
        yield from (Row(t) for t in indented(text, columns, by=4, hanging=4))


def _takeoffs(option: Option, line: LineItem) -> list[Takeoff]:
    return [takeoff for takeoff in option.takeoffs if takeoff.repair.id == line.repair]


def _of(tasks: Sequence[TaskHours], line: LineItem) -> list[TaskHours]:
    return [task for task in tasks if task.repair == line.repair and task.work_item == line.work_item]


def _quantities(option: Option, line: LineItem, asked: set[str], columns: int, language: str) -> list[Row]:
    """The quantities its tasks and materials were reckoned from, each with formula and inputs."""
    names = asked | {task.quantity_name for task in _of(option.price.tasks, line)}
    held = [q for takeoff in _takeoffs(option, line) for q in takeoff.quantities]
    wanted = [q for q in held if q.name in names]
    out = [Row(""), Row(speaker(language)("How much"), "head")] if wanted else []
    for quantity in wanted:
        out += _quantity(quantity, columns, language)
    for said in dict.fromkeys(said for takeoff in _takeoffs(option, line) for said in takeoff.assumptions):
        text = speaker(language)("Assumed: {what}", what=sentence(said, language))
        out += [Row(t) for t in indented(text, columns, hanging=4)]
    return out


def _quantity(quantity: Quantity, columns: int, language: str) -> list[Row]:
    head = f"{quantity.name} = {number(quantity.value, 3, language)} {quantity.unit}"
    formula = f" = {quantity.formula}" if quantity.formula else ""
    out = [Row(t) for t in indented(head + formula, columns, hanging=4)]
    inputs = ", ".join(_input(one, language) for one in quantity.inputs)
    source = speaker(language)("source: {source}", source=quantity.source) if quantity.source else ""
    return [*out, *(Row(t, "dim") for text in (inputs, source) if text for t in indented(text, columns, by=6))]


def _input(one: Input, language: str) -> str:
    value = number(one.value, 3, language) if isinstance(one.value, float | int) else one.value
    return f"{one.name} {value} {one.unit}".rstrip()


def _hours(tasks: Sequence[TaskHours], columns: int, language: str) -> list[Row]:
    if not tasks:
        return []
    speak = speaker(language)
    cells = [_task(task, language) for task in tasks]
    headers = (
        speak("task"), speak("crew"), speak("quantity"), speak("h each"), speak("slowed by"), speak("hours"),
        speak("cell"),
    )  # fmt: skip
    hours = number(sum(t.hours for t in tasks), 2, language)
    total = "  " + speak("{hours} crew-hours in all, unrounded", hours=hours)
    body = [Row(t) for t in table(headers, cells, columns, right=(3, 5))]
    return [Row(""), Row(speak("Hours"), "head"), *body, Row(total)]


def _task(task: TaskHours, language: str) -> tuple[str, ...]:
    return (
        task.task,
        task.crew,
        f"{number(task.quantity, 2, language)} {task.unit}",
        number(task.likely, 3, language),
        _factor(task, language),
        number(task.hours, 2, language),
        task.cell,
    )


def _factor(task: TaskHours, language: str) -> str:
    each = speaker(language)("{count} each", count=number(task.per, 3, language))
    per = f"{each}; " if task.per != 1 else ""
    if task.factor == 1:
        return per.rstrip("; ")
    return f"{per}× {number(task.factor, 3, language)} ({', '.join(f.replace('_', ' ') for f in task.factors)})"


def _costs(line: LineItem, option: Option, columns: int, language: str) -> list[Row]:
    """The cost lines this line has a share in, with the share."""
    shares = [(cost, _share(cost, line, language)) for cost in option.price.costs]
    cells = [_cost(cost, share, language) for cost, share in shares if share is not None]
    if not cells:
        return []
    speak = speaker(language)
    headers = (speak("cost"), speak("what"), speak("reckoned"), speak("amount"), speak("of it"), speak("cell"))
    body = [Row(t) for t in table(headers, cells, columns, right=(3, 4))]
    own = "  " + speak("its share of all cost: {amount}", amount=dollars(line.cost_share, language=language))
    return [Row(""), Row(speak("What it costs"), "head"), *body, Row(own)]


def _cost(cost: CostLine, share: str, language: str) -> tuple[str, ...]:
    reckoned = f"{number(cost.quantity, 2, language)} {cost.unit} × {number(cost.rate, 2, language)}"
    if cost.in_overhead:
        reckoned = speaker(language)("our own, paid for in the overhead")
    return term(cost.part, language), cost.text, reckoned, dollars(cost.amount, language=language), share, cost.cell


def _share(cost: CostLine, line: LineItem, language: str) -> str | None:
    """How much of a cost line lies on this line, in percent; None for nothing."""
    whole = sum(weight for _, _, weight in cost.shares)
    own = sum(w for repair, item, w in cost.shares if repair == line.repair and item == line.work_item)
    return f"{number(100 * own / whole, language=language)} %" if own > 0 and whole > 0 else None


def _to_price(option: Option, columns: int, language: str) -> list[Row]:
    """The steps from the direct cost of the option to its price."""
    speak = speaker(language)
    cells = [
        (_step(s.text, language), term(s.formula, language), dollars(s.amount, language=language))
        for s in option.price.steps
    ]
    headers = (speak("step"), speak("formula"), speak("amount"))
    body = [Row(t) for t in table(headers, cells, columns, right=(2,))] if cells else []
    head = Row(speak("From cost to price, option {letter}", letter=option.letter), "head")
    out = [Row(""), head, *body]
    if option.price.margin > Decimal(0):
        percent = number(100 * option.price.margin, language=language)
        out.append(Row("  " + speak("{percent} % of the price is left over cost", percent=percent)))
    return out


CLASS_STEPS: tuple[tuple[str, Say], ...] = (
    ("cost of class ", Say.of("cost of class {price_class}")),
    ("contingency on ", Say.of("contingency on {price_class}")),
    ("price of class ", Say.of("price of class {price_class}")),
)
"""Steps that stand once for each price class."""


def _step(text: str, language: str) -> str:
    for begins, said in CLASS_STEPS:
        if text.startswith(begins):
            return say(Say.of(said.text, price_class=term(text.removeprefix(begins), language)), language)
    return term(text, language)
