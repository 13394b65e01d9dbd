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
_AND = r"(?:\s*[,&]\s*|\s+and\s+|\s+)"
_TO = r"\s*(?:-|to|thru|through)\s*"
_COMMAND = re.compile(
    r"(?P<lines>lines)"
    r"|(?:strike|delete|remove)\s+(?:lines?\s+)?"
    rf"(?P<strikes>\d{{1,4}}(?:{_TO}\d{{1,4}})?(?:{_AND}\d{{1,4}}(?:{_TO}\d{{1,4}})?)*)\W*"
    r"|(?:change|edit|replace)\s+(?:line\s+)?(?P<number>\d{1,4})\b[\s:,]*(?:to\s+)?(?P<text>.*)",
    re.IGNORECASE,
)


class Edit(Frozen):
    """`rows` count from 0; none lists the lines. `text` stands in place of its one row; `strikes` takes rows out."""

    rows: tuple[int, ...] = ()
    text: str = ""
    strikes: bool = False


def read_edit(text: str) -> Edit | None:
    """
    >>> read_edit("change line 3: 16.6 joint"), read_edit("16.6 joint")
    (Edit(rows=(2,), text='16.6 joint', strikes=False), None)
    >>> read_edit("Strike 2, 5-7 and 9")
    Edit(rows=(1, 4, 5, 6, 8), text='', strikes=True)
    """
    found = _COMMAND.fullmatch(text.strip())
    if found is None:
        return None
    if found["lines"]:
        return Edit()
    if found["strikes"] is None:
        return Edit((int(found["number"]) - 1,), found["text"].strip())
    spans = re.findall(rf"(\d+)(?:{_TO}(\d+))?", found["strikes"], re.IGNORECASE)
    rows = {row for first, last in spans for row in range(int(first) - 1, int(last or first))}
    return Edit(tuple(sorted(rows)), strikes=True)


def numbered(rows: Sequence[str]) -> list[str]:
    """Every line with its number."""
    return [f"{n:>3}  {row}" for n, row in enumerate(rows, 1)]


def edited(log: Typed, edit: Edit) -> Typed | Say:
    """The log with the lines struck, or the one read anew; or what is wrong with the command."""
    wrong = next((row for row in edit.rows if not 0 <= row < len(log.rows)), None)
    if wrong is not None or not edit.rows:
        return Say.of("there is no line {number}; `lines` shows them with their numbers", number=(wrong or 0) + 1)
    plain = replace(log, row=None, problems=(), taken_back="", refused=None, asked=None)
    if edit.strikes:
        rows = [
            STRUCK + row.removeprefix("# ").strip() if n in edit.rows and not row.startswith(STRUCK) else row
            for n, row in enumerate(log.rows)
        ]
        return replace(plain, rows=tuple(rows))
    if not edit.text:
        was = log.rows[edit.rows[0]].strip()
        return Say.of(
            "write the new line behind its number: {example}", example=AsTyped(f"change {edit.rows[0] + 1} {was}")
        )
    return put(plain, edit.rows[0], edit.text)
