"""All options in a table, to print: a row for each thing people compare, a column for each option."""

from estimator.model.offer import Option
from estimator.papers import option_words
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet

LABEL_WIDTH = 15.0
ALL_WIDTH = 96.0
MOST_IN_A_TABLE = 4  # more columns than this are too narrow to read


def side_by_side(letter: Letter) -> tuple[Sheet, ...]:
    """The wide table; several, each a sheet with its head on every page, where there are more options than one can hold."""
    options = letter.quote.options
    tables = -(-len(options) // MOST_IN_A_TABLE)
    columns = -(-len(options) // tables)
    return tuple(_sheet(letter, options[i : i + columns], tables > 1) for i in range(0, len(options), columns))


def _sheet(letter: Letter, options: tuple[Option, ...], one_of_several: bool) -> Sheet:
    speak, name = letter.speak, letter.speak("Side by side")
    width = round((ALL_WIDTH - LABEL_WIDTH) / len(options), 1)
    letters = f" {options[0].letter}–{options[-1].letter}" if one_of_several else ""
    page = Page(f"{name}{letters}", (LABEL_WIDTH, *(width for _ in options)))
    letter.head(page)
    page.line(f"{speak('Your options side by side')}{letters}", "title")
    page.line(speak("Quote {number} for {site}", number=letter.number, site=letter.quote.job.customer.site), "quiet")
    page.gap()
    head = _table(letter, page, options)
    page.line(speak("Days and years are typical, not promised. Prices hold until the day on the first sheet."), "quiet")
    page.line(option_words.check_the_place(letter), "quiet")
    if any(o.cost_a_year for o in options):
        page.line(
            speak(
                "Cost per year is an aid to compare: price over the typical years, with interest. It promises no life."
            ),
            "quiet",
        )
    return letter.close(page, repeat=(head, head))


def _table(letter: Letter, page: Page, options: tuple[Option, ...]) -> int:
    """One table; the row of its head."""
    speak = letter.speak
    head = page.add(Cell("", "head"), *(Cell(option_words.title(letter, o), "option") for o in options))
    page.table_row(Cell("", "label"), *(Cell(letter.say(o.under_title), "under") for o in options))
    page.table_row(Cell(speak("Price"), "label"), *(Cell(o.price.total, "price") for o in options))
    page.table_row(
        Cell(speak("What is done"), "label"), *(Cell("\n".join(letter.all(o.does)), "value") for o in options)
    )
    answers = [option_words.rows(letter, o) for o in options]
    for row in zip(*answers, strict=True):
        page.table_row(Cell(row[0][0], "label"), *(Cell(answer, "value") for _, answer in row))
    if any(o.cost_a_year for o in options):
        costs = (Cell(option_words.cost_a_year(letter, o), "value") for o in options)
        page.table_row(Cell(speak("Cost per year of its life"), "label"), *costs)
    page.gap()
    return head
