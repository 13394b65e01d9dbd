"""A log typed line by line: what is understood, what is asked once, what is never lost. Lines as people write them at night."""

import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import demo
from estimator.cli.interview import reply
from estimator.cli.interview.rows import Typed, taken_up
from estimator.cli.interview.sheet import NOT_READ, About
from estimator.cli.interview.short import short
from estimator.cli.interview.typed import typed
from estimator.cli.views.table import cells_wide

PASS = "pass front cleanout to house, riser 28in"


def after(*lines: str, words: dict[str, str] | None = None) -> Typed:
    log = Typed(About(), words or {})
    for line in lines:
        log = typed(log, line)
    return log


def said(*lines: str, columns: int = 80) -> str:
    """The answer to the last of these lines."""
    before, log = after(*lines[:-1]), after(*lines)
    assert log.row is not None, [short(p) for p in log.problems]
    return reply.answer(log.sheet, log.row, columns, before.sheet.line, "; ".join(map(short, log.problems)))


def kinds(log: Typed) -> list[str]:
    return [found.kind for found in log.sheet.line.findings]


# ── one line of answer ────────────────────────────────────────────────────────────────────────


def test_an_answer_gives_station_zone_depth_words_and_the_line_so_far():
    """Reading 18.6 − riser 2 ft 4 in − slab edge (5.3 − 2.333) = station 13.3 [computed]."""
    text = said(PASS, "2.3 yard lawn", "5.3 slab tile", "18.6 loc 26in under tile", "18.6 hole 3in soil seen")
    assert text.startswith("  13.3 slab 2.2 ft deep: hole 3in soil seen")
    assert text.endswith(" 13")
    assert '-3 """' in text
    assert "A" in text


def test_what_was_not_filmed_is_dotted():
    text = said(PASS, "5 roots 30%", "pass roof vent, with flow, surface, zero at 30", "2 hole 2in")
    assert "···" in text


@pytest.mark.parametrize("columns", [60, 80, 120])
@pytest.mark.parametrize("name", ["main.txt", "yard.txt", "kitchen.txt"])
def test_every_line_of_the_demo_is_answered_in_one_line(name, columns):
    log = Typed(About())
    for line in (Path(demo.__file__).parent / name).read_text("utf-8").splitlines():
        before = log.sheet.line if log.rows else None
        log = typed(log, line)
        if line.strip() and not line.startswith("#"):
            assert log.row is not None, line
            text = reply.answer(log.sheet, log.row, columns, before)
            assert cells_wide(text) <= columns, text
            assert "\n" not in text


def test_a_long_log_is_answered_under_a_blink():
    """A tenth of a second is where a person begins to notice (common practice); four of them here, of the processor's own time."""
    rows = (PASS, *(f"{n} joint up 1/4in" for n in range(3, 120)))
    log = taken_up(About(), {}, rows)
    start = time.process_time()
    log = typed(log, "121 hole 2in soil seen")
    reply.answer(log.sheet, log.row, 80)
    assert time.process_time() - start < 0.4


# ── as people write ───────────────────────────────────────────────────────────────────────────


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("8 - grv starts on btm. not bad yet", "channel ; on btm, not bad yet"),
        ('11.5 wye L 3" live. flushed', "branch, 3in, left, live, proven"),
        ('16 no 16.6 jt lip up 1/2"', "joint with offset 0.5in up"),
        ("5 slab edge ~ (at brick, call 5.3)", "slab ; ~ (at brick, call 5.3)"),
        ("9 scale, call 9.3", "7: scale"),
        ("20,4 hole 2in", "18.1: hole 2in"),
        ("hole 2in at 18.6", "16.3: hole 2in"),
        ("thirty three point three roots forty percent", "31: roots 40%"),
        ("20.4 hole 3”, dirt", "hole 3in soil seen"),
        ("8.5 clay, jts abt every 3", "pipe clay, joint, every 3 ft"),
        ("44–58 under drive", "41.7–55.7: drive"),
        ("19.8 hole going back, 2in, dirt. missed it", "hole 2in soil seen ; going back, missed it"),
    ],
)
def test_loose_lines_are_read(line, words):
    assert words in said(PASS, line, columns=120)


