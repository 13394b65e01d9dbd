"""Weights by (repair, work item) put together, so that a cost line can be laid on who asked for it."""

from collections.abc import Iterable

Owner = tuple[str, str]
Shares = tuple[tuple[str, str, float], ...]


def shares(weights: Iterable[tuple[Owner, float]]) -> Shares:
    """Add up the weights of each owner; where all are nothing, everyone carries alike.

    >>> shares([(("main", "dig"), 1.0), (("main", "dig"), 2.0)])
    (('main', 'dig', 3.0),)
    >>> shares([(("main", "dig"), 0.0)])
    (('main', 'dig', 1.0),)
    """
    total: dict[Owner, float] = {}
    for owner, weight in weights:
        total[owner] = total.get(owner, 0.0) + weight
    level = 0.0 if max(total.values(), default=1.0) > 0 else 1.0
    return tuple([(repair, item, w + level) for (repair, item), w in total.items()])
