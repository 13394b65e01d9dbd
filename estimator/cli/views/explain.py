"""A line of the quote in, the way it came about out: findings, rules, formulas with their inputs, cost lines with their cells.

Nothing is reckoned here: every figure was kept by the step that made it.
"""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from estimator.cli.problems import NO_ITEM
from estimator.cli.views.options import all_repairs
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.why import need_rows, verdict_rows
from estimator.cli.views.words import at, dollars, finding, number, sentence
from estimator.model.judgement import Need
from estimator.model.offer import Option, Quote
from estimator.model.price import CostLine, LineItem, TaskHours
from estimator.model.problem import CannotGoOn, Place
from estimator.model.work import Quantity, Repair, Takeoff
from estimator.tables.tables import Tables
from estimator.wording.say import pick


def find(quote: Quote, item: str) -> tuple[Option, LineItem]:
    """The option and line of an id such as A3. Errors: CannotGoOn when there is none, with those there are."""
    lines = [(option, line) for option in quote.options for line in option.price.lines]
    for option, line in lines:
        if line_id(option, line) == item.strip().upper():
            return option, line
    ends = [(o, o.price.lines[0], o.price.lines[-1]) for o in quote.options if o.price.lines]
    items = ", ".join(f"{line_id(o, first)} to {line_id(o, last)}" for o, first, last in ends)
    raise CannotGoOn(NO_ITEM(Place(), item=item, items=items or "none: nothing is offered"))


def line_id(option: Option, line: LineItem) -> str:
    """`A3`: the option's letter and the line's number."""
    return line.id.upper() if line.id[:1].isalpha() else f"{option.letter}{line.id}"


def rows(quote: Quote, item: str, columns: int, language: str = "en_US", tables: Tables | None = None) -> list[Row]:
    """From the line the homeowner reads down to notes and price cells; the tables name its quantities."""
    option, line = find(quote, item)
    return [
        *_head(option, line, columns, language),
        *_repair(quote, option, line, columns, language),
        *_quantities(option, line, asked_for(line, tables), columns),
        *_hours(_of(option.price.tasks, line), columns),
        *_costs(line, option, columns),
        *_to_price(option, columns),
        *_rules(option, line, columns, language),
    ]


def asked_for(line: LineItem, tables: Tables | None) -> set[str]:
    """The quantities that the work item and its recipes ask for."""
    if tables is None:
        return set()
    own = {item.quantity for item in tables.work_items if item.item == line.work_item}
    return own | {recipe.quantity for recipe in tables.recipes if recipe.work_item == line.work_item}


def _head(option: Option, line: LineItem, columns: int, language: str) -> list[Row]:
    text = pick(language, line.text_en, line.text_es)
    size = f"{number(line.size, 2)} {line.size_unit}"
    sum_ = f"{number(line.quantity, 2)} {line.unit} × {dollars(line.unit_price)} = {dollars(line.amount)}"
    belongs = f"option {option.letter}, {line.work_class}, price class {line.price_class}, work item {line.work_item}"
    if line.billed == "lump":
        sum_ = f"one price for {size}: {dollars(line.amount)}"
    return [
        *(Row(t, "head") for t in indented(f"{line_id(option, line)}  {text}", columns, by=0, hanging=4)),
        *(Row(t) for t in indented(sum_, columns, by=4)),
        *(Row(t) for t in indented(belongs, columns, by=4)),
    ]


def _repair(quote: Quote, option: Option, line: LineItem, columns: int, language: str) -> list[Row]:
    """The repair this line belongs to, and the findings it answers with the log lines they came from."""
    repair = _its_repair(option, line)
    out = [Row(""), Row("Why it is there", "head")]
    if repair is None:
        return [*out, Row("  Once a job, whatever is repaired.")]
    out += [Row(t) for t in indented(f"{repair.method}, {repair.line} {at(repair.stretch)} ft", columns)]
    out += [Row(t) for why in repair.because for t in indented(sentence(why, language), columns, by=4, hanging=2)]
    return [
        *out,
        *(row for need in _answered(quote, repair) for row in (*need_rows(need, columns), *_notes(need, columns))),
    ]


def _its_repair(option: Option, line: LineItem) -> Repair | None:
    return next((r for r in all_repairs(option) if r.id == line.repair), None)


def _rules(option: Option, line: LineItem, columns: int, language: str) -> list[Row]:
    repair = _its_repair(option, line)
    if repair is None or not repair.verdicts:
        return []
    head = Row(f"What the rules say of this {repair.method}", "head")
    return [Row(""), head, *verdict_rows(repair.verdicts, columns, language, by=2)]


def _answered(quote: Quote, repair: Repair) -> list[Need]:
    return [need for need in quote.diagnosis.needs if need.id in repair.answers]


