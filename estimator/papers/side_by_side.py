"""All options in one table, to print: a row for each thing people compare, a column for each option."""

from estimator.papers import option_words
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet

LABEL_WIDTH = 15.0
ALL_WIDTH = 96.0


def side_by_side(letter: Letter) -> Sheet:
    """The wide table."""
    options, speak = letter.quote.options, letter.speak
    width = round((ALL_WIDTH - LABEL_WIDTH) / max(1, len(options)), 1)
    page = Page(speak("Side by side"), (LABEL_WIDTH, *(width for _ in options)))
    letter.head(page)
    page.line(speak("Your options side by side"), "title")
    page.line(speak("Quote {number} for {site}", number=letter.number, site=letter.quote.job.customer.site), "quiet")
    page.gap()
    head = page.add(Cell("", "head"), *(Cell(option_words.title(letter, o), "option") for o in options))
    page.add(Cell("", "label"), *(Cell(letter.say(o.under_title), "under") for o in options))
    page.add(Cell(speak("Price"), "label"), *(Cell(o.price.total, "price") for o in options))
    page.add(Cell(speak("What is done"), "label"), *(Cell("\n".join(letter.all(o.does)), "value") for o in options))
    answers = [option_words.rows(letter, o) for o in options]
    for row in zip(*answers, strict=True):
        page.add(Cell(row[0][0], "label"), *(Cell(answer, "value") for _, answer in row))
    page.gap()
    page.line(speak("Days and years are typical, not promised. Prices hold until the day on the first sheet."), "quiet")
    return letter.close(page, repeat=(head, head))
