"""How far two readings of the same thing may lie apart before reading says so.

These are tolerances of *reading the notes*, not of the work: nothing is dug, priced or ruled by them. Each is common
practice with a camera reel and a locator, and can be given to `read_job` in a Limits of one's own.
"""

from estimator.model.frozen import Frozen

MOST_BARE_RISER_FT = 6.0
"""A riser longer than this is asked for its unit: 28 without one is inches more often than feet (common practice)."""
DEEP_FT = 25.0
"""A house drain deeper than this is asked about; few lie below 12 ft (common practice)."""
MAIN_DEPTH_FT = 30.0
"""A city main may lie this deep (common practice); a log line that says more is asked back."""
MOST_DEPTH_FT = 60.0
"""No house drain is dug for at twice the depth of a deep city main."""
FARTHEST_LEAP_FT = 150.0
"""A reading this far past all before it is doubted: push cables are mostly 100 to 325 ft (common practice)."""
THICK_SLAB_FT = 1.5
"""No floor slab of a house is thicker than this: 4 to 6 in is common practice, beams are written as beams."""


class Limits(Frozen):
    """Reading tolerances, ft and inches."""

    same_place_ft: float = 1.0
    """Two sights of one kind no farther apart than this, in two passes, are one finding."""
    passes_disagree_ft: float = 3.0
    """Passes that put one thing farther apart than this are an error: riser or zero is wrong."""
    zero_slip_ft: float = 3.0
    """A reel zero that slipped more than this between passes is an error, not a slip."""
    depth_differs_ft: float = 0.5
    """Two depths at one station may differ by this much: what a locator is good for at best."""
    same_station_ft: float = 0.1
    """Readings closer than this are one station."""
    beyond_the_end_ft: float = 3.0
    """A repair asked for by hand may reach this far past what was seen: a reel and a tape agree no better."""
    bore_differs_in: float = 0.25
    """A bore that gets smaller downstream by more than this is asked about."""


LIMITS = Limits()
