"""The sums of a month in, lines for the office out."""

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, dollars, number
from estimator.records.afterwards.month import Month
from estimator.wording.say import say, speaker


def rows(found: Month, columns: int, language: str = ENGLISH) -> list[Row]:
    """Counts and dollars, why jobs were lost, work in hand, and what a crew-day earned by method."""
    speak = speaker(language)
    money = dollars(found.came_in, language=language)
    backlog = number(found.backlog_days, language=language)
    out = [Row(speak("Month {month}", month=found.month), "head"), *_counts(found, columns, language)]
    out += [*_why(found, columns, language), Row("")]
    out += [Row(text) for text in indented(speak("Payments received: {money}", money=money), columns, by=0)]
    out += [Row(text) for text in indented(speak("Backlog at its end: {days} crew-days", days=backlog), columns, by=0)]
    return [*out, *_earned(found, columns, language), *(Row(say(wrong, language), "bad") for wrong in found.wrong)]


def _counts(found: Month, columns: int, language: str) -> list[Row]:
    speak = speaker(language)
    named = (
        (speak("quotes sent"), found.sent),
        (speak("jobs won"), found.won),
        (speak("jobs lost"), found.lost),
        (speak("jobs completed"), found.done),
        (speak("backlog at its end"), found.backlog),
    )
    cells = [(name, str(one.jobs), dollars(one.dollars, language=language)) for name, one in named]
    return [Row(text) for text in table(("", speak("jobs"), speak("dollars")), cells, columns, right=(1, 2))]


def _why(found: Month, columns: int, language: str) -> list[Row]:
    if not found.reasons:
        return []
    cells = [(reason, str(count)) for reason, count in found.reasons.items()]
    heads = (speaker(language)("why lost"), speaker(language)("jobs"))
    return [Row(""), *(Row(text) for text in table(heads, cells, columns, right=(1,)))]


def _earned(found: Month, columns: int, language: str) -> list[Row]:
    """Only of jobs whose hours are kept: a month without them says so."""
    speak = speaker(language)
    if not found.earned:
        said = speak("No completed job of this month has its hours: estimator actuals JOB --days N")
        return [Row(text, "dim") for text in indented(said, columns, by=0)]
    heads = (speak("method"), speak("crew-days"), speak("gross profit"), speak("per crew-day"))
    cells = [
        (
            term(one.method, language),
            number(one.crew_days, language=language),
            dollars(one.profit, language=language),
            dollars(one.per_crew_day, language=language),
        )
        for one in found.earned
    ]
    head = Row(speak("Gross profit per crew-day, from actual hours"), "head")
    return [Row(""), head, *(Row(text) for text in table(heads, cells, columns, right=(1, 2, 3)))]
