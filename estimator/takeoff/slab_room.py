"""Openings in the floor in; floor covering for others to put back, dust walls, air scrubber days, out."""

from estimator.knowledge.silica import SOURCE, Tool, protection_factor
from estimator.takeoff.case import Case
from estimator.takeoff.slab_concrete import Openings, in_words
from estimator.takeoff.working import up

FLOOR_TOOLS: tuple[Tool, ...] = ("walk-behind saw", "handheld saw", "breaker")


def floor_and_dust(case: Case, openings: Openings) -> None:
    """The least floor to match is the cut and a foot all round; matching whole rooms is an allowance of the owner's."""
    paper, margin = case.paper, case.number("floor_margin_ft")
    paper.put(
        "floor_sf",
        sum((length + 2 * margin) * (wide + 2 * margin) for length, wide in openings),
        "(length + margins) x (width + margins): the least; matching the whole room is an allowance",
        ("openings", in_words(openings)),
        ("margin", margin, "ft"),
    )
    rooms = max(1, len(case.profile.rooms(case.stretch)))
    paper.put(
        "rooms_opened", rooms, "rooms whose floor is opened: matching all of it is an allowance", ("rooms", rooms)
    )
    wall = case.number("dust_wall_per_room_ft")
    paper.put("dust_wall_lf", rooms * wall, "rooms x wall for one", ("rooms", rooms), ("one room", wall, "ft"))
    length = sum(length for length, _ in openings)
    a_day = case.number("slab_open_ft_per_day")
    days = paper.put(
        "negative_air_days",
        up(length / a_day) + 1,
        "length / ft a day, up, + 1 for pouring back",
        ("length", length, "ft"),
        ("ft a day", a_day, "ft"),
    )
    _path_and_masks(case, rooms)
    paper.assume("the floor is left as bare concrete")
    if days > 1:
        paper.assume("we pour the concrete patch on a separate day")


def _path_and_masks(case: Case, rooms: int) -> None:
    """A covered way through the house, and a mask for each person at saw and breaker."""
    paper, path = case.paper, case.number("floor_path_per_room_ft")
    paper.put(
        "floor_path_ft",
        rooms * path,
        "covered path from the door, rooms x ft",
        ("rooms", rooms),
        ("one room", path, "ft"),
    )
    masks = max(protection_factor(tool, enclosed=True, hours=1) for tool in FLOOR_TOOLS)
    people = case.number("floor_crew_people")
    paper.put(
        "respirators",
        people if masks else 0,
        "one a person: the table's protection factor indoors",
        ("people", people),
        ("protection factor", masks),
        source=SOURCE,
    )
