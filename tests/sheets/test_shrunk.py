"""Photos off a phone are made small and tell nothing but what they show."""

import io

import pytest
from PIL import Image

from estimator.sheets.images import LONGEST_PX, MOST_BYTES, NotAPicture, shrunk, size_px

ORIENTATION, MAKER, GPS = 0x0112, 0x010F, 0x8825


def photo(width: int, height: int, kind: str = "JPEG", turned: int = 1) -> bytes:
    """A picture full of detail, with the maker's name and a place in it as a phone writes them (EXIF 2.3)."""
    picture = Image.effect_noise((width, height), 90).convert("RGB")
    told = Image.Exif()
    told[ORIENTATION], told[MAKER] = turned, "CANARYphone"
    told.get_ifd(GPS)[1] = "N"
    out = io.BytesIO()
    picture.save(out, kind, exif=told)
    return out.getvalue()


@pytest.mark.parametrize("kind", ["JPEG", "PNG"])
def test_a_large_photo_is_made_small_and_keeps_its_shape(kind: str) -> None:
    data = photo(2 * LONGEST_PX, LONGEST_PX, kind)
    small = shrunk(data)
    assert size_px(small) == (LONGEST_PX, LONGEST_PX // 2)
    assert len(small) < len(data) / 2


def test_nothing_of_where_and_with_what_it_was_taken_is_left() -> None:
    for width in (LONGEST_PX + 1, 60):
        small = shrunk(photo(width, 60))
        assert b"CANARY" not in small and b"Exif" not in small
        with Image.open(io.BytesIO(small)) as opened:
            assert not dict(opened.getexif())


def test_a_large_photo_taken_sideways_stands_upright() -> None:
    assert size_px(shrunk(photo(2 * LONGEST_PX, LONGEST_PX, turned=6))) == (LONGEST_PX // 2, LONGEST_PX)


def test_a_photo_at_the_limit_is_not_drawn_anew() -> None:
    data = photo(LONGEST_PX, 40)
    assert size_px(shrunk(data)) == (LONGEST_PX, 40) and len(data) < MOST_BYTES
    assert size_px(shrunk(photo(LONGEST_PX + 1, 40)))[0] == LONGEST_PX


def test_the_same_photo_gives_the_same_bytes() -> None:
    data = photo(LONGEST_PX + 10, 300)
    assert shrunk(data) == shrunk(data)


def test_half_a_photo_is_refused() -> None:
    data = photo(2 * LONGEST_PX, LONGEST_PX)
    with pytest.raises(NotAPicture):
        shrunk(data[: len(data) // 2])
    with pytest.raises(NotAPicture):
        shrunk(b"no picture")
