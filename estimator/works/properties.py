"""What works may be, each property by its name: rules, recipes, factors and terms ask it of any way, whatever the way is called."""

from collections.abc import Callable

from estimator.model.frozen import Frozen
from estimator.model.works import Works


class Property(Frozen):
    """What it means in words, and how it is asked of works."""

    words: str
    holds: Callable[[Works], bool]


def _house_cut(it: Works) -> bool:
    return it.cuts_floor or any(o.kind == "hole through" for o in it.openings)


def _under_house(it: Works) -> bool:
    return it.in_crawl_space or bool(it.tunnels)


PROPERTIES: dict[str, Property] = {
    "dug": Property("soil is dug", lambda it: bool(it.digs)),
    "people_below": Property(
        "people work in a dig, a pit, a tunnel or an opening in a floor", lambda it: bool(it.with_people)
    ),
    "ground_opened": Property("the ground is opened outside", lambda it: bool(it.open_digs)),
    "floor_cut": Property("a floor is opened", lambda it: it.cuts_floor),
    "below_floor": Property("the ground under a floor is dug, from above or in a tunnel", lambda it: it.below_floor),
    "house_cut": Property("a floor, a wall or the roof is opened", _house_cut),
    "under_house": Property("people work in a tunnel or a crawl space", _under_house),
    "in_or_under_house": Property(
        "a floor, a wall or the roof is opened, or people work in a tunnel or a crawl space",
        lambda it: _house_cut(it) or _under_house(it),
    ),
    "tunnel": Property("people work in a tunnel", lambda it: bool(it.tunnels)),
    "crawl_space": Property("people work in a crawl space", lambda it: it.in_crawl_space),
    "pipe_laid": Property("new pipe is laid or pulled", lambda it: bool(it.new_pipe)),
    "pipe_cut": Property(
        "old pipe is cut, to lay new pipe or to close it off", lambda it: bool(it.new_pipe) or it.closes
    ),
    "pipe_renewed": Property(
        "new pipe is laid or pulled, or old pipe is lined", lambda it: bool(it.new_pipe or it.lined)
    ),
    "lining": Property("old pipe is lined", lambda it: bool(it.lined)),
    "cleaning": Property("the pipe is cleaned, by itself or for a lining", lambda it: bool(it.cleans)),
    "bursting": Property("old pipe is broken in place", lambda it: bool(it.burst)),
    "from_inside": Property(
        "tools work inside the pipe: it is cleaned, lined or broken in place",
        lambda it: bool(it.cleans or it.lined or it.burst),
    ),
    "sections_tested": Property("old pipe is tested section by section", lambda it: bool(it.tested)),
}


def properties_of(works: Works) -> frozenset[str]:
    """Return the names of what these works are: what is opened, dug, cut, laid, lined, broken and cleaned."""
    return frozenset(name for name, one in PROPERTIES.items() if one.holds(works))
