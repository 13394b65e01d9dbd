"""When old paint counts as disturbed under the federal lead-safe renovation rule."""

SOURCE = "40 CFR 745.83, definition of minor repair and maintenance"
LOOKED = "2026-11-25"

BUILT_BEFORE = 1978
INSIDE_ROOM_OVER_SQFT = 6.0  # a room; any demolition of painted parts counts as well
