"""Options side by side on one page: what differs, and defect by defect what each repairs or leaves; then other bids beside ours."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from decimal import Decimal
from itertools import groupby

from estimator.model.found import Found, runs
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers import option_words
from estimator.papers.compare_bids import compare_bids
from estimator.papers.letter import Letter
from estimator.papers.line_items import by_class
from estimator.papers.page import GRID, Page, grid_page
from estimator.quote.recommend import Treated, compared, treated
from estimator.sheets.book import Cell, Sheet
from estimator.wording.say import capital

TREATED: dict[Treated, Say] = {
    "repaired": Say.of("repaired"),
    "cleaned": Say.of("cleaned"),
    "cleaned in passing": Say.of("cleaned, opening left"),
    "looked into": Say.of("checked, not repaired"),
    "left": Say.of("left as is"),
}
EVERY: dict[Treated, Callable[[str], Say]] = {
    "repaired": lambda letters: Say.of("Every option repairs {letters}.", letters=letters),
    "cleaned": lambda letters: Say.of("Every option cleans {letters}.", letters=letters),
    "cleaned in passing": lambda letters: Say.of("Every option cleans {letters}; the opening stays.", letters=letters),
    "looked into": lambda letters: Say.of("Every option checks {letters}.", letters=letters),
    "left": lambda letters: Say.of("No option repairs {letters}.", letters=letters),
}
LONG = 40
"""Characters of an answer that is not written twice side by side."""
MOST_NAMED = 3
"""Findings named in one row of the table."""
MOST_IN_A_TABLE = 4
"""Options in one table; more columns are too narrow to read."""


def compare_sheets(letter: Letter) -> tuple[Sheet, ...]:
    """One table; several sheets where there are more options than one can hold; none for a single option."""
    options = compared(letter.quote)
    if len(options) < 2:
        return ()
    tables = -(-len(options) // MOST_IN_A_TABLE)
    columns = -(-len(options) // tables)
    parts = [options[i : i + columns] for i in range(0, len(options), columns)]
    return tuple(_sheet(letter, part, of_several=tables > 1, last=part is parts[-1]) for part in parts)


def _sheet(letter: Letter, options: tuple[Option, ...], *, of_several: bool, last: bool) -> Sheet:
    speak = letter.speak
    letters = f" {options[0].letter}–{options[-1].letter}" if of_several else ""
    page = grid_page(f"{speak('Compare options')}{letters}")
    span = GRID // len(options)
    letter.not_an_offer(page)
    page.line(f"{speak('Compare options')}{letters}", "title")
    page.add(Cell("", "head"), *(Cell(option_words.title(letter, o), "head", span) for o in options))
    page.add(
        Cell(speak("Price"), "label"),
        *(replace(option_words.price_cell(letter, o, "price small", "value bold"), span=span) for o in options),
    )
    for label, answers in _differing(letter, options):
        page.table_row(Cell(label, "label"), *_side_by_side(options, answers, span))
    _defects(letter, page, options, span)
    if last:
        _after(letter, page)
        compare_bids(letter, page)
    return letter.close(page)


def _side_by_side(options: tuple[Option, ...], answers: list[str], span: int) -> Iterator[Cell]:
    """A cell an option; a long answer that neighbors share stands once over their columns, with their letters."""
    both = groupby(zip(options, answers, strict=True), lambda one: one[1])
    for answer, those in both:
        letters = [option.letter for option, _ in those]
        if len(letters) > 1 and len(answer) > LONG:
            yield Cell(f"{runs(letters)}: {answer}", "value", span * len(letters))
        else:
            yield from (Cell(answer, "value", span) for _ in letters)


def _differing(letter: Letter, options: tuple[Option, ...]) -> list[tuple[str, list[str]]]:
    """The rows whose answers are not the same for every option of the quote."""
    every = [option_words.rows(letter, o) for o in compared(letter.quote)]
    place = {o.letter: n for n, o in enumerate(compared(letter.quote))}
    out = []
    for row in zip(*every, strict=True):
        answers = [answer for _, answer in row]
        if len(set(answers)) > 1:
            out.append((row[0][0], [answers[place[o.letter]] for o in options]))
    return out


def _defects(letter: Letter, page: Page, options: tuple[Option, ...], span: int) -> None:
    """A row for the findings that the options treat alike one by one; in a line those that every option treats the same."""
    alike, apart = dict[Treated, list[str]](), dict[tuple[Treated, ...], list[Found]]()
    for found in letter.quote.found:
        done = [treated(found, o) for o in options]
        if len({treated(found, o) for o in compared(letter.quote)}) == 1:
            alike.setdefault(done[0], []).append(found.letter)
            continue
        apart.setdefault(tuple(done), []).append(found)
    for treatment, those in apart.items():
        label = f"{runs([found.letter for found in those])}  {_named(letter, those)}"
        page.table_row(Cell(label, "label"), *(Cell(letter.say(TREATED[what]), "value", span) for what in treatment))
    said = [letter.say(EVERY[what](runs(alike[what]))) for what in EVERY if what in alike]
    if said:
        page.line(" ".join(said), "small")


def _named(letter: Letter, those: list[Found]) -> str:
    """What the findings of a row are, line by line; of many the lines alone."""
    lines = dict[str, list[str]]()
    for found in those:
        lines.setdefault(letter.say(found.of_line), []).append(letter.say(found.name))
    if len(those) > MOST_NAMED:
        return ", ".join(lines)
    return "; ".join(
        letter.speak("{line}: {what}", line=line, what=", ".join(dict.fromkeys(names))) for line, names in lines.items()
    )


def priced_apart(letter: Letter) -> bool:
    """The same work, as much of it, has another amount in another option."""
    amounts: dict[object, set[Decimal]] = {}
    for option in letter.quote.options:
        for line, text in (item for items in by_class(letter, option) for item in items):
            amounts.setdefault((line.work_item, text, line.size), set()).add(line.amount)
    return any(len(different) > 1 for different in amounts.values())


def _after(letter: Letter, page: Page) -> None:
    """What is not offered and why; what cleaning alone would do."""
    speak, quote = letter.speak, letter.quote
    if priced_apart(letter):
        page.line(
            speak(
                "Whole crew days are divided among the work of an option, so the same work can come to a little more or less in another."
            ),
            "small",
        )
    if quote.blocked:
        page.line(speak("Not priced"), "bold")
        for group in quote.not_offered:
            page.line(capital(letter.say(group.text)), "small")
    if quote.if_cleaned:
        page.line(speak("If you only clean the pipe: {what}", what=quote.if_cleaned), "small")
