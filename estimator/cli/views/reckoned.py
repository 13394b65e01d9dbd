"""Hours, cost lines and the steps to a price in, the tables of a terminal that show how each was reckoned, out."""

from collections.abc import Iterable, Sequence

from estimator.cli.views.screen import Row
from estimator.cli.views.table import table
from estimator.cli.views.vocabulary import term, unit
from estimator.cli.views.words import dollars, number
from estimator.model.price import CostLine, LineItem, Step, TaskHours
from estimator.model.say import Say
from estimator.wording.say import pick, say, speaker


def hours_rows(tasks: Sequence[TaskHours], columns: int, language: str) -> list[Row]:
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
        term(task.task, language),
        term(task.crew, language),
        f"{number(task.quantity, 2, language)} {unit(task.unit, language)}",
        number(task.each, 3, language),
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


def costs_rows(line: LineItem, costs: Iterable[CostLine], columns: int, language: str) -> list[Row]:
    """The cost lines this line has a share in, with the share."""
    shares = [(cost, _share(cost, line, language)) for cost in costs]
    cells = [_cost(cost, share, language) for cost, share in shares if share is not None]
    if not cells:
        return []
    speak = speaker(language)
    headers = (speak("cost"), speak("what"), speak("reckoned"), speak("amount"), speak("of it"), speak("cell"))
    body = [Row(t) for t in table(headers, cells, columns, right=(3, 4))]
    own = "  " + speak("its share of all cost: {amount}", amount=dollars(line.cost_share, language=language))
    return [Row(""), Row(speak("What it costs"), "head"), *body, Row(own)]


def _cost(cost: CostLine, share: str, language: str) -> tuple[str, ...]:
    reckoned = f"{number(cost.quantity, 2, language)} {unit(cost.unit, language)} × {number(cost.rate, 2, language)}"
    crew = cost.text.removeprefix("crew ") if cost.part == "labor" else ""
    what = (
        speaker(language)("crew {letter}", letter=term(crew, language))
        if crew
        else pick(language, cost.text, cost.text_es)
    )
    if cost.in_overhead:
        reckoned = speaker(language)("our own, paid for in the overhead")
    return term(cost.part, language), what, reckoned, dollars(cost.amount, language=language), share, cost.cell


def _share(cost: CostLine, line: LineItem, language: str) -> str | None:
    """How much of a cost line lies on this line, in percent; None for nothing."""
    whole = sum(weight for _, _, weight in cost.shares)
    own = sum(w for repair, item, w in cost.shares if repair == line.repair and item == line.work_item)
    return f"{number(100 * own / whole, language=language)}%" if own > 0 and whole > 0 else None


def step_rows(steps: Sequence[Step], columns: int, language: str) -> list[Row]:
    speak = speaker(language)
    cells = [(_step(s.text, language), term(s.formula, language), dollars(s.amount, language=language)) for s in steps]
    headers = (speak("step"), speak("formula"), speak("amount"))
    return [Row(t) for t in table(headers, cells, columns, right=(2,))] if cells else []


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
