"""What new tables would change in, the lines that say so out."""

from decimal import Decimal
from pathlib import Path

from estimator.cli.repricing import Done
from estimator.cli.views.jobs import below
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import dollars
from estimator.records.reprice import OptionMove
from estimator.wording.say import speaker


def rows(done: Done, to: Path, folder: Path, columns: int, language: str) -> list[Row]:
    """The cheapest option of each job before and after, those left out with the reason, and where all of it stands."""
    speak = speaker(language)
    cells = [(below(Path(row.job_file), folder), row.revision, *_money(row.moves, language)) for row in done.rows]
    headers = (speak("job"), speak("rev"), speak("issued at"), speak("on these tables"), speak("moves by"))
    out = [Row(text) for text in table(headers, cells, columns, right=(2, 3, 4))]
    for row in done.rows:
        if row.wrong:
            said = speak("Left out: {job}: {why}", job=below(Path(row.job_file), folder), why=row.wrong)
            out += [Row(text, "bad") for text in indented(said, columns, by=0, hanging=2)]
    if done.from_before:
        out.append(Row(speak("{count} were kept from the run that was stopped.", count=done.from_before)))
    written = speak("Every option stands in {file}; nothing was issued.", file=str(to))
    return [*out, Row(""), *(Row(text, "head") for text in indented(written, columns, by=0))]


def _money(moves: tuple[OptionMove, ...], language: str) -> tuple[str, str, str]:
    """Of the cheapest option issued, or the cheapest now where nothing was issued."""
    both = [m for m in moves if m.issued is not None and m.now is not None]
    if not both:
        now = [m.now for m in moves if m.now is not None]
        return "", dollars(min(now), whole=True, language=language) if now else "", ""
    least = min(both, key=lambda m: m.issued or Decimal(0))
    issued, now_ = least.issued or Decimal(0), least.now or Decimal(0)
    sign = "+" if now_ > issued else "−" if now_ < issued else ""
    moved = sign + dollars(abs(now_ - issued), whole=True, language=language)
    return dollars(issued, whole=True, language=language), dollars(now_, whole=True, language=language), moved
