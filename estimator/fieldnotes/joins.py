"""Lines as read come in; the same lines, each with the place where it runs into another, go out."""

from collections.abc import Sequence
from dataclasses import replace

from estimator.fieldnotes.forms import JoinForm
from estimator.fieldnotes.lines import ReadLine
from estimator.fieldnotes.nearest import nearest
from estimator.model.answers import INDOOR_ZONES
from estimator.model.frozen import Frozen
from estimator.model.line import Join, Line, Mark
from estimator.model.problem import Problem, error
from estimator.model.profile import Profile

JOINS_UNKNOWN = error(
    "job/joins-unknown",
    "line {line} joins “{text}”, and there is no line or branch of that name. {nearest}",
    'Write joins = { line = "main", at = 21 }, or name the branch in the log: `branch 3in called {text}`.',
)
JOINS_NO_PLACE = error(
    "job/joins-no-place",
    "line {line} joins {into}, but not where.",
    "Write at = and the reel reading on {into}'s first pass.",
)
JOINS_BEYOND = error(
    "job/joins-beyond",
    "line {line} joins {into} at station {at}, where nothing of {into} was seen or given as its length.",
    "Check the reading; `at` is a reel reading of {into}'s first pass.",
)
JOINS_NOTHING = error(
    "job/joins-nothing",
    "line {line} joins no other line and does not say where it ends.",
    'Write joins = { line = "main", at = 21 }, or ends = "city main" or "septic tank".',
    "A branch that joins nothing cannot be tested, priced or drawn.",
)
PROBLEMS = (JOINS_UNKNOWN, JOINS_NO_PLACE, JOINS_BEYOND, JOINS_NOTHING)

NEAR_THE_END_FT = 0.5  # a tie is read to half a foot at best


class LineTree(Frozen):
    read: tuple[ReadLine, ...]

    def named(self, name: str) -> ReadLine | None:
        return next((r for r in self.read if r.line.name.lower() == name.strip().lower()), None)

    def names(self) -> tuple[str, ...]:
        """Every line and every branch that has a name."""
        lines = tuple(r.line.name for r in self.read)
        return lines + tuple(m.name for r in self.read for m in r.line.marks if m.word == "branch" and m.name)

    def branch(self, name: str, but: ReadLine) -> tuple[ReadLine, Mark] | None:
        """The branch mark of that name on another line."""
        low = name.strip().lower()
        for read in self.read:
            for mark in read.line.marks:
                if (
                    read is not but
                    and mark.word == "branch"
                    and (mark.name or "").lower() in (low, low.removesuffix(" branch"))
                ):
                    return (read, mark) if mark.name else None
        return None


def joined_lines(read: list[ReadLine]) -> tuple[LineTree, list[Problem]]:
    tree = LineTree(tuple(read))
    problems: list[Problem] = []
    for number, this in enumerate(read):
        join = _join(this, tree, number == 0, problems)
        this.line = replace(this.line, joins=join)
    return tree, problems


def _join(this: ReadLine, tree: LineTree, first: bool, problems: list[Problem]) -> Join | None:
    wanted = this.form.joins
    if wanted is None or (isinstance(wanted, str) and not wanted.strip()):
        if not first and not this.form.ends:
            problems.append(JOINS_NOTHING(this.place, line=this.line.name))
        return None
    name = wanted.line if isinstance(wanted, JoinForm) else wanted
    into = tree.named(name)
    if isinstance(wanted, JoinForm) and into is not None and into is not this:
        station = join_station(into, wanted)
        if station is not None:
            return _checked(Join(into.line.name, station), this, into, problems)
    branch = tree.branch(name if into is None else this.line.name, this)
    if branch is not None:
        return Join(branch[0].line.name, branch[1].stretch.from_ft)
    if into is not None and into is not this:
        problems.append(JOINS_NO_PLACE(this.place, line=this.line.name, into=into.line.name))
        return None
    known = tuple(n for n in tree.names() if n.lower() != this.line.name.lower())
    problems.append(JOINS_UNKNOWN(this.place, line=this.line.name, text=name, nearest=nearest(name, known)))
    return None


def join_station(into: ReadLine, form: JoinForm) -> float | None:
    """The station a join or a tie means: as given, or from the reading."""
    if form.station is not None:
        return form.station
    return None if form.at is None else into.station(form.at)


def _checked(join: Join, this: ReadLine, into: ReadLine, problems: list[Problem]) -> Join:
    extent = Profile(into.line).extent.padded(NEAR_THE_END_FT, NEAR_THE_END_FT)
    if not extent.holds(join.station_ft):
        problems.append(JOINS_BEYOND(this.place, line=this.line.name, into=into.line.name, at=join.station_ft))
    return join


def with_depth_at_join(lines: Sequence[Line]) -> tuple[Line, ...]:
    """Every branch with the depth to the centre of the line it joins, where that was read on the same ground.

    A branch runs down to the line it joins, so it lies no deeper there (plain geometry); farther up it lies higher. It is a
    guess to plan by, never a reading of the branch.
    """
    named = {line.name: line for line in lines}
    return tuple(replace(line, at_join_ft=_depth(line, named)) for line in lines)


def _depth(line: Line, named: dict[str, Line]) -> float | None:
    into = named.get(line.joins.line) if line.joins else None
    if into is None or line.joins is None:
        return None
    above, main = Profile(line), Profile(into)
    end = above.extent.to_ft if line.downstream == 1 else above.extent.from_ft
    indoors = {above.zone(end).value in INDOOR_ZONES, main.zone(line.joins.station_ft).value in INDOOR_ZONES}
    answer = main.depth_to_centre_ft(line.joins.station_ft)
    return answer.value if len(indoors) == 1 and answer.how != "assumed" else None
