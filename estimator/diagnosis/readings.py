"""Every reading of the findings, in one tuple that anyone can read."""

from estimator.diagnosis import camera, force_main, ground, iron, roots, standing_water, symptoms, water_test_readings
from estimator.diagnosis.reading import Reading
from estimator.model.gas import GAS_SMELL

READINGS: tuple[Reading, ...] = tuple(
    sorted(
        (
            *roots.READINGS,
            *standing_water.READINGS,
            *iron.READINGS,
            *ground.READINGS,
            *camera.READINGS,
            *force_main.READINGS,
            *water_test_readings.READINGS,
            *symptoms.READINGS,
        ),
        key=lambda r: (r.id != GAS_SMELL, r.numbers or ("D99",)),
    )
)
"""Gas before everything; then in the order of their numbers; those without a number last."""
