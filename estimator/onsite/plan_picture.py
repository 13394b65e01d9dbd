"""A job and, where wanted, an option's works in; its plan drawn from what was noted as a PNG out, with its height and its words.

A legend says what is not measured and not to scale.
"""

from collections.abc import Sequence
from dataclasses import replace

from estimator.drawing.canvas import Canvas
from estimator.model.afterwards import LiftHeight
from estimator.model.job import Job
from estimator.model.say import Inches, Say
from estimator.model.works import Works
from estimator.onsite.plan import corner, plan_of
from estimator.onsite.plan_drawing import INK, QUIET, TICK_FT, Drawn
from estimator.onsite.plan_layout import Frame, Sketch

WIDTH, MOST_HEIGHT, EDGE, FOOT = 680.0, 820.0, 56.0, 74.0


def plan_picture(
    job: Job, language: str, works: Works | None = None, heights: Sequence[LiftHeight] = ()
) -> tuple[bytes, int, str] | None:
    """Return the PNG, its height on paper (points of 1/96 in) and its words for those who cannot see it; None without lines."""
    if not job.lines:
        return None
    plan = plan_of(job, heights)
    raised = [
        (xy, Say.of("raised {inches}", inches=Inches(round(h.raised_ft * 12, 2))))
        for h in heights
        if (xy := corner(h, plan.walls)) is not None
    ]
    sketch = Sketch(job, plan, language, works, raised)
    most = Frame(EDGE, EDGE, WIDTH - 2 * EDGE, MOST_HEIGHT - 2 * EDGE - FOOT, EDGE, EDGE)
    frame = replace(most, height=sketch.high_ft * sketch.scale_in(most))
    canvas = Canvas(WIDTH, frame.height + 2 * EDGE + FOOT)
    drawn = Drawn(sketch, canvas, frame)
    _foot(drawn)
    return canvas.png(), round(canvas.height), sketch.said(in_words(job))


def in_words(job: Job) -> Say:
    """Return what the picture shows, in one sentence."""
    return Say.of("Plan of the drains, not a survey: {lines}.", lines=tuple(line.name for line in job.lines))


def _foot(drawn: Drawn) -> None:
    """A bar of 10 ft, and what full lines and dashes mean."""
    canvas, said = drawn.canvas, drawn.said
    top = canvas.height - FOOT
    bar = TICK_FT * drawn.scale
    canvas.line([(EDGE, top), (EDGE + bar, top)], INK, 2.0)
    canvas.text((EDGE + bar + 8, top), said(Say.of("10 ft. Front of the house at the bottom.")), 9.5, INK, anchor="lm")
    lines = (
        Say.of("Full line: between points taped to two walls. Dashes: direction or length not measured, not to scale."),
        Say.of("Square: taped. Circle: access point. Numbers on the pipe: camera footage from the line's zero."),
        Say.of("Drawn from a camera inspection. Not a survey: locate and pothole before you dig."),
    )
    for number, line in enumerate(lines):
        canvas.text((EDGE, top + 14 + 14 * number), said(line), 8.5, QUIET)
