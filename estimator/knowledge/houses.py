"""What is published of old houses, mostly by their year: paint, asbestos, tendons, the beams under a slab."""

LOOKED = "2026-11-25"  # the beams: 2026-11-26

LEAD_PAINT_BEFORE = 1978
"""40 CFR 745.83 (read): housing built before 1978 may have lead paint."""
INSIDE_ROOM_OVER_SQFT = 6.0
"""Paint disturbed in a room above which the rule applies; any demolition of painted parts counts as well (40 CFR 745.83,
definition of minor repair and maintenance)."""
ASBESTOS_FLOOR_THROUGH = 1980
"""29 CFR 1926.1101(b), presumed in resilient floor to 1980: from memory."""
TENDONS_SINCE = 1965
"""House slabs with tendons were in use in the 1960s: a contractor page and a trade magazine, read."""
INNER_BEAM_EVERY_FT = 15.0
"""A regional contractor's page on slab types (read): 1950s slabs have none, later ones a beam about every 15 ft. The drawing
or a look at the slab decides."""
