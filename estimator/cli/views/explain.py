"""A line of the quote in, the way it came about out: findings, rules, formulas with their inputs, cost lines with their cells.

Nothing is reckoned here: every figure was kept by the step that made it.
"""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from estimator.cli.views.lines_of_quote import find, line_id
from estimator.cli.views.needs import need_rows
from estimator.cli.views.options import all_repairs
from estimator.cli.views.reckoned import costs_rows, hours_rows, step_rows
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.cli.views.vocabulary import formula, term, unit
from estimator.cli.views.why import repair_place, verdict_rows
from estimator.cli.views.words import ENGLISH, at, dollars, finding, number, sentence
from estimator.model.add_on import AddOn
from estimator.model.judgement import Need
from estimator.model.offer import Option, Quote
from estimator.model.price import LineItem, TaskHours
from estimator.model.work import Input, Quantity, Repair, Takeoff
from estimator.tables.tables import Tables
from estimator.wording.say import pick, speaker, spoken


def rows(quote: Quote, item: str, columns: int, language: str = ENGLISH, tables: Tables | None = None) -> list[Row]:
    """From the line the homeowner reads down to notes and price cells; the tables name its quantities."""
    option, line = find(quote, item)
    add_on = next((a for a in option.add_ons if a.repair == line.repair), None)
    if add_on is not None:
        return _add_on(option, add_on, line, columns, language)
    return [
        *_head(option, line, columns, language),
        *_repair(quote, option, line, columns, language),
        *_quantities(option, line, asked_for(line, tables), columns, language),
        *hours_rows(_of(option.price.tasks, line), columns, language),
        *costs_rows(line, option.price.costs, columns, language),
        *_to_price(option, columns, language),
        *_rules(option, line, columns, language),
    ]


def _add_on(option: Option, add_on: AddOn, line: LineItem, columns: int, language: str) -> list[Row]:
    """An add-on: what it takes and the way to its own price, which stands beside that of the option."""
    head = speaker(language)("From cost to price, {what}", what=add_on.code)
    return [
        *_head(option, line, columns, language),
        Row(""),
        Row("  " + speaker(language)("What the homeowner may add; no repair needs it."), "dim"),
        *hours_rows(add_on.tasks, columns, language),
        *costs_rows(line, add_on.costs, columns, language),
        Row(""),
        Row(head, "head"),
        *step_rows(add_on.steps, columns, language),
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
    if not line.size_unit:
        return amount
    if line.billed == "lump":
        size = f"{number(line.size, 2, language)} {unit(line.size_unit, language)}"
        return speaker(language)("one price for {size}: {amount}", size=size, amount=amount)
    count = number(line.quantity, 2, language)
    return f"{count} {unit(line.unit, language)} × {dollars(line.unit_price, language=language)} = {amount}"


def _repair(quote: Quote, option: Option, line: LineItem, columns: int, language: str) -> list[Row]:
    """The repair this line belongs to, and the findings it answers with the log lines they came from."""
    repair = _its_repair(option, line)
    speak = speaker(language)
    out = [Row(""), Row(speak("Why it is there"), "head")]
    if repair is None:
        off = line.price_class == "discount"
        why = (
            speak("It comes off the rounded price, before sales tax.")
            if off
            else speak("Once a job, whatever is repaired.")
        )
        return [*out, Row("  " + why)]
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
    head = f"{quantity.name} = {number(quantity.value, 3, language)} {unit(quantity.unit, language)}"
    how = f" = {formula(quantity.formula, language)}" if quantity.formula else ""
    out = [Row(t) for t in indented(head + how, columns, hanging=4)]
    inputs = ", ".join(_input(one, language) for one in quantity.inputs)
    own = spoken(quantity.source, language)
    source = speaker(language)("source: {source}", source=own) if own else ""
    return [*out, *(Row(t, "dim") for text in (inputs, source) if text for t in indented(text, columns, by=6))]


def _input(one: Input, language: str) -> str:
    value = number(one.value, 3, language) if isinstance(one.value, float | int) else spoken(one.value, language)
    return f"{spoken(one.name, language)} {value} {unit(one.unit, language)}".rstrip()


def _to_price(option: Option, columns: int, language: str) -> list[Row]:
    """The steps from the direct cost of the option to its price."""
    speak = speaker(language)
    body = step_rows(option.price.steps, columns, language)
    head = Row(speak("From cost to price, option {letter}", letter=option.letter), "head")
    out = [Row(""), head, *body]
    if option.price.margin > Decimal(0):
        percent = number(100 * option.price.margin, language=language)
        out.append(Row("  " + speak("{percent}% of the price is left over cost", percent=percent)))
    return out
