"""The bytes of a picture in, one small enough to send out: turned upright, no side longer than a limit, nothing but what is drawn."""

import io

from estimator.sheets.images import NotAPicture, cleaned, size_px

LONGEST_PX = 1400  # enough for a page at 200 dots to the inch
MOST_BYTES = 400_000
QUALITY = 80


def shrunk(data: bytes) -> bytes:
    """The same picture, made smaller where it is large. Errors: NotAPicture."""
    plain = cleaned(data)
    if max(size_px(plain)) <= LONGEST_PX and len(plain) <= MOST_BYTES:
        return plain
    return cleaned(_smaller(data))


def _smaller(data: bytes) -> bytes:
    from PIL import Image, ImageOps, UnidentifiedImageError

    out = io.BytesIO()
    try:
        with Image.open(io.BytesIO(data)) as opened:
            kind = opened.format or "JPEG"
            picture = ImageOps.exif_transpose(opened)  # a phone says which way is up in what is taken out
            picture.thumbnail((LONGEST_PX, LONGEST_PX))
            if kind == "PNG":
                picture.save(out, "PNG", optimize=True)
            else:
                picture.convert("RGB").save(out, "JPEG", quality=QUALITY, optimize=True)
    except (UnidentifiedImageError, Image.DecompressionBombError, OSError, ValueError) as error:
        raise NotAPicture("the picture is damaged") from error
    return out.getvalue()
