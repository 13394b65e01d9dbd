"""A seed and a list of uncertain things (low, likely, high) in; thousands of draws of each, common causes moving together, out."""

import random
from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from estimator.model.frozen import Frozen

Column = NDArray[np.float64]
"""One value a draw."""


class ThreePoints(Frozen):
    """low ≤ likely ≤ high of anything."""

    low: float
    likely: float
    high: float

    def at(self, share: float) -> float:
        """The value below which this share (0 to 1) of the triangle lies.

        >>> ThreePoints(0, 1, 2).at(0.5), ThreePoints(3, 3, 3).at(0.9)
        (1.0, 3.0)
        """
        return float(self.at_all(np.array([share]))[0])

    def at_all(self, shares: Column) -> Column:
        """The same for many shares at once.

        >>> ThreePoints(0, 1, 2).at_all(np.array([0.0, 0.5, 1.0])).tolist()
        [0.0, 1.0, 2.0]
        """
        low, high, width = self.low, self.high, self.high - self.low
        if width <= 0:
            return np.full(len(shares), float(self.likely))
        below, above = self.likely - low, high - self.likely
        rises, falls = low + np.sqrt(shares * width * below), high - np.sqrt((1 - shares) * width * above)
        return np.where(shares < below / width, rises, falls)


class Uncertain(Frozen):
    """Something that may turn out otherwise: its name, low/likely/high, and the cause it shares with others ("" for none)."""

    name: str
    points: ThreePoints
    cause: str = ""


def draw(things: Sequence[Uncertain], seed: int, count: int, common_share: float) -> tuple[Column, ...]:
    """`count` values of each thing. In a draw each thing takes its cause's luck with probability `common_share`, else its own.

    Every thing keeps exactly its own triangle; two of one cause agree in common_share² of the draws.
    """
    named = [cause for cause in dict.fromkeys(t.cause for t in things) if cause]
    luck = _luck(seed, count * (len(named) + 2 * len(things)))
    causes = {cause: luck[n * count : (n + 1) * count] for n, cause in enumerate(named)}
    luck, out = luck[len(named) * count :], []
    for thing in things:
        own, used = (luck[:count], count) if not thing.cause else _shared(luck, causes[thing.cause], common_share)
        out.append(thing.points.at_all(own))
        luck = luck[used:]
    return tuple(out)


def _shared(luck: Column, cause: Column, common_share: float) -> tuple[Column, int]:
    """For each draw one number says whether it takes its cause's luck; where not, the number after it is its own. And how many
    numbers that took.

    Whatever stands after a number that says yes begins a draw; from there on, where none says yes, every second one does.
    """
    luck = luck[: 2 * len(cause)]
    common, place = luck < common_share, np.arange(len(luck))
    after_common = np.concatenate(([0], np.maximum.accumulate(np.where(common, place + 1, 0))[:-1]))
    begins = place[(place - after_common) % 2 == 0][: len(cause)]
    takes = common[begins]
    own = luck[np.minimum(begins + 1, len(luck) - 1)]
    return np.where(takes, cause, own), int(begins[-1]) + (1 if takes[-1] else 2)


def come_or_not(chances: Mapping[str, float], seed: int, count: int) -> dict[str, Column]:
    """Whether each event comes, 1 or 0, in each of `count` draws: each by itself, by its chance from 0 to 1.

    >>> {name: came.tolist() for name, came in come_or_not({"never": 0, "always": 1}, seed=1, count=2).items()}
    {'never': [0.0, 0.0], 'always': [1.0, 1.0]}
    """
    rows = _luck(~seed, len(chances) * count).reshape(len(chances), count)
    return {name: (row < share).astype(float) for (name, share), row in zip(chances.items(), rows, strict=True)}


def _luck(seed: int, count: int) -> Column:
    """The first numbers of random.Random(seed).random(), which Python promises to keep, all at once.

    >>> dice = random.Random(5)
    >>> _luck(5, 3).tolist() == [dice.random(), dice.random(), dice.random()]
    True
    """
    *words, place = random.Random(seed).getstate()[1]
    dice = np.random.RandomState()
    dice.set_state({"bit_generator": "MT19937", "state": {"key": np.array(words, dtype=np.uint32), "pos": place}})
    return dice.random_sample(count)


def percentile(ordered: Sequence[float], percent: float) -> float:
    """The value below which this percent of the sorted values lie, between neighbours in proportion.

    >>> percentile([0.0, 10.0, 20.0], 50), percentile([0.0, 10.0, 20.0], 75)
    (10.0, 15.0)
    """
    place = (len(ordered) - 1) * percent / 100
    below = int(place)
    above = min(below + 1, len(ordered) - 1)
    return ordered[below] + (ordered[above] - ordered[below]) * (place - below)
