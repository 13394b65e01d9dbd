"""Fixtures and a slope in; drainage fixture units and the least pipe size that carries them, out."""

from collections.abc import Sequence
from typing import Literal

Family = Literal["IPC", "UPC"]
LOOKED = "2026-11-25"
IPC_SOURCE = "IPC tables 709.1 and 710.1(1); 10 and 12 in partly from memory"
UPC_SOURCE = "UPC tables 702.1 and 703.2, an extract by a county (read); 8 in and rarer fixtures from memory"

UNITS: dict[str, float] = {
    "bathroom group": 5,
    "toilet": 3,
    "lavatory": 1,
    "tub": 2,
    "shower": 2,
    "kitchen sink": 2,
    "clothes washer": 2,
    "public toilet": 4,
    "urinal": 4,
    "dishwasher": 2,  # from memory
    "laundry tray": 2,  # from memory
    "floor drain": 2,  # from memory
    "old toilet": 4,  # over 1.6 gal a flush, from memory
    "old bathroom group": 6,  # over 1.6 gal a flush, from memory
}
"""Fixture units by IPC table 709.1, private use, 1.6 gal a flush (read where not marked)."""

UPC_UNITS: dict[str, float] = {
    **UNITS,
    "bathroom group": 6,
    "clothes washer": 3,
    "urinal": 2,
    "old bathroom group": 7,
}
"""Fixture units by UPC table 702.1, private use: from memory, but for sink, toilet, tub, shower, lavatory and washer (a county's
extract, read). The UPC counts the fixtures of a bathroom one by one: toilet 3, basin 1, tub 2.
"""
UNITS_BY_CODE: dict[Family, dict[str, float]] = {"IPC": UNITS, "UPC": UPC_UNITS}

TRAP_IN: dict[str, float] = {
    "toilet": 3,
    "lavatory": 1.25,
    "tub": 1.5,
    "shower": 2,
    "kitchen sink": 1.5,
    "clothes washer": 2,
}

OTHER_WORDS: dict[str, str] = {
    "bathroom groups": "bathroom group",
    "bathroom": "bathroom group",
    "full bath": "bathroom group",
    "water closet": "toilet",
    "wc": "toilet",
    "toilets": "toilet",
    "sink": "kitchen sink",
    "bath": "tub",
    "bathtub": "tub",
    "washer": "clothes washer",
    "laundry": "clothes washer",
    "washing machine": "clothes washer",
    "lavatories": "lavatory",
    "basin": "lavatory",
}

TOILETS: frozenset[str] = frozenset({"toilet", "old toilet", "public toilet", "bathroom group", "old bathroom group"})
FLOOR_DRAINED: frozenset[str] = TOILETS | {"tub", "shower", "floor drain"}
"""Fixtures that drain through the floor: no way round through a wall serves them without opening the floor."""

SLOPES_IN_PER_FT: tuple[float, ...] = (1 / 16, 1 / 8, 1 / 4, 1 / 2)
IPC_DRAIN: dict[float, tuple[int | None, ...]] = {
    1.25: (None, None, 1, 1),
    1.5: (None, None, 3, 3),
    2: (None, None, 21, 26),
    2.5: (None, None, 24, 31),
    3: (None, 36, 42, 50),
    4: (None, 180, 216, 250),
    5: (None, 390, 480, 575),
    6: (None, 700, 840, 1000),
    8: (1400, 1600, 1920, 2300),
    10: (2500, 2900, 3500, 4200),
    12: (3900, 4600, 5600, 6700),
}
"""Most fixture units on a building drain or sewer, by slope 1/16, 1/8, 1/4, 1/2 in/ft: IPC table 710.1(1) (read to 8 in).

A public copy prints 2500/2900/3900 beside 8 in: that is the 10 in row, misprinted, and is not used.
"""
UPC_HORIZONTAL: dict[float, int] = {1.5: 1, 2: 8, 2.5: 14, 3: 35, 4: 216, 5: 428, 6: 720, 8: 2640}
UPC_TOILETS_ON_3_IN_BRANCH = 3
LEAST_WITH_TOILET_IN = 3.0

SMALL_PIPE_IN = 2.5
"""Up to this bore the codes' slope tables ask for the steeper fall: IPC 704.1, IRC P3005.3."""

Fixtures = Sequence[tuple[str, int]]


