"""The plan sketch: places by hand, the fit against SciPy, and pictures that say what is not measured."""

import io
import random
from datetime import date
from itertools import combinations
from math import cos, hypot, radians, sin
from pathlib import Path

import numpy
import pytest
from PIL import Image
from scipy.spatial.transform import Rotation
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build
from estimator.drawing.canvas import Canvas
from estimator.fieldnotes import read_job
from estimator.model.afterwards import LiftHeight
from estimator.model.job import Customer, House, Job
from estimator.model.line import Join, Line, Mark, Pass, Tie
from estimator.model.stretch import Stretch
from estimator.onsite.dead_reckoning import Track, fitted, walked
from estimator.onsite.plan import plan_of
from estimator.onsite.plan_drawing import SEWER, Drawn
from estimator.onsite.plan_labels import APART, Labels, shared
from estimator.onsite.plan_layout import Frame, Lettered, Sketch
from estimator.onsite.plan_marks import things_on
from estimator.onsite.plan_picture import plan_picture
from estimator.onsite.plan_sheet import measured_ft
from estimator.onsite.positions import tapes_of

ROOT = Path(__file__).parents[2]
DEMO = Path(demo.__file__).parent / "job.toml"
NORTH = (0.0, 1.0)


def mark(word: str, at: float, **more: object) -> Mark:
    return Mark(word=word, stretch=Stretch(at, at), **more)  # type: ignore[arg-type]


def line(*marks: Mark, name: str = "main", downstream: int = -1, low: float = -10.0, high: float = 30.0, **more: object) -> Line:  # fmt: skip
    seen = Pass(number=1, access="way", flow="against flow", start_ft=low, sign=1, seen=Stretch(low, high))
    slab = mark("slab", 0, holds=True)
    yard = mark("yard", low, holds=True)
    return Line(
        name=name, size_in=4, pipe="clay", marks=(yard, slab, *marks), passes=(seen,), zero="slab edge", downstream=downstream, **more  # type: ignore[arg-type]
    )  # fmt: skip


def job(*lines: Line) -> Job:
    return Job(
        number="1", day=date(2026, 11, 29), prepared_by="R.", customer=Customer(name="A", site="B"),
        house=House(floor="slab", jurisdiction="demo"), lines=lines,
    )  # fmt: skip


def taped(at: float, front: float, east: float) -> Mark:
    return mark("loc", at, ties=(Tie(front, "front wall"), Tie(east, "east wall")))


def test_a_bend_by_hand() -> None:
    """10 ft north, a square bend to the left, 20 ft west: 20 ft to the left of 10 ft up."""
    track = walked(line(mark("bend", 0, side="left", degrees=90.0), low=-10, high=20), (0.0, 0.0), NORTH)
    assert track.at(0) == pytest.approx((0, 10))
    assert track.at(20) == pytest.approx((-20, 10))
    assert track.known == "guessed"


def test_a_bend_seen_from_the_other_end_turns_the_other_way() -> None:
    """What turns left for a camera coming down turns right as stations grow."""
    down = Pass(number=1, access="way", flow="with flow", start_ft=20, sign=-1, seen=Stretch(-10, 20))
    one = line(mark("bend", 0, side="left", degrees=90.0), low=-10, high=20)
    track = walked(
        Line(name="m", size_in=4, pipe="clay", marks=one.marks, passes=(down,), downstream=-1), (0.0, 0.0), NORTH
    )
    assert track.at(20) == pytest.approx((20, 10))


