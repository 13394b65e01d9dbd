"""Workbooks in, the same pages as PDF beside them: by an office program on this machine where one is found."""

import shutil
import subprocess
import tempfile
from collections.abc import Iterable, Iterator
from pathlib import Path

from estimator.cli.problems import NO_PICTURE, NOT_A_PICTURE
from estimator.cli.views.layout import Layout
from estimator.disk.whole import read_bytes, write_whole
from estimator.fieldnotes.textfile import lies_below
from estimator.model.offer import Quote
from estimator.model.problem import Place, Problem

PROGRAMS = ("soffice", "libreoffice", "/Applications/LibreOffice.app/Contents/MacOS/soffice")
"""Office programs that turn a workbook into PDF without a window, by their names on the path and where macOS keeps one."""
SECONDS = 180


def office_program() -> str | None:
    """Return the first that is there, or None."""
    return next((found for name in PROGRAMS if (found := shutil.which(name))), None)


def write_pdfs(out: Layout, files: Iterable[Path]) -> None:
    """Write a PDF beside each workbook that goes to the customer; say what was written, or how to print without a program."""
    books = [path for path in files if path.suffix == ".xlsx" and path.parent.name == "to send"]
    program = office_program()
    if not program:
        none = out.speak("No office program was found, so no PDF was written. Open the file and print it to PDF.")
        out.line(none, "bad")
        return
    with tempfile.TemporaryDirectory() as folder:
        command = [program, f"-env:UserInstallation={(Path(folder) / 'profile').as_uri()}", "--headless"]
        for path in books:
            made = _converted(
                [*command, "--convert-to", "pdf", "--outdir", folder, str(path)], Path(folder) / f"{path.stem}.pdf"
            )
            if made is None:
                none = out.speak("No PDF was made of {file}. Open it and print it to PDF.", file=path.name)
                out.line(none, "bad")
                continue
            place = path.with_suffix(".pdf")
            write_whole(place, made)
            out.line(f"  {place}")


def _converted(command: list[str], made: Path) -> bytes | None:
    """The PDF's bytes; None where the program failed or took too long."""
    try:
        subprocess.run(command, capture_output=True, timeout=SECONDS, check=False)
    except (OSError, subprocess.TimeoutExpired):
        return None
    return made.read_bytes() if made.exists() else None


LOGO = "logo"


def photos(folder: Path, quote: Quote) -> tuple[dict[str, bytes], tuple[Problem, ...]]:
    """Pictures lie beside the job file or in a folder there, under the names of the notes; the firm's logo too, under its setting's."""
    from estimator.sheets.images import NotAPicture, shrunk

    found: dict[str, bytes] = {}
    wrong: list[Problem] = []
    for key, name in _named(quote):
        path = folder / name
        place = Place(file=str(path))
        if not lies_below(name) or not path.is_file():
            wrong.append(NO_PICTURE(place, name=name))
            continue
        try:
            found[key] = shrunk(read_bytes(path))
        except NotAPicture as error:
            wrong.append(NOT_A_PICTURE(place, said=error.args[0]))
    return found, tuple(wrong)


def _named(quote: Quote) -> Iterator[tuple[str, str]]:
    """Each name once, with the key the papers know it by."""
    found = [finding.photo_file for line in quote.job.lines for finding in line.findings]
    marked = [mark.photo_file for line in quote.job.lines for mark in line.marks]
    yield from ((name, name) for name in dict.fromkeys((*found, *marked)) if name)
    if quote.firm.logo:
        yield LOGO, quote.firm.logo
