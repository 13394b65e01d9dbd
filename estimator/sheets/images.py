"""The bytes of a picture in, the same picture without anything that tells where, when or with what it was taken, out."""

import io
import struct
import zlib

from estimator.model.say import Say
from estimator.sheets.fault import CannotWrite

JPEG_START, JPEG_SCAN = b"\xff\xd8", 0xDA
PNG_START = b"\x89PNG\r\n\x1a\n"
PNG_KEPT = (b"IHDR", b"PLTE", b"tRNS", b"IDAT", b"IEND", b"gAMA", b"sRGB")
JPEG_DROPPED = (*range(0xE1, 0xF0), 0xFE)  # every application block but the first, and comments


class NotAPicture(CannotWrite):
    """Neither a whole JPEG nor a whole PNG."""


def cleaned(data: bytes) -> bytes:
    """Only what is needed to draw it. Errors: NotAPicture."""
    try:
        if data.startswith(PNG_START):
            return _png(data)
        if data.startswith(JPEG_START):
            return _jpeg(data)
    except (struct.error, IndexError) as error:
        raise NotAPicture(Say.of("the picture is cut short")) from error
    raise NotAPicture(Say.of("the picture is neither JPEG nor PNG"))


def _png(data: bytes) -> bytes:
    out, at = [PNG_START], len(PNG_START)
    while at < len(data):
        (length,) = struct.unpack(">I", data[at : at + 4])
        kind, body = data[at + 4 : at + 8], data[at + 8 : at + 8 + length]
        (check,) = struct.unpack(">I", data[at + 8 + length : at + 12 + length])
        if zlib.crc32(kind + body) != check:
            raise NotAPicture(Say.of("the picture is damaged"))
        if kind in PNG_KEPT:
            out.append(data[at : at + 12 + length])
        at += 12 + length
    return b"".join(out)


def _jpeg(data: bytes) -> bytes:
    out, at = [JPEG_START], 2
    while True:
        if data[at] != 0xFF:
            raise NotAPicture(Say.of("the picture is damaged"))
        mark = data[at + 1]
        if mark == JPEG_SCAN:
            return b"".join([*out, data[at:]])
        (length,) = struct.unpack(">H", data[at + 2 : at + 4])
        if mark not in JPEG_DROPPED:
            out.append(data[at : at + 2 + length])
        at += 2 + length


def size_px(data: bytes) -> tuple[int, int]:
    """Width and height in pixels. Errors: NotAPicture."""
    if data.startswith(PNG_START):
        width, height = struct.unpack(">II", data[16:24])
        return width, height
    at = 2
    while at + 9 <= len(data):
        mark = data[at + 1]
        (length,) = struct.unpack(">H", data[at + 2 : at + 4])
        if 0xC0 <= mark <= 0xCF and mark not in (0xC4, 0xC8, 0xCC):
            height, width = struct.unpack(">HH", data[at + 5 : at + 9])
            return width, height
        at += 2 + length
    raise NotAPicture(Say.of("the picture has no size"))


LONGEST_PX = 1400  # enough for a page at 200 dots to the inch
MOST_BYTES = 400_000
QUALITY = 80


def shrunk(data: bytes) -> bytes:
    """Return the picture written anew: made smaller where it is large, and nothing in it but what is drawn.

    What stands before, between or behind the picture in its file, such as a second picture with its place and time, is never
    copied. Errors: NotAPicture.
    """
    from PIL import Image, ImageOps, UnidentifiedImageError

    cleaned(data)  # names what is neither JPEG nor PNG, or cut short
    out = io.BytesIO()
    try:
        with Image.open(io.BytesIO(data)) as opened:
            kind = opened.format or "JPEG"
            picture = ImageOps.exif_transpose(opened)  # a phone says which way is up in what is taken out
            if max(size_px(data)) > LONGEST_PX or len(data) > MOST_BYTES:
                picture.thumbnail((LONGEST_PX, LONGEST_PX))
            picture.info.clear()
            if kind == "PNG":
                picture.save(out, "PNG", optimize=True)
            else:
                picture.convert("RGB").save(out, "JPEG", quality=QUALITY, optimize=True)
    except (UnidentifiedImageError, Image.DecompressionBombError, OSError, ValueError, SyntaxError) as error:
        raise NotAPicture(Say.of("the picture is damaged")) from error
    return cleaned(out.getvalue())
