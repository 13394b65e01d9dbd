"""One option for the crew: where to cut, pits, work list, what to bring, tests and pictures; and the sheet of real hours."""

from decimal import ROUND_CEILING, Decimal

from estimator.model.offer import Option
from estimator.model.work import JOB, Takeoff
from estimator.papers import option_words
from estimator.papers.crew_page import blank, box, close, crew_page
from estimator.papers.crew_where import new_way, where_it_is
from estimator.papers.hazards import notes
from estimator.papers.letter import Letter
from estimator.papers.option_sheet import line_texts
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import number
from estimator.wording.plain import CLASSES, QUANTITIES, UNITS, in_plain_words

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
    page.listing(speak("Good to know"), notes(letter, option))
    _pick_list(letter, page, option)
    _tests(letter, page)
    return close(letter, page)


def _repair(letter: Letter, page: Page, takeoff: Takeoff) -> None:
    """Cut to what, and the quantities one can see on site."""
    speak, repair = letter.speak, takeoff.repair
    if repair.reroute:
        new_way(letter, page, takeoff)
    else:
        page.heading(where_it_is(letter, repair))
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
    speak = letter.speak
    page.heading(speak("Work, in this order"))
    for work_class, text in CLASSES.items():
        lines = [line for line in option.price.lines if line.work_class == work_class]
        if lines:
            page.line(letter.say(text), "bold")
        for line, said in zip(lines, line_texts(letter, option, lines), strict=True):
            unit = letter.say(in_plain_words(UNITS, line.size_unit)) if line.size_unit else ""
            page.add(
                Cell("☐", "tick", open=True),
                Cell(said, "cell"),
                Cell(number(line.size, letter.language, 1), "cell"),
                Cell(unit, "cell"),
                Cell("", "write", open=True),
            )
    page.line(
        speak(
            "Order: find and shut off, protect, dig, pipe, film and test with the pipe open, inspector, drains back on, fill, film again, tidy."
        ),
        "quiet",
    )


def _pick_list(letter: Letter, page: Page, option: Option) -> None:
    """Materials as ordered, rounded to packs, a spare where one runs out first; no prices."""
    speak = letter.speak
    page.heading(speak("What to bring"))
    page.add(
        Cell("", "head"),
        *(Cell(text, "head") for text in (speak("Material"), speak("How much"), speak("Unit"), speak("Spare"))),
    )
    for cost in option.all_costs:
        if cost.part in ("material", "equipment"):
            spare = speak("+1") if any(word in cost.text.lower() for word in SPARES) else ""
            amount = cost.quantity.quantize(Decimal("0.01"), ROUND_CEILING)
            page.add(
                Cell("☐", "tick", open=True),
                Cell(cost.text, "cell"),
                Cell(amount, "number"),
                Cell(letter.say(in_plain_words(UNITS, cost.unit)), "cell"),
                Cell(spare, "cell"),
            )


def _tests(letter: Letter, page: Page) -> None:
    speak = letter.speak
    page.heading(speak("Tests and pictures"))
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
