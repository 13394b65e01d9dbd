"""Sheets of an option over the demo: where to open and the grade to lay, by hand."""

from pathlib import Path

import pytest

from estimator.cli.site_sheets import made
from estimator.fieldnotes import read_job
from estimator.knowledge.plumbing_code import widest_hanger_ft
from estimator.model.job import Job
from estimator.model.problem import CannotGoOn
from estimator.model.say import Say
from estimator.onsite.grade_sheet import hangers
from estimator.onsite.sheet import SiteSheet
from estimator.works.grade import code_families
from tests.tables.workbench import demo

DEMO = Path(__file__).parents[2] / "estimator" / "demo" / "job.toml"


def said(word: Say | str) -> str:
    return str(word)


def the_job() -> Job:
    job = read_job(DEMO).job
    assert job is not None
    return job


def tunnel_letter() -> str:
    from estimator.cli.priced_job import priced

    options = priced(DEMO, None).quote.options
    return next(o.letter for o in options if any(x.kind == "tunnel" for x in o.works.openings))


@pytest.fixture(scope="module")
def letter() -> str:
    return tunnel_letter()


def sheet(name: str, letter: str) -> tuple[Job, SiteSheet]:
    return made(DEMO, name, None, None, letter)


def test_the_grade_between_the_tie_ins_is_a_straight_line(letter: str) -> None:
    """The demo's levels: 30 in at the slab edge, 25 in 35.1 ft in, 1/7 in a foot; 2 ft outside the edge 1/4 in a foot adds 1/2 in.

    From 20.3 ft in to 2 ft outside: 5 × 20.3 / 35.1 + 0.5 = 3.4 in over 22.3 ft, 0.152 in a foot (arithmetic); above the 1/8 asked for.
    """
    _, found = sheet("grade", letter)
    main = next(b for b in found.blocks if "main" in said(b.heading) and b.rows)
    heights = [float(w.words[0][1].inches) for row in main.rows if isinstance(w := row[1], Say)]  # type: ignore[attr-defined]
    assert heights == sorted(heights)  # from the upper tie-in down
    slope = (heights[-1] - heights[0]) / 22.3
    assert slope == pytest.approx((5 * 20.3 / 35.1 + 0.5) / 22.3, abs=0.02)
    assert not any("SHORT" in said(line) for line in main.lines)
    # 1 in or less to spare; tie-ins known to 1 7/8 and 5/8 in: nine times of ten the drop is known to their hypotenuse, 2 in
    assert any("spare drop is smaller" in said(line) for line in main.lines)


def test_hangers_by_hand(letter: str) -> None:
    """22.3 ft with one every 4 ft: 6 spaces, 7 hangers."""
    _, found = sheet("grade", letter)
    assert any("7 on this run" in said(line) for b in found.blocks for line in b.lines)


def test_a_line_without_levels_gets_no_grade(letter: str) -> None:
    _, found = sheet("grade", letter)
    yard = next(b for b in found.blocks if "yard" in said(b.heading))
    assert not yard.rows
    assert "Shoot" in said(yard.lines[0])


def test_every_opening_has_marks_and_a_stop_line(letter: str) -> None:
    _, found = sheet("marks", letter)
    corners, stops = found.blocks[:2]
    assert {said(r[0]) for r in corners.rows} == {said(r[0]) for r in stops.rows}


def test_an_option_that_is_not_there_is_named() -> None:
    with pytest.raises(CannotGoOn, match="no option Z"):
        sheet("marks", "Z")


def test_a_new_route_has_its_grade_by_hand(letter: str) -> None:
    """The demo's kitchen goes 9 ft and 24 ft around with 18 in of fall: 6/11 in a foot; at 1/4 in a foot 33 ft take 8 1/4 in, 9 3/4 are spare."""
    _, found = sheet("grade", letter)
    block = next(b for b in found.blocks if "New route" in said(b.heading))
    assert any("9.75" in str(line.words) or "9.8" in str(line.words) for line in block.lines)
    sunk = {round(at.words[0][1].ft, 1): low.words[0][1].inches for at, low, _ in block.rows}  # type: ignore[attr-defined,union-attr]
    assert sunk == {at: pytest.approx(18 * at / 33, abs=0.06) for at in (0, 5, 9, 10, 15, 20, 25, 30, 33)}


def test_the_firms_hangers_are_no_farther_apart_than_the_code_allows() -> None:
    """Source: IPC 2021 table 308.5 and UPC table 313.3, PVC and ABS 4 ft (from memory)."""
    assert demo().number("hanger_plastic_ft") <= widest_hanger_ft("plastic", ("IPC", "UPC")) == 4.0


@pytest.mark.parametrize(("spacing", "warned"), [("4", False), ("3", False), ("5", True), ("4.5", True)])
def test_a_setting_wider_than_the_code_is_told_with_the_count_the_code_takes(spacing: str, warned: bool) -> None:
    """22 ft at the code's 4 ft: 6 spaces, 7 hangers (arithmetic)."""
    lines = [str(line) for line in hangers(22.0, the_job(), demo().with_settings({"hanger_plastic_ft": spacing}))]
    assert any("TOO FAR APART" in line for line in lines) == warned
    assert not warned or "hang 7" in lines[-1]


def test_where_nobody_asked_the_code_the_stricter_of_both_counts() -> None:
    here = demo().place(the_job().house.jurisdiction)
    assert code_families(demo().known_place("nobody asked")) == ("IPC", "UPC")
    assert code_families(here) == (here.code,)
