"""What was found in, its camera stills onto a page, two in a row, each with the letter and name of its finding under it."""

from collections.abc import Sequence

from estimator.model.found import Found
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.papers.your_pipe import stills
from estimator.sheets.book import Cell, Picture, Row

HEIGHT_PX, MOST = 150, 6
"""Six stills keep a report on two pages; the others are in the homeowner's workbook."""


def still_pairs(letter: Letter, page: Page, found: Sequence[Found]) -> None:
    """Add the stills that were handed in, those of the first findings first; nothing where there are none."""
    shown = [(name, one) for one in found for name in stills(letter, one)][:MOST]
    columns = (0, page.columns - 1)
    for start in range(0, len(shown), 2):
        pair = shown[start : start + 2]
        for column, (name, one) in zip(columns, pair, strict=False):
            page.pictures.append(
                Picture(
                    data=letter.pictures[name],
                    alt=letter.say(one.short),
                    row=len(page.rows),
                    column=column,
                    height_px=HEIGHT_PX,
                )
            )
        page.rows.append(Row((), HEIGHT_PX * 0.75 + 6, starts=True, keep=True))
        captions = [f"{one.letter}  {letter.say(one.short)}" for _, one in pair]
        first, second = (*captions, "")[:2]
        page.add(Cell(first, "quiet", page.columns - 1), Cell(second, "quiet"))
