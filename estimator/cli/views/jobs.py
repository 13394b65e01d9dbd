"""Where each job stands in, one row a job out."""

from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path

from estimator.cli.views.screen import Row
from estimator.cli.views.table import GAP, fitted, indented, longest_word, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, dollars
from estimator.records.plain import plain
from estimator.records.standing import STATES, Standing
from estimator.wording.say import say, speaker


def rows(standings: Sequence[Standing], folder: Path, columns: int, language: str = ENGLISH) -> list[Row]:
    """The table and a count of each state under it."""
    speak = speaker(language)
    if not standings:
        return [Row(speak("There is no job file below {folder}.", folder=str(folder.resolve())))]
    headers = (speak("job"), speak("state"), speak("rev"), speak("total"), speak("days left"), speak("waits for"))
    cells = [_cells(standing, folder, language) for standing in standings]
    whole = _no_word_is_cut(headers, cells, columns)
    body = table(headers, cells, columns, right=(3, 4)) if whole else _blocks(headers, cells, columns)
    return [*(Row(text) for text in body), Row(""), Row(counted(standings, language), "head")]


def _no_word_is_cut(headers: Sequence[str], cells: Sequence[Sequence[str]], columns: int) -> bool:
    """Every column of the table is as wide as its longest word."""
    widths = fitted(headers, cells, columns)
    longest = [longest_word(column) for column in zip(headers, *cells, strict=True)]
    fits = sum(widths) + len(GAP) * (len(widths) - 1) <= columns
    return fits and all(word <= width for word, width in zip(longest, widths, strict=True))


def _blocks(headers: Sequence[str], cells: Sequence[Sequence[str]], columns: int) -> list[str]:
    """Where a row is wider than the window: the name on a line of its own, the rest under it."""
    out: list[str] = []
    for name, state, revision, total, left, waits in cells:
        parts = [state, revision, total, left and f"{headers[4]}: {left}", f"{headers[5]}: {waits}"]
        out += [*indented(name, columns, by=0, hanging=2), *indented("  ".join(p for p in parts if p), columns)]
    return out


def counted(standings: Sequence[Standing], language: str = ENGLISH) -> str:
    """`2 issued, 1 damaged`."""
    counts = [(state, sum(s.state == state for s in standings)) for state in STATES]
    return ", ".join(f"{number} {term(state, language)}" for state, number in counts if number)


def _cells(standing: Standing, folder: Path, language: str) -> tuple[str, ...]:
    left = "" if standing.days_left is None else str(standing.days_left)
    total = dollars(Decimal(standing.total), whole=True, language=language) if standing.total else ""
    waits = say(standing.waits_for, language)
    return below(standing.job_file, folder), term(standing.state, language), standing.revision, total, left, waits


def below(path: Path, folder: Path) -> str:
    """The file's name seen from the folder."""
    return str(path.relative_to(folder)) if path != folder and path.is_relative_to(folder) else str(path)


def as_data(standings: Sequence[Standing]) -> list[dict[str, object]]:
    """The same for other programs; what a job waits for in English."""
    return [{**plain(standing), "waits_for": str(standing.waits_for)} for standing in standings]