def test_a_pass_typed_after_its_readings_goes_above_them():
    log = after("hb = hall bath", "5 roots 30%", "9 hole 2in", PASS)
    assert log.rows[1] == PASS
    assert kinds(log) == ["roots", "hole"]
    assert not log.sheet.problems


def test_what_a_heading_left_out_is_filled_in():
    log = after("pass front cleanout", "against flow", "riser 28in", "5 roots 30%")
    assert log.rows[0] == "pass front cleanout, against flow, riser 28in"
    assert not log.sheet.problems


@pytest.mark.parametrize(
    ("lines", "row"),
    [
        (("13 scl heavy 35, drags", "35%"), "13 scl heavy 35%, drags"),
        (("6 scale", "20%"), "6 scale 20%"),
        (("19.8 hole soil seen 5 to 7", "at 5-7"), "19.8 hole soil seen at 5-7"),
        (("roots 30%", "18"), "18 roots 30%"),
        (("18.6", "hole 2in"), "18.6 hole 2in"),
        (("12 roots", "40%"), "12 roots 40%"),
        (("12 roots", "light"), "12 roots light"),
    ],
)
def test_only_the_missing_part_has_to_be_typed(lines, row):
    log = after(PASS, *lines)
    assert log.rows == (PASS, row)
    assert not log.sheet.problems


@pytest.mark.parametrize(
    ("lines", "row"),
    [
        (("16 hole 2in", "no 16.6"), "16 no 16.6 hole 2in"),
        (("16 hole 2in", "no, 16.6 hole 3in"), "16.6 hole 3in"),
        (("16 hole 2in", "call 16.6"), "16 no 16.6 hole 2in"),
    ],
)
def test_the_last_word_counts(lines, row):
    assert after(PASS, *lines).rows == (PASS, row)


def test_a_line_typed_again_takes_the_place_of_the_one_that_was_not_understood():
    log = after(PASS, "29 roots", "29 roots 30%")
    assert log.rows == (PASS, "29 roots 30%")


def test_water_under_way_needs_its_depth_only_once():
    log = after(PASS, "22 uw", "24 still uw", "26 out of water 50%")
    assert kinds(log) == ["sag"]
    assert log.sheet.line.findings[0].percent == (50, 50)
    assert log.sheet.line.findings[0].stretch.length_ft == pytest.approx(4)
    assert not log.sheet.problems


def test_a_hole_among_words_nobody_knows_is_never_put_away_as_a_note():
    log = after(PASS, "33.3 cant pass. wad? soft", "19.8 THERE is a hole, 5 to 7, dirt")
    assert [row.startswith(NOT_READ) for row in log.rows] == [False, True, True]


def test_what_cannot_be_read_is_kept_and_one_line_says_what_to_write():
    log = after(PASS, "12 roots lots")
    assert log.rows[1] == f"{NOT_READ}12 roots lots"
    assert len(log.problems) == 1
    assert "30%" in short(log.problems[0])
    assert log.sheet.not_read == ("12 roots lots",)


@pytest.mark.parametrize("line", ["loc 27in under tile, flag B", "same hole 2in", "LOC'D 27in under tile"])
def test_a_locate_belongs_to_the_reading_just_typed_though_its_line_could_not_be_read(line):
    """Else the crew would be sent to the reading before it."""
    log = after(PASS, "24 hole 2in", "33.3 roots", line)
    assert log.rows[3].startswith("33.3 ")
    assert log.row == 3


def test_a_number_behind_strange_words_is_no_amount_of_the_word_before_them():
    log = after(PASS, "11.5 wye 3in again reads 11.7 so ctr ok")
    assert log.rows[1] == "11.5 wye 3in ; again reads 11.7 so ctr ok"
    assert log.sheet.line.marks[0].size_in == 3
    assert after(PASS, "11.5 wye again reads 11.7 so ctr ok").rows[1].startswith(NOT_READ)


