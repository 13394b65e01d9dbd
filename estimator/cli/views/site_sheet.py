"""A site sheet in, the rows of a terminal, plain data, or the page of a workbook out."""

from estimator.cli.views.layout import Layout
from estimator.model.say import Say
from estimator.onsite.sheet import SiteSheet, Words
from estimator.wording.say import plain_words, say


def write_sheet(out: Layout, sheet: SiteSheet) -> None:
    """The title, the answer, and each block under its heading."""
    for warning in sheet.first:
        out.paragraph(out.sentence(warning), look="bad")
    out.line(out.sentence(sheet.title), "head")
    out.paragraph(out.sentence(sheet.answer))
    for block in sheet.blocks:
        out.heading(out.sentence(block.heading))
        for line in block.lines:
            out.paragraph(out.sentence(line), by=2, hanging=2)
        if block.rows:
            cells = [[_word(word, out.language) for word in row] for row in block.rows]
            out.table([out.say(head) for head in block.heads], cells)


def _word(word: Words, language: str) -> str:
    return say(word, language) if isinstance(word, Say) else plain_words(word, language)


def as_data(sheet: SiteSheet, language: str) -> dict[str, object]:
    """Return the same for --json, its sentences said."""
    return {
        "sheet": sheet.name,
        **({"first": [say(warning, language) for warning in sheet.first]} if sheet.first else {}),
        "title": say(sheet.title, language),
        "answer": say(sheet.answer, language),
        "blocks": [
            {
                "heading": say(block.heading, language),
                "lines": [say(line, language) for line in block.lines],
                "columns": [say(head, language) for head in block.heads],
                "rows": [[_word(w, language) for w in row] for row in block.rows],
            }
            for block in sheet.blocks
        ],
    }
