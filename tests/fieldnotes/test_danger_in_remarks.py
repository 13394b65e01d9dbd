"""No word of danger is kept in silence, whatever remark it stands in, and beside a reading no word that nobody explained.

A smell of fuel is treated as gas until the gas company says otherwise; wires in a drain, fire, valves and piers are asked about
(common practice).
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.meaning import Context
from estimator.fieldnotes.understand import understand

HERE = Context(zone="slab", last_ft=15.0, furthest_ft=15.0)
REMARKS = (
    "check", "recommend dig", "called owner", "looks good", "tomorrow", "texted the office", "no roots", "waiting on helper",
    "lens dirty", "all clear", "year built 1962", "water test held",
)  # fmt: skip
DANGERS = sorted(
    word
    for word in lexicon().english
    if {"danger", "utility"} & (means := lexicon().means((word,))).keys() and "remark" not in means
)
SPELT_OUT = ("fuel smell", "gasoline smell", "smells like fuel", "check valve", "cross bore", "gas line", "yellow pipe")


@pytest.mark.parametrize(
    "line",
    [
        "40 check wires", "40 check fuel", "40 fuel smell, recommend dig", "65 check valve", "40 flood check", "40 check fire",
        "40 smells like fuel", "gasoline smell", "48 pipe ends in dirt", "48 no pipe", "12 pipe clay then no pipe",
        "48 foundation pier thru pipe", "40 roots heavy, pier", "12 yard valve", "12 branch 3in w valve", "40 check bleach",
    ],
)  # fmt: skip
def test_what_could_be_a_danger_or_says_something_nobody_explained_is_asked(line: str) -> None:
    found = understand(line, HERE)
    assert found.asked, found


def test_the_words_of_danger_are_those_of_the_trade() -> None:
    assert {"gas", "propane", "fuel", "gasoline", "wire", "wires", "fire", "valve", "pier", "tendon", "conduit"} <= set(
        DANGERS
    )


@settings(deadline=None, max_examples=300)
@given(
    st.sampled_from((*DANGERS, *SPELT_OUT)),
    st.sampled_from(REMARKS),
    st.sampled_from(("", "40 ", "12-18 ")),
    st.booleans(),
)
def test_a_word_of_danger_in_any_remark_is_asked_or_read(danger: str, remark: str, reading: str, first: bool) -> None:
    line = reading + (f"{danger}, {remark}" if first else f"{remark}, {danger}")
    found = understand(line, HERE)
    assert found.asked or found.rows, (line, found)


@pytest.mark.parametrize(
    "line", ["40 check tomorrow", "40 looks good", "40 smoke tested", "12 no wires", "owner called"]
)
def test_a_remark_of_words_that_are_all_explained_is_still_a_remark(line: str) -> None:
    found = understand(line, HERE)
    assert not found.asked and not found.rows, found
