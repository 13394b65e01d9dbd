"""`estimator demo`: the name of a new folder in, a whole made-up job with its papers in it out."""

import shutil
import sys
from collections.abc import Sequence
from importlib.resources import files
from pathlib import Path
from typing import Annotated

import typer

from estimator import demo
from estimator.cli.problems import FOLDER_NOT_EMPTY
from estimator.cli.views.layout import Layout
from estimator.disk.whole import write_folder
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say, Typed

NewFolder = Annotated[Path, typer.Argument(metavar="FOLDER", help="A new folder to write it into.")]


def command(folder: NewFolder = Path("drain-demo")) -> None:
    from estimator.cli import issuing
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


LOOK_AT: tuple[tuple[str, Say], ...] = (
    ("Drain quote", Say.of("what the homeowner gets: open its first sheet, on a phone too")),
    ("Presupuesto", Say.of("the same in Spanish")),
    ("Water test", Say.of("the tests without any price, for the foundation company")),
    ("Inspection", Say.of("what was filmed and found, without any price")),
    ("Informe", Say.of("the same in Spanish")),
    ("Message", Say.of("the words to send it with")),
    ("Office", Say.of("price, cost and gross profit, what to buy, who works when: a page, and one an option")),
    ("Workings", Say.of("every hour, price cell and rule behind each figure, to look up and to try")),
    ("Crew", Say.of("what the crew works from, without money")),
    ("Record", Say.of("all that this revision was made from")),
)


def laid_out(folder: Path) -> Path:
    """Writes the demo's notes into a new folder and gives the job file. Errors: CannotGoOn where something is in the way."""
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise CannotGoOn(FOLDER_NOT_EMPTY(Place(file=str(folder))))
    folder.parent.mkdir(parents=True, exist_ok=True)
    if folder.exists():
        folder.rmdir()  # empty, as was just seen
    write_folder(folder, {name: files(demo).joinpath(name).read_bytes() for name in demo.FILES})
    return folder / demo.FILES[0]


def write_opening(out: Layout, job: Path) -> None:
    said = "Notes of a made-up house are in {folder}; every name and price is invented."
    out.line(out.speak(said, folder=str(job.parent)), "head")
    out.line()


def write_closing(out: Layout, job: Path, written: Sequence[Path]) -> None:
    """The files by what they are for, and what to try next."""
    out.heading(out.speak("Written"))
    for path in written:
        out.line(f"  {path}")
        about = next((text for start, text in LOOK_AT if path.name.startswith(start)), None)
        if about:
            out.line(f"      {out.say(about)}", "dim")
    program, file = called(), typed(job)
    out.heading(out.speak("Look at"))
    for tried in (f"check {file}", f"options {file} --why", f"compare {file} --line main", f"explain {file} A1"):
        out.line(f"  {program} {tried}")
    hint = out.speak(
        "Then change a line of {log} and run `{command}`: it writes r2 and leaves r1 alone.",
        log=str(job.parent / "main.txt"),
        command=Typed(f"{program} quote {file}"),
    )
    out.paragraph(hint, by=2)


def called() -> str:
    """`estimator` where the shell finds it; else the way it was called this time, such as .venv/bin/estimator."""
    if shutil.which("estimator"):
        return "estimator"
    first = sys.argv[0] if sys.argv else ""
    if Path(first).stem == "estimator":
        return typed(first)
    return f"{typed(sys.executable)} -m estimator"


def typed(word: object) -> str:
    """A word as one types it: in quotes where it has a blank.

    >>> typed("my first look/job.toml"), typed("larkspur/job.toml")
    ('"my first look/job.toml"', 'larkspur/job.toml')
    """
    return f'"{word}"' if any(c.isspace() for c in str(word)) else str(word)
