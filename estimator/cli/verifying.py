"""`estimator quote --verify`: a workbook that came back in; whether it is as it was issued, and the cells that are not, out."""

from pathlib import Path

from estimator.cli.reader import speak_to_reader
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.model.say import Typed
from estimator.records.names import revisions_folder
from estimator.records.verify import Verified, verify


def verified(job_file: Path, file: Path, columns: int) -> tuple[list[Row], bool]:
    """Whether a workbook that came back is as it was issued, and the cells that are not."""
    found = verify(revisions_folder(job_file), file)
    speak, held = speak_to_reader(), f"{found.revision.name}, {found.issued.name}"
    if found.same_bytes:
        return [Row(speak("As issued, byte for byte: {file}", file=held), "good")], True
    if not found.cells:
        said = speak("The figures and words are as issued in {file}; another program saved the file since.", file=held)
        return [*(Row(text) for text in indented(said, columns, by=0)), *_filled(found, job_file, columns)], True
    cells = [(c.sheet, c.cell, c.issued or "—", c.now or "—") for c in found.cells]
    head = [
        Row(text, "bad") for text in indented(speak("Not as issued. Held against {file}:", file=held), columns, by=0)
    ]
    heads = (speak("sheet"), speak("cell"), speak("issued"), speak("in this file"))
    changed = [Row(text) for text in table(heads, cells, columns)]
    return [*head, *changed, *_filled(found, job_file, columns)], False


def _filled(found: Verified, job_file: Path, columns: int) -> list[Row]:
    """What the reader wrote where the paper leaves room, and how the add-ons that are marked are written into the quote."""
    if not found.filled:
        return []
    speak, cells = speak_to_reader(), [(c.sheet, c.cell, c.now or "—") for c in found.filled]
    out = [Row(""), Row(speak("Written in where the paper leaves room:"), "head")]
    out += [Row(text) for text in table((speak("sheet"), speak("cell"), speak("written")), cells, columns)]
    for sheet, code, word in found.unclear:
        words = {"sheet": sheet, "code": code, "word": Typed(word)}
        said = speak("{sheet}, {code}: “{word}” is no x and is not counted. Ask what is meant.", **words)
        out += [Row(text, "bad") for text in indented(said, columns, by=0, hanging=2)]
    codes = ",".join(dict.fromkeys(code for _, code in found.marked))
    if codes:
        command = f"estimator quote {job_file} --with {codes}"
        said = speak("To write what is marked into the quote: {command}", command=Typed(command))
        out += [Row(text) for text in indented(said, columns, by=0, hanging=2)]
    return out
