"""A picture that leaves the house carries what is drawn and nothing of where, when or with what it was taken."""

import io
import struct
import zipfile
import zlib
from datetime import date

import pytest

from estimator.sheets.book import Book, Cell, Picture, Row, Sheet
from estimator.sheets.images import NotAPicture, cleaned, size_px
from estimator.sheets.write import write


def chunk(kind: bytes, body: bytes) -> bytes:
    return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))


def png(extra: bytes = b"") -> bytes:
    """A grey picture, 4 wide and 2 high (the format: ISO/IEC 15948)."""
    head = chunk(b"IHDR", struct.pack(">IIBBBBB", 4, 2, 8, 0, 0, 0, 0))
    body = chunk(b"IDAT", zlib.compress(b"\x00\x80\x80\x80\x80" * 2))
    return b"\x89PNG\r\n\x1a\n" + head + extra + body + chunk(b"IEND", b"")


def block(mark: int, body: bytes) -> bytes:
    return b"\xff" + bytes([mark]) + struct.pack(">H", len(body) + 2) + body


def jpeg() -> bytes:
    """The blocks of a JPEG (ISO/IEC 10918): JFIF, a place block, a comment, a frame 8 wide and 6 high, and a scan."""
    frame = block(0xC0, b"\x08" + struct.pack(">HH", 6, 8) + b"\x01\x01\x11\x00")
    return (
        b"\xff\xd8"
        + block(0xE0, b"JFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00")
        + block(0xE1, b"Exif\x00\x00GPS 29.76 N 95.36 W")
        + block(0xFE, b"by Ines")
        + frame
        + block(0xDA, b"\x01\x01\x00\x00\x3f\x00")
        + b"data\xff\xd9"
    )


def test_a_photo_loses_place_and_comment_and_keeps_its_frame() -> None:
    clean = cleaned(jpeg())
    assert b"GPS" not in clean and b"Ines" not in clean
    assert clean.endswith(b"data\xff\xd9")
    assert size_px(clean) == (8, 6)


def test_a_drawing_loses_its_texts_and_keeps_its_size() -> None:
    clean = cleaned(png(chunk(b"tEXt", b"Author\x00Ines") + chunk(b"eXIf", b"GPS")))
    assert b"Ines" not in clean and b"GPS" not in clean
    assert clean == png()
    assert size_px(clean) == (4, 2)


@pytest.mark.parametrize("bad", [b"", b"hello", jpeg()[:40], png()[:50], png().replace(b"IDAT", b"IDAX", 1)])
def test_what_is_no_whole_picture_is_refused(bad: bytes) -> None:
    with pytest.raises(NotAPicture):
        cleaned(bad)


def test_a_picture_stands_in_the_file_with_its_words_and_no_name_of_a_file() -> None:
    picture = Picture(
        data=png(chunk(b"tEXt", b"Author\x00Ines")), alt="A hole under the kitchen", row=0, column=0, height_px=100
    )
    sheet = Sheet(name="P", widths=(40.0,), rows=(Row((), 80.0), Row((Cell("a hole"),))), pictures=(picture,))
    with zipfile.ZipFile(
        io.BytesIO(write(Book(title="t", day=date(2026, 1, 2), accent="000000", sheets=(sheet,))))
    ) as archive:
        assert archive.read("xl/media/image1.png") == png()
        assert 'descr="A hole under the kitchen"' in archive.read("xl/drawings/drawing1.xml").decode()
