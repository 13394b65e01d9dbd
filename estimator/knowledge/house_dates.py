"""Years that matter in an old house: published, with source."""

LEAD_PAINT_BEFORE = 1978  # 40 CFR 745.83 (read): housing built before 1978
ASBESTOS_FLOOR_THROUGH = 1980  # 29 CFR 1926.1101(b), presumed in resilient floor to 1980: from memory
TENDONS_SINCE = 1965  # house slabs with tendons were in use in the 1960s: a contractor page and a trade magazine, read
LOOKED = "2026-11-25"
