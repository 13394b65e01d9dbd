"""A [[line]] of the job file comes in; its logs are found and read, and a Line with stations goes out."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path as FilePath

from estimator.fieldnotes.assemble import assemble
from estimator.fieldnotes.forms import LineForm, PassForm
from estimator.fieldnotes.hang import Hung
from estimator.fieldnotes.heading import Heading, flow_of, is_after_cleaning
from estimator.fieldnotes.lexicon import material_of
from estimator.fieldnotes.limits import Limits
from estimator.fieldnotes.log import LogReader, nothing_read
from estimator.fieldnotes.logbook import Log
from estimator.fieldnotes.nearest import nearest
from estimator.fieldnotes.places import Path
from estimator.fieldnotes.syntax import Document
from estimator.fieldnotes.textfile import OUTSIDE, lies_below, read_text
from estimator.fieldnotes.tidy import standard_words, tidied
from estimator.fieldnotes.words import MATERIALS
from estimator.fieldnotes.zero import Zero
from estimator.model.line import Line
from estimator.model.problem import Place, Problem, error

NO_LOG = error(
    "job/no-log",
    "line {line} has no log.",
    'Add log = "{line}.txt", or filmed = false and its length when no camera was in it.',
)
MATERIAL = error("job/pipe", "“{text}” is no pipe material this program knows. {nearest}", "Write one of: {known}.")
PROBLEMS = (NO_LOG, MATERIAL)


@dataclass(slots=True)
class ReadLine:
    """A line with what other parts of the job file need of it: its hung passes and where its zero lies."""

    line: Line
    hung: tuple[Hung, ...]
    zero: Zero
    place: Place
    form: LineForm
    names: Mapping[str, str] = field(default_factory=dict)

    def station(self, reading_ft: float) -> float:
        """A reel reading of the first pass as a station."""
        return self.zero.station(self.hung[0].way_ft(reading_ft) if self.hung else reading_ft)


class LogFiles:
    """Finds log texts beside the job file and keeps what was read."""

    def __init__(self, folder: FilePath) -> None:
        self.folder = folder
        self.read: list[tuple[str, str]] = []

    def text(self, name: str, place: Place) -> str | Problem:
        known = dict(self.read)
        if name in known:
            return known[name]
        if not lies_below(name):
            return OUTSIDE(place, name=name)
        text = read_text(self.folder / name, place, name)
        if isinstance(text, str):
            self.read.append((name, text))
        return text


def is_file_name(log: str) -> bool:
    """A log of one line that does not begin with a reading or a heading is the name of a file."""
    one_line = "\n" not in log.strip() and "\n" not in log
    return one_line and not (log.strip()[:1].isdigit() and " " in log.strip()) and not log.strip().startswith("pass ")


def _one_line(text: str) -> str:
    """Words of a key as a heading would hold them: no comma, no line break, shortenings written out."""
    return standard_words(tidied(" ".join(re.split(r"[\s,;]+", text)).strip())).text


def _given(form: LineForm | PassForm, place: Place) -> Heading | None:
    """What the keys say about the pass, when they say anything."""
    access = _one_line(form.access or (form.from_ if isinstance(form, PassForm) else ""))
    zero_at = form.zero_at if isinstance(form, PassForm) else None
    why = _one_line(form.why) if isinstance(form, PassForm) else ""
    if not (access or form.flow or form.riser is not None or form.to or why or zero_at is not None):
        return None
    return Heading(
        access=access,
        to=_one_line(form.to),
        flow=form.flow or flow_of(form.to),
        riser_ft=form.riser,
        surface=form.surface or (form.riser == 0 and "cleanout" not in access.lower()),
        when=why,
        after_cleaning=is_after_cleaning(why),
        zero_at_ft=zero_at,
        from_end=access == "end",
        text=access or why,
        place=place,
    )


def read_line(
    form: LineForm, number: int, document: Document, logs: LogFiles, words: Mapping[str, str], limits: Limits
) -> tuple[ReadLine, list[Problem]]:
    path: Path = ("line", number)
    log, bore_in = Log(), round(form.size * 12, 6)
    _read_log(form.log, (*path, "log"), _given(form, document.place(*path)), log, document, logs, words, bore_in)
    for index, this in enumerate(form.pass_):
        here: Path = (*path, "pass", index)
        given = _given(this, document.place(*here)) or Heading(text=f"pass {index + 1}", place=document.place(*here))
        _read_log(this.log, (*here, "log"), given, log, document, logs, words, bore_in)
    problems: list[Problem] = []
    if form.filmed and not form.log and not any(p.log for p in form.pass_):
        problems.append(NO_LOG(document.place(*path), line=form.name))
    elif form.filmed:
        problems += nothing_read(log, document.place(*path, "log"))
    pipe = material_of(form.pipe) or form.pipe
    if pipe not in MATERIALS:
        near = nearest(form.pipe, MATERIALS)
        problems.append(
            MATERIAL(document.place(*path, "pipe"), text=form.pipe, nearest=near, known=", ".join(MATERIALS))
        )
    bare = Line(
        name=form.name, size_in=bore_in, pipe=pipe, length_ft=form.length, ends=form.ends,
        filmed=form.filmed, note=form.note,
    )  # fmt: skip
    line, hung, zero, found = assemble(bare, log, form.zero or "", limits, document.place(*path, "zero"))
    return ReadLine(line, hung, zero, document.place(*path), form, log.names), log.problems + problems + found


def _read_log(
    text: str,
    path: Path,
    given: Heading | None,
    log: Log,
    document: Document,
    logs: LogFiles,
    words: Mapping[str, str],
    bore_in: float,
) -> None:
    if not text.strip():
        return
    if is_file_name(text):
        found = logs.text(text.strip(), document.place(*path))
        if isinstance(found, Problem):
            log.found.append(found)
            log.unread = True
            return
        LogReader(log, text.strip(), words, given, bore_in).read(found)
        return
    spot = document.spots.get(path)
    row, column = (spot.value_line, spot.value_column) if spot else (1, 1)
    start = document.text.split("\n")[row - 1][column - 1 :]
    long = start.startswith(("'''", '"""'))
    own_line = long and not start[3:].strip()
    reader = LogReader(log, document.file, words, given, bore_in)
    reader.read(text, row + own_line, 0 if own_line else column - 1 + (3 if long else 1))
