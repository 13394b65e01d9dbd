"""Where each job stands in, one row a job out."""

from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path

from estimator.cli.views.layout import Layout
from estimator.cli.views.table import GAP, fitted, longest_word
from estimator.cli.views.words import Words
from estimator.records.plain import plain
from estimator.records.standing import STATES, Standing


def write_jobs(out: Layout, standings: Sequence[Standing], folder: Path) -> None:
    """The table and a count of each state under it."""
    speak = out.speak
    if not standings:
        out.line(speak("There is no job file below {folder}.", folder=str(folder.resolve())))
        return
    headers = (speak("job"), speak("state"), speak("rev"), speak("total"), speak("days left"), speak("waits for"))
    cells = [_cells(standing, folder, out) for standing in standings]
    if _no_word_is_cut(headers, cells, out.columns):
        out.table(headers, cells, right=(3, 4))
    else:
        _blocks(out, headers, cells)
    out.line()
    counts = [(state, sum(s.state == state for s in standings)) for state in STATES]
    out.line(", ".join(f"{number} {out.term(state)}" for state, number in counts if number), "head")


def _no_word_is_cut(headers: Sequence[str], cells: Sequence[Sequence[str]], columns: int) -> bool:
    """Every column of the table is as wide as its longest word."""
    widths = fitted(headers, cells, columns)
    longest = [longest_word(column) for column in zip(headers, *cells, strict=True)]
    fits = sum(widths) + len(GAP) * (len(widths) - 1) <= columns
    return fits and all(word <= width for word, width in zip(longest, widths, strict=True))


def _blocks(out: Layout, headers: Sequence[str], cells: Sequence[Sequence[str]]) -> None:
    """Where a row is wider than the window: the name on a line of its own, the rest under it."""
    for name, state, revision, total, left, waits in cells:
        out.paragraph(name, hanging=2)
        parts = [state, revision, total, left and f"{headers[4]}: {left}", f"{headers[5]}: {waits}"]
        out.paragraph("  ".join(part for part in parts if part), by=2)


def _cells(standing: Standing, folder: Path, words: Words) -> tuple[str, ...]:
    left = "" if standing.days_left is None else str(standing.days_left)
    total = words.dollars(Decimal(standing.total), whole=True) if standing.total else ""
    state, waits = words.term(standing.state), words.say(standing.waits_for)
    return below(standing.job_file, folder), state, standing.revision, total, left, waits


def below(path: Path, folder: Path) -> str:
    """The file's name seen from the folder."""
    return str(path.relative_to(folder)) if path != folder and path.is_relative_to(folder) else str(path)


def as_data(standings: Sequence[Standing]) -> list[dict[str, object]]:
    """The same for other programs; what a job waits for in English."""
    return [{**plain(standing), "waits_for": str(standing.waits_for)} for standing in standings]
