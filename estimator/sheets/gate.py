"""The bytes of a workbook somebody hands in, in; the first thing that makes it unsafe or useless to read, out.

Runs before any reader, on the zip directory and the raw parts: a 300 kB file can unpack to 300 MB.
"""

import re
import zipfile
from io import BytesIO

from estimator.model.problem import Place, Problem
from estimator.sheets import problems as p

COMPOUND_FILE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
MOST_BYTES = 60_000_000
MOST_PARTS = 2_000
LAST_ROW = 20_000
LAST_COLUMN = 702  # ZZ
MOST_CELLS = 1_000_000
CELL = re.compile(rb"<(?:\w+:)?c\s[^>]*?r=\"([A-Z]{1,3})(\d{1,7})\"")
ROW = re.compile(rb"<(?:\w+:)?row\s[^>]*?r=\"(\d{1,7})\"")


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
    except (
        zipfile.BadZipFile,
        zipfile.LargeZipFile,
        EOFError,
        OSError,
        RuntimeError,
        ValueError,
    ) as error:
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
    for info in parts.infolist():
        if not info.filename.endswith((".xml", ".rels", ".vml")):
            continue
        with parts.open(info) as part:
            text = part.read(MOST_BYTES + 1)
        if b"<!DOCTYPE" in text or b"<!ENTITY" in text:
            return p.DOCTYPE(place, part=info.filename)
        if info.filename.startswith("xl/worksheets/") and (far := _far_cell(text)):
            return p.FAR_CELL(place, part=info.filename.rsplit("/", 1)[-1], cell=far)
    return None


def _far_cell(text: bytes) -> str:
    """A cell beyond any table; or one that makes the sheet so wide and long that reading it would never end."""
    rows, width = 1, 1
    for column, row in CELL.findall(text):
        rows, width = max(rows, int(row)), max(width, _number(column))
        if width > LAST_COLUMN or rows > LAST_ROW or rows * width > MOST_CELLS:
            return f"{column.decode()}{row.decode()}"
    return next((f"A{row.decode()}" for row in ROW.findall(text) if int(row) > LAST_ROW), "")


def _number(column: bytes) -> int:
    """A column's letters as a number from 1.

    >>> _number(b"A"), _number(b"ZZ")
    (1, 702)
    """
    number = 0
    for letter in column:
        number = number * 26 + letter - 64
    return number
