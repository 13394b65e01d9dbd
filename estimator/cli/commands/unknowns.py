"""`estimator unknowns`: the notes in, what moves each option's price most out, as questions for the return visit."""

from collections.abc import Sequence

from estimator.cli.arguments import AS_SET, AsJson, JobFile, Language, OnDay, SetKeys, TablesFrom
from estimator.cli.views.layout import Layout
from estimator.model.offer import Option
from estimator.studies.sensitivity import Unknown


def command(
    job: JobFile,
    tables: TablesFrom = None,
    changes: SetKeys = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.priced_job import priced
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.problems import write_gas_first
    from estimator.cli.views.screen import answer
    from estimator.studies.sensitivity import unknowns as found_in

    run = priced(job, tables, changes, on)
    found = tuple(found_in(run.quote, run.tables))
    out = in_window(language)
    write_gas_first(out, run.quote.job)
    write_unknowns(out, found)
    answer(as_data(found), as_json, out.rows)


Found = Sequence[tuple[Option, tuple[Unknown, ...]]]


def write_unknowns(out: Layout, found: Found) -> None:
    """A block an option; one line when nothing moves its price."""
    for option, unknown in found:
        price = out.dollars(option.price.total, whole=True)
        out.paragraph(f"{option.letter}  {out.sentence(option.title)}, {price}", hanging=3, look="head")
        if unknown:
            heads = (out.speak("moves the price by"), out.speak("what is not known"), out.speak("what to find out"))
            cells = [(out.dollars(u.swing, True), out.sentence(u.what), out.sentence(u.question)) for u in unknown]
            out.table(heads, cells, right=(0,))
        else:
            out.line(out.speak("Nothing that is still open moves this price."))
        out.line()


def as_data(found: Found) -> list[dict[str, object]]:
    """The same for --json; dollars as text."""
    return [
        {
            "option": option.letter,
            "unknowns": [
                {
                    "what": str(u.what),
                    "low": str(u.low),
                    "high": str(u.high),
                    "swing": str(u.swing),
                    "find out": str(u.question),
                }
                for u in unknown
            ],
        }
        for option, unknown in found
    ]
