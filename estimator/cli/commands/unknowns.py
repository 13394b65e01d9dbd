"""`estimator unknowns`: the notes in, what moves each option's price most out, as questions for the return visit."""

from estimator.cli.arguments import AS_SET, AsJson, JobFile, Language, OnDay, SetKeys, TablesFrom


def command(
    job: JobFile,
    tables: TablesFrom = None,
    changes: SetKeys = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.priced_job import priced
    from estimator.cli.views.gas import write_gas_first
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import answer
    from estimator.cli.views.unknowns import as_data, write_unknowns
    from estimator.studies.unknowns import unknowns as found_in

    run = priced(job, tables, changes, on)
    found = tuple(found_in(run.quote, run.tables))
    out = in_window(language)
    write_gas_first(out, run.quote.job)
    write_unknowns(out, found)
    answer(as_data(found), as_json, out.rows)
