"""`estimator site`: the notes in, one short sheet for the person on site out: tests, water, levels, marks or grade."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, JobFile, Language, SetKeys, TablesFrom
from estimator.cli.views.layout import Layout
from estimator.onsite.sheet import SiteSheet
from estimator.wording.say import in_language, say

if TYPE_CHECKING:
    from estimator.onsite.plug_results import Result


SHEETS = ("tests", "water", "levels", "marks", "grade", "cleanout", "plan", "lift", "record", "callbacks")


def _sheet(name: str) -> str:
    if name not in SHEETS:
        raise typer.BadParameter(f"there is no sheet “{name}”; write {', '.join(SHEETS[:-1])} or {SHEETS[-1]}.")
    return name


def _results(words: Sequence[str]) -> tuple["Result", ...]:
    """Errors: BadParameter for another word."""
    from estimator.onsite.plug_results import RESULTS

    found = tuple(
        r for word in words for r in RESULTS if word.strip().lower().startswith(("held", r) if r == "hold" else r)
    )
    if len(found) != len(words):
        raise typer.BadParameter("--result is drop or hold, once for each test made.")
    return found


SheetName = Annotated[
    str,
    typer.Argument(
        parser=_sheet,
        metavar="SHEET",
        help="tests: where to put plugs, in order. water: what the level readings say. levels: the pipe's bottom, fitted. "
        "marks: where to open. grade: the line and grade to lay. cleanout: where to probe for a buried one. plan: a sketch of house and drains, drawn with --out. lift: what a foundation lift did to the drain. record: what was built, warranties, callbacks. callbacks: "
        "counted by method, JOB being a folder of jobs.",
    ),
]
OptionLetter = Annotated[
    str,
    typer.Option(
        "--option",
        metavar="LETTER",
        help="For marks, grade, record, and openings on the plan; else the accepted option; for marks and grade else the first.",
    ),
]
Results = Annotated[
    list[str] | None,
    typer.Option(
        "--result", metavar="drop|hold", help="For tests: what a test showed, once for each test made, in their order."
    ),
]
NewFile = Annotated[
    Path | None,
    typer.Option(
        "--out",
        metavar="FILE",
        help="Also write it as a workbook, ending in .xlsx, or the plan as a picture, ending in .png; a new name.",
    ),
]


def command(
    job: JobFile,
    sheet: SheetName,
    tables: TablesFrom = None,
    changes: SetKeys = None,
    language: Language = AS_SET,
    option: OptionLetter = "",
    result: Results = None,
    out: NewFile = None,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.site_sheets import made, picture_of, written
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import answer
    from estimator.onsite.plug_results import TooManyResults

    results = _results(result or ())
    try:
        read, found = made(job, sheet, tables, changes, option, results)
    except TooManyResults as wrong:
        raise typer.BadParameter(str(wrong)) from None
    if out is not None:
        drawn = picture_of(read, job, tables, changes, option, language) if sheet == "plan" and read else None
        written(out, found, read, language, drawn)
    shown = in_window(language)
    write_sheet(shown, found)
    answer(as_data(found, language), as_json, shown.rows)


def write_sheet(out: Layout, sheet: SiteSheet) -> None:
    """The title, the answer, and each block under its heading."""
    for warning in sheet.first:
        out.paragraph(out.sentence(warning), look="bad")
    out.line(out.sentence(sheet.title), "head")
    out.paragraph(out.sentence(sheet.answer))
    for block in sheet.blocks:
        out.heading(out.sentence(block.heading))
        for line in block.lines:
            out.paragraph(out.sentence(line), by=2, hanging=2)
        if block.rows:
            cells = [[in_language(word, out.language) for word in row] for row in block.rows]
            out.table([out.say(head) for head in block.heads], cells)


def as_data(sheet: SiteSheet, language: str) -> dict[str, object]:
    """Return the same for --json, its sentences said."""
    return {
        "sheet": sheet.name,
        **({"first": [say(warning, language) for warning in sheet.first]} if sheet.first else {}),
        "title": say(sheet.title, language),
        "answer": say(sheet.answer, language),
        "blocks": [
            {
                "heading": say(block.heading, language),
                "lines": [say(line, language) for line in block.lines],
                "columns": [say(head, language) for head in block.heads],
                "rows": [[in_language(w, language) for w in row] for row in block.rows],
            }
            for block in sheet.blocks
        ],
    }
