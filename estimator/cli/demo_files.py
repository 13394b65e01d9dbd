"""The demo's files in a new folder, and the words around what it shows."""

from collections.abc import Sequence
from importlib.resources import files
from pathlib import Path

from estimator import demo
from estimator.cli.invocation import called, typed
from estimator.cli.problems import FOLDER_NOT_EMPTY
from estimator.cli.reader import reader, speak_to_reader
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.disk.whole import write_folder
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say, Typed
from estimator.wording.say import say

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


def opening(job: Path) -> list[Row]:
    said = "Notes of a made-up house are in {folder}; every name and price is invented."
    return [Row(speak_to_reader()(said, folder=str(job.parent)), "head"), Row("")]


def closing(job: Path, written: Sequence[Path], columns: int) -> list[Row]:
    """The files by what they are for, and what to try next."""
    speak = speak_to_reader()
    out = [Row(""), Row(speak("Written"), "head")]
    for path in written:
        about = next((say(text, reader()) for start, text in LOOK_AT if path.name.startswith(start)), "")
        out += [Row(f"  {path}"), *([Row(f"      {about}", "dim")] if about else [])]
    program, file = called(), typed(job)
    tries = (
        f"{program} check {file}",
        f"{program} options {file} --why",
        f"{program} compare {file} --line main",
        f"{program} explain {file} A1",
    )
    out += [Row(""), Row(speak("Look at"), "head"), *(Row(f"  {text}") for text in tries)]
    command = Typed(f"{program} quote {file}")
    hint = speak(
        "Then change a line of {log} and run `{command}`: it writes r2 and leaves r1 alone.",
        log=str(job.parent / "main.txt"),
        command=command,
    )
    return [*out, *(Row(text) for text in indented(hint, columns))]
