"""New pipe's size, length and fall in; what is spare against the code of the place, and the sentences that say so, out."""

from collections.abc import Iterable

from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.say import Inches, Say
from estimator.tables.tables import Tables
from estimator.works.grade import least_fall_in_per_ft

EVEN_IN = 0.05
"""A fall so near to the least is enough: no level reads it closer (judgment)."""


class Fall(Frozen):
    """A run of new pipe: how far it falls from end to end, and the least a foot that the code asks for."""

    size_in: float
    length_ft: float
    fall_in: float
    least_in_per_ft: float

    @property
    def spare_in(self) -> float:
        """Inches of fall beyond the least; below 0 so many are missing. Equal is enough."""
        spare = self.fall_in - self.least_in_per_ft * self.length_ft
        return 0.0 if abs(spare) < EVEN_IN else spare

    def lines(self) -> Iterable[Say]:
        """Say the pipe, its slope and what is spare or missing."""
        slope, least = Inches(round(self.fall_in / self.length_ft, 3)), Inches(self.least_in_per_ft)
        yield Say.of("{size} pipe, slope {slope} per foot with the flow.", size=Inches(self.size_in), slope=slope)
        if self.spare_in < 0:
            short = Inches(round(-self.spare_in, 1))
            yield Say.of(
                "SHORT by {short} of drop against the code's minimum of {least} per foot.", short=short, least=least
            )
        else:
            yield Say.of(
                "Spare drop: {spare} over the run. Code minimum: {least} per foot.",
                spare=Inches(round(self.spare_in, 1)),
                least=least,
            )


def fall_of(size_in: float, length_ft: float, fall_in: float, job: Job, tables: Tables) -> Fall:
    """Return it with the least fall of the house's place; the stricter default where nobody asked."""
    place = tables.known_place(job.house.jurisdiction)
    return Fall(size_in, length_ft, fall_in, least_fall_in_per_ft(place, size_in, tables.number))
