"""A command about one line of a log in (`lines`, `strike 3`, `change 3 16.6 joint`); the lines with their numbers, or the log with
that line changed, out. A line struck stays as a remark, so that nothing typed is lost."""

import re
from collections.abc import Sequence
from dataclasses import replace

from estimator.cli.interview.rows import Typed, put
from estimator.model.frozen import Frozen
from estimator.model.say import Say
from estimator.model.say import Typed as AsTyped

STRUCK = "# struck: "
_COMMAND = re.compile(
    r"(?:(?P<lines>lines)|(?P<word>strike|delete|remove|change|edit|replace)\s+(?:line\s+)?(?P<number>\d{1,4})\b[\s:,]*(?:to\s+)?(?P<text>.*))",
    re.IGNORECASE,
)
_STRIKES = ("strike", "delete", "remove")


class Edit(Frozen):
    """`row` counts from 0; None lists the lines. No `text` strikes the line."""

    row: int | None = None
    text: str = ""
    strikes: bool = False


def read_edit(text: str) -> Edit | None:
    """
    >>> read_edit("change line 3: 16.6 joint"), read_edit("Strike 2"), read_edit("16.6 joint")
    (Edit(row=2, text='16.6 joint', strikes=False), Edit(row=1, text='', strikes=True), None)
    """
    found = _COMMAND.fullmatch(text.strip())
    if found is None:
        return None
    if found["lines"]:
        return Edit()
    return Edit(int(found["number"]) - 1, found["text"].strip(), found["word"].lower() in _STRIKES)


def numbered(rows: Sequence[str]) -> list[str]:
    """Every line with its number."""
    return [f"{n:>3}  {row}" for n, row in enumerate(rows, 1)]


def edited(log: Typed, edit: Edit) -> Typed | Say:
    """The log with the line struck or read anew; or what is wrong with the command."""
    if edit.row is None or not 0 <= edit.row < len(log.rows):
        return Say.of("there is no line {number}; `lines` shows them with their numbers", number=(edit.row or 0) + 1)
    was = log.rows[edit.row]
    plain = replace(log, row=None, problems=(), taken_back="", refused=None, asked=None)
    if edit.strikes:
        struck = STRUCK + was.removeprefix("# ").strip()
        return replace(plain, rows=(*log.rows[: edit.row], struck, *log.rows[edit.row + 1 :]))
    if not edit.text:
        return Say.of(
            "write the new line behind its number: {example}", example=AsTyped(f"change {edit.row + 1} {was.strip()}")
        )
    return put(plain, edit.row, edit.text)
