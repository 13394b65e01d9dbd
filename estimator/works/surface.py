"""Stations of a line in; the zones over them and what grows or lies there, out."""

from estimator.model.opening import Span
from estimator.model.stretch import Stretch
from estimator.works.case import Case, surface_word


def surface(case: Case, at_ft: float) -> tuple[str, str]:
    """Zone and what lies on it at a station: ("yard", "lawn") where the notes say yard and nothing more."""
    answer = case.profile.zone(at_ft)
    zone = answer.value or "yard"
    mark = answer.marks[0] if answer.marks else None
    word = surface_word(mark.choice, mark.surface) if mark else ""
    return zone, word or ("lawn" if zone == "yard" else "")


def spans(case: Case, stretch: Stretch) -> tuple[Span, ...]:
    """The stretch cut where the zone changes, each part with its surface; a point has the zone it lies in."""
    if stretch.length_ft <= 0:
        return (Span(stretch, *surface(case, stretch.from_ft)),)
    parts = case.profile.zones(stretch)
    return tuple(Span(part, zone or "yard", surface(case, part.middle_ft)[1]) for part, zone in parts)
