"""The lines of a log so far in, how the program reads them out: the log, the line put together, what is wrong where."""

from collections.abc import Mapping, Sequence

from estimator.fieldnotes.assemble import assemble
from estimator.fieldnotes.heading import Heading
from estimator.fieldnotes.limits import LIMITS
from estimator.fieldnotes.log import LogReader
from estimator.fieldnotes.logbook import Log
from estimator.model.frozen import Frozen
from estimator.model.line import Line
from estimator.model.problem import Level, Place, Problem


class About(Frozen, kw_only=True):
    """What the job file says of the line the log is of."""

    file: str = "main.txt"
    name: str = "main"
    size_in: float = 4.0
    pipe: str = "unknown"
    zero: str = ""
    given: Heading | None = None  # a pass that stands in the job file's keys


class Sheet(Frozen):
    """A log as it reads. `problems` are those of its words; `hanging` those of its passes, ends and stations."""

    rows: tuple[str, ...]
    log: Log
    line: Line
    problems: tuple[Problem, ...]
    hanging: tuple[Problem, ...]

    def at(self, row: int, *levels: Level) -> tuple[Problem, ...]:
        """What is wrong with one row, counted from 0."""
        return tuple(p for p in self.problems if p.place.line == row + 1 and (not levels or p.level in levels))

    @property
    def not_read(self) -> tuple[str, ...]:
        """The lines that are asked back and not answered."""
        return tuple(asked.text for asked in self.log.asked)

    @property
    def readings(self) -> int:
        """How many rows say something."""
        return len([row for row in self.rows if row.strip() and not row.lstrip().startswith("#")])


def read(rows: Sequence[str], about: About, words: Mapping[str, str]) -> Sheet:
    log = Log()
    LogReader(log, about.file, words, about.given, about.size_in).read("\n".join(rows))
    bare = Line(name=about.name, size_in=about.size_in, pipe=about.pipe)
    line, _, _, hanging = assemble(bare, log, about.zero, LIMITS, Place(about.file))
    return Sheet(tuple(rows), log, line, tuple(log.problems), tuple(hanging))
