"""The quote in, a small plan of house and drains out: beside a short section where there is room, else below all of them.

It stands in the quote only where tapes or rooms say more of the house than the sections do.
"""

from collections.abc import Sequence

from estimator.drawing.canvas import Canvas
from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.onsite.plan import Plan, plan_of
from estimator.onsite.plan_drawing import TICK_FT, Drawn
from estimator.onsite.plan_layout import Frame, Lettered, Sketch
from estimator.papers.letter import Letter
from estimator.papers.section_view import AMBER, INK, QUIET, RED, TINY, WIDTH, View
from estimator.quote.recommend import recommended

BESIDE, ABOVE, FOOT = 34.0, 16.0, 43.0
"""Points kept free around the drawing for its words, and below it for its scale."""
LEAST_SCALE = 3.0
"""Points a foot: a smaller plan cannot be read (judgment)."""
MOST_HEIGHT = 260.0


def plan_sketch(letter: Letter) -> Sketch | None:
    """Return the plan lying on its longer side; None where nothing of it was measured or named."""
    job = letter.quote.job
    plan = plan_of(job)
    if not tells(job, plan):
        return None
    opened = _opened(letter)
    letters = [
        Lettered(f.letter, f.line, f.places[0].middle_ft, RED if f.act == "now" else AMBER)
        for f in letter.quote.found
        if f.places
    ]
    upright, lying = (
        Sketch(job, plan, letter.language, opened.works if opened else None, letters=letters, turned=turned, small=True)
        for turned in (False, True)
    )
    return lying if upright.high_ft > upright.wide_ft else upright


def _opened(letter: Letter) -> Option | None:
    """The option whose openings are drawn: the one we recommend, else the first that opens anything."""
    first = recommended(letter.quote)
    ahead = (first, *letter.quote.options) if first else letter.quote.options
    return next((o for o in ahead if o.works.openings), None)


def tells(job: Job, plan: Plan) -> bool:
    """Whether a place was taped to a wall of the house, or rooms over the pipe were named."""
    return plan.outline is not None and (
        bool(plan.outline.measured) or any(Profile(line).marks("room") for line in job.lines)
    )


def frame_beside(sketch: Sketch, views: Sequence[View], ends: Sequence[float]) -> Frame | None:
    """Return the widest free part to the right of a section, below its name; None where the plan would be too small in all."""
    frames = []
    for view, end in zip(views, ends, strict=True):
        left, top = view.x(view.whole.to_ft) + 24, view.top - 30
        wide, high = WIDTH - left - 2 * BESIDE, end - top - 2 * ABOVE - FOOT
        if wide > 0 and high > 0:
            frames.append(Frame(left + BESIDE, top + ABOVE, wide, high, BESIDE, ABOVE))
    best = max(frames, key=sketch.scale_in, default=None)
    return best if best is not None and sketch.scale_in(best) >= LEAST_SCALE else None


def frame_below(sketch: Sketch, top: float) -> Frame:
    """Return a part over the whole width, as high as the plan needs."""
    most = Frame(BESIDE, top + ABOVE, WIDTH - 2 * BESIDE, MOST_HEIGHT, BESIDE, ABOVE)
    high = sketch.high_ft * sketch.scale_in(most)
    return Frame(most.left, most.top, most.width, high, BESIDE, ABOVE)


def draw_plan(letter: Letter, canvas: Canvas, sketch: Sketch, frame: Frame) -> None:
    """The plan and under it what is not to scale."""
    drawn = Drawn(sketch, canvas, frame)
    left, _, _, bottom = frame.written
    canvas.line([(left, bottom + 7), (left + TICK_FT * drawn.scale, bottom + 7)], INK, 2.0)
    for number, text in enumerate(_under(letter, sketch)):
        start = left + TICK_FT * drawn.scale + 7 if number == 0 else left
        canvas.text((start, bottom + 7 + 13 * number), letter.say(text), TINY, QUIET, anchor="lm")


def _under(letter: Letter, sketch: Sketch) -> tuple[Say, ...]:
    front = (
        Say.of("10 ft. Seen from above, front of the house on the left.")
        if sketch.turned
        else Say.of("10 ft. Seen from above, front of the house at the bottom.")
    )
    opened = _opened(letter) if sketch.openings else None
    orange = (Say.of("Orange: what Option {letter} digs or cuts open.", letter=opened.letter),) if opened else ()
    return front, Say.of("Dashed: not measured, not to scale. This is a sketch, not a survey."), *orange
