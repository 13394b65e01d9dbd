"""The takeoffs of one scope in; the same out, each foot of a line jetted once and each line filmed once after it."""

from collections.abc import Sequence

from estimator.model.frozen import replace
from estimator.model.job import Job
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch, missing
from estimator.model.tool_reach import passed
from estimator.model.work import Quantity, Takeoff


def cleaned_once(takeoffs: Sequence[Takeoff], job: Job) -> tuple[Takeoff, ...]:
    """Two short liners on one line are cleaned for and looked at in one go; the first takeoff of a line carries it."""
    done: dict[str, list[Stretch]] = {}
    out = []
    for takeoff in takeoffs:
        if not takeoff.value("clean_ft"):
            out.append(takeoff)
            continue
        line = takeoff.repair.line
        here = passed(Profile(job.line(line)), takeoff.repair.stretch)
        out.append(_less(takeoff, here, done[line]) if line in done else takeoff)
        done.setdefault(line, []).append(here)
    return tuple(out)


def _less(takeoff: Takeoff, here: Stretch, done: list[Stretch]) -> Takeoff:
    """What another repair of this line has cleaned and filmed already is struck."""
    left = sum(part.length_ft for part in missing(here, done))
    feet = replace(_named(takeoff, "clean_ft"), value=left, formula="what no other repair of this line cleans already")
    kept = (feet if q.name == "clean_ft" else q for q in takeoff.quantities if q.name != "films_before")
    return replace(takeoff, quantities=tuple(q for q in kept if q.value > 0))


def _named(takeoff: Takeoff, name: str) -> Quantity:
    return next(q for q in takeoff.quantities if q.name == name)
