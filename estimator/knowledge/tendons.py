"""A house's floor, year and proof in; whether its slab may hold steel tendons, out. Doubt counts as yes."""

from estimator.knowledge.houses import TENDONS_SINCE
from estimator.model.job import SLAB_FLOORS, House


def may_have_tendons(house: House, since: int | None = None) -> bool:
    """It has them; or nobody proved that it has none and it was built since the place's year, or nobody knows when.

    `since` is the place's year, the usual one where it gave none. A missing stamp proves nothing: proof is the key `tendons`
    of the house ("none, engineer's drawing"). Leave to cut at one place is no proof for the rest of the slab.

    >>> may_have_tendons(House(floor="slab", jurisdiction="", built=1965)), may_have_tendons(House(floor="slab", jurisdiction="", built=1964))
    (True, False)
    >>> may_have_tendons(House(floor="slab", jurisdiction="", built=1990, tendons="none, engineer's drawing"))
    False
    """
    if house.floor == "post-tensioned slab" or house.tendons.lower().startswith("yes"):
        return True
    if house.floor not in SLAB_FLOORS or proven_none(house):
        return False
    return house.built is None or house.built >= (TENDONS_SINCE if since is None else since)


def proven_none(house: House) -> bool:
    """Somebody wrote down what proves that there are none."""
    return house.tendons.lower().startswith("none")
