"""A job file's path in, its text and data out, and back onto the disk whole after each answer."""

import contextlib
import hashlib
import re
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from platformdirs import user_cache_path

from estimator.cli.interview.document import Path as TablePath
from estimator.cli.interview.document import with_values
from estimator.disk.whole import write_whole
from estimator.fieldnotes.syntax import parse
from estimator.fieldnotes.textfile import EMPTY, read_text
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.records.lock import taken

_STANDS_AT = re.compile(r"# estimator start: next comes (\S+?); go on with .*\n\n?")


def replaced(path: Path, text: str) -> None:
    """The file with this text, whole or as it was; a link stays a link."""
    write_whole(path, text.encode("utf-8"))


@contextlib.contextmanager
def locked_job(path: Path) -> Iterator[bool]:
    """Holds the job file for one interview; False when another has it. The system gives it back however the program ends.

    The lock is a file in the user's own cache, so that none is left beside the job; a disk without locks holds nothing.
    """
    folder = user_cache_path("drain-estimator") / "open"
    name = hashlib.sha256(str(path.resolve()).encode("utf-8", "surrogateescape")).hexdigest()[:32]
    try:
        folder.mkdir(parents=True, exist_ok=True)
        file = (folder / name).open("a+b")
    except OSError:
        yield True
        return
    with file:
        yield taken(file)


def text_on_disk(path: Path) -> str:
    """What the file holds, nothing when it is not there. Errors: CannotGoOn when it is no text."""
    if not path.exists():
        return ""
    text = read_text(path, Place(path.name), path.name)
    if isinstance(text, Problem):
        if text.code == EMPTY.code:
            return ""
        raise CannotGoOn(text)
    return text.replace("\r\n", "\n")


class JobFile:
    """The job file of an interview. `next_id` is the question that comes next; it stands in the file's first line."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.text = ""
        self.data: dict[str, Any] = {}
        self.next_id = ""
        self.read()

    def read(self) -> None:
        """Takes over what the file holds now, by whoever. Errors: CannotGoOn when it cannot be read."""
        text = text_on_disk(self.path)
        begins = _STANDS_AT.match(text)
        self.next_id = begins[1] if begins else ""
        self._take(text[begins.end() :] if begins else text)

    def _take(self, text: str) -> None:
        document = parse(text, self.path.name)
        if isinstance(document, Problem):
            raise CannotGoOn(document)
        self.text, self.data = text, tomllib.loads(text)

    def _fresh(self) -> None:
        """What another program has written since is kept."""
        stands_at = self.next_id
        if text_on_disk(self.path) != self._whole():
            self.read()
        self.next_id = stands_at

    def _whole(self) -> str:
        if not self.next_id:
            return self.text
        return f"# estimator start: next comes {self.next_id}; go on with estimator start --resume\n\n{self.text}"

    def put(self, table: TablePath, values: Mapping[str, Any], next_id: str | None = None) -> None:
        """One answer, saved. Errors: CannotGoOn where the file has no place for it, OSError from the disk."""
        self._fresh()
        self._take(with_values(self.text, table, values, self.path.name))
        self.stand_at(self.next_id if next_id is None else next_id)

    def stand_at(self, next_id: str) -> None:
        self.next_id = next_id
        self.save()

    def restored(self, text: str, next_id: str) -> bool:
        """The file as it was before an answer; False, and nothing done, when another program has changed it since."""
        if text_on_disk(self.path) != self._whole():
            return False
        self._take(text)
        self.stand_at(next_id)
        return True

    def save(self) -> None:
        self.path.parent.mkdir(parents=True, exist_ok=True)
        replaced(self.path, self._whole())
