"""The made-up house of the example quote: one line under a slab, what the camera found, what it did not see."""

from estimator.model.line import Finding, Line, Mark, Pass
from estimator.model.stretch import Stretch

HOLE = Finding(id="hole", kind="hole", stretch=Stretch(14.4, 14.7), size_in=2.0, clock=(5, 7), signs=("soil seen",))
GROOVE = Finding(id="groove", kind="channel", stretch=Stretch(8.0, 21.0), signs=("gone",))
DIP = Finding(id="dip", kind="sag", stretch=Stretch(22.0, 26.0), percent=(45.0, 50.0))
ROOTS = Finding(id="roots", kind="roots", stretch=Stretch(33.0, 33.5), percent=(30.0, 40.0), grade="suspected")


def example_line() -> Line:
    """A main under a slab: filmed to 36 ft, the last five feet not seen."""
    marks = (
        Mark(word="yard", stretch=Stretch(-6.0, -6.0), holds=True),
        Mark(word="slab", stretch=Stretch(0.0, 0.0), holds=True),
        Mark(word="room", stretch=Stretch(0.0, 0.0), name="kitchen", holds=True),
        Mark(word="room", stretch=Stretch(20.0, 20.0), name="hall", holds=True),
        Mark(word="depth", stretch=Stretch(-6.0, -6.0), depth_ft=2.9, surface="lawn"),
        Mark(word="depth", stretch=Stretch(14.5, 14.5), depth_ft=2.6, surface="slab"),
        Mark(word="depth", stretch=Stretch(33.0, 33.0), depth_ft=2.3, surface="slab"),
        Mark(
            word="branch",
            stretch=Stretch(11.5, 11.5),
            size_in=3.0,
            side="left",
            live="live",
            proven=True,
            name="hall bath",
        ),
        Mark(word="branch", stretch=Stretch(29.0, 29.0), size_in=2.0, live="live", proven=False),
    )
    seen = Pass(number=1, access="front cleanout", heading_to="house", flow="against flow", riser_ft=2.0, start_ft=-6.0, sign=1,
                seen=Stretch(-6.0, 36.0), stopped_because="blocked")  # fmt: skip
    return Line(name="main", size_in=4.0, pipe="cast iron", marks=marks, findings=(GROOVE, HOLE, DIP, ROOTS), passes=(seen,),
                zero="slab edge", downstream=-1, length_ft=47.0, ends="closet bend")  # fmt: skip
