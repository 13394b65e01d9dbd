"""The sums of a month in, lines for the office out."""

from estimator.cli.views.layout import Layout
from estimator.records.afterwards.month import Month


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
