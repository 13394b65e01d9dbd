"""A text in, the same as a CSV file may hold it out: no spreadsheet takes it for a formula."""

RISKY = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""First letters by which spreadsheet programs begin a formula, in their wide forms too."""


def plain_cell(text: str) -> str:
    """With an apostrophe in front where a spreadsheet would calculate it; a number below nothing stays a number.

    >>> plain_cell("=HYPERLINK(1)"), plain_cell("deposit"), plain_cell("-12.50"), plain_cell("  @x")
    ("'=HYPERLINK(1)", 'deposit', '-12.50', "'  @x")
    """
    bare = text.lstrip(" ")
    if not bare.startswith(RISKY):
        return text
    try:
        float(bare)
    except ValueError:
        return f"'{text}"
    return text
