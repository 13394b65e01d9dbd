"""A text in, how wide Arial draws it out, in thousandths of the size of its letters.

Source: the metric files of Helvetica and Helvetica-Bold in Adobe's Core 14 fonts, whose widths Arial and Liberation Sans share;
signs that these lack (fractions aside) as Liberation Sans draws them.

>>> letters_wide("ill", bold=False), letters_wide("WWW", bold=False)
(666, 2832)
"""

from functools import lru_cache

REGULAR = {
    191: "'", 222: "ijl‘’", 260: "|", 278: " !,./:;I[\\]ftÍí", 333: "()-`r¡·“”", 334: "{}", 350: "•", 355: '"', 389: "*",
    400: "°", 469: "^", 500: "Jcksvxyz", 549: "±≈≤≥", 556: "#$0123456789?L_abdeghnopquáéóúñü§«»–€", 584: "+<=>~×−",
    611: "FTZ¿", 667: "&ABEKPSVXYÁÉ", 722: "CDHNRUwÚÑÜ", 737: "©®", 750: "☐", 778: "GOQÓ", 833: "Mm", 834: "½¼¾", 889: "%",
    944: "W", 1000: "—…→", 1015: "@",
}  # fmt: skip
BOLD = {
    238: "'", 278: " ,./I\\ijlÍí‘’", 280: "|", 333: "!()-:;[]`ft¡·", 350: "•", 389: "*r{}", 400: "°", 474: '"', 500: "z“”",
    549: "±≈≤≥", 556: "#$0123456789J_aceksvxyáé§«»–€", 584: "+<=>^~×−", 611: "?FLTZbdghnopqu¿óúñü", 667: "EPSVXYÉ",
    722: "&ABCDHKNRUÁÚÑÜ", 737: "©®", 750: "☐", 778: "GOQwÓ", 833: "M", 834: "½¼¾", 889: "%m", 944: "W", 975: "@", 1000: "—…→",
}  # fmt: skip
ANY_OTHER = 1000
"""A letter that is in neither table: as wide as it is high, which only few are."""

_WIDTHS = tuple({letter: width for width, letters in table.items() for letter in letters} for table in (REGULAR, BOLD))


@lru_cache(maxsize=20_000)
def letters_wide(text: str, bold: bool) -> int:
    """The sum of its letters' widths, in thousandths of their size."""
    table = _WIDTHS[bold]
    return sum(table.get(letter, ANY_OTHER) for letter in text)
