"""A site sheet in, the rows of a terminal, plain data, or the page of a workbook out."""

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import ENGLISH, sentence
from estimator.model.say import Say
from estimator.onsite.sheet import Block, SiteSheet, Words
from estimator.wording.say import plain_words, say


def rows(sheet: SiteSheet, columns: int, language: str = ENGLISH) -> list[Row]:
    """Return the title, the answer, and each block under its heading."""
    first = [text for warning in sheet.first for text in indented(sentence(warning, language), columns, by=0)]
    out = [*(Row(text, "bad") for text in first), Row(sentence(sheet.title, language), "head")]
    out += [Row(text) for text in indented(sentence(sheet.answer, language), columns, by=0)]
    for block in sheet.blocks:
        out += [Row(""), Row(sentence(block.heading, language), "head")]
        out += [Row(text) for line in block.lines for text in indented(sentence(line, language), columns, hanging=2)]
        out += _table(block, columns, language)
    return out


def _table(block: Block, columns: int, language: str) -> list[Row]:
    if not block.rows:
        return []
    heads = [say(head, language) for head in block.heads]
    return [Row(text) for text in table(heads, [[_word(w, language) for w in row] for row in block.rows], columns)]


def _word(word: Words, language: str) -> str:
    return say(word, language) if isinstance(word, Say) else plain_words(word, language)


def as_data(sheet: SiteSheet, language: str = ENGLISH) -> dict[str, object]:
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
