"""A job's number in, the seed of what is drawn by chance on it out: the same job draws the same, two jobs draw apart."""

from zlib import crc32


def seed_of(number: str) -> int:
    """The seed that is written on the record of a revision.

    >>> seed_of("2026-131")
    3208534261
    """
    return crc32(number.encode("utf-8", "backslashreplace"))
