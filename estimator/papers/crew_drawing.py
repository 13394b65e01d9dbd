"""One option for the crew: each line where work is done, line and grade to lay, openings to mark, as built; the drawing where it fits."""

from collections.abc import Iterable

from estimator.model.crossing import near_drain, own_depth
from estimator.model.line import ZONES, Finding, Line, Mark
from estimator.model.offer import Option
from estimator.model.profile import Profile
from estimator.model.say import Inches, Say
from estimator.model.stretch import Stretch
from estimator.model.work import JOB, Takeoff
from estimator.onsite.grade_sheet import Run, runs
from estimator.onsite.height_readings import INCHES_PER_FT
from estimator.onsite.marks_sheet import opening_table
from estimator.onsite.sheet import Block, Words
from estimator.papers.crew_page import close, crew_page
from estimator.papers.crew_picture import set_drawing
from estimator.papers.crew_where import new_way, signed, where_it_is
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet
from estimator.tables.tables import Tables
from estimator.wording.crew_words import FLOWS, LIVE, MARKS, SIDES
from estimator.wording.finding_words import in_words
from estimator.wording.numbers import feet, inches
from estimator.wording.plain import GRADES, PIPES, ROOMS, in_plain_words
from estimator.wording.say import capital, plain_words, spoken

WIDTHS = (22.0, 66.0, 14.0, 28.0)
BESIDE_FT = 1.0
"""So far beyond the work a line is told."""
SHORT_FT = 3.0
"""A place no longer than this is told in one row with what is laid in it, and with its depth."""
UNTOLD = frozenset({"branch", "room", "soil"})
"""Marks that are told otherwise, or that nobody needs who digs."""
AS_BUILT_PT = 28.0
ROOM_BESIDE = frozenset({"beside", "clear", "edge"})
"""Marks that say how much room there is."""


def drawing_sheet(letter: Letter, option: Option, tables: Tables | None) -> Sheet:
    """Return the lines that are worked on, with depths, then the grade and the openings."""
    speak, job = letter.speak, letter.quote.job
    page = crew_page(
        letter, speak("Drawing {letter}", letter=option.letter), WIDTHS, speak("Marks, depths and openings")
    )
    takeoffs = [t for t in option.takeoffs if t.repair.method != JOB]
    found = runs(option, job, tables) if tables is not None else []
    laid = any(isinstance(run, Run) for _, run in found)
    texts = (speak("At"), speak("What"), speak("New bottom below slab top"), speak("Depth to center, old pipe"))
    page.add(*_cells(texts, "head", laid))
    for name in dict.fromkeys(t.repair.line for t in takeoffs):
        mine = [run for repair, run in found if repair.line == name]
        _line(letter, page, job.line(name), [t for t in takeoffs if t.repair.line == name], mine, laid)
    if tables is not None:
        _openings(letter, page, opening_table(option, job, tables))
    set_drawing(letter, page, option, keep_pt=AS_BUILT_PT)
    page.add(Cell(speak("As built"), "label"), Cell("", "write", 3, open=True), height_pt=AS_BUILT_PT)
    return close(letter, page)


def _line(letter: Letter, page: Page, line: Line, takeoffs: list[Takeoff], grades: list[Run | Say], laid: bool) -> None:
    """Where its zero is, what was measured near the work, and a place for what was built."""
    speak = letter.speak
    zero = (
        speak("0 = outside wall, inside +, outside −; left and right with the flow")
        if line.zero == "slab edge"
        else speak("0 = where the camera went in; left and right with the flow")
    )
    where = "; ".join(where_it_is(letter, t.repair) for t in takeoffs)
    page.heading(capital(where))
    for takeoff in takeoffs:
        if takeoff.repair.reroute:
            new_way(letter, page, takeoff)
    shown = [t.repair.stretch.padded(BESIDE_FT, BESIDE_FT) for t in takeoffs if not t.repair.reroute]
    if shown:
        pipe = Say.of("{size} {pipe}", size=Inches(line.size_in), pipe=in_plain_words(PIPES, line.pipe))
        page.line("; ".join([letter.say(pipe), zero, *_run(letter, line)]), "quiet")
        for grade in grades:
            page.line(" ".join(letter.all(grade.lines() if isinstance(grade, Run) else [grade])), "box")
        _stations(letter, page, line, shown, [grade for grade in grades if isinstance(grade, Run)], laid)


def _run(letter: Letter, line: Line) -> Iterable[str]:
    """Where the camera went in, where stations are counted from there."""
    for one in line.passes[:1] if line.zero != "slab edge" else ():
        yield letter.speak(
            "Run {number}: {access}, {flow}, riser {length}",
            number=one.number, access=letter.typed(one.access), flow=in_plain_words(FLOWS, one.flow), length=feet(one.riser_ft, letter.language),
        )  # fmt: skip


def _stations(letter: Letter, page: Page, line: Line, shown: list[Stretch], grades: list[Run], laid: bool) -> None:
    """A row a place: what was measured, found, joins and is to be laid there."""
    profile = Profile(line)
    rows = [(m.stretch, _mark(letter, line, m)) for m in line.marks if m.word not in UNTOLD and not m.assumed]
    rows += [(f.stretch, _finding(letter, f)) for f in line.findings]
    rows += [(_at(b.station_ft), text) for b, text in zip(profile.branches, _branches(letter, profile), strict=True)]
    places = [stretch for stretch, _ in rows if stretch.length_ft <= SHORT_FT]
    rows += [(_placed(places, at), _word(letter, what)) for grade in grades for at, what in grade.stations() if what]
    at: dict[Stretch, list[str]] = {}
    for stretch, words in sorted(rows, key=lambda row: (row[0].from_ft, row[0].to_ft)):
        if any(part.touches(stretch) for part in shown):
            at.setdefault(stretch, []).append(words)
    for stretch, said in at.items():
        start, end = (signed(at_ft, letter) for at_ft in (stretch.from_ft, stretch.to_ft))
        place = start if start == end else f"{start} – {end}"
        low = (g.bottom_ft(stretch.from_ft) * INCHES_PER_FT for g in grades if g.run.stretch.holds(stretch.from_ft))
        bottom = next((letter.say(Say.of("{inches}", inches=Inches(round(inch, 1)))) for inch in low), "")
        depth = _depth(letter, profile, stretch.from_ft) if stretch.length_ft <= SHORT_FT else ""
        page.add(*_cells((place, "; ".join(said), bottom, depth), "cell", laid))


