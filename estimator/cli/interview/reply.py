"""A log sheet and one of its rows in, the answer out, one line tall: station, zone, depth, what it says, the line so far."""

import re
from collections.abc import Collection, Sequence

from estimator.cli.interview.sheet import Sheet
from estimator.cli.reader import for_reader, reader
from estimator.cli.views.strip import BEAM, BRANCH, NOT_FILMED, SURFACES, letters
from estimator.cli.views.table import cells_wide
from estimator.cli.views.words import AS_NOTED, ENGLISH, Words
from estimator.fieldnotes.dumplog import finding_words, mark_words
from estimator.fieldnotes.logbook import Entry, LogPass, Same
from estimator.model.line import Finding, Line, Mark, Pass
from estimator.model.profile import Profile
from estimator.model.say import Say, Typed
from estimator.model.stretch import Stretch

number, at = AS_NOTED.number, AS_NOTED.at
STATION_DECIMALS = 6  # far below any reel, so that what was written at one reading is at one station
LEAST_STRIP, SHARE = 16, 0.4
WALLS = {"": "-", "crawl": "_"}


def answer(sheet: Sheet, row: int, columns: int, before: Line | None = None, more: str = "") -> str:
    """The whole answer; `more` is what else there is to say, `before` the line as it was. Words go before the drawing."""
    said = "  ".join(part for part in (_understood(sheet, row), _zero(sheet.line, before), more) if part)
    room = columns - cells_wide(said) - 4
    drawn = strip(sheet.line, max(LEAST_STRIP, min(int(columns * SHARE), room)), _newest(sheet, row))
    if room < LEAST_STRIP:
        drawn = ""
    left = said if more else cut(said, columns - len(drawn) - 4)
    return f"  {left}{' ' * max(2, columns - 2 - cells_wide(left) - len(drawn))}{drawn}".rstrip()


def cut(text: str, columns: int) -> str:
    """The text with its end left off where it is too long.

    >>> cut("hole 3in soil seen", 10), cut("hole", 10)
    ('hole 3in …', 'hole')
    """
    if cells_wide(text) <= columns:
        return text
    while text and cells_wide(text) > columns - 1:
        text = text[:-1]
    return text + "…"


# ── what was understood ───────────────────────────────────────────────────────────────────────


def _understood(sheet: Sheet, row: int) -> str:
    text = sheet.rows[row].strip()
    for number_, log_pass in enumerate(sheet.log.passes, start=1):
        if log_pass.heading.place.line == row + 1:
            return _heading(number_, log_pass)
        entries = [e for e in log_pass.entries if e.place.line == row + 1]
        sames = [s for s in log_pass.sames if s.place.line == row + 1]
        if entries or sames:
            run = sheet.line.passes[number_ - 1] if number_ <= len(sheet.line.passes) else None
            return _reading(sheet.line, run, entries, sames)
    if text.lower().rstrip(".") == "back":
        return for_reader(Say.of("the camera comes back"))
    if "=" in text and sheet.log.names and text[:1].isalpha():
        names = ", ".join(f"{short} = {long}" for short, long in sheet.log.names.items())
        return for_reader(Say.typed("short names: {names}", names=names))
    return for_reader(Say.of("kept as a note"))


def _heading(number_: int, log_pass: LogPass) -> str:
    heading = log_pass.heading
    riser = for_reader(Say.of("riser {inches} in", inches=number(heading.riser_ft * 12))) if heading.riser_ft else ""
    parts = [heading.access or "?", heading.flow or "", riser or ("surface" if heading.surface else ""), heading.when]
    words = Words(reader())
    said = ", ".join(part if part == riser else words.term(part) for part in parts if part)
    return for_reader(Say.of("pass {number}: {said}", number=number_, said=Typed(said)))


def _reading(line: Line, run: Pass | None, entries: Sequence[Entry], sames: Sequence[Same]) -> str:
    """Where it lies, and each thing of the row."""
    if run is None:
        return for_reader(Say.of("read"))
    first = entries[0] if entries else sames[0]
    ends = [round(run.station(r), STATION_DECIMALS) for r in (first.from_ft, first.to_ft) if r is not None]
    where = Stretch(min(ends), max(ends))
    again = [_again(run, same) for same in sames]
    things = [words for entry in entries if (words := _thing(line, run, entry))]
    zones = {entry.thing.word.word for entry in entries if entry.thing.word.kind == "zone"}
    note = f" ; {entries[0].note}" if entries and entries[0].note else ""
    return f"{_where(line, where, zones)} {_marked(', '.join([*again, *things]))}{note}"


def _marked(words: str) -> str:
    """Feet and inches in marks, which are shorter.

    >>> print(_marked("loc, 2 ft 3 in from tile, 28 ft 1 in front wall"))
    loc, 2'3" from tile, 28'1" front wall
    """
    words = re.sub(r"\b(\d+) ft (\d+(?: \d+/\d+)?) in\b", r"""\1'\2" """.rstrip(), words)
    return re.sub(r"\b(\d+(?: \d+/\d+)?) in\b(?! )", r'\1"', words)


def _where(line: Line, where: Stretch, said: Collection[str] = ()) -> str:
    """`13.3 slab 2.1 ft deep:` station, zone, depth to the centre; ~ where the depth was not read there."""
    profile = Profile(line)
    zone = profile.zone(where.from_ft).value
    zone = "" if zone in said else zone
    depth = profile.depth_to_centre_ft(where.from_ft)
    about = "" if depth.how == "read" else "~"
    deep = (
        "" if depth.value is None else for_reader(Say.typed("{depth} ft deep", depth=f"{about}{number(depth.value)}"))
    )
    return (
        " ".join(
            part for part in (at(where).replace(" ", ""), Words(reader()).term(zone) if zone else "", deep) if part
        )
        + ":"
    )


