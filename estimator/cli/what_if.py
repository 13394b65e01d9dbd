"""A job file and changes such as `house.soil=rock` in, a changed copy in a folder that goes away again out.

Short names of house facts may stand without `house.`; the file itself is never written.
"""

import contextlib
import shutil
import tempfile
from collections.abc import Iterator, MutableMapping, Sequence
from pathlib import Path

from estimator.cli.problems import BAD_CHANGE, NOTHING_TO_CHANGE
from estimator.fieldnotes.beside import logs_in_folders
from estimator.model.problem import CannotGoOn, Place

HOUSE = "house"


@contextlib.contextmanager
def changed(job_file: Path, changes: Sequence[str]) -> Iterator[Path]:
    """The file itself when nothing is changed, else a changed copy with its logs where they lay."""
    if not changes:
        yield job_file
        return
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / job_file.name
        for beside in job_file.parent.iterdir():
            if beside.is_file() and beside.suffix.lower() in (".txt", ".log", ".md", ""):
                shutil.copyfile(beside, copy.parent / beside.name)
        for name, log in logs_in_folders(job_file):
            (copy.parent / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(log, copy.parent / name)
        copy.write_text(with_changes(job_file, changes), encoding="utf-8")
        yield copy


def with_changes(job_file: Path, changes: Sequence[str]) -> str:
    """The text of the job file with the changes in it. Errors: CannotGoOn for a change without `=` or a broken file."""
    import tomlkit
    from tomlkit.exceptions import ParseError

    try:
        document = tomlkit.parse(job_file.read_text(encoding="utf-8-sig", errors="replace"))
    except ParseError as error:
        raise CannotGoOn(NOTHING_TO_CHANGE(Place(file=str(job_file)), said=error)) from None
    for change in changes:
        path, value = split(change)
        _put(document, path, value, change)
    return tomlkit.dumps(document)


def _put(table: MutableMapping[str, object], path: Sequence[str], value: object, change: str) -> None:
    """Sets the value at the path, making tables on the way. Errors: CannotGoOn where a plain value stands in the way."""
    for name in path[:-1]:
        inner = table.setdefault(name, {})
        if not isinstance(inner, MutableMapping):
            raise CannotGoOn(BAD_CHANGE(Place(), change=change))
        table = inner
    table[path[-1]] = value


def split(change: str) -> tuple[list[str], object]:
    """`house.soil=rock` as its path and its value; numbers, yes/no and days are taken as such.

    >>> split("soil=rock"), split("settings.bedding_ft=0.5"), split("house.lived_in=no")
    ((['house', 'soil'], 'rock'), (['settings', 'bedding_ft'], 0.5), (['house', 'lived_in'], False))
    """
    key, equals, text = change.partition("=")
    path = [part.strip() for part in key.split(".")]
    if not equals or not all(path):
        raise CannotGoOn(BAD_CHANGE(Place(), change=change))
    return ([HOUSE, *path] if len(path) == 1 else path), _value(text.strip())


def _value(text: str) -> object:
    """The word as TOML would take it, else as text."""
    import tomllib

    if text.lower() in ("yes", "no"):
        return text.lower() == "yes"
    try:
        value: object = tomllib.loads(f"v = {text}")["v"]
    except tomllib.TOMLDecodeError:
        return text
    return value
