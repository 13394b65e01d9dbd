"""`estimator demo`: the name of a new folder in, a whole made-up job with its papers in it out."""

import shutil
from pathlib import Path
from typing import Annotated

import typer

NewFolder = Annotated[Path, typer.Argument(metavar="FOLDER", help="A new folder to write it into.")]


def command(folder: NewFolder = Path("drain-demo")) -> None:
    from estimator.cli import issuing
    from estimator.cli.demo_files import closing, laid_out, opening
    from estimator.cli.reader import reader
    from estimator.cli.views import options
    from estimator.cli.views.screen import show, width

    job = laid_out(folder)
    show(opening(job))
    try:
        run, issued = issuing.written(job, None, None, ())
    except BaseException:  # a demo is whole or not there, whatever stops it
        shutil.rmtree(folder, ignore_errors=True)
        raise
    show(options.rows(run.quote, width(), reader()))
    show(closing(job, issued.files, width()))