def _again(run: Pass, same: Same) -> str:
    """What was seen before, and how far the reel is off it."""
    for (what, more), (reading, _) in zip(run.ties, run.tie_readings_ft, strict=True):
        if abs(reading - same.from_ft) < 1e-6:
            off = Typed(f"{abs(more):.1f}")
            left = Say.of("{off} ft more", off=off) if more > 0 else Say.of("{off} ft less", off=off)
            same_reading = Say.of("the same")
            return for_reader(
                Say.of(
                    "{what} again, the reel shows {left}", what=what, left=left if abs(more) >= 0.05 else same_reading
                )
            )
    return for_reader(Say.of("{what} again", what=same.what))


def _thing(line: Line, run: Pass, entry: Entry) -> str:
    """The finding or mark this entry became; an end of a stretch shows the whole of it."""
    kind, station = entry.thing.word.word, round(run.station(entry.from_ft), STATION_DECIMALS)
    mine = [f for f in (*line.findings, *line.superseded) if f.kind == kind and _is(f, entry)]
    over = [f for f in line.findings if f.kind == kind and f.stretch.holds(station)]
    if mine or over:
        found = (mine or over)[0]
        span = f"{at(found.stretch).replace(' ', '')} " if not mine else ""
        return f"{span}{_finding(found, run)}"
    marks = [m for m in line.marks if m.word == kind and not m.assumed and _is(m, entry)]
    lip = [_finding(f, run) for f in line.findings if f.kind == "offset" and _is(f, entry)]
    if not marks:
        return " ".join(
            filter(None, (Words(reader()).term(kind), for_reader(LEGS[entry.leg]) if entry.leg in LEGS else entry.leg))
        )
    said = mark_words(marks[0]) if reader() == ENGLISH else Words(reader()).mark(marks[0])
    return for_reader(Say.typed("{mark} with {lip}", mark=said, lip=lip[0])) if lip else said


LEGS: dict[str, Say] = {"starts": Say.of("starts"), "ends": Say.of("ends"), "still": Say.of("still")}


def _finding(found: Finding, run: Pass) -> str:
    """In the standard words of a log; in another language as `check` says it."""
    return finding_words(found, run.after_cleaning) if reader() == ENGLISH else Words(reader()).finding(found)


def _is(thing: Finding | Mark, entry: Entry) -> bool:
    return thing.origin.row == entry.place.line and thing.origin.column == (entry.place.column or 1)


def _zero(line: Line, before: Line | None) -> str:
    if before is None or before.zero == line.zero or not line.passes:
        return ""
    return for_reader(Say.of("(0 is the {zero} now)", zero=line.zero))


# ── the line so far ───────────────────────────────────────────────────────────────────────────


def _newest(sheet: Sheet, row: int) -> tuple[str, ...]:
    return tuple(f.id for f in sheet.line.findings if f.origin.row == row + 1)


def strip(line: Line, columns: int, newest: Sequence[str] = ()) -> str:
    """The whole line in one row between its end stations: surface, branches, findings a, b, c as `check` letters them, dots
    where not filmed. The newest findings have capitals.
    """
    profile = Profile(line)
    extent = profile.extent
    low, high = number(extent.from_ft, 0), number(extent.to_ft, 0)
    count = columns - len(low) - len(high) - 2
    if count < 4 or extent.length_ft < 0.05:
        return ""
    step = extent.length_ft / count
    cells = [_base(profile, Stretch(extent.from_ft + n * step, extent.from_ft + (n + 1) * step)) for n in range(count)]

    def place(stretch: Stretch, letter: str) -> None:
        first = min(count - 1, max(0, int((stretch.from_ft - extent.from_ft) / step)))
        last = min(count - 1, max(first, int((stretch.to_ft - extent.from_ft) / step - 1e-9)))
        cells[first : last + 1] = [letter] * (last - first + 1)

    for beam in profile.beams:
        place(beam.stretch, BEAM)
    for branch in profile.branches:
        place(Stretch(branch.station_ft, branch.station_ft), BRANCH)
    lettered = sorted(letters(line.findings), key=lambda one: (one[1].id in newest, -one[1].stretch.length_ft))
    for name, found in lettered:  # long ones lie under short ones
        letter = name[0]
        place(found.stretch, letter.upper() if found.id in newest else letter)
    return f"{low} {''.join(cells)} {high}"


def _base(profile: Profile, cell: Stretch) -> str:
    if not any(part.overlaps(cell) or part.holds(cell.middle_ft) for part in profile.filmed):
        return NOT_FILMED
    zone = profile.zone(cell.middle_ft).value or ""
    return WALLS.get(zone, SURFACES.get(zone, "-"))


def legend(line: Line) -> str:
    """Each letter of the drawing in words, then what else is drawn."""
    words = [f"{letter} {Words(reader()).term(found.kind)}" for letter, found in letters(line.findings)]
    drawn = Say.typed(
        '{branch} branch, {beam} beam, = slab or paving, " yard, {dots} not filmed',
        branch=BRANCH,
        beam=BEAM,
        dots=NOT_FILMED,
    )
    return ", ".join([*words, for_reader(drawn)])
