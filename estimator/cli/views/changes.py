"""What moved between two revisions in, the lines that say so out: results first, then what was asked, then prices."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.model.say import Say
from estimator.records.changes import ASKED, FOUND, PRICES, Change, Parted

OPTION, LINE = "option", "line"
HEADS: tuple[tuple[str, Say], ...] = (
    (OPTION, Say.of("Price of an option")),
    (LINE, Say.of("Lines of the quote")),
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


def write_changes(out: Layout, moved: Sequence[Change], old: str, new: str, parts: Sequence[Parted] = ()) -> None:
    """One table a kind of change, one an option for its lines; a sentence where nothing moved. `parts` say what of a move was asked for."""
    if not moved:
        out.line(out.speak("Nothing moved between {old} and {new}.", old=old, new=new))
        return
    for about, head in HEADS:
        these = [c for c in moved if c.about == about]
        if about == OPTION and parts:
            _parted(out, parts, old, new)
        elif these:
            out.line(out.say(head), "head")
            for option in dict.fromkeys(c.option for c in these) if about == LINE else ():
                out.paragraph(option, hanging=2, look="head")
                _table(out, [c for c in these if c.option == option], old, new, right=(1, 2))
            if about != LINE:
                _table(out, these, old, new)
    out.rows.pop()  # the blank row under the last table


def _table(out: Layout, moved: Sequence[Change], old: str, new: str, right: Sequence[int] = ()) -> None:
    out.table(("", old, new), [(c.what, _shown(c, c.before, out), _shown(c, c.after, out)) for c in moved], right)
    out.line()


def _shown(change: Change, text: str, words: Words) -> str:
    """Money and days as the reader writes them, everything else as it stands; a dash for nothing."""
    if not text:
        return "—"
    match change.about:
        case "option" | "line":
            return words.dollars(Decimal(text))
        case "day":
            return words.day(date.fromisoformat(text))
    return text


def _parted(out: Layout, parts: Sequence[Parted], old: str, new: str) -> None:
    """Each option that moved, and how much of it is whose doing."""
    moved = [part for part in parts if part.before != part.after]
    if moved:
        out.line(out.speak("Price of an option"), "head")
        heads = ("", old, *(out.term(why) for why in (PRICES, FOUND, ASKED)), new)
        out.table(heads, [_cells(part, out) for part in moved], right=(1, 2, 3, 4, 5))
    else:
        out.line(out.speak("No option's price moved."), "head")
    out.line()


def _cells(part: Parted, words: Words) -> tuple[str, ...]:
    moves = map(words.moved_by, (part.prices, part.found, part.asked))
    return part.option, offered_at(part.before, words), *moves, offered_at(part.after, words)


def offered_at(total: Decimal | None, words: Words) -> str:
    """A total in whole dollars, or that there is none."""
    return words.speak("not offered") if total is None else words.dollars(total, whole=True)
