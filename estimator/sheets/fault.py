"""What a cell can hold besides a value: nothing that can be used."""

import re

from estimator.model.frozen import Frozen


class Fault(Frozen):
    """A cell without a value that can be used.

    kind "error": it shows `text`, such as #N/A; "uncalculated": a formula without a result; "merged": `text` is the range;
    "currency": an amount shown in `text`, such as €.
    """

    kind: str
    text: str = ""

    def __str__(self) -> str:
        return self.text


class CannotWrite(ValueError):
    """The book holds something a workbook cannot carry; the message says where."""


UNPRINTABLE = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
"""Control characters but the line break, halves of characters, and what is no character (Unicode: categories Cc and Cs)."""


def first_unprintable(text: str) -> str:
    """The first character no workbook can show, as U+XXXX; "" where all can be shown.

    >>> first_unprintable("Ana 🏠"), first_unprintable("bell" + chr(7))
    ('', 'U+0007')
    """
    found = UNPRINTABLE.search(text)
    return f"U+{ord(found[0]):04X}" if found else ""
