"""Hours, cost lines and the steps to a price in, the tables of a terminal that show how each was reckoned, out."""

from collections.abc import Iterable, Sequence

from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.model.price import CostLine, LineItem, Step, TaskHours
from estimator.model.say import Say


def write_hours(out: Layout, tasks: Sequence[TaskHours]) -> None:
    if not tasks:
        return
    speak = out.speak
    out.heading(speak("Hours"))
    headers = (
        speak("task"), speak("crew"), speak("quantity"), speak("h each"), speak("slowed by"), speak("hours"),
        speak("cell"),
    )  # fmt: skip
    out.table(headers, [_task(task, out) for task in tasks], right=(3, 5))
    hours = out.number(sum(t.hours for t in tasks), 2)
    out.line("  " + speak("{hours} crew-hours in all, unrounded", hours=hours))


def _task(task: TaskHours, words: Words) -> tuple[str, ...]:
    return (
        words.term(task.task),
        words.term(task.crew),
        f"{words.number(task.quantity, 2)} {words.unit(task.unit)}",
        words.number(task.each, 3),
        _factor(task, words),
        words.number(task.hours, 2),
        task.cell,
    )


def _factor(task: TaskHours, words: Words) -> str:
    each = words.speak("{count} each", count=words.number(task.per, 3))
    per = f"{each}; " if task.per != 1 else ""
    if task.factor == 1:
        return per.rstrip("; ")
    return f"{per}× {words.number(task.factor, 3)} ({', '.join(f.replace('_', ' ') for f in task.factors)})"


def write_costs(out: Layout, line: LineItem, costs: Iterable[CostLine]) -> None:
    """The cost lines this line has a share in, with the share."""
    shares = [(cost, _share(cost, line)) for cost in costs]
    cells = [_cost(cost, share, out) for cost, share in shares if share is not None]
    if not cells:
        return
    speak = out.speak
    out.heading(speak("What it costs"))
    out.paragraph(
        speak("Each row is a cost of the whole option; the column “its share” says how much of it this line bears.")
    )
    headers = (speak("cost"), speak("what"), speak("reckoned"), speak("amount"), speak("its share"), speak("cell"))
    out.table(headers, cells, right=(3, 4))
    out.line("  " + speak("its share of all cost: {amount}", amount=out.dollars(line.cost_share)))


def _cost(cost: CostLine, share: float, words: Words) -> tuple[str, ...]:
    reckoned = f"{words.number(cost.quantity, 2)} {words.unit(cost.unit)} × {words.number(cost.rate, 2)}"
    if cost.in_overhead:
        reckoned = words.speak("our own, paid for in the overhead")
    crew = cost.text.removeprefix("crew ") if cost.part == "labor" else ""
    what = words.speak("crew {letter}", letter=words.term(crew)) if crew else words.pick(cost.text, cost.text_es)
    percent = f"{words.number(100 * share)}%"
    return words.term(cost.part), what, reckoned, words.dollars(cost.amount), percent, cost.cell


def _share(cost: CostLine, line: LineItem) -> float | None:
    """How much of a cost line lies on this line, 0 to 1; None for nothing."""
    whole = sum(weight for _, _, weight in cost.shares)
    own = sum(w for repair, item, w in cost.shares if repair == line.repair and item == line.work_item)
    return own / whole if own > 0 and whole > 0 else None


def write_steps(out: Layout, steps: Sequence[Step]) -> None:
    cells = [(_step(s.text, out), out.term(s.formula), out.dollars(s.amount)) for s in steps]
    if cells:
        out.table((out.speak("step"), out.speak("formula"), out.speak("amount")), cells, right=(2,))


CLASS_STEPS: tuple[tuple[str, Say], ...] = (
    ("cost of class ", Say.of("cost of class {price_class}")),
    ("contingency on ", Say.of("contingency on {price_class}")),
    ("price of class ", Say.of("price of class {price_class}")),
)
"""Steps that stand once for each price class."""


def _step(text: str, words: Words) -> str:
    for begins, said in CLASS_STEPS:
        if text.startswith(begins):
            return words.say(Say.of(said.text, price_class=words.term(text.removeprefix(begins))))
    return words.term(text)
