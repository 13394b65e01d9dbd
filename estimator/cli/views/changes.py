"""What moved between two revisions in, the lines that say so out: results first, then what was asked, then prices."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, day, dollars
from estimator.model.say import Say
from estimator.records.changes import ASKED, FOUND, PRICES, Change, Parted
from estimator.wording.say import say, speaker

HEADS: tuple[tuple[str, Say], ...] = (
    ("option", Say.of("Price of an option")),
    ("line", Say.of("Lines of the quote")),
    ("finding", Say.of("What was found")),
    ("notes", Say.of("What was found: the notes, word for word")),
    ("rule", Say.of("Rules: what they say, and what was decided")),
    ("wish", Say.of("You asked")),
    ("table", Say.of("Prices moved: the tables")),
    ("day", Say.of("Prices moved: the day they are of")),
    ("version", Say.of("The program")),
)


def as_data(moved: Sequence[Change], parts: Sequence[Parted]) -> dict[str, object]:
    """The same for other programs; each change with whose doing it is."""
    return {
        "options": parts,
        "changes": [{"about": c.about, "option": c.option, "what": c.what, "before": c.before, "after": c.after, "because": c.because} for c in moved],
    }  # fmt: skip


def rows(
    moved: Sequence[Change],
    old: str,
    new: str,
    columns: int,
    parts: Sequence[Parted] = (),
    language: str = ENGLISH,
) -> list[Row]:
    """One table a kind of change, one an option for its lines; a sentence where nothing moved. `parts` say what of a move was asked for."""
    if not moved:
        return [Row(speaker(language)("Nothing moved between {old} and {new}.", old=old, new=new))]
    out: list[Row] = []
    for about, head in HEADS:
        if about == "option" and parts:
            out += _parted(parts, old, new, columns, language)
            continue
        if about == "line":
            out += _lines([c for c in moved if c.about == about], say(head, language), (old, new), columns, language)
            continue
        cells = [
            (c.what, _shown(c, c.before, language), _shown(c, c.after, language)) for c in moved if c.about == about
        ]
        if cells:
            body = (Row(text) for text in table(("", old, new), cells, columns))
            out += [Row(say(head, language), "head"), *body, Row("")]
    return out[:-1]


def _lines(moved: Sequence[Change], head: str, revisions: tuple[str, str], columns: int, language: str) -> list[Row]:
    """A table an option, which is named once above it."""
    out = [Row(head, "head")] if moved else []
    for option in dict.fromkeys(c.option for c in moved):
        cells = [
            (c.what, _shown(c, c.before, language), _shown(c, c.after, language)) for c in moved if c.option == option
        ]
        named = (Row(text, "head") for text in indented(option, columns, by=0, hanging=2))
        out += [*named, *(Row(text) for text in table(("", *revisions), cells, columns, right=(1, 2))), Row("")]
    return out


def _shown(change: Change, text: str, language: str) -> str:
    """Money and days as the reader writes them, everything else as it stands; a dash for nothing."""
    if not text:
        return "—"
    match change.about:
        case "option" | "line":
            return dollars(Decimal(text), language=language)
        case "day":
            return day(date.fromisoformat(text), language)
    return text


def _parted(parts: Sequence[Parted], old: str, new: str, columns: int, language: str) -> list[Row]:
    """Each option that moved, and how much of it is whose doing."""
    speak = speaker(language)
    cells = [_cells(p, language) for p in parts if p.before != p.after]
    if not cells:
        return [Row(speak("No option's price moved."), "head"), Row("")]
    heads = ("", old, *(term(why, language) for why in (PRICES, FOUND, ASKED)), new)
    body = table(heads, cells, columns, right=(1, 2, 3, 4, 5))
    return [Row(speak("Price of an option"), "head"), *(Row(text) for text in body), Row("")]


def _cells(part: Parted, language: str) -> tuple[str, ...]:
    before, after = _amount(part.before, language), _amount(part.after, language)
    moves = (by(move, language) for move in (part.prices, part.found, part.asked))
    return part.option, before, *moves, after


def _amount(total: Decimal | None, language: str) -> str:
    return speaker(language)("not offered") if total is None else dollars(total, whole=True, language=language)


def by(difference: Decimal | None, language: str = ENGLISH) -> str:
    """`+$50`, `−$25`, or a dash where it did not move or nobody can say."""
    if not difference:
        return "—"
    return f"{'+' if difference > 0 else '−'}{dollars(abs(difference), whole=True, language=language)}"
