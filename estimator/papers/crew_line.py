"""One line for the crew: its zero and risers, every mark by station with depth and surface, side drains, findings."""

from estimator.model.line import Finding, Line, Mark
from estimator.model.profile import Profile
from estimator.papers.crew_page import close, crew_page
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet
from estimator.wording.found import in_words
from estimator.wording.numbers import feet, inches
from estimator.wording.plain import FLOWS, GRADES, HOW, LIVE, MARKS, PIPES, ROOMS, SIDES, ZONES, in_plain_words

WIDTHS = (12.0, 12.0, 25.0, 17.0, 29.0)


def line_sheet(letter: Letter, line: Line) -> Sheet:
    """Everything measured on one line."""
    speak = letter.speak
    page = crew_page(letter, line.name, WIDTHS, speak("Line: {name}", name=line.name))
    page.pair(speak("Pipe"), f"{inches(line.size_in)} in {letter.say(in_plain_words(PIPES, line.pipe))}")
    zero = (
        speak("Outside wall where the pipe leaves the house; inside is +, outside −")
        if line.zero == "slab edge"
        else speak("Where the camera went in")
    )
    page.pair(speak("Zero"), zero)
    for one in line.passes:
        riser = speak("riser {length}", length=feet(one.riser_ft, letter.language))
        page.pair(
            speak("Camera run {number}", number=one.number),
            f"{letter.typed(one.access)}, {letter.say(in_plain_words(FLOWS, one.flow))}, {riser}",
        )
    page.gap()
    _stations(letter, page, line)
    _branches(letter, page, line)
    return close(letter, page)


def _stations(letter: Letter, page: Page, line: Line) -> None:
    speak, profile = letter.speak, Profile(line)
    page.heading(speak("Stations"))
    page.add(
        *(
            Cell(text, "head")
            for text in (speak("At"), speak("To"), speak("Depth to centre"), speak("Over it"), speak("What"))
        )
    )
    rows = [
        (m.stretch.from_ft, m.stretch.to_ft, mark_words(letter, m))
        for m in line.marks
        if m.word != "branch" and not m.assumed
    ]
    rows += [(f.stretch.from_ft, f.stretch.to_ft, _finding(letter, f)) for f in line.findings]
    for start, end, words in sorted(rows):
        depth = profile.depth_to_centre_ft(start)
        shown = (
            f"{feet(depth.value, letter.language)} ({letter.say(HOW[depth.how])})"
            if depth.value is not None
            else speak("not measured")
        )
        zone = profile.zone(start).value
        over = letter.say(in_plain_words(ZONES, zone)) if zone else speak("not said")
        page.add(
            Cell(signed(start, letter), "cell"),
            Cell(signed(end, letter) if end > start else "", "cell"),
            Cell(shown, "cell"),
            Cell(over, "cell"),
            Cell(words, "cell"),
        )
    page.line(
        speak(
            "Depths are what the locator read; they can be off by a tenth of the depth or half a foot, whichever is more. Reel only means no tape: find it before you cut."
        ),
        "quiet",
    )


def signed(ft: float, letter: Letter) -> str:
    return feet(ft, letter.language) if ft >= 0 else f"−{feet(-ft, letter.language)}"


def _finding(letter: Letter, finding: Finding) -> str:
    text = letter.say(in_words(finding)).upper()
    return text if finding.grade == "seen" else f"{text} ({letter.say(GRADES[finding.grade])})"


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
    return " ".join(part for part in (word, mark.choice or "", size, name, ties, flag, photo, sure, note) if part)


def _without_first(note: str, word: str) -> str:
    """The note without the word that the mark's own ends with: “invert read” and “read with a stick” share one."""
    first, _, rest = note.partition(" ")
    return rest if first and word.split()[-1:] == [first] else note


def _branches(letter: Letter, page: Page, line: Line) -> None:
    speak, branches = letter.speak, Profile(line).branches
    page.heading(speak("Side drains: keep every one that is live or not proven dead"))
    if not branches:
        page.line(speak("None was noted. Look before you cut: the camera can miss one."), "box")
        return
    heads = (speak("At"), speak("Size"), speak("Side, with the flow"), speak("Live?"), speak("From"))
    page.add(*(Cell(text, "head") for text in heads))
    for branch in branches:
        proven = "" if branch.proven else f", {speak('not proven: run water first')}"
        live = letter.say(in_plain_words(LIVE, branch.live or "unknown")) + proven
        side = letter.say(in_plain_words(SIDES, branch.side or "unknown"))
        name = letter.say(in_plain_words(ROOMS, branch.name)) if branch.name else speak("unknown: ask")
        texts = (signed(branch.station_ft, letter), f"{inches(branch.size_in)} in", side, live, name)
        page.add(*(Cell(text, "cell") for text in texts))
