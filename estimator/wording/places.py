"""Places in, the words a homeowner knows them by out: rooms with their article, what lies over the pipe, ways in, walls."""

import re
from dataclasses import replace

from estimator.model.problem import Place
from estimator.model.say import Say, Typed
from estimator.wording.say import say, spoken

THE_ROOMS: dict[str, Say] = {
    "kitchen": Say.of("the kitchen"),
    "hall": Say.of("the hall"),
    "hall bath": Say.of("the hall bath"),
    "master bath": Say.of("the master bath"),
    "bath": Say.of("the bathroom"),
    "bathroom": Say.of("the bathroom"),
    "laundry": Say.of("the laundry"),
    "garage": Say.of("the garage"),
    "bedroom": Say.of("the bedroom"),
    "closet": Say.of("the closet"),
    "living room": Say.of("the living room"),
    "dining room": Say.of("the dining room"),
    "den": Say.of("the den"),
    "entry": Say.of("the entry"),
    "pantry": Say.of("the pantry"),
    "utility room": Say.of("the utility room"),
}
"""The same after "under": with their article."""

OVER: dict[str, Say] = {
    "slab": Say.of("the house"),
    "yard": Say.of("the yard"),
    "drive": Say.of("the driveway"),
    "walk": Say.of("the walkway"),
    "street": Say.of("the street"),
}
"""What lies over the pipe in a zone; a crawl space and a basement are around it."""

PLACES: dict[str, Say] = {
    "cleanout": Say.of("the cleanout"),
    "two-way": Say.of("the two-way cleanout"),
    "two-way cleanout": Say.of("the two-way cleanout"),
    "front cleanout": Say.of("the front cleanout"),
    "back cleanout": Say.of("the back cleanout"),
    "side cleanout": Say.of("the side cleanout"),
    "yard cleanout": Say.of("the yard cleanout"),
    "house cleanout": Say.of("the house cleanout"),
    "kitchen wall cleanout": Say.of("the cleanout in the kitchen wall"),
    "front cleanout, with balls in both branches": Say.of("the front cleanout, with test balls in both branches"),
    "front cleanout, house side": Say.of("the front cleanout, house side"),
    "roof vent": Say.of("the roof vent"),
    "pulled toilet": Say.of("a pulled toilet"),
    "pulled hall toilet": Say.of("the pulled hall toilet"),
    "under slab": Say.of("the drains under the slab"),
    "under the slab": Say.of("the drains under the slab"),
    "whole system": Say.of("the whole system"),
    "whole house": Say.of("the whole house"),
    "hall bath branch": Say.of("the hall bath's drain"),
    "master bath branch": Say.of("the master bath's drain"),
    "slab top": Say.of("the top of the slab"),
    "house side": Say.of("house side"),
    "street side": Say.of("street side"),
    "closet bend": Say.of("the closet bend"),
    "slab edge": Say.of("the slab edge"),
    "edge beam": Say.of("the perimeter beam"),
    "master toilet": Say.of("the master bath's toilet"),
    "hall toilet": Say.of("the hall bath's toilet"),
    "city main": Say.of("the city sewer main"),
    "septic tank": Say.of("the septic tank"),
}
"""Where one gets in, what is tested, up to where: as typed in most notes; anything else stands as it was typed."""

WALLS: dict[str, Say] = {
    "front wall": Say.of("the front wall"),
    "back wall": Say.of("the back wall"),
    "side wall": Say.of("the side wall"),
    "left wall": Say.of("the left wall"),
    "right wall": Say.of("the right wall"),
    "north wall": Say.of("the north wall"),
    "south wall": Say.of("the south wall"),
    "east wall": Say.of("the east wall"),
    "west wall": Say.of("the west wall"),
    "hall wall": Say.of("the hall wall"),
    "garage wall": Say.of("the garage wall"),
}
"""Walls that people measure from, or run a pipe along."""


_ROW = re.compile(r"row (\d+)(.*)", re.DOTALL)


def placed(place: Place, language: str) -> str:
    """Where to look.

    >>> placed(Place("the job file", table="house", cell="soil"), "es_US"), placed(Place("main.txt", 3, 1), "es_US")
    ('el archivo del trabajo [house] soil', 'main.txt:3:1')
    >>> placed(Place(table="roles", cell="row 4, wage"), "es_US"), placed(Place(table="roles", cell="row 4"), "en_US")
    ('[roles] fila 4, wage', '[roles] row 4')
    """
    row = _ROW.fullmatch(place.cell)
    cell = say(Say.of("row {row}", row=Typed(row[1])), language) + row[2] if row else place.cell
    return str(replace(place, file=spoken(place.file, language), cell=cell))
