"""A pump that pushes the sewage out in; what no camera and no water test tells, out."""

from collections.abc import Iterable

from estimator.diagnosis.case import Case
from estimator.diagnosis.reading import Hit, Reading
from estimator.model.pump import pumped
from estimator.model.say import Say


def _of_the_house(case: Case) -> Iterable[Hit]:
    return (Hit(None),) if pumped(case.job) else ()


READINGS = (
    Reading(
        id="pumped-under-pressure",
        numbers=(),
        evidence="a pump, an ejector pit or a force main",
        effect="no camera and no water test tells about the pressure pipe; nothing on it has a fixed price",
        meaning=Say.of(
            "A pump pushes the sewage out through a force main: it is under pressure, it has no fall, and no drain camera or water test speaks for it."
        ),
        confirm=Say.of(
            "Look at the pump, its check valve and the pit first. Then test the force main with pressure and find where it runs."
        ),
        asks=True,
        sees=_of_the_house,
    ),
)
