"""The demo's job: from the file to priced options in process, step by step, and whole commands."""

import shutil
import tempfile
from datetime import date
from pathlib import Path

from estimator import demo
from estimator.cli.way import priced, tables_for
from estimator.diagnosis import diagnose
from estimator.fieldnotes import read_job
from estimator.pipeline import run as price
from tests.bench.clock import middle, run

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
        ("`estimator check`", lambda: run("-m", "estimator", "check", str(JOB))),
        ("`estimator options`", lambda: run("-m", "estimator", "options", str(JOB))),
        ("`estimator compare`", lambda: run("-m", "estimator", "compare", str(JOB))),
        ("**`estimator quote`, both languages, all papers**", _quoted),
    ]
    rows = [f"| {name} | {middle(deed, 3 if 'estimator' in name else TIMES):.2f} |" for name, deed in steps]
    return ["| the demo's job | seconds |", "|---|---:|", *rows]


def _diagnosed():
    job, tables = read_job(JOB).job, tables_for(date(2026, 11, 18), None)[0]
    return lambda: diagnose(job, tables)


def _priced():
    job, tables = read_job(JOB).job, tables_for(date(2026, 11, 18), None)[0]
    return lambda: price(job, tables, date(2026, 11, 18))


def _quoted() -> None:
    """In a new folder each time, so that a revision is written."""
    with tempfile.TemporaryDirectory() as folder:
        for name in demo.FILES:
            shutil.copyfile(NOTES / name, Path(folder) / name)
        run("-m", "estimator", "quote", str(Path(folder) / "job.toml"))
