"""Old iron: a groove along most of it, heavy scale that hides, scale that was the pipe (D06, D07, D08).

Common practice: a groove along the bottom of old cast iron means the bottom is going.
"""

from collections.abc import Iterable

from estimator.diagnosis.case import Case, Run
from estimator.diagnosis.reading import Hit, Reading, each
from estimator.model.line import Finding
from estimator.model.say import Say
from estimator.model.stretch import joined


def grooved_percent(case: Case, run: Run) -> float:
    """Share of a run whose bottom is grooved, percent of its length."""
    parts = [part for f in case.of("channel") if (part := f.stretch.common(run.stretch)) is not None]
    length_ft = run.stretch.length_ft
    return 100.0 * sum(part.length_ft for part in joined(parts)) / length_ft if length_ft else 0.0


def mostly_grooved(case: Case, run: Run) -> bool:
    return run.family == "iron" and grooved_percent(case, run) >= case.number("groove_whole_line_percent")


def wall_is_going(case: Case) -> Iterable[Hit]:
    for run in case.runs:
        if mostly_grooved(case, run):
            yield Hit(run.stretch, case.of("channel"), (("share", f"{grooved_percent(case, run):.0f}"),))


def heavy_scale(case: Case) -> tuple[Finding, ...]:
    """Scale thick enough to hide what is under it, not yet cleaned."""
    least = case.number("scale_hides_percent")
    return tuple(
        f for f in case.of("scale") if not f.after_cleaning and (f.share_percent(case.bore_in(f)) or 0.0) >= least
    )


def opened_by_cleaning(case: Case) -> Iterable[Hit]:
    opened = [f for f in case.of("hole", "channel") if f.after_cleaning and f.history]
    return each(f for f in opened if case.family_at(f) == "iron")


READINGS = (
    Reading(
        id="grooved-most-of-the-way",
        numbers=("D06",),
        evidence="iron with a groove along half of the run or more",
        effect="renewal of the whole run, not spots",
        meaning=Say.of(
            "The bottom is grooved along {share}% of this iron run: its wall is going along the whole of it."
        ),
        confirm=Say.of("Descale one test length and film it again."),
        sees=wall_is_going,
        reads=("groove_whole_line_percent",),
    ),
    Reading(
        id="scale-hides",
        numbers=("D07",),
        evidence="heavy scale, not cleaned",
        effect="whatever was not seen under it is suspected only",
        meaning=Say.of("Heavy scale can hide channeling, cracks and branches."),
        confirm=Say.of("Descale and inspect again."),
        asks=True,
        sees=lambda case: each(heavy_scale(case)),
        reads=("scale_hides_percent",),
    ),
    Reading(
        id="scale-was-the-pipe",
        numbers=("D08",),
        evidence="descaling opened or enlarged a hole",
        effect="warned of in writing before; a stop-gap price stands ready",
        meaning=Say.of("Cleaning opened the pipe there: the scale was what held it. Cleaning did not make the hole."),
        sees=opened_by_cleaning,
    ),
)
