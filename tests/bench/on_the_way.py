"""The demo's job: from the file to priced options in process, step by step."""

import os
from datetime import date
from pathlib import Path

from estimator import demo
from estimator.cli import rarely_swept
from estimator.cli.price_tables import tables_for
from estimator.cli.priced_job import priced
from estimator.diagnosis import diagnose
from estimator.fieldnotes import read_job
from estimator.pipeline import run as price
from tests.bench.clock import middle

NOTES = Path(demo.__file__).parent
JOB = NOTES / "job.toml"
TIMES = 9


def on_the_way() -> list[str]:
    steps = [
        ("read the notes", lambda: read_job(JOB)),
        ("read and check the price tables", lambda: tables_for(date(2026, 11, 18), None)),
        ("say what the findings mean", _diagnosed()),
        ("allow, measure, search, price, put into words", _priced()),
        ("**job file to priced options, in process**", lambda: priced(JOB, None)),
    ]
    os.environ["ESTIMATOR_CACHE"] = "no"
    rarely_swept()  # as in the program
    rows = [f"| {name} | {1000 * middle(deed, TIMES):.0f} |" for name, deed in steps]
    return ["| the demo's job, nothing kept | milliseconds |", "|---|---:|", *rows]


def _diagnosed():
    job, tables = read_job(JOB).job, tables_for(date(2026, 11, 18), None)[0]
    return lambda: diagnose(job, tables)


def _priced():
    job, tables = read_job(JOB).job, tables_for(date(2026, 11, 18), None)[0]
    return lambda: price(job, tables, date(2026, 11, 18))
