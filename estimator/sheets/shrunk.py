"""The bytes of a picture in, one small enough to send out: turned upright, no side longer than a limit, nothing but what is drawn."""

import io

from estimator.model.say import Say
from estimator.sheets.images import NotAPicture, cleaned, size_px

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
