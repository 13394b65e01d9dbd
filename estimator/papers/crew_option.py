"""One option for the crew: where to cut, pits, work list, what to bring, tests and pictures; and the sheet of real hours."""

from decimal import ROUND_CEILING, Decimal

from estimator.model.offer import Option
from estimator.model.price import CostLine, LineItem
from estimator.model.work import JOB, Takeoff
from estimator.papers import option_words
from estimator.papers.crew_page import blank, box, close, crew_page
from estimator.papers.crew_where import new_way, where_it_is
from estimator.papers.crew_words import BY_OTHERS, crew_words
from estimator.papers.hazards import notes
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.quote.stays import all_repairs
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import number
from estimator.wording.plain import CLASSES, LINES, ONE, QUANTITIES, UNITS, in_plain_words

WIDTHS = (5.0, 36.0, 16.0, 14.0, 24.0)
HOUR_WIDTHS = (20.0, 22.0, 8.0, 9.0, 10.0, 10.0, 10.0, 14.0)
HOUR_HEADS = ("work_item", "task", "crew", "unit", "planned", "real", "hours", "cause")
"""The columns that are read back, by these names in any language."""
SHOWN = ("dig_bcy", "hand_dig_bcy", "tunnel_bcy", "pit_bcy", "tunnel_ft", "pits", "spoil_lcy", "pile_sf", "export_lcy", "loads",
         "saw_lf", "slab_sf", "patch_sf", "dowels", "pipe_ft", "liner_ft", "hangers", "branches", "branches_tunnel", "couplings",
         "cleanouts", "sand_tons", "slurry_cy", "sod_sf")  # fmt: skip
SPARES = ("coupling",)
CUTTING = ("yard spot", "slab spot", "tunnel", "break-through", "trench", "crawl replace", "reroute")


def work_sheet(letter: Letter, option: Option) -> Sheet:
    """What to do, in order, and with what."""
    speak = letter.speak
    page = crew_page(letter, speak("Work {letter}", letter=option.letter), WIDTHS, option_words.title(letter, option))
    for text in letter.all(option.does):
        page.line(text)
    for takeoff in option.takeoffs:
        if takeoff.repair.method != JOB:
            _repair(letter, page, takeoff)
    _work(letter, page, option)
    _agreed(letter, page, option)
    page.listing(speak("Good to know"), notes(letter, option), starts=True)
    _pick_list(letter, page, option)
    _tests(letter, page)
    return close(letter, page)


def _repair(letter: Letter, page: Page, takeoff: Takeoff) -> None:
    """Cut to what, and the quantities one can see on site."""
    speak, repair = letter.speak, takeoff.repair
    if repair.reroute:
        new_way(letter, page, takeoff)
    else:
        page.heading(where_it_is(letter, repair), starts=True)
    if repair.method in CUTTING:
        page.line(speak("Cut to sound pipe. Worse than shown: stop, take a picture, call."), "box")
    else:
        page.line(speak("Worse than shown: stop, take a picture, call."), "box")
    for name in SHOWN:
        quantity = takeoff.quantity(name)
        if quantity is not None and quantity.value:
            unit = letter.say(in_plain_words(UNITS, quantity.unit))
            page.add(
                Cell("", "cell"),
                Cell(letter.say(in_plain_words(QUANTITIES, name)), "cell"),
                Cell(round(quantity.value, 2), "number"),
                Cell(unit, "cell"),
                Cell("", "write", open=True),
            )
    for text in letter.all(takeoff.assumptions):
        page.line(text, "quiet")
    blank(page, speak("As built: from, to, depth at both ends"))


def _work(letter: Letter, page: Page, option: Option) -> None:
    """Each task once, with how much of it on which pipe; what others do stands by itself."""
    speak = letter.speak
    page.heading(speak("Work, in this order"), starts=True)
    first = len(page.rows)
    own = [line for line in option.price.lines if line.price_class not in BY_OTHERS and line.work_class in CLASSES]
    for work_class, text in CLASSES.items():
        tasks = _tasks(letter, option, [line for line in own if line.work_class == work_class])
        if tasks:
            page.line(letter.say(text), "bold", starts=len(page.rows) > first)
        for said, amounts in tasks.items():
            _task(page, said, "\n".join(amounts))
    others = [line for line in option.price.lines if line.price_class in BY_OTHERS]
    if others:
        page.line(speak("Others do these; the office arranges them"), "bold", starts=True)
    for said, amounts in _tasks(letter, option, others).items():
        _task(page, said, "\n".join(amounts))
    page.line(
        speak(
            "Order: find and shut off, protect, dig, pipe, film and test with the pipe open, inspector, drains back on, fill, film again, tidy."
        ),
        "quiet",
    )


