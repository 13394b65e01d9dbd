"""The picture of the pipe: pieces without gaps, in words and colours that say what was seen, suspected and never seen."""

import io
import zipfile
from dataclasses import replace
from itertools import pairwise

import pytest

from estimator.model.line import Finding, Line
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.papers.example import example_quote
from estimator.papers.homeowner import homeowner
from estimator.papers.letter import Letter
from estimator.papers.pipe_sheet import colour, pipe_sheets, place, state
from estimator.papers.segments import Segment, segments
from estimator.sheets.write import write

QUOTE = example_quote()
LINE = QUOTE.job.lines[0]
LETTER = Letter(QUOTE, "en_US")
NEEDS = QUOTE.diagnosis.needs


def pieces(line: Line = LINE) -> tuple[Segment, ...]:
    return segments(line, QUOTE.options)


def at(station_ft: float, line: Line = LINE) -> Segment:
    return next(p for p in pieces(line) if p.stretch.holds(station_ft))


def test_the_pieces_cover_the_whole_line_without_gap_or_overlap() -> None:
    found = pieces()
    whole = Profile(LINE).extent
    assert (found[0].stretch.from_ft, found[-1].stretch.to_ft) == (whole.from_ft, whole.to_ft)
    assert all(a.stretch.to_ft == b.stretch.from_ft for a, b in pairwise(found))


@pytest.mark.parametrize(
    ("station_ft", "style", "words"),
    [
        (-3.0, "segment good", "nothing wrong seen"),
        (14.5, "segment bad", "the bottom of the pipe is gone; a hole in the pipe"),
        (24.0, "segment bad", "a dip that holds water"),
        (33.2, "segment watch", "roots growing in (suspected)"),
        (38.0, "segment unseen", "not seen by the camera"),
    ],
)
def test_a_piece_is_coloured_by_what_was_seen_there(station_ft: float, style: str, words: str) -> None:
    piece = at(station_ft)
    assert (colour(piece, NEEDS), state(LETTER, piece)) == (style, words)


def coloured(finding: Finding, must: bool) -> str:
    """Its piece's colour where the diagnosis says of it that it must be put right, or may stay."""
    need = replace(NEEDS[0], stretch=finding.stretch, findings=(finding,), grade=finding.grade, must=must)
    return colour(at(finding.stretch.middle_ft, replace(LINE, findings=(finding,))), (need,))


def test_what_is_only_suspected_is_never_shown_as_broken() -> None:
    hole = Finding(id="h", kind="hole", stretch=Stretch(10.0, 11.0), grade="suspected")
    assert coloured(hole, must=True) == "segment watch"


def test_the_diagnosis_colours_not_the_kind_of_finding() -> None:
    roots = Finding(id="r", kind="roots", stretch=Stretch(10.0, 11.0))
    gap = Finding(id="g", kind="gap", stretch=Stretch(10.0, 11.0))
    assert (coloured(roots, must=True), coloured(gap, must=False)) == ("segment bad", "segment watch")


def test_the_picture_says_what_its_colours_mean() -> None:
    said = " ".join(str(cell.value) for row in pipe_sheets(LETTER)[0].rows for cell in row.cells)
    assert "Red must be put right. Yellow: something was found that may stay, or is only suspected." in said


def test_a_finding_in_pipe_nobody_filmed_says_so() -> None:
    hole = Finding(id="h", kind="hole", stretch=Stretch(38.0, 39.0))
    assert state(LETTER, at(38.5, replace(LINE, findings=(hole,)))) == "a hole in the pipe (not seen by the camera)"


def test_outside_the_wall_is_counted_outwards() -> None:
    assert place(LETTER, LINE, pieces()[0]) == "outside, 6 ft to 0 ft, under the yard"
    assert place(LETTER, LINE, at(5.0)) == "0 ft to 8 ft, under the house, kitchen"


def test_each_option_marks_the_pieces_it_renews_and_no_other() -> None:
    renewed = {p.stretch.middle_ft: p.renewed for p in pieces()}
    assert all(letters == (("A", "B") if 0 < middle < 29 else ()) for middle, letters in renewed.items())


def test_a_point_is_drawn_wide_enough_to_be_seen() -> None:
    crack = Finding(id="c", kind="crack", stretch=Stretch(30.0, 30.0))
    piece = at(30.0, replace(LINE, findings=(crack,)))
    assert piece.findings == (crack,)
    assert piece.stretch.length_ft == pytest.approx(0.5)


def charts(line: Line) -> int:
    job = replace(QUOTE.job, lines=(line,))
    with zipfile.ZipFile(io.BytesIO(write(homeowner(replace(QUOTE, job=job), "en_US")))) as archive:
        return sum(name.startswith("xl/charts/chart") for name in archive.namelist())


def test_a_side_view_is_drawn_only_where_a_depth_was_read() -> None:
    blind = replace(LINE, marks=tuple(m for m in LINE.marks if m.word != "depth"))
    assert (charts(LINE), charts(blind)) == (1, 0)


def test_a_piece_shorter_than_what_is_shown_is_a_place_and_no_length() -> None:
    inside = replace(at(20.0), stretch=Stretch(20.0, 20.01))
    assert place(LETTER, LINE, inside).startswith("at 20 ft")
    assert place(LETTER, LINE, replace(inside, stretch=Stretch(20.0, 21.0))).startswith("20 ft to 21 ft")


def rerouted() -> Letter:
    """The first option goes another way instead; it cleans the whole line first."""
    option = QUOTE.options[0]
    repair = option.scope.repairs[0]
    clean = replace(repair, id="clean", method="clean", stretch=Stretch(-6.0, 36.0), first=())
    around = replace(repair, method="reroute", reroute="kitchen along the east wall", first=(clean,))
    scope = replace(option.scope, repairs=(around,))
    quote = replace(QUOTE, options=(replace(option, scope=scope), *QUOTE.options[1:]))
    return Letter(quote, "en_US")


def test_old_pipe_under_a_way_round_is_shown_as_capped_and_cleaning_renews_nothing() -> None:
    letter = rerouted()
    stretch = letter.quote.options[0].scope.repairs[0].stretch
    for piece in segments(LINE, letter.quote.options):
        assert "A" not in piece.renewed
        assert ("A" in piece.closed) == stretch.holds(piece.stretch.middle_ft)


def test_the_picture_names_the_new_way_and_says_what_becomes_of_the_old_pipe() -> None:
    sheet = pipe_sheets(rerouted())[0]
    cells = [cell for row in sheet.rows for cell in row.cells]
    assert {cell.value for cell in cells if cell.style == "segment closed"} == {"A capped"}
    told = [str(cell.value) for cell in cells if "kitchen along the east wall" in str(cell.value)]
    assert told and told[0].endswith("the old pipe is capped and stays in the ground.")
