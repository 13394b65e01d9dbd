"""`estimator quote`: the notes in, a revision folder with the papers out; or an older one again, or an acceptance."""

from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import JobFile, Languages, OnDay, TablesFrom
from estimator.cli.completing import add_on_codes, option_letters, revision_names
from estimator.cli.guard import DONE, TO_MEND
from estimator.cli.problems import DAY_TO_COME
from estimator.cli.views.layout import Layout
from estimator.model.problem import Place
from estimator.model.say import Typed
from estimator.records.revisions import revisions_folder
from estimator.records.verify import Verified, verify

Again = Annotated[
    str,
    typer.Option(
        "--again",
        metavar="rN",
        autocompletion=revision_names,
        help="Make the files of an issued revision again, from its record.",
    ),
]
Accepted = Annotated[
    str,
    typer.Option(
        "--accepted",
        metavar="LETTER",
        autocompletion=option_letters,
        help="Note that this option was accepted, --on its day.",
    ),
]

Revision = Annotated[
    str,
    typer.Option(
        "--revision",
        metavar="rN",
        autocompletion=revision_names,
        help="With --accepted: the revision that was signed; else the newest.",
    ),
]
Done = Annotated[bool, typer.Option("--done", help="Note that the accepted work was done, --on its day.")]
Lost = Annotated[
    str, typer.Option("--lost", metavar="WHY", help="Note that the job was not won, --on its day, and why.")
]
Verify = Annotated[
    Path | None,
    typer.Option("--verify", metavar="FILE", help="Say whether a workbook that came back is as it was issued."),
]
NONE = "none"
With = Annotated[
    list[str] | None,
    typer.Option(
        "--with",
        metavar="ADD-ON",
        autocompletion=add_on_codes,
        help="Add-ons the homeowner chose, such as cleanout,drain-plan, or B:cleanout for option B alone; none takes them out. Else as last time.",
    ),
]
Today = Annotated[
    bool, typer.Option("--today", help="Price a revision with today's tables, though the last offer still holds.")
]
Pdf = Annotated[
    bool, typer.Option("--pdf", help="Write the customer's papers as PDF too, by an office program found here.")
]


def command(
    job: JobFile,
    tables: TablesFrom = None,
    on: OnDay = None,
    again: Again = "",
    accepted: Accepted = "",
    revision: Revision = "",
    done: Done = False,
    lost: Lost = "",
    verify: Verify = None,
    add_ons: With = None,
    anew: Today = False,
    pdf: Pdf = False,
    language: Languages = None,
) -> int:
    from estimator.cli import issuing
    from estimator.cli.clock import today
    from estimator.cli.reader import reader
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import show

    as_issued, out = True, in_window(reader())
    if again:
        issuing.again(out, job, again)
    elif accepted:
        accept(out, job, accepted, on or today(), revision)
    elif done:
        finish(out, job, on or today())
    elif lost:
        lose(out, job, on or today(), lost)
    elif verify:
        as_issued = verified(out, job, verify)
    else:
        day = on or (today() if anew else None)
        issuing.new(out, job, tables, day, tuple(language or ()), anew, chosen(add_ons), pdf)
    show(out.rows)
    return DONE if as_issued else TO_MEND


def chosen(words: list[str] | None) -> tuple[str, ...] | None:
    """The short names typed, each once; () for none, None where nothing was typed.

    >>> chosen(["cleanout, B:drain-plan", "cleanout"]), chosen(["none"]), chosen(None)
    (('cleanout', 'B:drain-plan'), (), None)

    Errors: BadParameter for none beside others, and for no name at all.
    """
    if words is None:
        return None
    codes = tuple(dict.fromkeys(code.strip() for word in words for code in word.split(",") if code.strip()))
    if [code.lower() for code in codes] == [NONE]:
        return ()
    if not codes or NONE in (code.lower() for code in codes):
        raise typer.BadParameter("write short names of add-ons, such as cleanout,B:drain-plan; or none alone.")
    return codes


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


def accept(out: Layout, job_file: Path, letter: str, on: date, asked: str = "") -> None:
    """The note that an option was accepted: of the revision that was asked for, such as r1, else of the newest one."""
    from estimator.records.accepted import accept as note
    from estimator.records.accepted import note_of
    from estimator.records.revisions import named, newest

    folder = revisions_folder(job_file)
    revision = named(folder, asked) if asked else newest(folder) or named(folder, "r1")
    kept = note(folder, revision, letter, on)
    _ask_about_a_day_to_come(on, note_of(folder, revision))
    words = {"letter": kept.option, "number": kept.revision, "day": kept.on, "total": out.dollars(Decimal(kept.total))}
    out.line(out.speak("Option {letter} of r{number} accepted on {day}, {total}.", **words))
    if until := kept.cancel_until:
        out.line(out.speak("The homeowner may cancel until the end of {day}; start nothing before.", day=until))


def finish(out: Layout, job_file: Path, on: date) -> None:
    """The note that the accepted work was done."""
    from estimator.cli.views.problems import tell
    from estimator.records.finished import doubts, note_of
    from estimator.records.finished import finish as note

    folder = revisions_folder(job_file)
    kept = note(folder, on)
    tell(doubts(folder, kept))
    _ask_about_a_day_to_come(on, note_of(folder, kept.revision))
    words = {"letter": kept.option, "number": kept.revision, "day": kept.on}
    out.line(out.speak("Option {letter} of r{number} was done on {day}.", **words))


def lose(out: Layout, job_file: Path, on: date, why: str) -> None:
    """The note that the job was not won, and why; typed again it takes the place of the one before."""
    from estimator.records.afterwards.lost import NAME
    from estimator.records.afterwards.lost import lose as note

    folder = revisions_folder(job_file)
    kept = note(folder, on, why.strip())
    _ask_about_a_day_to_come(on, folder / NAME)
    words = {"number": kept.revision, "day": kept.on, "why": Typed(kept.why)}
    out.line(out.speak("r{number} was lost on {day}: {why}.", **words))


def _ask_about_a_day_to_come(on: date, note: Path) -> None:
    """Nothing is refused for it: the machine's clock may be the one that is wrong."""
    from estimator.cli.clock import today
    from estimator.cli.views.problems import tell

    if on > today():
        tell([DAY_TO_COME(Place(), day=on, today=today(), file=note)])
