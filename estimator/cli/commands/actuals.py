"""`estimator actuals`: real hours in, kept beside the revisions, estimate against actual out; or suggestions over a folder."""

from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.actual_hours import Compared
from estimator.cli.arguments import AS_SET, AsJson, Language, OnDay, TablesFrom
from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.pricing.actuals import Outcome, Suggestion

Job = Annotated[
    Path, typer.Argument(metavar="JOB", help="The job file; with --suggest a folder of jobs, at any depth.")
]
Option = Annotated[
    str, typer.Option("--option", metavar="LETTER", help="The option that was done; else the accepted one.")
]
Task = Annotated[
    list[str] | None, typer.Option("--task", metavar="NAME", help="A task, as production names it; repeatable.")
]
Hours = Annotated[
    list[float] | None, typer.Option("--hours", metavar="N", help="Its crew-hours, once for each --task.")
]
Quantity = Annotated[
    list[float] | None,
    typer.Option("--quantity", metavar="N", help="How much of it there was, once for each --task or never."),
]
Cause = Annotated[
    list[str] | None,
    typer.Option(
        "--cause", help='soil, found more, access, weather, inspection, our error; or "". For each --task or never.'
    ),
]
CrewBook = Annotated[
    Path | None, typer.Option("--from", metavar="FILE", help="The crew's workbook, as it came back filled in.")
]
Days = Annotated[float | None, typer.Option("--days", metavar="N", min=0, help="Crew days, all crews together.")]
Add = Annotated[bool, typer.Option("--add", help="On top of the hours kept for a task, not in their place.")]
Suggest = Annotated[
    bool, typer.Option("--suggest", help="Over a folder of jobs: production rows as they turned out. Changes no table.")
]


def command(
    job: Job,
    option: Option = "",
    task: Task = None,
    hours: Hours = None,
    quantity: Quantity = None,
    cause: Cause = None,
    crew_book: CrewBook = None,
    days: Days = None,
    add: Add = False,
    suggest: Suggest = False,
    tables: TablesFrom = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli import actual_hours
    from estimator.cli.clock import today
    from estimator.cli.price_tables import readable_tables
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import answer

    out = in_window(language)
    if suggest:
        found, jobs, least = actual_hours.suggest(job, readable_tables(on or today(), tables))
        write_suggested(out, found, jobs, least)
        answer(found, as_json, out.rows)
        return
    entries = actual_hours.typed(task or (), hours or (), quantity or (), cause or ())
    compared = actual_hours.noted(job, option, entries, crew_book, None if days is None else Decimal(repr(days)), add)
    write_compared(out, compared)
    answer(compared, as_json, out.rows)


def write_compared(out: Layout, compared: Compared) -> None:
    """A row a task, all hours, hours over by cause, days, and work the estimate did not have."""
    words = {"letter": compared.option, "revision": str(compared.revision)}
    out.line(out.speak("Option {letter} of r{revision}", **words), "dim")
    found, strangers = compared.tasks, compared.not_estimated
    if not found and compared.days_real is None and not strangers:
        out.line(out.speak("No real hours are kept for this job yet."))
        return
    out.line(out.speak("Estimate against actual, hours"), "head")
    if found:
        _table(out, found)
    for task in strangers:
        out.paragraph(out.speak("{task}: real hours, and none in the estimate.", task=out.term(task)), look="bad")
    for cause, hours in _over_by_cause(found).items():
        out.line(f"  {out.term(cause)}: {hours:+.1f} h")
    out.paragraph(_days(compared.days_estimated, compared.days_real, out))


def _days(planned: Decimal, days: Decimal | None, words: Words) -> str:
    estimated = words.number(planned)
    if days is None:
        return words.speak("Crew days: {estimated} estimated; actual days not entered", estimated=estimated)
    return words.speak("Crew days: {estimated} estimated, {real} real", estimated=estimated, real=words.number(days))


def _table(out: Layout, found: Sequence[Outcome]) -> None:
    speak = out.speak
    heads = (
        speak("task"), speak("estimated"), speak("real"), speak("off"), speak("quantity"), speak("real"), speak("unit"),
        speak("cause"),
    )  # fmt: skip
    planned, real = sum(o.hours for o in found), sum(o.actual_hours for o in found)
    off = f"{(real - planned) * 100 / planned:+.0f} %" if planned else ""
    total = (speak("all of these"), out.number(planned), out.number(real), off, "", "", "", "")
    out.table(heads, [*(_cells(outcome, out) for outcome in found), total], right=(1, 2, 3, 4, 5))


def _cells(o: Outcome, words: Words) -> tuple[str, ...]:
    off = f"{o.off_percent:+.0f} %" if o.hours else ""
    hours, done, planned, real = (words.number(v, 2) for v in (o.hours, o.actual_hours, o.quantity, o.actual_quantity))
    return words.term(o.task), hours, done, off, planned, real, words.unit(o.unit), words.term(o.cause)


def _over_by_cause(found: Sequence[Outcome]) -> dict[str, float]:
    """Hours more or less than estimated, added up for each cause that was named."""
    over: dict[str, float] = {}
    for o in found:
        cause = o.cause or "no cause named"
        over[cause] = over.get(cause, 0.0) + o.actual_hours - o.hours
    return over


def write_suggested(out: Layout, found: Sequence[Suggestion], jobs: int, least: int) -> None:
    """A row a task with enough jobs; a sentence where there is none."""
    speak = out.speak
    out.line(
        speak("Jobs with real hours: {jobs}; a task is suggested from {least} jobs on", jobs=jobs, least=least), "head"
    )
    if not found:
        out.line(speak("No task has been done on so many jobs yet."))
        return
    heads = (
        speak("task"), speak("unit"), speak("jobs"), speak("in the table"), speak("as the jobs have it"), speak("spread"),
    )  # fmt: skip
    out.table(heads, [_suggestion(s, out) for s in found], right=(2, 5))
    never = speak(
        "low / likely / high, hours a unit: the middle of the jobs as likely, the 10th and 90th percentile around it. Nothing is "
        "changed by itself: what you agree with you write into production, with the day from which it holds."
    )
    out.paragraph(never)


def _suggestion(s: Suggestion, words: Words) -> tuple[str, ...]:
    was, now = (" / ".join(words.number(v, 3) for v in three) for three in (s.table, (s.low, s.likely, s.high)))
    return words.term(s.task), words.unit(s.unit), str(s.jobs), was, now, words.number(s.spread, 3)
