"""`estimator quote`: the notes in, a revision folder with the papers out; or an older one again, or an acceptance."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import JobFile, Languages, OnDay, TablesFrom
from estimator.cli.completing import add_on_codes, option_letters, revision_names
from estimator.cli.guard import DONE, TO_MEND

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
    from estimator.cli import decisions, issuing
    from estimator.cli.clock import today
    from estimator.cli.reader import reader
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import show

    as_issued, out = True, in_window(reader())
    if again:
        issuing.again(out, job, again)
    elif accepted:
        decisions.accept(out, job, accepted, on or today(), revision)
    elif done:
        decisions.finish(out, job, on or today())
    elif lost:
        decisions.lose(out, job, on or today(), lost)
    elif verify:
        from estimator.cli.verifying import verified

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