def _notes(need: Need, columns: int) -> Iterable[Row]:
    for found in need.findings:
        came_from = found.origin
        note = " ".join(came_from.text.split())
        where = f" ← {came_from.file}:{came_from.row}: {note}" if came_from.file else ""
        text = f"{at(found.stretch)} ft {finding(found)}{where}"
        yield from (Row(t) for t in indented(text, columns, by=4, hanging=4))


def _takeoffs(option: Option, line: LineItem) -> list[Takeoff]:
    return [takeoff for takeoff in option.takeoffs if takeoff.repair.id == line.repair]


def _of(tasks: Sequence[TaskHours], line: LineItem) -> list[TaskHours]:
    return [task for task in tasks if task.repair == line.repair and task.work_item == line.work_item]


def _quantities(option: Option, line: LineItem, asked: set[str], columns: int) -> list[Row]:
    """The quantities its tasks and materials were reckoned from, each with formula and inputs."""
    names = asked | {task.quantity_name for task in _of(option.price.tasks, line)}
    held = [q for takeoff in _takeoffs(option, line) for q in takeoff.quantities]
    wanted = [q for q in held if q.name in names]
    out = [Row(""), Row("How much", "head")] if wanted else []
    for quantity in wanted:
        out += _quantity(quantity, columns)
    for said in dict.fromkeys(said for takeoff in _takeoffs(option, line) for said in takeoff.assumptions):
        out += [Row(t) for t in indented(f"Assumed: {sentence(said)}", columns, hanging=4)]
    return out


def _quantity(quantity: Quantity, columns: int) -> list[Row]:
    head = f"{quantity.name} = {number(quantity.value, 3)} {quantity.unit}"
    formula = f" = {quantity.formula}" if quantity.formula else ""
    out = [Row(t) for t in indented(head + formula, columns, hanging=4)]
    inputs = ", ".join(
        f"{i.name} {number(i.value, 3) if isinstance(i.value, float | int) else i.value} {i.unit}".rstrip()
        for i in quantity.inputs
    )
    source = f"source: {quantity.source}" if quantity.source else ""
    return [*out, *(Row(t, "dim") for text in (inputs, source) if text for t in indented(text, columns, by=6))]


def _hours(tasks: Sequence[TaskHours], columns: int) -> list[Row]:
    if not tasks:
        return []
    cells = [
        (
            t.task,
            t.crew,
            f"{number(t.quantity, 2)} {t.unit}",
            f"{number(t.likely, 3)}",
            _factor(t),
            number(t.hours, 2),
            t.cell,
        )
        for t in tasks
    ]
    headers = ("task", "crew", "quantity", "h each", "slowed by", "hours", "cell")
    total = f"  {number(sum(t.hours for t in tasks), 2)} crew-hours in all, unrounded"
    return [Row(""), Row("Hours", "head"), *(Row(t) for t in table(headers, cells, columns, right=(3, 5))), Row(total)]


def _factor(task: TaskHours) -> str:
    per = f"{number(task.per, 3)} each; " if task.per != 1 else ""
    if task.factor == 1:
        return per.rstrip("; ")
    return f"{per}× {number(task.factor, 3)} ({', '.join(f.replace('_', ' ') for f in task.factors)})"


def _costs(line: LineItem, option: Option, columns: int) -> list[Row]:
    """The cost lines this line has a share in, with the share."""
    cells = []
    for cost in option.price.costs:
        share = _share(cost, line)
        if share is not None:
            reckoned = f"{number(cost.quantity, 2)} {cost.unit} × {number(cost.rate, 2)}"
            cells.append((cost.part, cost.text, reckoned, dollars(cost.amount), share, cost.cell))
    if not cells:
        return []
    headers = ("cost", "what", "reckoned", "amount", "of it", "cell")
    body = [Row(t) for t in table(headers, cells, columns, right=(3, 4))]
    return [Row(""), Row("What it costs", "head"), *body, Row(f"  its share of all cost: {dollars(line.cost_share)}")]


def _share(cost: CostLine, line: LineItem) -> str | None:
    """How much of a cost line lies on this line, in percent; None for nothing."""
    whole = sum(weight for _, _, weight in cost.shares)
    own = sum(w for repair, item, w in cost.shares if repair == line.repair and item == line.work_item)
    return f"{number(100 * own / whole)} %" if own > 0 and whole > 0 else None


def _to_price(option: Option, columns: int) -> list[Row]:
    """The steps from the direct cost of the option to its price."""
    cells = [(step.text, step.formula, dollars(step.amount)) for step in option.price.steps]
    body = [Row(t) for t in table(("step", "formula", "amount"), cells, columns, right=(2,))] if cells else []
    margin = (
        f"  {number(100 * option.price.margin)} % of the price is left over cost"
        if option.price.margin > Decimal(0)
        else ""
    )
    return [
        Row(""),
        Row(f"From cost to price, option {option.letter}", "head"),
        *body,
        *([Row(margin)] if margin else []),
    ]
