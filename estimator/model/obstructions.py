"""A line's marks in; its side drains and the beams over it, each with what was written of it, out."""

from collections.abc import Iterable, Mapping

from estimator.model.answers import Beam, Branch
from estimator.model.line import Mark
from estimator.model.stretch import Stretch

TURNED: Mapping[str, str] = {"left": "right", "right": "left"}


def branches(marks: Iterable[Mark], flows: Mapping[int, str]) -> tuple[Branch, ...]:
    """Side drains, each on the side one sees it looking with the flow; `flows` is how each pass went, by its number."""
    return tuple(
        Branch(
            station_ft=m.stretch.from_ft,
            size_in=m.size_in or 0.0,
            side=_with_flow(m, flows),
            live=m.live,
            proven=m.proven,
            name=m.name,
            away_ft=m.length("away") or 0.0,
            out_of_reach=m.out_of_reach,
            mark=m,
        )
        for m in marks
    )


def _with_flow(mark: Mark, flows: Mapping[int, str]) -> str | None:
    """The side as one looks with the flow; the log gives it as the camera looked."""
    turned = TURNED if flows.get(mark.origin.pass_number) == "against flow" else {}
    return turned.get(mark.side or "", mark.side)


def beams(marks: Iterable[Mark]) -> tuple[Beam, ...]:
    """Beams, each as long along the pipe as it was noted, else as wide as it is."""
    out = []
    for m in marks:
        wide, deep = m.length("wide"), m.length("deep")
        ends = m.stretch if m.stretch.length_ft else Stretch(m.stretch.from_ft, m.stretch.from_ft + (wide or 0.0))
        out.append(Beam(ends, deep or 0.0, m.through, m))
    return tuple(out)