@pytest.mark.parametrize("line", ["12 no roots 30%", "20 scale came off", "20.4 hole 3in, scale came off"])
def test_words_that_may_say_it_is_not_there_make_no_finding(line):
    log = after(PASS, line)
    assert log.rows[1] == f"{NOT_READ}{line}"
    assert kinds(log) == []
    assert log.asked is None


def test_a_branch_is_never_put_away_with_a_remark():
    assert after("hb = hall bath", PASS, "12.1 hb wye  (thats the 11.5)").rows[2].startswith(NOT_READ)


def test_short_names_in_a_note_on_top_count():
    log = after("26-114 alder tues 91deg  hb = hall bath mb = master", PASS, "11.5 wye 3in hb")
    assert log.rows[:2] == ("# 26-114 alder tues 91deg", "hb = hall bath; mb = master")
    assert log.sheet.line.marks[0].name == "hall bath"


def test_a_short_name_may_be_the_answer_to_what_a_word_means():
    log = typed(after(PASS, "11.5 wye 3in hb 40%"), "hb = hall bath")
    assert "hb = hall bath" in log.rows


@pytest.mark.parametrize("line", ["29 ok", "so it goes", "8:12 rec on"])
def test_plain_words_are_never_asked_for(line):
    assert after(PASS, line).asked is None


# ── words nobody knows ────────────────────────────────────────────────────────────────────────


def test_a_misspelt_word_is_asked_once_and_remembered():
    log = after(PASS, "14 brnch 3in left")
    assert log.asked is not None
    assert log.asked.offer == "branch"
    log = typed(log, "")
    assert log.learned == ("brnch", "branch")
    assert log.rows[1] == "14 brnch 3in left"
    log = typed(log, "20 brnch 2in")
    assert log.asked is None
    assert log.row == 2


def test_a_shortening_of_ones_own_gets_its_meaning_by_any_word():
    log = typed(after(PASS, "22 murk 30%"), "uw")
    assert log.learned == ("murk", "sag")
    assert kinds(log) == ["sag"]


def test_a_word_that_is_a_remark_goes_behind_the_semicolon():
    log = typed(after(PASS, "22 blorb"), "-")
    assert log.rows[1] == "# 22 blorb"


def test_somebody_who_does_not_answer_but_types_on_is_not_stopped():
    log = after(PASS, "22 murk 30%", "24 hole 2in")
    assert log.rows == (PASS, f"{NOT_READ}22 murk 30%", "24 hole 2in")
    assert log.asked is None


def test_a_question_left_open_is_asked_again_when_the_log_goes_on():
    log = after(PASS, "22 murk 30%")
    again = taken_up(log.about, log.words, log.rows)
    assert again.asked == log.asked
    assert typed(again, "sag").rows == (PASS, "22 murk 30%")


@pytest.mark.parametrize(
    ("line", "word", "offer"),
    [
        ("12 brnch kitchen left 2in live proven", "brnch", "branch"),
        ("13 brnch kitchen, slab tile", "brnch", "branch"),
        ("12 scael heavy here", "scael", "scale"),
        ("7 wadget here", "wadget", ""),
        ("13 blorb zork", "blorb", ""),
    ],
)
def test_a_reading_with_words_nobody_knows_never_becomes_a_silent_note(line, word, offer):
    log = after(PASS, line)
    assert log.rows[1] == f"{NOT_READ}{line}"
    assert log.sheet.not_read == (line,)
    assert log.asked is not None
    assert (log.asked.word, log.asked.offer) == (word, offer)
    assert log.problems


