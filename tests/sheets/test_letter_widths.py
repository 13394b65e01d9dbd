"""Widths of letters: those of Helvetica, which Arial and Liberation Sans share."""

from pathlib import Path

import pytest

from estimator.sheets.fit import BOLD, REGULAR, SAFETY, letters_wide, text_width_px

LIBERATION = Path("/usr/share/fonts/truetype/liberation2")
AFM = {" ": 278, "a": 556, "i": 222, "m": 833, "A": 667, "W": 944, "0": 556, "$": 556, "%": 889, ".": 278, "(": 333}
"""Adobe Core 14 font metrics, Helvetica.afm, WX; from memory, as are the bold ones below."""
AFM_BOLD = {" ": 278, "a": 556, "i": 278, "m": 889, "A": 722, "W": 944, "0": 556, "b": 611, ":": 333, "r": 389}


@pytest.mark.parametrize(("table", "bold"), [(AFM, False), (AFM_BOLD, True)])
def test_they_are_those_of_the_metric_files(table: dict[str, int], bold: bool) -> None:
    assert {letter: letters_wide(letter, bold) for letter in table} == table


@pytest.mark.parametrize(("name", "bold", "table"), [("Regular", False, REGULAR), ("Bold", True, BOLD)])
def test_the_font_that_stands_in_for_arial_draws_them_so(name: str, bold: bool, table: dict[int, str]) -> None:
    fonts = pytest.importorskip("PIL.ImageFont")
    file = LIBERATION / f"LiberationSans-{name}.ttf"
    if not file.exists():
        pytest.skip("the font is not installed here")
    font = fonts.truetype(str(file), 2048)
    for letter in "".join(table.values()):
        assert abs(font.getlength(letter) / 2048 * 1000 - letters_wide(letter, bold)) < 1, letter


def test_a_text_is_as_wide_as_its_letters_and_a_little_more() -> None:
    assert text_width_px("WWW", 9.0, bold=False) == pytest.approx(3 * 0.944 * 12 * SAFETY)