def _plain(word: str) -> str:
    """A word of the notes in the table's form, whether the table has it or not."""
    plain = word.replace("_", " ").strip().lower()
    plain = OTHER_WORDS.get(plain, plain)
    return plain if plain in UNITS else OTHER_WORDS.get(plain.removesuffix("s"), plain.removesuffix("s"))


def is_fixture(word: str) -> bool:
    """
    >>> is_fixture("showers"), is_fixture("fish pond")
    (True, False)
    """
    return _plain(word) in UNITS


def fixture(word: str) -> str:
    """The word of the table for a word of the notes. Errors: KeyError for an unknown fixture.

    >>> fixture("bathroom_groups"), fixture("sink")
    ('bathroom group', 'kitchen sink')
    """
    plain = _plain(word)
    if plain not in UNITS:
        raise KeyError(word)
    return plain


def fixture_units(fixtures: Fixtures, family: Family = "IPC") -> float:
    """Return the sum of units by the table of that code; by the IPC a bathroom group is less than its fixtures one by one.

    >>> fixture_units([("bathroom group", 2), ("kitchen sink", 1), ("clothes washer", 1)])
    14
    >>> fixture_units([("lavatory", 1), ("toilet", 1), ("tub", 1)]), fixture_units([("bathroom group", 1)])
    (6, 5)
    >>> washer = [("clothes washer", 1)]
    >>> fixture_units(washer), fixture_units(washer, "UPC")
    (2, 3)
    """
    units = UNITS_BY_CODE[family]
    return sum(units[fixture(word)] * count for word, count in fixtures)


def toilets(fixtures: Fixtures) -> int:
    return sum(count for word, count in fixtures if fixture(word) in TOILETS)


def column(slope_in_per_ft: float) -> int:
    """The column of the table for a slope: the steepest one not steeper than the pipe. Errors: ValueError when flatter than all.

    >>> column(0.25), column(0.24), column(0.02 * 12)
    (2, 1, 1)
    """
    fits = [i for i, slope in enumerate(SLOPES_IN_PER_FT) if slope <= slope_in_per_ft + 1e-9]
    if not fits:
        raise ValueError(f"{slope_in_per_ft:g} in/ft is flatter than any column of the table")
    return fits[-1]


def drain_limit(size_in: float, slope_in_per_ft: float, family: Family = "IPC") -> int:
    """Most fixture units on a building drain of this size and slope; 0 where the size is not allowed at it.

    >>> drain_limit(3, 0.24), drain_limit(2, 0.125), drain_limit(4, 0.25), drain_limit(3, 0.25, "UPC")
    (36, 0, 216, 35)
    """
    if family == "UPC":
        return UPC_HORIZONTAL.get(size_in, 0)
    return IPC_DRAIN.get(size_in, (None,) * 4)[column(slope_in_per_ft)] or 0


def carries(size_in: float, fixtures: Fixtures, slope_in_per_ft: float, family: Family = "IPC") -> bool:
    """The size carries the units at this slope; 3 in at least with a toilet; few toilets on a 3 in branch by the UPC.

    >>> carries(2, [("kitchen sink", 1)], 0.25), carries(2, [("kitchen sink", 1)], 0.125), carries(2, [("toilet", 1)], 0.25)
    (True, False, False)
    """
    closets = toilets(fixtures)
    wide = size_in >= LEAST_WITH_TOILET_IN or not closets
    crowded = family == "UPC" and size_in == LEAST_WITH_TOILET_IN and closets > UPC_TOILETS_ON_3_IN_BRANCH
    return wide and not crowded and drain_limit(size_in, slope_in_per_ft, family) >= fixture_units(fixtures, family)


def least_size_in(fixtures: Fixtures, slope_in_per_ft: float, family: Family = "IPC") -> float:
    """The smallest size of the table that carries them at this slope.

    >>> least_size_in([("kitchen sink", 15)], 0.24), least_size_in([("toilet", 1)], 0.25), least_size_in([("toilet", 4)], 0.25, "UPC")
    (3, 3, 4)

    Errors: ValueError when no size carries them.
    """
    for size in IPC_DRAIN if family == "IPC" else UPC_HORIZONTAL:
        if carries(size, fixtures, slope_in_per_ft, family):
            return size
    raise ValueError(f"no size carries {fixture_units(fixtures, family):g} fixture units at {slope_in_per_ft:g} in/ft")
