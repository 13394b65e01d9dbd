"""A sheet's rows with their heights in, the rows a printed page begins with out, where a person would turn the page.

A heading stays with what it heads. A block (`Row.starts`) goes to a new page where it does not fit on this one.
"""

from collections.abc import Iterable, Iterator, Sequence

from estimator.sheets.book import Row, Sheet

PAGE_PT = (11 - 0.4 - 0.55) * 72  # Letter, portrait, less the margins that `write` sets
USED = 0.99  # of a page: other programs draw rows a little higher
MOST_LEFT = 0.5  # a block longer than a page begins where at least so much of the page is free
KEEPS = frozenset({"heading", "bold", "head", "option", "under", "title", "firm", "alarm"})
"""Styles of rows that stand over something and never alone at the foot of a page."""
SUMS = frozenset({"sum words", "total words"})
"""Styles of rows that never stand without the last of what they sum."""


SMALLER = (0.97, 0.94, 0.91, 0.88)
SMALLEST = (0.91, 0.89, 0.85, 0.82, 0.79, 0.76)
"""Sizes tried beside the full one: to save a page, and only to keep a block whole."""
LEAST_PERCENT = 75.0  # smaller letters are hard to read
LEAST_WHOLE_PERCENT = 71.0  # and a little smaller still where a block would go on over the page
SPARE_PERCENT = 8  # printers differ; with less to spare the sheet is fitted to one page wide instead


def print_percent(sheet: Sheet, heights_pt: Sequence[float], full_percent: float) -> float:
    """The size to print at: as large as fits one page wide, a little smaller where that keeps a block whole or saves a page."""
    base = min(float(sheet.scale or 100), full_percent)
    smaller = (base * part for part in SMALLER)
    sizes = [base, *(size for size in smaller if sheet.smallest <= size <= full_percent - SPARE_PERCENT)]
    size, parted = _best(sheet, heights_pt, sizes)
    if parted and sheet.smallest <= LEAST_PERCENT:
        smallest = [base * part for part in SMALLEST if base * part >= LEAST_WHOLE_PERCENT]
        small, fewer = _best(sheet, heights_pt, [size, *smallest])
        return small if fewer < parted else size
    return size


def _best(sheet: Sheet, heights_pt: Sequence[float], sizes: Sequence[float]) -> tuple[float, int]:
    """The first size that parts the fewest blocks, then takes the fewest pages; and how many blocks it parts."""
    starts = {size: page_starts(sheet, heights_pt, size) for size in sizes}
    found = {size: (parted_blocks(sheet.rows, starts[size]), len(starts[size])) for size in sizes}
    best = min(found.values())
    return next(size for size in sizes if found[size] == best), best[0]


def parted_blocks(rows: Sequence[Row], page_starts: Sequence[int]) -> int:
    """How many blocks go on over the turn of a page."""
    within = [set(_with_words(rows, _block(rows, index))) - {index} for index, row in enumerate(rows) if row.starts]
    return sum(1 for block in within if block & set(page_starts))


def page_starts(sheet: Sheet, heights_pt: Sequence[float], scale_percent: float) -> tuple[int, ...]:
    """Indices of the rows that begin a page, the first page left out."""
    head_pt = sum(heights_pt[sheet.repeat[0] : sheet.repeat[1] + 1]) if sheet.repeat else 0.0
    page_pt = PAGE_PT * USED * 100 / min(100.0, scale_percent) - head_pt
    out: list[int] = []
    used = 0.0
    for index, row in enumerate(sheet.rows):
        if index and (row.new_page or _turns(sheet.rows, heights_pt, index, used, page_pt)):
            out.append(index)
            used = 0.0
        used += heights_pt[index]
    return tuple(out)


def _turns(rows: Sequence[Row], heights_pt: Sequence[float], index: int, used_pt: float, page_pt: float) -> bool:
    """The page is turned before this row: it, or what must stay with it, does not fit below what is there."""
    left_pt = page_pt - used_pt
    if not used_pt:
        return False
    if rows[index].starts:
        block_pt = sum(heights_pt[i] for i in _with_words(rows, _block(rows, index)))
        if block_pt > left_pt and (block_pt <= page_pt or left_pt < page_pt * MOST_LEFT):
            return True
    together_pt = sum(heights_pt[i] for i in _together(rows, index))
    return together_pt > left_pt and (together_pt <= page_pt or heights_pt[index] > left_pt)


def _block(rows: Sequence[Row], index: int) -> Iterator[int]:
    """From a row that starts a block to the last before the next block or page."""
    yield index
    for i in range(index + 1, len(rows)):
        if rows[i].starts or rows[i].new_page:
            return
        yield i


def _with_words(rows: Sequence[Row], block: Iterable[int]) -> list[int]:
    """The block without the air at its end, which may fall off the page."""
    out = list(block)
    while len(out) > 1 and not rows[out[-1]].cells and not rows[out[-1]].keep:
        out.pop()
    return out


def _together(rows: Sequence[Row], index: int) -> Iterator[int]:
    """The row, and those after it as long as each stays with the next."""
    i = index
    yield i
    while i + 1 < len(rows) and _keeps(rows, i) and not rows[i + 1].new_page:
        i += 1
        yield i


def _keeps(rows: Sequence[Row], index: int) -> bool:
    """The row stays with the next: it says so, it heads something, or it is the air around a heading."""
    row = rows[index]
    if row.keep or (row.cells and row.cells[0].style in KEEPS):
        return True
    after = rows[index + 1] if index + 1 < len(rows) else row
    if row.cells:
        return after is not row and bool(after.cells) and after.cells[0].style in SUMS
    heads = bool(after.cells) and after.cells[0].style in KEEPS
    return heads or (index > 0 and bool(rows[index - 1].cells) and rows[index - 1].cells[0].style in KEEPS)
