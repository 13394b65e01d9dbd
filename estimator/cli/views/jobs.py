"""Where each job stands in, one row a job out."""

from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.views.layout import Layout
from estimator.cli.views.table import GAP, fitted, longest_word
from estimator.cli.views.words import Words
from estimator.records.afterwards.month import Month
from estimator.records.job_status import STATES, JobStatus
from estimator.records.recorded_text import plain
from estimator.records.reprice import OptionMove

if TYPE_CHECKING:
    from estimator.cli.repricing import RepricedJobs


def write_jobs(out: Layout, standings: Sequence[JobStatus], folder: Path) -> None:
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


def _cells(standing: JobStatus, folder: Path, words: Words) -> tuple[str, ...]:
    left = "" if standing.days_left is None else str(standing.days_left)
    total = words.dollars(Decimal(standing.total), whole=True) if standing.total else ""
    state, waits = words.term(standing.state), words.say(standing.waits_for)
    return below(standing.job_file, folder), state, standing.revision, total, left, waits


def below(path: Path, folder: Path) -> str:
    """The file's name seen from the folder."""
    return str(path.relative_to(folder)) if path != folder and path.is_relative_to(folder) else str(path)


def as_data(standings: Sequence[JobStatus]) -> list[dict[str, object]]:
    """The same for other programs; what a job waits for in English."""
    return [{**plain(standing), "waits_for": str(standing.waits_for)} for standing in standings]


def write_repriced(out: Layout, done: "RepricedJobs", to: Path, folder: Path) -> None:
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


def write_month(out: Layout, found: Month) -> None:
    """Counts and dollars, why jobs were lost, work in hand, and what a crew-day earned by method."""
    speak = out.speak
    out.line(speak("Month {month}", month=found.month), "head")
    counts = (
        (speak("quotes sent"), found.sent),
        (speak("jobs won"), found.won),
        (speak("jobs lost"), found.lost),
        (speak("jobs completed"), found.done),
        (speak("backlog at its end"), found.backlog),
    )
    cells = [(name, str(one.jobs), out.dollars(one.dollars)) for name, one in counts]
    out.table(("", speak("jobs"), speak("dollars")), cells, right=(1, 2))
    if found.reasons:
        out.line()
        reasons = [(reason, str(count)) for reason, count in found.reasons.items()]
        out.table((speak("why lost"), speak("jobs")), reasons, right=(1,))
    out.line()
    out.paragraph(speak("Payments received: {money}", money=out.dollars(found.came_in)))
    out.paragraph(speak("Backlog at its end: {days} crew-days", days=out.number(found.backlog_days)))
    _earned(out, found)
    for wrong in found.wrong:
        out.line(out.say(wrong), "bad")


def _earned(out: Layout, found: Month) -> None:
    """Only of jobs whose hours are kept: a month without them says so."""
    speak = out.speak
    if not found.earned:
        none = speak("No completed job of this month has its hours: estimator actuals JOB --days N")
        out.paragraph(none, look="dim")
        return
    out.heading(speak("Gross profit per crew-day, from actual hours"))
    heads = (speak("method"), speak("crew-days"), speak("gross profit"), speak("per crew-day"))
    cells = [
        (out.term(one.method), out.number(one.crew_days), out.dollars(one.profit), out.dollars(one.per_crew_day))
        for one in found.earned
    ]
    out.table(heads, cells, right=(1, 2, 3))