def _task(page: Page, said: str, amounts: str) -> None:
    page.add(Cell("☐", "tick", open=True), Cell(said, "cell"), Cell(amounts, "cell", 2), Cell("", "write", open=True))


def _tasks(letter: Letter, option: Option, lines: list[LineItem]) -> dict[str, list[str]]:
    """Each task with its amounts; the pipe is named where there is more than one of them."""
    pipes = {r.id: letter.say(in_plain_words(LINES, r.line)) for r in all_repairs(option.scope.repairs)}
    words = [crew_words(letter, line) for line in lines]
    out: dict[str, list[str]] = {}
    for line, said in zip(lines, words, strict=True):
        pipe = pipes.get(line.repair, "")
        amount = how_much_work(letter, line)
        out.setdefault(said, []).append(f"{amount} · {pipe}" if pipe and words.count(said) > 1 else amount)
    return out


def how_much_work(letter: Letter, line: LineItem) -> str:
    """`12.7 ft`, `2 each`; nothing for what is done once."""
    if line.size_unit in ("job", "") or (line.size_unit == "each" and line.size == 1):
        return letter.speak("once")
    units = {**UNITS, **ONE} if line.size == 1 else UNITS
    return f"{number(line.size, letter.language, 1)} {letter.say(in_plain_words(units, line.size_unit))}"


def _agreed(letter: Letter, page: Page, option: Option) -> None:
    """How far the crew may go on its own when it is worse than shown."""
    speak = letter.speak
    most = [f"{letter.text(e)}: {speak('at most')} {e.cap_quantity.normalize():f}" for e in option.extras]
    page.listing(
        speak("When it is worse than shown: stop and call"),
        most or [speak("Nothing was agreed beforehand.")],
        starts=True,
    )
    if most:
        page.line(speak("The customer has agreed to these, up to the number given, and only when shown."), "quiet")


def _pick_list(letter: Letter, page: Page, option: Option) -> None:
    """Materials as ordered, rounded to packs, a spare where one runs out first; no prices."""
    speak = letter.speak
    page.heading(speak("What to bring"), starts=True)
    page.add(
        Cell("", "head"),
        *(Cell(text, "head") for text in (speak("Material"), speak("How much"), speak("Unit"), speak("Spare"))),
    )
    for cost in option.all_costs:
        if cost.part in ("material", "equipment"):
            spare = speak("+1") if any(word in cost.text.lower() for word in SPARES) else ""
            what, unit = _counted(letter, cost)
            whole = Decimal(1) if cost.unit == "each" else Decimal("0.01")
            page.add(
                Cell("☐", "tick", open=True),
                Cell(what, "cell"),
                Cell(cost.quantity.quantize(whole, ROUND_CEILING), "number"),
                Cell(unit, "cell"),
                Cell(spare, "cell"),
            )


def _counted(letter: Letter, cost: CostLine) -> tuple[str, str]:
    """What to bring, and what it is counted in: `saw blade, each foot of cut` is counted in feet of cut."""
    what, between, each = cost.text.partition(", each ")
    if between and cost.unit == "each":
        return what, f"{letter.say(UNITS['each'])} {each}"
    return cost.text, letter.say(in_plain_words(UNITS, cost.unit))


def _tests(letter: Letter, page: Page) -> None:
    speak = letter.speak
    page.heading(speak("Tests and pictures"), starts=True)
    page.line(
        speak(
            "Test plugs: rated for size and pressure, tied, nobody in line with the pipe; let the water down before the plug. No air test on plastic."
        ),
        "box",
    )
    for text in (
        speak("Picture before anything is touched; heap, floor and walls too"),
        speak("Picture and film of the pipe in, still open"),
        speak("Water test: level at the start, level at the end, minutes"),
        speak("Inspector has seen it; drains back in service at"),
        speak("Film after the fill"),
        speak("Picture of everything put back"),
    ):
        box(page, text)


def hours_sheet(letter: Letter, option: Option) -> Sheet:
    """The columns in which real quantities and hours are written, read back later."""
    speak = letter.speak
    page = crew_page(
        letter,
        speak("Hours {letter}", letter=option.letter),
        HOUR_WIDTHS,
        speak("Real hours and lengths: write each day"),
    )
    page.line(speak("cause: soil, found more, access, weather, inspection, our error"), "quiet")
    row = page.add(*(Cell(text, "head") for text in HOUR_HEADS))
    for task in option.all_tasks:
        page.add(
            Cell(task.work_item, "cell quiet"), Cell(task.task, "cell quiet"), Cell(task.crew, "cell"), Cell(task.unit, "cell quiet"),
            Cell(round(task.quantity, 2), "number"), Cell(None, "input", open=True), Cell(None, "input", open=True), Cell("", "write", open=True),
        )  # fmt: skip
    return close(letter, page, (row, row))