def _cells(texts: tuple[str, str, str, str], style: str, laid: bool) -> list[Cell]:
    """A row of the table; without the new pipe's bottom where none is laid."""
    if laid:
        return [Cell(text, style) for text in texts]
    at, what, _, depth = texts
    return [Cell(at, style), Cell(what, style, 2), Cell(depth, style)]


def _at(station_ft: float) -> Stretch:
    """One place, to the tenth of a foot, so that what stands at one place comes together."""
    return Stretch(round(station_ft, 1), round(station_ft, 1))


def _placed(places: list[Stretch], station_ft: float) -> Stretch:
    """The short place that a station of the new pipe lies in, such as a beam; else the station itself."""
    return next((place for place in places if place.holds(station_ft)), _at(station_ft))


KNOWN: dict[str, Say] = {
    "read": Say.of("read here"),
    "between": Say.of("between readings"),
    "carried": Say.of("nearest reading"),
    "assumed": Say.of("assumed"),
}
"""How a depth is known, in short."""


def _depth(letter: Letter, profile: Profile, at_ft: float) -> str:
    """How deep the pipe's center lies and how that is known."""
    depth = profile.depth_to_centre_ft(at_ft)
    if depth.value is None:
        return letter.speak("not measured")
    return f"{feet(depth.value, letter.language)} ({letter.say(KNOWN[depth.how])})"


def _branches(letter: Letter, profile: Profile) -> Iterable[str]:
    """Every side drain: none is cut off that is live or not proven dead."""
    speak = letter.speak
    for branch in profile.branches:
        name = letter.say(in_plain_words(ROOMS, branch.name)) if branch.name else speak("unknown: ask")
        live = letter.say(in_plain_words(LIVE, branch.live or "unknown"))
        side = letter.say(in_plain_words(SIDES, branch.side or "unknown"))
        proven = "" if branch.proven else f", {speak('not proven: run water first')}"
        yield f"{speak('BRANCH')} {name}, {letter.say(Say.of('{inches}', inches=Inches(branch.size_in)))}, {side}, {live}{proven}"


def _openings(letter: Letter, page: Page, block: Block) -> None:
    """Where each opening is marked, how deep it is, and where the crew stops and calls."""
    if block.rows:
        page.heading(letter.say(block.heading))
        for style, row in (("head", block.heads), *(("cell", row) for row in block.rows)):
            page.add(*(Cell(_word(letter, word), style) for word in row))


def _word(letter: Letter, word: Words) -> str:
    return plain_words(word, letter.language) if isinstance(word, str) else letter.say(word)


def _finding(letter: Letter, finding: Finding) -> str:
    text = letter.say(in_words(finding)).upper()
    return text if finding.grade == "seen" else f"{text} ({letter.say(GRADES[finding.grade])})"


def _mark(letter: Letter, line: Line, mark: Mark) -> str:
    """A mark with, for another buried line, its own depth: the column beside it holds the old drain's."""
    deep = letter.all(own_depth(mark, line)) if mark.word == "crossing" else []
    return ", ".join([mark_words(letter, mark), *map(_small, deep)])


def _small(text: str) -> str:
    return text[:1].lower() + text[1:].rstrip(".")


def mark_words(letter: Letter, mark: Mark) -> str:
    """A mark as one would read it off the notes: word, material, size, ties, flag, photo."""
    size = f"{inches(mark.size_in)} in" if mark.size_in else ""
    ties = ", ".join(f"{feet(tie.length_ft, letter.language)} → {letter.typed(tie.to)}" for tie in mark.ties)
    flag = f"{letter.speak('flag')} {mark.flag}" if mark.flag else ""
    photo = f"{letter.speak('photo')} {mark.photo}" if mark.photo else ""
    word = letter.say(in_plain_words(MARKS, mark.word))
    name = letter.say(in_plain_words(ROOMS, mark.name)) if mark.name else ""
    sure = "" if mark.grade == "seen" else letter.say(GRADES[mark.grade])
    note = letter.typed(_without_first(mark.note, word) if letter.typed(mark.note) == mark.note else mark.note)
    return " ".join(part for part in (word, _choice(letter, mark), size, name, ties, flag, photo, sure, note) if part)


def _choice(letter: Letter, mark: Mark) -> str:
    """What the mark names besides itself: a surface, a pipe, what an end reached; room beside the pipe in feet."""
    named = spoken(plain_words(mark.choice or "", letter.language), letter.language)
    if mark.word == "crossing":
        return ", ".join([named, *(_small(letter.say(one)) for one in near_drain(mark))])
    room = (feet(ft, letter.language) for _, ft in mark.lengths if mark.word in ROOM_BESIDE)
    if named and mark.word in ZONES:
        return f"({named})"
    return " ".join([*([named] if named else []), *room])


def _without_first(note: str, word: str) -> str:
    """The note without the word that the mark's own ends with: “invert read” and “read with a stick” share one."""
    first, _, rest = note.partition(" ")
    return rest if first and word.split()[-1:] == [first] else note
