"""The bytes of a workbook somebody hands in, in; the first thing that makes it unsafe or useless to read, out.

Runs before any library opens the file. Each part is read as a stream and given up at the first thing too many: a file of 64 kB
can unpack to gigabytes, or ask a reader for millions of cells in one line.
"""

import zipfile
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from io import BytesIO
from typing import IO
from xml.parsers import expat

from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.sheets import problems as p

COMPOUND_FILE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
MOST_BYTES = 30_000_000
MOST_PARTS = 2_000
LAST_ROW = 20_000
LAST_COLUMN = 702  # ZZ
MOST_CELLS = 150_000
MOST_AREA = 1_000_000
MOST_OF: Mapping[str, int] = {
    "row": 50_000, "mergeCell": 5_000, "xf": 20_000, "font": 5_000, "fill": 5_000, "border": 5_000, "si": 100_000, "r": 200_000,
    "cfRule": 2_000, "dataValidation": 2_000, "definedName": 5_000, "sheet": 200, "hyperlink": 5_000, "col": 5_000, "numFmt": 5_000,
}  # fmt: skip
"""The most there may be of each in one part: far above what a firm's tables hold, far below what stops a machine."""
MOST_ELEMENTS = 600_000
CHUNK = 65_536


class _Refused(Exception):
    """A part is given up: why."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(str(problem))
        self.problem = problem


def gate(data: bytes, place: Place) -> Problem | None:
    """None when the workbook may be read.

    >>> str(gate(b"no workbook at all", Place("prices.xlsx"))).splitlines()[0]
    'prices.xlsx: this is no workbook.'
    """
    if data.startswith(COMPOUND_FILE):
        locked = "EncryptedPackage".encode("utf-16-le") in data
        return p.PASSWORD(place) if locked else p.OLD_FORMAT(place)
    if not data.startswith(b"PK"):
        return p.NOT_A_WORKBOOK(place)
    try:
        with zipfile.ZipFile(BytesIO(data)) as parts:
            return _directory(parts, place) or _parts(parts, place)
    except (zipfile.BadZipFile, zipfile.LargeZipFile, EOFError, OSError, RuntimeError, ValueError) as error:
        return p.DAMAGED(place, why=str(error).rstrip(".") or type(error).__name__)
    except zipfile.zlib.error as error:  # type: ignore[attr-defined]
        return p.DAMAGED(place, why=str(error))


def _directory(parts: zipfile.ZipFile, place: Place) -> Problem | None:
    infos = parts.infolist()
    size = sum(info.file_size for info in infos)
    if size > MOST_BYTES or len(infos) > MOST_PARTS:
        return p.TOO_LARGE(place, size=size // 1_000_000, most=MOST_BYTES // 1_000_000)
    names = {info.filename for info in infos}
    if "xl/workbook.xml" not in names:
        other = "mimetype" in names or any(n.startswith("word/") for n in names)
        return p.OTHER_FORMAT(place) if other else p.NOT_A_WORKBOOK(place)
    return None


def _parts(parts: zipfile.ZipFile, place: Place) -> Problem | None:
    names = _Names()
    try:
        for info in sorted(parts.infolist(), key=lambda i: i.filename.startswith("xl/worksheets/")):
            if not info.filename.endswith((".xml", ".rels", ".vml")):
                continue
            part = _Part(info.filename, names, place)
            with parts.open(info) as stream:
                part.read(stream)
    except _Refused as refused:
        return refused.problem
    return None


@dataclass
class _Names:
    """What the sheets are called: the workbook's names by relation, and the parts by relation."""

    by_relation: dict[str, str] = field(default_factory=dict)
    targets: dict[str, str] = field(default_factory=dict)

    def of(self, part: str) -> str:
        """The name a person knows the sheet by; the part's own where the workbook does not say."""
        file = part.removeprefix("xl/")
        relation = next((r for r, target in self.targets.items() if target.removeprefix("/xl/") == file), "")
        return self.by_relation.get(relation, part.rsplit("/", 1)[-1])


