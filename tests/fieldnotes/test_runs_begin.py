"""A camera run as people begin it, and lengths that stand alone: common practice in how they are typed."""

import pytest
from fieldnote_texts import reading

from estimator.fieldnotes.meaning import Context
from estimator.fieldnotes.understand import understand

IN_THE_HOUSE = Context(zone="slab", last_ft=15.0, furthest_ft=15.0)


@pytest.mark.parametrize(
    ("typed", "rows"),
    [
        ("frnt c/o -> house", ("pass front cleanout to house, against flow",)),
        ("front cleanout to house, 4in ci", ("pass front cleanout to house, against flow", "0 size 4in, pipe cast iron")),
        (
            "frnt c/o -> house, riser 2ft, start yard lawn 30in deep",
            ("pass front cleanout to house, against flow, riser 2 ft", "0 yard lawn", "0 depth 2 ft 6 in from lawn"),
        ),
    ],
)  # fmt: skip
def test_a_run_begins_with_or_without_the_word_and_with_what_stands_at_its_start(typed, rows):
    meant = understand(typed, Context())
    assert not meant.asked
    assert [sorted(row.split(", ")) for row in meant.rows] == [sorted(row.split(", ")) for row in rows]


def test_what_stands_at_its_start_stands_in_the_line():
    log = "front cleanout to house, riser 24in, lawn 30in deep, 4in clay\n12 roots 20%\n22 slab\n40 end\n"
    found = reading(log)
    assert not [p for p in found.problems if p.code == "log/no-zone"]
    line = found.job.lines[0]
    assert {("yard", "lawn"), ("pipe", "clay")} <= {(m.word, m.choice) for m in line.marks}
    assert [m.depth_ft for m in line.marks if m.depth_ft] == [2.5]


def test_what_nobody_understands_at_the_start_of_a_run_is_asked():
    meant = understand("front cleanout to house, 4in clay zorbled", Context())
    assert meant.asked and meant.choices == ("pass front cleanout to house, against flow",)


@pytest.mark.parametrize("typed", ["60 end at stack", "60 ends at the stack", "stops at stack 60"])
def test_a_line_may_end_at_a_stack(typed):
    assert understand(typed, IN_THE_HOUSE).rows[0].startswith(("60 end stack", "60 stop stack"))


@pytest.mark.parametrize(
    ("typed", "first"),
    [("24 36in", "24 depth 36in"), ("24 3.5'", "24 depth 3.5ft"), ("24 4in", "24 size 4in"), ("24 8in", "24 size 8in")],
)
def test_a_length_alone_is_asked_as_a_depth_where_no_drain_is_that_wide(typed, first):
    """House drains are sold up to 8 in (common practice)."""
    meant = understand(typed, IN_THE_HOUSE)
    assert meant.asked and meant.choices[0] == first


def test_a_way_the_reading_leaves_out_is_asked():
    assert understand("47.5 to main at street", IN_THE_HOUSE).asked


@pytest.mark.parametrize("typed", ["20 wall, footing 30 in deep", "footing at 20, 30 deep"])
def test_how_deep_a_footing_is_is_no_depth_of_the_pipe(typed):
    assert understand(typed, IN_THE_HOUSE).rows == ("20 footing 2 ft 6 in deep",)
