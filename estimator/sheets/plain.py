"""Text in, the first character out that a workbook cannot carry: control characters and halves of characters."""

import unicodedata

ALLOWED_CONTROLS = "\n"
NONCHARACTERS = ("\ufffe", "\uffff")


def first_unprintable(text: str) -> str:
    """The first character no workbook can show, as U+XXXX; "" where all can be shown.

    >>> first_unprintable("Ana 🏠"), first_unprintable("bell" + chr(7))
    ('', 'U+0007')
    """
    for character in text:
        kind = unicodedata.category(character)
        if (kind in ("Cc", "Cs") and character not in ALLOWED_CONTROLS) or character in NONCHARACTERS:
            return f"U+{ord(character):04X}"
    return ""
