"""The text of a job file and answers in, the same text with them in it out; comments and order are kept."""

import tomllib
from collections.abc import Mapping, MutableMapping, MutableSequence
from typing import Any

from estimator.fieldnotes.checkform import NO_PLACE_FOR_KEY
from estimator.model.problem import CannotGoOn, Place

Path = tuple[str | int, ...]


def with_values(text: str, table: Path, values: Mapping[str, Any], file: str = "job.toml") -> str:
    """The table (made where it is missing) with the values set; None takes a key out.

    Errors: CannotGoOn where the file is written in a way that has no place for them; the text is then left as it was.

    >>> print(with_values('[house] # hers\\nbuilt = 1962\\n', ("house",), {"soil": "rock", "built": None}), end="")
    [house] # hers
    soil = "rock"
    """
    import tomlkit

    try:
        wanted = _plain_with(tomllib.loads(text), table, values)
        document: Any = tomlkit.parse(text)
        here = _table(document, table)
        for key, value in values.items():
            if value is None:
                here.pop(key, None)
            elif key not in here or here[key] != value:
                here[key] = _written(value)
        new = tomlkit.dumps(document)
        for candidate in (_spaced(new, str(table[0])), new):
            if tomllib.loads(candidate) == wanted:
                return candidate
    except (ValueError, TypeError, KeyError, IndexError, AttributeError):  # tomlkit's own errors are ValueErrors
        pass
    raise CannotGoOn(NO_PLACE_FOR_KEY(Place(file), key=".".join(map(str, (*table, *values)))))


def _spaced(text: str, name: str) -> str:
    """An empty line before the last header of this name and the one after it, unless a comment or one stands there."""
    lines = text.split("\n")
    last = max((n for n, line in enumerate(lines) if line.startswith((f"[[{name}]]", f"[{name}]"))), default=0)
    following = next((n for n in range(last + 1, len(lines)) if lines[n].startswith("[")), 0)
    for at in (following, last):
        if at and lines[at - 1].strip() and not lines[at - 1].startswith("#"):
            lines.insert(at, "")
    return "\n".join(lines)


def _plain_with(data: dict[str, Any], table: Path, values: Mapping[str, Any]) -> dict[str, Any]:
    """What the file must hold afterwards, to see that it does."""
    here: Any = data
    for number, step in enumerate(table):
        if isinstance(here, list) and isinstance(step, int):
            if step == len(here):
                here.append({})
            here = here[step]
            continue
        following = table[number + 1] if number + 1 < len(table) else None
        here = here.setdefault(step, [] if isinstance(following, int) else {})
    for key, value in values.items():
        if value is None:
            here.pop(key, None)
        else:
            here[key] = value
    return data


def _table(document: Any, table: Path) -> Any:
    import tomlkit

    name, *rest = table
    if name not in document:
        document.append(name, tomlkit.aot() if rest else tomlkit.table())
    here = document[name]
    for index in rest:
        if isinstance(here, MutableSequence) and index == len(here):
            plain_list = not isinstance(here, tomlkit.items.AoT)
            here.append(tomlkit.inline_table() if plain_list else tomlkit.table())
        here = here[index]
    if not isinstance(here, MutableMapping):
        raise TypeError(name)
    return here


def _written(value: Any) -> Any:
    """Tables inside a table on one line, so that they stay where they belong."""
    import tomlkit

    if isinstance(value, Mapping):
        inline = tomlkit.inline_table()
        inline.update({key: _written(inner) for key, inner in value.items()})
        return inline
    if isinstance(value, list):
        array = tomlkit.array()
        for inner in value:
            array.append(_written(inner))
        return array
    return value
