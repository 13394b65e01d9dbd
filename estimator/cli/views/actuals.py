"""Estimate beside what really happened in, lines for the office out; and suggested production rows over several jobs."""

from collections.abc import Sequence
from decimal import Decimal

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term, unit
from estimator.cli.views.words import ENGLISH, number
from estimator.pricing.actuals import Outcome, Suggestion
from estimator.wording.say import speaker


def rows(
    found: Sequence[Outcome],
    strangers: Sequence[str],
    planned: Decimal,
    days: Decimal | None,
    columns: int,
    language: str = ENGLISH,
) -> list[Row]:
    """A row a task, all hours, hours over by cause, days, and work the estimate did not have."""
    speak = speaker(language)
    if not found and days is None and not strangers:
        return [Row(speak("No real hours are kept for this job yet."))]
    out = [Row(speak("Estimate against actual, hours"), "head"), *_compared(found, columns, language)]
    for task in strangers:
        said = speak("{task}: real hours, and none in the estimate.", task=term(task, language))
        out += [Row(text, "bad") for text in indented(said, columns, by=0)]
    out += [Row(text) for text in by_cause(found, language)]
    return [*out, *map(Row, indented(_days(planned, days, language), columns, by=0))]


def _days(planned: Decimal, days: Decimal | None, language: str) -> str:
    speak, estimated = speaker(language), number(planned, language=language)
    if days is None:
        return speak("Crew days: {estimated} estimated; actual days not entered", estimated=estimated)
    real = number(days, language=language)
    return speak("Crew days: {estimated} estimated, {real} real", estimated=estimated, real=real)


def _compared(found: Sequence[Outcome], columns: int, language: str) -> list[Row]:
    if not found:
        return []
    speak = speaker(language)
    heads = (
        speak("task"), speak("estimated"), speak("real"), speak("off"), speak("quantity"), speak("real"), speak("unit"),
        speak("cause"),
    )  # fmt: skip
    hours = [
        number(sum(each), language=language) for each in ((o.hours for o in found), (o.actual_hours for o in found))
    ]
    total = (speak("all of these"), *hours, _percent(found), "", "", "", "")
    cells = [_cells(outcome, language) for outcome in found]
    return [Row(text) for text in table(heads, [*cells, total], columns, right=(1, 2, 3, 4, 5))]


def _cells(o: Outcome, language: str) -> tuple[str, ...]:
    off = f"{o.off_percent:+.0f} %" if o.hours else ""
    hours, done = (number(value, 2, language) for value in (o.hours, o.actual_hours))
    planned, real = (number(value, 2, language) for value in (o.quantity, o.actual_quantity))
    return term(o.task, language), hours, done, off, planned, real, unit(o.unit, language), term(o.cause, language)


def _percent(found: Sequence[Outcome]) -> str:
    hours = sum(o.hours for o in found)
    return f"{(sum(o.actual_hours for o in found) - hours) * 100 / hours:+.0f} %" if hours else ""


def by_cause(found: Sequence[Outcome], language: str = ENGLISH) -> list[str]:
    """Hours more or less than estimated, added up for each cause that was named."""
    over: dict[str, float] = {}
    for o in found:
        over[o.cause or "no cause named"] = over.get(o.cause or "no cause named", 0.0) + o.actual_hours - o.hours
    return [f"  {term(cause, language)}: {hours:+.1f} h" for cause, hours in over.items()]


def suggested(found: Sequence[Suggestion], jobs: int, least: int, columns: int, language: str = ENGLISH) -> list[Row]:
    """A row a task with enough jobs; a sentence where there is none."""
    speak = speaker(language)
    said = speak("Jobs with real hours: {jobs}; a task is suggested from {least} jobs on", jobs=jobs, least=least)
    if not found:
        return [Row(said, "head"), Row(speak("No task has been done on so many jobs yet."))]
    heads = (
        speak("task"), speak("unit"), speak("jobs"), speak("in the table"), speak("as the jobs have it"), speak("spread"),
    )  # fmt: skip
    body = table(heads, [_suggestion(s, language) for s in found], columns, right=(2, 5))
    never = speak(
        "low / likely / high, hours a unit: the middle of the jobs as likely, the 10th and 90th percentile around it. Nothing is "
        "changed by itself: what you agree with you write into production, with the day from which it holds."
    )
    return [Row(said, "head"), *map(Row, body), *map(Row, indented(never, columns, by=0))]


def _suggestion(s: Suggestion, language: str) -> tuple[str, ...]:
    was, now = (" / ".join(number(v, 3, language) for v in three) for three in (s.table, (s.low, s.likely, s.high)))
    return term(s.task, language), unit(s.unit, language), str(s.jobs), was, now, number(s.spread, 3, language)
