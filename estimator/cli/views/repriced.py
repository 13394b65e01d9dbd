"""What new tables would change in, the lines that say so out."""

from decimal import Decimal
from pathlib import Path

from estimator.cli.repricing import Done
from estimator.cli.views.jobs import below
from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.records.reprice import OptionMove


def write_repriced(out: Layout, done: Done, to: Path, folder: Path) -> None:
    """The cheapest option of each job before and after, those left out with the reason, and where all of it stands."""
    speak = out.speak
    cells = [(below(Path(row.job_file), folder), row.revision, *_money(row.moves, out)) for row in done.rows]
    headers = (speak("job"), speak("rev"), speak("issued at"), speak("on these tables"), speak("moves by"))
    out.table(headers, cells, right=(2, 3, 4))
    for row in done.rows:
        if row.wrong:
            said = speak("Left out: {job}: {why}", job=below(Path(row.job_file), folder), why=row.wrong)
            out.paragraph(said, hanging=2, look="bad")
    if done.from_before:
        out.line(speak("{count} were kept from the run that was stopped.", count=done.from_before))
    out.line()
    out.paragraph(speak("Every option stands in {file}; nothing was issued.", file=str(to)), look="head")


def _money(moves: tuple[OptionMove, ...], words: Words) -> tuple[str, str, str]:
    """Of the cheapest option issued, or the cheapest now where nothing was issued."""
    both = [(m.issued, m.now) for m in moves if m.issued is not None and m.now is not None]
    if not both:
        now = [m.now for m in moves if m.now is not None]
        return "", words.dollars(min(now), whole=True) if now else "", ""
    issued, now_ = min(both, key=lambda pair: pair[0])
    moved = words.moved_by(now_ - issued) if now_ != issued else words.dollars(Decimal(0), whole=True)
    return words.dollars(issued, whole=True), words.dollars(now_, whole=True), moved