class _Part:
    """One part, read as a stream; cells are placed as a reader would place them, whether or not they say where."""

    def __init__(self, name: str, names: _Names, place: Place) -> None:
        self.name, self.names, self.place = name, names, place
        self.counts: dict[str, int] = {}
        self.elements = 0
        self.row, self.column, self.widest, self.tallest = 0, 0, 1, 1
        self.bytes = 0
        sheet = name.startswith("xl/worksheets/") and name.endswith(".xml")
        self.on: Mapping[str, Callable[[Mapping[str, str]], None]] = (
            {"row": self._row, "c": self._cell, "mergeCell": self._merge, "v": self._filled, "f": self._filled, "is": self._filled}
            if sheet
            else {"sheet": self._named, "Relationship": self._related}
        )  # fmt: skip

    def read(self, stream: IO[bytes]) -> None:
        """Errors: _Refused at the first thing too many; ValueError where the part is no XML."""
        parser = expat.ParserCreate()
        parser.StartElementHandler = self._start
        parser.StartDoctypeDeclHandler = self._doctype
        parser.EntityDeclHandler = self._doctype
        try:
            while chunk := stream.read(CHUNK):
                self.bytes += len(chunk)
                if self.bytes > MOST_BYTES:
                    raise _Refused(p.TOO_LARGE(self.place, size=self.bytes // 1_000_000, most=MOST_BYTES // 1_000_000))
                parser.Parse(chunk, False)
            parser.Parse(b"", True)
        except expat.ExpatError as error:
            raise ValueError(f"part {self.name} is not whole ({expat.ErrorString(error.code)})") from None

    def _doctype(self, *_: object) -> None:
        raise _Refused(p.DOCTYPE(self.place, part=self.name))

    def _start(self, tag: str, given: Mapping[str, str]) -> None:
        kind = tag.rsplit(":", 1)[-1]
        self.elements += 1
        if kind in MOST_OF or self.elements > MOST_ELEMENTS:
            self.counts[kind] = self.counts.get(kind, 0) + 1
            if self.counts[kind] > MOST_OF.get(kind, 0) or self.elements > MOST_ELEMENTS:
                raise _Refused(p.TOO_MANY(self.place, part=self.names.of(self.name), what=kind))
        if (act := self.on.get(kind)) is not None:
            act(given)

    def _row(self, given: Mapping[str, str]) -> None:
        said = given.get("r", "")
        self.row = int(said) if said.isdigit() else self.row + 1
        self.column = 0

    def _cell(self, given: Mapping[str, str]) -> None:
        self.counts["c"] = self.counts.get("c", 0) + 1
        if self.counts["c"] > MOST_CELLS:
            raise _Refused(p.TOO_MANY(self.place, part=self.names.of(self.name), what=Say.of("cells")))
        column, row = _parted(given.get("r", ""))
        self.column = column or self.column + 1
        self.row = row or self.row

    def _filled(self, given: Mapping[str, str]) -> None:
        """Something stands in the cell; an empty one at a sheet's end, such as a deleted row leaves, is no cell."""
        self.widest, self.tallest = max(self.widest, self.column), max(self.tallest, self.row)
        if self.widest > LAST_COLUMN or self.tallest > LAST_ROW or self.widest * self.tallest > MOST_AREA:
            cell = f"{_letters(self.column)}{self.row}"
            raise _Refused(p.FAR_CELL(self.place, part=self.names.of(self.name), cell=cell))

    def _merge(self, given: Mapping[str, str]) -> None:
        first, _, last = given.get("ref", "").partition(":")
        (left, top), (right, bottom) = _parted(first), _parted(last or first)
        area = max(0, right - left + 1) * max(0, bottom - top + 1)
        self.counts["merged"] = self.counts.get("merged", 0) + area
        if right > LAST_COLUMN or bottom > LAST_ROW or self.counts["merged"] > MOST_CELLS:
            raise _Refused(p.FAR_CELL(self.place, part=self.names.of(self.name), cell=given.get("ref", "")))

    def _named(self, given: Mapping[str, str]) -> None:
        relation = next((value for key, value in given.items() if key.endswith(":id")), "")
        self.names.by_relation[relation] = given.get("name", "")

    def _related(self, given: Mapping[str, str]) -> None:
        if self.name == "xl/_rels/workbook.xml.rels":
            self.names.targets[given.get("Id", "")] = given.get("Target", "")


def _parted(cell: str) -> tuple[int, int]:
    """A cell's column and row as numbers from 1; 0 for what it does not say.

    >>> _parted("A1"), _parted("$ZZ$20"), _parted("")
    ((1, 1), (702, 20), (0, 0))
    """
    plain = cell.replace("$", "")
    letters = plain.rstrip("0123456789")
    number = 0
    for letter in letters[:4].upper():
        number = number * 26 + ord(letter) - 64
    digits = plain[len(letters) :][:9]
    return number, int(digits) if digits else 0


def _letters(column: int) -> str:
    """
    >>> _letters(1), _letters(702), _letters(16384)
    ('A', 'ZZ', 'XFD')
    """
    out = ""
    while column > 0:
        column, letter = divmod(column - 1, 26)
        out = chr(65 + letter) + out
    return out
