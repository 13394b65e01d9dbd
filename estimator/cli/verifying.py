"""`estimator quote --verify`: a workbook that came back in; whether it is as it was issued, and the cells that are not, out."""

from pathlib import Path

from estimator.cli.views.layout import Layout
from estimator.model.say import Typed
from estimator.records.names import revisions_folder
from estimator.records.verify import Verified, verify


def verified(out: Layout, job_file: Path, file: Path) -> bool:
    """Return whether a workbook that came back is as it was issued; the cells that are not are named."""
    found = verify(revisions_folder(job_file), file)
    speak, issued = out.speak, f"{found.revision.name}, {found.issued.name}"
    if found.same_bytes:
        out.line(speak("As issued, byte for byte: {file}", file=issued), "good")
        return True
    if found.cells:
        out.paragraph(speak("Not as issued. Held against {file}:", file=issued), look="bad")
        heads = (speak("sheet"), speak("cell"), speak("issued"), speak("in this file"))
        out.table(heads, [(c.sheet, c.cell, c.issued or "—", c.now or "—") for c in found.cells])
    else:
        as_issued = "The figures and words are as issued in {file}; another program saved the file since."
        out.paragraph(speak(as_issued, file=issued))
    if found.filled:
        _filled(out, found, job_file)
    return not found.cells


def _filled(out: Layout, found: Verified, job_file: Path) -> None:
    """What the reader wrote where the paper leaves room, and how the add-ons that are marked are written into the quote."""
    speak = out.speak
    out.heading(speak("Written in where the paper leaves room:"))
    out.table(
        (speak("sheet"), speak("cell"), speak("written")), [(c.sheet, c.cell, c.now or "—") for c in found.filled]
    )
    for sheet, code, word in found.unclear:
        words = {"sheet": sheet, "code": code, "word": Typed(word)}
        said = speak("{sheet}, {code}: “{word}” is no x and is not counted. Ask what is meant.", **words)
        out.paragraph(said, hanging=2, look="bad")
    if codes := ",".join(dict.fromkeys(code for _, code in found.marked)):
        command = Typed(f"estimator quote {job_file} --with {codes}")
        out.paragraph(speak("To write what is marked into the quote: {command}", command=command), hanging=2)
