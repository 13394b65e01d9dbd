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
    from estimator.cli.views import unknowns
    from estimator.cli.views.gas import gas_first
    from estimator.cli.views.screen import answer, width
    from estimator.studies.unknowns import unknowns as found_in

    run = priced(job, tables, changes, on)
    found = tuple(found_in(run.quote, run.tables))
    answer(
        unknowns.as_data(found),
        as_json,
        [*gas_first(run.quote.job, width(), language), *unknowns.rows(found, width(), language)],
    )
