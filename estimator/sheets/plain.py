"""Text in, the first character out that a workbook cannot carry: control characters and halves of characters."""

import re

UNPRINTABLE = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
"""Control characters but the line break, halves of characters, and what is no character (Unicode: categories Cc and Cs)."""


def first_unprintable(text: str) -> str:
    """The first character no workbook can show, as U+XXXX; "" where all can be shown.

    >>> first_unprintable("Ana 🏠"), first_unprintable("bell" + chr(7))
    ('', 'U+0007')
    """
    found = UNPRINTABLE.search(text)
    return f"U+{ord(found[0]):04X}" if found else ""
