"""A pipe's outside in; the least trench width, bedding and layers of the published rules, out."""

LOOKED = "2026-11-25"
D2321_SOURCE = "ASTM D2321: the larger of outside + 16 in and 1.25 x outside + 12 in (read)"
D2321_ADDED_IN = 16.0
D2321_SHARE = 1.25
D2321_SHARE_ADDED_IN = 12.0
BEDDING_IN = 4.0  # ASTM D2321 (read second-hand)
BEDDING_OVER_ROCK_IN = 6.0  # ASTM D2321 (read second-hand)
LAYER_IN = 6.0  # IPC 306.3: tamped layers of 6 in to 12 in over the pipe (read)
LAYERS_TO_OVER_PIPE_IN = 12.0


def d2321_width_in(outside_in: float) -> float:
    """The standard's least width for plastic pipe in a trench, inches; the two rules meet at 16 in.

    >>> d2321_width_in(4.5), d2321_width_in(16.0), d2321_width_in(20.0)
    (20.5, 32.0, 37.0)
    """
    return max(outside_in + D2321_ADDED_IN, D2321_SHARE * outside_in + D2321_SHARE_ADDED_IN)


def bedding_in(over_rock: bool) -> float:
    """
    >>> bedding_in(False), bedding_in(True)
    (4.0, 6.0)
    """
    return BEDDING_OVER_ROCK_IN if over_rock else BEDDING_IN
