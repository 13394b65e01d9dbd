"""Nothing typed is lost, and how it is typed changes nothing: over every line of tests/cases/notes that is read in silence.

A word that nobody explained stands apart beside the reading or is asked about; a word of danger is asked about or read. Capitals, room
between words, the forms of a unit, a word that only opens a sentence and a remark at the end leave the reading as it is (common
practice of typing on a phone; US customary units as in NIST Special Publication 811, appendix B).
"""

import re
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from fieldnote_texts import codes, reading
from said import facts

from estimator.fieldnotes.lexicon import lexicon, lexicon_data
from estimator.fieldnotes.log import LogReader
from estimator.fieldnotes.logbook import Log
from estimator.fieldnotes.tidy import tidied, trade_shortenings, whole_words

NOTES = Path(__file__).parents[1] / "cases" / "notes"
HEADER = ("pass front cleanout to house, surface", "0 yard lawn", "25 slab")
ORDINARY = ("pump", "horse", "wibble")
DANGERS = ("cable", "wire", "gas line", "tendon", "conduit")
LEAST_ALIKE = 0.97
Said = tuple[tuple[str, ...], str, bool]
"""The rows of a line, what stands apart beside them, whether it is asked back."""


def said(text: str, before: tuple[str, ...] = HEADER) -> Said:
    log = Log()
    LogReader(log, "main.txt", {}, None).read("\n".join((*before, text)))
    row = len(before) + 1
    rows = log.understood.get(("main.txt", row), ())
    apart = " ".join((*log.notes, *(e.note for p in log.passes for e in p.entries if e.place.line == row)))
    return rows, apart, any(a.place.line == row for p in log.passes for a in p.asked)


def lines() -> list[tuple[str, tuple[str, ...], Said]]:
    """Each line of one row that is read in silence after its context, and how."""
    out = []
    for path in sorted(NOTES.glob("*.toml")):
        for line in tomllib.loads(path.read_text("utf-8"))["line"]:
            text, context = line["text"], tuple(line.get("context", "").splitlines())
            before = context if context[:1] and context[0].startswith("pass ") else (*HEADER, *context)
            if "\n" in text or ";" in text or context == ("-",):
                continue
            how = said(text, before)
            if how[0] and not how[2] and not how[0][0].startswith(("pass ", "back")):
                out.append((text, before, how))
    return out


LINES = lines()


@pytest.mark.parametrize("word", ORDINARY)
def test_a_word_nobody_explains_stands_apart_or_is_asked_about(word: str) -> None:
    lost = []
    for text, before, _ in LINES:
        for typed in (f"{text} {word}", f"{text}, {word}", text.replace(", ", f", {word} ", 1)):
            rows, apart, asked = said(typed, before)
            if typed != text and rows and not asked and word not in f"{apart} {rows}":
                lost.append((typed, rows, apart))
    assert lost == []


@pytest.mark.parametrize("word", DANGERS)
def test_a_word_of_danger_beside_a_reading_is_asked_about_or_read(word: str) -> None:
    lost = []
    for text, before, _ in LINES:
        rows, _, asked = said(f"{text}, {word}", before)
        if not asked and not any("utility" in row or "crossing" in row for row in rows):
            lost.append((text, rows))
    assert lost == []


@pytest.mark.parametrize("line", ["31 no wires", "31 no gas smell", "33.5 no cable in it", "28 no gas line here"])
def test_a_danger_that_is_denied_at_a_footage_is_kept_and_never_read_as_the_danger(line: str) -> None:
    log = Log()
    LogReader(log, "main.txt", {}, None).read("\n".join((*HEADER, line)))
    assert log.notes == [line]
    assert not log.asked and len(log.passes[0].entries) == 2


@pytest.mark.parametrize("line", [
    "31 no tracer wire gas line plastic", "31 no longer see gas line", "31 no gas locate", "31 never located gas line", "no gas marked at 31",
    "31 no gas off", "31 no water in gas line", "31 no more gas line", "31 no roots, gas line at top",
])  # fmt: skip
def test_a_no_that_is_not_of_the_danger_hides_none(line: str) -> None:
    log = Log()
    LogReader(log, "main.txt", {}, None).read("\n".join((*HEADER, line)))
    assert [asked.danger for asked in log.asked] == [True]


def _standard(text: str) -> str:
    return whole_words(tidied(text), trade_shortenings()).text.strip()


def _inches(text: str) -> str:
    return re.sub(r"(?<=\d)in\b(?! [a-z])", " inches", text)


def _marks(text: str) -> str:
    return re.sub(r'(?<=\d)"', " in.", text) if "x" not in text else text


SAYS_MORE = 2
"""From this way on a line in standard words is one no more, and is weighed as any other."""
WAYS: tuple[Callable[[str], str], ...] = (
    str.upper,
    str.capitalize,
    lambda text: text.replace(" ", "  "),
    lambda text: text.replace(", ", " , "),
    lambda text: f"{text}.",
    lambda text: f"so {text}",
    lambda text: f"{text}, will jet",
    lambda text: f"{text}, took photo",
    lambda text: re.sub(r"(?<=\d)%", " pct", text),
    _inches,
    _marks,
)


@pytest.mark.parametrize("way", range(len(WAYS)))
def test_how_a_line_is_typed_changes_nothing_in_silence(way: int) -> None:
    known = [one for one in LINES if not (way >= SAYS_MORE and _standard(one[0]) in one[2][0])]
    typed = [(WAYS[way](text), before, how) for text, before, how in known if WAYS[way](text) != text]
    found = [(text, how[0], said(text, before)) for text, before, how in typed]
    assert [(text, rows, now[0]) for text, rows, now in found if not now[2] and _means(now[0]) != _means(rows)] == []
    assert sum(not now[2] for *_, now in found) / len(found) >= LEAST_ALIKE


def _means(rows: tuple[str, ...]) -> list[object]:
    """What the rows say, whatever form their lengths and letters are written in; a tie to what was seen before as it stands."""
    low = [" ".join(row.lower().split()) for row in rows]
    tied = tuple(row for row in low if "=" not in row and not row.startswith("loc"))
    return [*sorted(facts(tied), key=str), *(row for row in low if row not in tied)]


def test_every_word_that_leaves_open_what_is_there_has_its_question() -> None:
    every = {name for cls in ("unclear", "danger") for name in lexicon_data()[cls]} - {"cross bore"}
    assert every <= set(lexicon().asks)


@pytest.mark.parametrize(
    ("typed", "passes", "code"),
    [
        ("pass front cleanout to house, surface\npass front cleanout to house, surface\n0 yard lawn\n8 stop", 1, "log/heading-twice"),
        ("pass front cleanout to house\npass front cleanout to house, riser 28in\n0 yard lawn\n8 stop", 1, "log/heading-twice"),
        ("pass front cleanout to house, surface\n0 yard lawn\n8 stop\npass front cleanout to house, surface", 2, "log/pass-saw-nothing"),
    ],
)  # fmt: skip
def test_a_heading_typed_twice_is_one_pass_or_is_asked_about(typed: str, passes: int, code: str) -> None:
    assert code in codes(typed)
    found = reading(typed)
    assert found.job is not None and len(found.job.lines[0].passes) == passes