def test_the_fit_is_that_of_scipy_and_the_line_passes_through_its_tapes() -> None:
    """Source: SciPy's Rotation.align_vectors (Kabsch): the same turn about the two centers."""
    draw = random.Random()
    for _ in range(50):
        bends = [mark("bend", at, side=draw.choice(["left", "right"]), degrees=45.0) for at in (4, 12)]
        track = walked(line(*bends), (0.0, 0.0), NORTH)
        turn, shift = radians(draw.uniform(-180, 180)), (draw.uniform(-50, 50), draw.uniform(-50, 50))
        stations = [-5.0, 8.0, 25.0]
        places = []
        for at in stations:
            x, y = track.at(at)
            noise = draw.gauss(0, 0.4), draw.gauss(0, 0.4)
            places.append(
                (
                    cos(turn) * x - sin(turn) * y + shift[0] + noise[0],
                    sin(turn) * x + cos(turn) * y + shift[1] + noise[1],
                )
            )
        found = fitted(track, list(zip(stations, places, strict=True)))
        assert numpy.array([found.at(at) for at in stations]) == pytest.approx(numpy.array(places))
        own, there = (numpy.array([[*p, 0.0] for p in ps]) for ps in ([track.at(s) for s in stations], places))
        up = numpy.array([[0.0, 0.0, 1e6]])  # keeps the turn in the plane
        rotation, _ = Rotation.align_vectors([*(there - there.mean(0)), *up], [*(own - own.mean(0)), *up])
        beyond = rotation.apply(numpy.array([*track.at(30), 0.0]) - own.mean(0)) + there.mean(0)
        left = numpy.array([*places[-1], 0.0]) - (rotation.apply(own[-1] - own.mean(0)) + there.mean(0))
        assert found.at(30) == pytest.approx((beyond + left)[:2], abs=1e-4)


def test_walls_from_a_place_taped_to_both_of_a_pair() -> None:
    """14 ft from the east wall and 20 ft from the west wall: 34 ft apart; the back wall was not taped."""
    ties = (Tie(8, "front wall"), Tie(14, "East wall"), Tie(20, "the west wall"))
    house = plan_of(job(line(mark("loc", 8, ties=ties), taped(20, 20, 14)))).outline
    assert house is not None
    assert (house.left, house.right, house.front) == (-34, 0, 0)
    assert house.measured == {"left", "right", "front"}


def test_corners_taped_for_a_lift_give_the_house_its_size() -> None:
    corners = [(0, 0), (0, 38), (44, 0), (44, 38)]
    heights = [
        LiftHeight(name="c", from_walls=(("front wall", f), ("east wall", e)), raised_ft=0.1) for f, e in corners
    ]
    house = plan_of(job(line(taped(8, 8, 9), taped(20, 20, 9))), heights).outline
    assert house is not None
    assert (house.left, house.right, house.front, house.back) == (-38, 0, 0, 44)


def test_a_tape_in_the_yard_runs_outward_and_one_along_a_side_does_not() -> None:
    """4 ft from the front wall where the pipe lies 5 ft outside the slab edge: outside. 12 ft from the east wall: not."""
    tapes = tapes_of(line(taped(-5, 4, 12), taped(10, 10, 12)))
    assert [ft for *_, ft in tapes] == [-4, 12, 10, 12]


def test_a_branch_leaves_on_its_side_and_ends_on_its_main() -> None:
    """A branch on the left with the flow, which comes down toward the street, lies on the right of the plan."""
    main = line(taped(0, 0, 20), taped(30, 30, 20), mark("branch", 12, side="right", size_in=3, name="laundry"))
    side = line(name="laundry", downstream=1, low=0.0, high=14.0, joins=Join("main", 12))
    plan = plan_of(job(main, side))
    assert plan.tracks["laundry"].at(14) == pytest.approx((-20, 12))
    assert plan.tracks["laundry"].at(0) == pytest.approx((-6, 12))
    assert measured_ft(plan.tracks["main"]) == 30
    assert measured_ft(plan.tracks["laundry"]) == 0


def test_a_tree_stands_where_it_was_noted_and_says_so_where_it_was_not() -> None:
    tree = mark("tree", -5, size_in=20.0, lengths=(("away", 6.0),), note="oak right")
    vague = mark("tree", -8)
    things = things_on(plan_of(job(line(taped(0, 0, 20), taped(30, 30, 20), tree, vague))), job(line(tree, vague)))
    noted, other = sorted((t for t in things if t.kind == "tree"), key=lambda t: not t.noted)
    assert noted.at == pytest.approx((-14, -5))
    assert (noted.noted, other.noted) == (True, False)


