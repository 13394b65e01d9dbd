"""A job file's text and one change come in; the same text with that change, comments and order kept, goes out."""

from collections.abc import MutableMapping, MutableSequence
from datetime import date
from typing import Any

from estimator.fieldnotes.kinds import error
from estimator.model.problem import CannotGoOn, Place

NO_PLACE_FOR_KEY = error(
    "job/no-place-for-key", "there is no place for {key} in this file.", "Add its table by hand, then try again."
)
PROBLEMS = (NO_PLACE_FOR_KEY,)

Value = str | int | float | bool | date | list[str]


def set_value(text: str, key: str, value: Value, file: str = "job.toml") -> str:
    """The text with `key` (dotted; a number counts in a list from 0) set to `value`. A missing table is made.

    Errors: CannotGoOn when the text is no TOML or the key leads through something that is no table.

    >>> print(set_value('[wishes]  # hers\\nasked = "clean only"\\n', "wishes.recommend", "B"), end="")
    [wishes]  # hers
    asked = "clean only"
    recommend = "B"
    """
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    try:
        document: Any = tomlkit.parse(text)
    except TOMLKitError as problem:
        raise CannotGoOn(NO_PLACE_FOR_KEY(Place(file), key=key)) from problem
    *way, last = key.split(".")
    here: Any = document
    for number, step in enumerate(way):
        here = _step(here, step, way[number + 1 : number + 2] or [last], Place(file), key)
    if isinstance(here, MutableSequence) and last.isdigit() and int(last) < len(here):
        here[int(last)] = value
    elif isinstance(here, MutableMapping):
        here[last] = value
    else:
        raise CannotGoOn(NO_PLACE_FOR_KEY(Place(file), key=key))
    return tomlkit.dumps(document)


def _step(here: Any, step: str, after: list[str], place: Place, key: str) -> Any:
    import tomlkit

    if isinstance(here, MutableMapping):
        if step not in here:
            here[step] = tomlkit.aot() if after[0].isdigit() else tomlkit.table()
        return here[step]
    if isinstance(here, MutableSequence) and step.isdigit() and int(step) <= len(here):
        if int(step) == len(here):
            here.append(tomlkit.table())
        return here[int(step)]
    raise CannotGoOn(NO_PLACE_FOR_KEY(place, key=key))
