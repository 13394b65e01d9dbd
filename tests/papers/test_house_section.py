"""The drawing of the pipes: places and depths are where the notes have them, measured on the picture's dots."""

import io
from dataclasses import replace

import pytest
from PIL import Image

from estimator.drawing.canvas import SHARP
from estimator.model.line import Line, Mark, Pass
from estimator.model.opening import Opening
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.works import Laid, Works
from estimator.papers import section_bars as bars_of
from estimator.papers import section_view as section
from estimator.papers.house_section import house_section
from estimator.papers.letter import Letter
from tests.made_up.quote import example_quote


def color(code: str) -> tuple[int, int, int]:
    return tuple(int(code.lstrip("#")[i : i + 2], 16) for i in (0, 2, 4))  # type: ignore[return-value]


def near(dot: tuple[int, int, int], code: str) -> bool:
    return all(abs(a - b) <= 12 for a, b in zip(dot, color(code), strict=True))


def flat_line(depth_ft: float) -> Line:
    """Forty feet of yard with one depth to the pipe's center, level ground."""
    marks = (
        Mark(word="yard", stretch=Stretch(0, 0), holds=True),
        Mark(word="depth", stretch=Stretch(0, 0), depth_ft=depth_ft, surface="lawn"),
    )
    seen = Pass(number=1, access="cleanout", flow="with flow", start_ft=0.0, sign=1, seen=Stretch(0.0, 40.0))
    return Line(name="main", size_in=4.0, pipe="pvc", marks=marks, passes=(seen,))


def drawn(line: Line, works: Works | None = None) -> Image.Image:
    quote = example_quote()
    options = quote.options[:1]
    if works is not None:
        option = options[0]
        first, *rest = option.takeoffs
        options = (replace(option, takeoffs=(replace(first, works=works), *rest)),)
    quote = replace(quote, job=replace(quote.job, lines=(line,)), options=options, found=())
    data, _, _ = house_section(Letter(quote, "en_US")) or (b"", 0, "")
    return Image.open(io.BytesIO(data)).convert("RGB")


def rows_of(picture: Image.Image, x: float, code: str) -> list[int]:
    """The dots of a color in the column at x points."""
    column = round(x * SHARP)
    return [y for y in range(picture.height) if near(picture.getpixel((column, y)), code)]  # type: ignore[arg-type]


@pytest.mark.parametrize("depth_ft", [2.0, 4.0, 6.5])
def test_the_pipe_lies_as_deep_as_it_was_read(depth_ft: float) -> None:
    picture = drawn(flat_line(depth_ft))
    scale = min(section.MOST_SCALE, (section.WIDTH - section.LEFT - section.RIGHT) / 40)
    x = section.LEFT + 13.3 * scale
    pipe, grass = rows_of(picture, x, section.PIPE), rows_of(picture, x, section.GRASS)
    times = 1 if (depth_ft + 0.7) * scale >= section.LEAST_SECTION else 2
    middle = (pipe[0] + pipe[-1]) / 2 - (grass[0] + grass[-1]) / 2
    assert middle / SHARP == pytest.approx(depth_ft * scale * times, abs=1.5)


def test_an_opening_is_as_long_on_the_bar_as_in_the_works() -> None:
    pit = Opening(
        kind="trench", line="main", along=Stretch(10, 20), depth_ft=3, name=Say.of("a trench"), bottom_width_ft=2
    )
    works = Works(line="main", openings=(pit,), laid=(Laid(line="main", stretch=Stretch(12, 18), size_in=4),))
    picture = drawn(flat_line(3.0), works)
    scale = min(section.MOST_SCALE, (section.WIDTH - section.LEFT - section.RIGHT) / 40)
    widths = [
        sum(near(picture.getpixel((x, y)), bars_of.DIG) for x in range(picture.width)) for y in range(picture.height)
    ]  # type: ignore[arg-type]
    assert max(widths) / SHARP == pytest.approx(10 * scale, abs=2)
    accent = example_quote().firm.accent
    bars = [sum(near(picture.getpixel((x, y)), accent) for x in range(picture.width)) for y in range(picture.height)]  # type: ignore[arg-type]
    assert max(bars) / SHARP == pytest.approx(6 * scale, abs=2)


def test_pipe_that_no_camera_saw_is_dashed() -> None:
    seen = flat_line(3.0)
    part = replace(seen, passes=(replace(seen.passes[0], seen=Stretch(0.0, 20.0)),), length_ft=40.0)
    picture = drawn(part)
    solid = [x for x in range(picture.width) if rows_of(picture, x / SHARP, section.PIPE)]
    whole = drawn(seen)
    assert len(solid) < 0.7 * len([x for x in range(whole.width) if rows_of(whole, x / SHARP, section.PIPE)])


def test_the_drawing_is_the_same_every_time_and_has_words() -> None:
    letter = Letter(example_quote(), "en_US")
    one, two = house_section(letter), house_section(letter)
    assert one == two and one is not None and "3 findings" in one[2]


def test_without_a_line_that_was_filmed_nothing_is_drawn() -> None:
    quote = example_quote()
    assert house_section(Letter(replace(quote, job=replace(quote.job, lines=())), "en_US")) is None
