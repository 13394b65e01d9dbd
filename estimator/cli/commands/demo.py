"""`estimator demo`: the name of a new folder in, a whole made-up job with its papers in it out."""

import shutil
from pathlib import Path
from typing import Annotated

import typer

NewFolder = Annotated[Path, typer.Argument(metavar="FOLDER", help="A new folder to write it into.")]


def command(folder: NewFolder = Path("drain-demo")) -> None:
    from estimator.cli import issuing
    from estimator.cli.demo_files import laid_out, write_closing, write_opening
    from estimator.cli.reader import reader
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.options import write_options
    from estimator.cli.views.screen import show

    job, out = laid_out(folder), in_window(reader())
    write_opening(out, job)
    show(out.rows)
    try:
        run, issued = issuing.written(job, None, None, ())
    except BaseException:  # a demo is whole or not there, whatever stops it
        shutil.rmtree(folder, ignore_errors=True)
        raise
    answer = out.part()
    write_options(answer, run.quote)
    write_closing(answer, job, issued.files)
    show(answer.rows)
