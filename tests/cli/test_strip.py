"""The drawing of a line: everything at its station, to scale, in as many columns as there are."""

import pytest

from estimator.cli.views.strip import Bar, Scale, labels, letters, strip
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import Words
from estimator.model.line import Finding, Line, Mark, Pass
from estimator.model.stretch import Stretch


def _line(**more) -> Line:
    marks = (
        Mark(word="yard", stretch=Stretch(-4, -4), holds=True),
        Mark(word="slab", stretch=Stretch(0, 0), holds=True),
        Mark(word="depth", stretch=Stretch(10, 10), depth_ft=2.5),
        Mark(word="branch", stretch=Stretch(20, 20), size_in=3),
    )
    seen = Pass(number=1, access="cleanout", flow="against flow", start_ft=-4, sign=1, seen=Stretch(-4, 30))
    held = {
        "name": "main",
        "size_in": 4,
        "pipe": "clay",
        "marks": marks,
        "passes": (seen,),
        "length_ft": 44,
        "downstream": -1,
    }
    return Line(**{**held, **more})


def _row(drawn: list[str], label: str) -> str:
    return next(line for line in drawn if line.startswith(label))


def _column(station: float, columns: int = 80) -> int:
    return 8 + round((station + 4) / 44 * (columns - 8 - 1))


@pytest.mark.parametrize("columns", [60, 80, 120])
def test_no_line_is_wider_than_the_window(columns):
    found = tuple(
        Finding(id=str(i), kind="roots", stretch=Stretch(i, i + 3), percent=(40, 40)) for i in range(0, 30, 2)
    )
    drawn = strip(_line(findings=found), columns, [Bar("A sectional liner", Stretch(37, 39))])
    assert max(len(line) for line in drawn) <= columns


def test_the_pipe_is_solid_where_filmed_and_dotted_where_not():
    row = _row(strip(_line(), 80), "2.5 ft")
    assert row[_column(5)] == "─"
    assert row[_column(29)] == "─"
    assert row[_column(32)] == "·"
    assert row[_column(20)] == "┬"


def test_the_slab_begins_at_its_station():
    row = _row(strip(_line(), 80), "surface")
    assert row[_column(-1)] == '"'
    assert row[_column(0)] == "="


def test_a_finding_has_its_letter_over_its_whole_stretch_and_words_in_the_list():
    hole = Finding(id="h", kind="hole", stretch=Stretch(10, 12), size_in=3, signs=("soil seen",))
    drawn = strip(_line(findings=(hole,)), 80)
    row = _row(drawn, "found")
    assert row.index("a") == _column(10)
    assert row.rindex("a") == _column(12)
    assert any(line.startswith("a  10 – 12") and "hole 3 in, soil seen" in line for line in drawn)


def test_findings_at_one_place_do_not_cover_each_other():
    pair = tuple(Finding(id=kind, kind=kind, stretch=Stretch(10, 12)) for kind in ("crack", "roots"))
    drawn = "\n".join(strip(_line(findings=pair), 80))
    assert "aaa" in drawn
    assert "bbb" in drawn


def test_the_twenty_seventh_finding_has_a_letter_of_its_own():
    many = [Finding(id=str(i), kind="crack", stretch=Stretch(i, i)) for i in range(28)]
    names = [letter for letter, _ in letters(many)]
    assert names[25:] == ["z", "a2", "b2"]
    assert len(set(names)) == 28


def test_a_repair_spans_its_stretch_and_carries_its_name():
    row = _row(strip(_line(), 80, [Bar("A tunnel", Stretch(0, 30))]), "repair")
    assert "A tunnel" in row
    assert row.index("├") == _column(0)
    assert row.index("┤") == _column(30)


@pytest.mark.parametrize("stretch", [Stretch(-4, -4), Stretch(40, 40), Stretch(-4, 40)])
def test_a_repair_at_an_end_keeps_its_name_on_the_drawing(stretch):
    assert "B reline" in _row(strip(_line(), 60, [Bar("B reline", stretch)]), "repair")


def test_a_line_of_which_nothing_is_known_is_drawn_without_a_depth():
    bare = Line(name="branch", size_in=2, pipe="unknown", filmed=False)
    drawn = strip(bare, 60)
    assert any(line.startswith("depth ?") for line in drawn)
    assert drawn[-1] == "No camera was in this line."


def test_a_very_deep_pipe_stays_on_ten_rows():
    deep = _line(marks=(Mark(word="depth", stretch=Stretch(10, 10), depth_ft=180.0),))
    rows = [line for line in strip(deep, 80) if line.split(" ft")[0].replace(".", "").isdigit()]
    assert len(rows) <= 10


@pytest.mark.parametrize("station", [-4, 0, 17.3, 40])
def test_a_station_and_its_column_agree_within_half_a_letter(station):
    scale = Scale(Stretch(-4, 40), 72, labels(Words()))
    assert abs(scale.station(scale.column(station)) - station) <= scale.ft_a_letter / 2 + 1e-9


@pytest.mark.parametrize("columns", [40, 60, 80])
@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_no_name_of_a_zone_is_cut(columns, language):
    """Narrow zones put their names on a row above; each name stands whole."""
    marks = [
        Mark(word=z, stretch=Stretch(at, at), holds=True)
        for at, z in ((-4, "yard"), (2, "walk"), (6, "drive"), (12, "street"))
    ]
    drawn = strip(_line(marks=tuple(marks)), columns, words=Words(language))
    head = "\n".join(drawn[: next(n for n, row in enumerate(drawn) if '"' in row)])
    assert [name for name in ("yard", "walk", "drive", "street") if term(name, language) not in head] == []
    assert max(map(len, drawn)) <= columns


@pytest.mark.parametrize("columns", [60, 80, 120])
@pytest.mark.parametrize("end_ft", [49.9, 50.0, 50.2, 100.0, 1200.0])
def test_every_number_of_the_axis_is_whole(columns, end_ft):
    """A cut 50 reads as 5."""
    seen = Pass(number=1, access="cleanout", flow="with flow", start_ft=0, sign=1, seen=Stretch(0, end_ft))
    drawn = strip(_line(marks=(), passes=(seen,), length_ft=end_ft, downstream=1), columns)
    shown = [int(text.replace(",", "")) for text in _row(drawn, "station").split()[1:]]
    step = shown[1] - shown[0]
    assert shown == list(range(0, int(end_ft) + 1, step))
    assert len(_row(drawn, "station")) <= columns
