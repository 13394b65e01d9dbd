"""The small plan in the homeowner's quote: to scale where it was taped, only where something is known of the house, on no page of its own."""

import io
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image

from estimator import demo
from estimator.cli.priced_job import priced
from estimator.drawing.canvas import SHARP, Canvas
from estimator.model.line import Line
from estimator.model.offer import Quote
from estimator.onsite.plan import plan_of
from estimator.onsite.plan_drawing import TICK_FT, Drawn
from estimator.onsite.plan_layout import BESIDE_FT, Frame, Sketch, near_the_house
from estimator.papers.house_plan import plan_sketch, tells
from estimator.papers.house_section import house_section
from estimator.papers.letter import Letter


@pytest.fixture(scope="module", name="quote")
def _quote() -> Quote:
    return priced(Path(demo.__file__).parent / "job.toml", None).quote


def without(line: Line, *words: str, ties: bool = True) -> Line:
    marks = (m if ties else replace(m, ties=()) for m in line.marks if m.word not in words)
    return replace(line, marks=tuple(marks))


def picture(quote: Quote, language: str = "en_US") -> Image.Image:
    data, _, _ = house_section(Letter(quote, language)) or (b"", 0, "")
    return Image.open(io.BytesIO(data)).convert("RGB")


def sewer_dots(image: Image.Image, left: int = 0) -> int:
    """Dots as green as sewer lines are painted; the picture keeps 64 colors, so not quite that green."""
    part = image.crop((left, 0, image.width, image.height))
    return sum(count for count, (r, g, b) in part.getcolors(1 << 24) or [] if g - r > 70 and g - b > 45)  # type: ignore[misc]


def test_the_plan_stands_beside_a_short_section_and_makes_the_drawing_no_higher(quote: Quote) -> None:
    bare = replace(
        quote, job=replace(quote.job, lines=tuple(without(line, "room", ties=False) for line in quote.job.lines))
    )
    assert plan_sketch(Letter(bare, "en_US")) is None
    with_plan, without_plan = picture(quote), picture(bare)
    assert with_plan.size == without_plan.size
    assert sewer_dots(with_plan, with_plan.width // 3) > sewer_dots(without_plan) + 1000


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_it_is_named_for_those_who_cannot_see_it(quote: Quote, language: str) -> None:
    drawn = house_section(Letter(quote, language))
    assert drawn is not None
    assert {"en_US": "Plan of the drains, not a survey", "es_US": "Plano"}[language] in drawn[2]


def test_rooms_alone_or_tapes_alone_are_enough(quote: Quote) -> None:
    job = quote.job
    rooms = replace(job, lines=tuple(without(line, ties=False) for line in job.lines))
    tapes = replace(job, lines=tuple(without(line, "room") for line in job.lines))
    neither = replace(job, lines=tuple(without(line, "room", ties=False) for line in job.lines))
    assert [tells(j, plan_of(j)) for j in (rooms, tapes, neither)] == [True, True, False]


@pytest.mark.parametrize("turned", [False, True])
def test_taped_places_are_drawn_to_the_scale_of_the_bar(quote: Quote, turned: bool) -> None:
    """Flag A lies 12 ft 9 in and the next place 21 ft 7 in from the front wall: 8 ft 10 in apart (arithmetic)."""
    plan = plan_of(quote.job)
    sketch = Sketch(quote.job, plan, "en_US", turned=turned, small=True)
    drawn = Drawn(sketch, Canvas(600, 400), Frame(50, 50, 500, 300))
    track = plan.tracks["main"]
    (x0, y0), (x1, y1) = (drawn.at(track.at(at)) for at in track.taped[:2])
    bar = TICK_FT * drawn.scale
    assert ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 / bar == pytest.approx((21 + 7 / 12 - 12.75) / 10, abs=0.01)
    assert (x1 > x0 + 1) == turned  # into the house: to the right where the front lies on the left


def test_what_lies_far_from_house_and_tapes_is_cut_and_told(quote: Quote) -> None:
    """The demo's yard line is 56 ft 6 in long and nowhere taped to the house: 10 ft are drawn, the rest is a length."""
    kept = near_the_house(plan_of(quote.job), quote.job)
    assert kept["yard"].length_ft == pytest.approx(BESIDE_FT)
    assert kept["kitchen"].length_ft == pytest.approx(14.3, abs=0.1)
    sketch = plan_sketch(Letter(quote, "en_US"))
    assert sketch is not None
    assert sketch.shown("yard", 30) is None
    assert sketch.shown("main", 12) is not None


def test_the_picture_is_sharp_enough_for_print(quote: Quote) -> None:
    assert picture(quote).width == pytest.approx(660 * SHARP, abs=2)