def test_taped_places_are_met_however_the_pipe_runs() -> None:
    """Fresh draws: a pipe of known course taped at three places; asked between them it is off by no more than the tapes are."""
    draw, off = random.Random(), []
    for _ in range(1000):
        bend = mark("bend", 10, side="left", degrees=45.0)
        true = walked(line(bend), (-12.0, -10.0), NORTH)
        errors = [(draw.gauss(0, 0.4), draw.gauss(0, 0.4)) for _ in range(3)]
        tapes = [(at, tuple(a + b for a, b in zip(true.at(at), e, strict=True))) for at, e in zip((0.0, 12.0, 28.0), errors, strict=True)]  # fmt: skip
        found: Track = fitted(walked(line(bend), (0.0, 0.0), (1.0, 0.0)), tapes)  # type: ignore[arg-type]
        off.append(hypot(*(a - b for a, b in zip(found.at(20), true.at(20), strict=True))))
    assert sum(o < 1.1 for o in off) >= 0.9 * len(off)


def test_the_picture_is_the_same_twice_and_shows_the_pipe() -> None:
    read = read_job(DEMO).job
    assert read is not None
    first, again = plan_picture(read, "en_US"), plan_picture(read, "en_US")
    assert first is not None and first == again
    image = Image.open(io.BytesIO(first[0])).convert("RGB")
    assert image.size[1] == pytest.approx(2 * first[1], abs=2)
    sewer = tuple(int(SEWER[n : n + 2], 16) for n in (1, 3, 5))
    near = sum(
        n
        for n, color in image.getcolors(1 << 24) or []
        if max(abs(a - b) for a, b in zip(color, sewer, strict=True)) < 12
    )
    assert near > 1000
    spanish = plan_picture(read, "es_US")
    assert spanish is not None and spanish[0] != first[0]


def test_without_lines_there_is_no_picture() -> None:
    assert plan_picture(job(), "en_US") is None


@pytest.mark.parametrize("name", ["alder", "juniper", "j01-hickory", "j02-walnut", "j06-poplar", "held-back-water"])
def test_every_kind_of_house_can_be_drawn(name: str) -> None:
    read = read_job(ROOT / "tests" / "jobs" / name / "job.toml").job
    assert read is not None
    drawn = plan_picture(read, "es_US")
    assert drawn is not None
    assert drawn[1] > 100


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "80"})


def test_it_is_written_as_a_picture_or_in_a_workbook_and_never_over_a_file(tmp_path: Path) -> None:
    for name in ("plan.png", "plan.xlsx"):
        done = run("site", DEMO, "plan", "--out", tmp_path / name)
        assert done.exit_code == 0, done.output
        assert max(map(len, done.stdout.splitlines())) <= 80
        assert (tmp_path / name).stat().st_size > 5000
    again = run("site", DEMO, "plan", "--out", tmp_path / "plan.png")
    assert again.exit_code == 1
    other = run("site", DEMO, "plan", "--out", tmp_path / "plan.gif")
    assert other.exit_code == 1


@pytest.mark.parametrize("language", ["en_US", "es_US"])
@pytest.mark.parametrize("small", [True, False])
def test_no_words_of_the_plan_lie_over_others_or_off_it(language: str, small: bool) -> None:
    """The demo's plan in the room it has in the quote and on a sheet of its own; the boxes of all words, pair by pair."""
    read = read_job(DEMO).job
    assert read is not None
    letters = [Lettered(letter, "main", at, SEWER) for letter, at in (("a", 14.6), ("b", 12.7))]
    sketch = Sketch(read, plan_of(read), language, letters=letters, turned=True, small=small)
    frame = Frame(100, 60, 260, 90, 60, 34) if small else Frame(60, 60, 600, 380, 60, 50)
    drawn = Drawn(sketch, Canvas(740, 500), frame)
    words = [(left + APART, top, right - APART, bottom) for left, top, right, bottom in drawn.labels.written]
    assert len(words) > 8
    assert not [(one, other) for one, other in combinations(words, 2) if shared(one, other) > 0]
    west, north, east, south = frame.written
    assert all(
        west <= left and north <= top and right <= east and bottom <= south for left, top, right, bottom in words
    )


def test_words_shy_from_words_more_than_from_lines() -> None:
    """A line across every place but the one taken by words: the words go over the line."""
    labels = Labels(Canvas(200, 100), (0, 0, 200, 100))
    labels.keep((0, 0, 200, 100))
    for _ in range(4):
        labels.write((100, 50), "cleanout", SEWER)
    assert not [pair for pair in combinations(labels.written, 2) if shared(*pair)]
