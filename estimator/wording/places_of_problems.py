"""The place of a problem in, the same in the reader's language out; names of files, tables and columns stay as they are."""

import re
from dataclasses import replace

from estimator.model.problem import Place
from estimator.model.say import Say, Typed
from estimator.wording.say import say, spoken

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
