"""Every reading of the findings, in one tuple that anyone can read."""

from estimator.diagnosis import camera, ground, iron, roots, standing_water, tested
from estimator.diagnosis.reading import Reading

READINGS: tuple[Reading, ...] = tuple(
    sorted(
        (
            *roots.READINGS,
            *standing_water.READINGS,
            *iron.READINGS,
            *ground.READINGS,
            *camera.READINGS,
            *tested.READINGS,
        ),
        key=lambda r: r.numbers or ("D99",),
    )
)
"""In the order of their numbers; those without a number last."""
