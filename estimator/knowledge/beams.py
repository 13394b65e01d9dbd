"""Beams under a house slab: how far apart they are known to lie. Regional; the drawing or a look at the slab decides."""

INNER_BEAM_EVERY_FT = 15.0
SOURCE = "a regional contractor's page on slab types (read): 1950s slabs have none, later ones a beam about every 15 ft"
LOOKED = "2026-11-26"