def test_a_misspelt_word_among_others_takes_what_was_offered():
    log = typed(after(PASS, "12 brnch left kitchen 2in live proven"), "")
    assert [(m.word, m.size_in) for m in log.sheet.line.marks if m.word == "branch"] == [("branch", 2)]
    assert typed(after(PASS, "7 wadget here"), "-").rows[1] == "# 7 wadget here"
    tired = typed(after(PASS, "7 wadget here"), "")
    assert (tired.sheet.not_read, tired.asked) == (("7 wadget here",), None)
    assert "list" in tired.refused


@pytest.mark.parametrize("line", ["12 brnch kitchen left 2in live proven", "12 kitchen brnch left 2in live proven"])
def test_a_branch_keeps_its_name_though_its_word_was_misspelt(line):
    log = typed(after(PASS, line), "branch")
    assert [(m.name, m.side) for m in log.sheet.line.marks if m.word == "branch"] == [("kitchen", "left")]


@pytest.mark.parametrize("line", ["12 hall bath here", "20 looks bad here", "12 nothing here"])
def test_plain_words_at_a_reading_stay_to_be_mended_unless_they_say_that_all_is_well(line):
    assert after(PASS, line).sheet.not_read == (line,)
    assert after(PASS, "29 looks fine").rows[1] == "# 29 looks fine"


# ── any text ──────────────────────────────────────────────────────────────────────────────────

BITS = st.lists(
    st.sampled_from(
        ["12", "12.5", "-", "~", "hole", "roots", "30%", "3in", "at", "5-7", "murk", "brnch", "=", "hb", "pass", "to house", "riser 28in", ";",
         ",", "no", "call", "back", "same", "uw", "starts", "ends", "still", "loc", "2'3", "under", "tile", "every", "\"", "'''", "#", "#?",
         "joints", "beam", "photo", "?", ".", "slab", "yard", "surface", "zero at", "with flow", "after jet to 33", "from end", "1/0", "99999"]
    ),
    max_size=7,
).map(" ".join)  # fmt: skip


@settings(max_examples=60, deadline=None)
@given(st.lists(st.one_of(BITS, st.text(max_size=40)), max_size=8))
def test_any_lines_are_answered_and_every_one_is_kept(lines):
    log = Typed(About())
    for line in lines:
        before = log
        log = typed(log, line)
        if log.row is not None:
            text = reply.answer(log.sheet, log.row, 60, before.sheet.line, "; ".join(map(short, log.problems)))
            assert text.strip()
        assert len(log.rows) >= len(before.rows)
    assert "\n".join(log.rows).isprintable() or not log.rows or all(row.isprintable() for row in log.rows)


@pytest.mark.parametrize(
    ("typed_", "kept"),
    [
        ("20 toilet branch 3in left live", "20 branch 3in left live called toilet"),
        ("24 hall bath wye 2in right live, photo 2", "24 branch 2in right live called hall bath, photo 2"),
        ("15-19 belly half full", "15-19 belly half full"),
    ],
)
def test_a_branch_may_be_named_by_what_drains_into_it(typed_, kept):
    """And half full is half, not full: common practice in telling how deep water stands."""
    log = after(PASS, "2 yard", typed_)
    assert log.rows[-1] == kept
    assert not log.asked
    sags = [f for f in log.sheet.line.findings if f.kind == "sag"]
    assert [f.percent for f in sags] in ([], [(50.0, 50.0)])


def test_an_amount_goes_to_the_finding_of_the_row_before_and_is_no_reading():
    """`roots a few at joint` and then `30%`; `loc` after an amount nobody could place belongs to the reading before."""
    log = after(PASS, "2 yard", "26 roots a few at joint", "30%")
    assert [(f.kind, f.percent) for f in log.sheet.line.findings] == [("roots", (30.0, 30.0))]
    log = after(PASS, "2 yard", "26 branch 3in", "zz", "40%", "loc 3ft from lawn")
    assert log.rows[-1] == "loc 3ft from lawn"


def test_what_stops_the_camera_may_stand_after_the_stopping():
    log = after(PASS, "2 yard", "31.5 cant go any further mud")
    assert log.rows[-1] == "31.5 mud cannot pass"
