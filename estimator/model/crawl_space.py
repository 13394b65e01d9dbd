"""Marks of a crawl space and the house in; how high and how wet it is, out. What a log notes there comes before the house's word."""

from collections.abc import Iterable

from estimator.model.job import House
from estimator.model.line import Mark

WORDS = ("crawl", "crawl space")


def height_ft(marks: Iterable[Mark], house: House) -> float | None:
    """The lowest height from soil to joists, ft; None where nobody measured it.

    >>> height_ft((), House(floor="crawl space", jurisdiction="", crawl_height_ft=1.5))
    1.5
    """
    noted = [height for mark in marks if (height := mark.length() or mark.depth_ft) is not None]
    return min(noted, default=house.crawl_height_ft)


def is_muddy(marks: Iterable[Mark], house: House) -> bool:
    """Wet or muddy, as somebody said."""
    return bool(house.crawl_mud) or any(
        "mud" in (mark.choice or "", mark.flag or "", *mark.signs) or "mud" in mark.note for mark in marks
    )
