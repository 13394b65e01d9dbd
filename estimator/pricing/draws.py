"""A seed and a list of uncertain things in; thousands of draws of each, common causes moving together, out."""

import random
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from estimator.pricing.three_points import ThreePoints


@dataclass(frozen=True, slots=True)
class Uncertain:
    """Something that may turn out otherwise: its name, low/likely/high, and the cause it shares with others ("" for none)."""

    name: str
    points: ThreePoints
    cause: str = ""


def draw(things: Sequence[Uncertain], seed: int, count: int, common_share: float) -> tuple[tuple[float, ...], ...]:
    """`count` values of each thing. In a draw each thing takes its cause's luck with probability `common_share`, else its own.

    Every thing keeps exactly its own triangle; two of one cause agree in common_share² of the draws.
    Only random.Random(seed).random() is used, which Python promises to keep.
    """
    chance = random.Random(seed).random
    causes = {cause: [chance() for _ in range(count)] for cause in dict.fromkeys(t.cause for t in things) if cause}
    return tuple(tuple(_values(thing, causes.get(thing.cause), chance, count, common_share)) for thing in things)


def _values(
    thing: Uncertain, cause: list[float] | None, chance: Callable[[], float], count: int, common_share: float
) -> list[float]:
    if cause is None:
        return thing.points.at_all([chance() for _ in range(count)])
    return thing.points.at_all([luck if chance() < common_share else chance() for luck in cause])


def come_or_not(chances: Mapping[str, float], seed: int, count: int) -> dict[str, tuple[float, ...]]:
    """Whether each event comes, 1 or 0, in each of `count` draws: each by itself, by its chance from 0 to 1.

    >>> come_or_not({"never": 0, "always": 1}, seed=1, count=2)
    {'never': (0.0, 0.0), 'always': (1.0, 1.0)}
    """
    chance = random.Random(~seed).random
    return {name: tuple(float(chance() < share) for _ in range(count)) for name, share in chances.items()}


def percentile(ordered: Sequence[float], percent: float) -> float:
    """The value below which this percent of the sorted values lie, between neighbours in proportion.

    >>> percentile([0.0, 10.0, 20.0], 50), percentile([0.0, 10.0, 20.0], 75)
    (10.0, 15.0)
    """
    place = (len(ordered) - 1) * percent / 100
    below = int(place)
    above = min(below + 1, len(ordered) - 1)
    return ordered[below] + (ordered[above] - ordered[below]) * (place - below)
