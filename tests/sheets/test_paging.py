"""Where a printed page begins: headings never at its foot, blocks whole where a page can hold them."""

import pytest

from estimator.sheets.book import Cell, Row, Sheet
from estimator.sheets.paging import LEAST_PERCENT, PAGE_PT, USED, page_starts, parted_blocks, print_percent

PAGE = PAGE_PT * USED


def sheet(*rows: Row, scale: int | None = None) -> Sheet:
    return Sheet(name="one", widths=(40.0,), rows=rows, scale=scale)


def text(**more: bool) -> Row:
    return Row((Cell("text"),), **more)


def heading() -> Row:
    return Row((Cell("head", "heading"),))


def test_what_fits_on_a_page_is_not_parted_and_a_hair_more_is() -> None:
    rows = sheet(text(), text())
    assert page_starts(rows, (PAGE / 2, PAGE / 2), 100) == ()
    assert page_starts(rows, (PAGE / 2, PAGE / 2 + 0.1), 100) == (1,)


def test_a_heading_goes_with_what_it_heads() -> None:
    rows = sheet(text(), Row(), heading(), Row(), text())
    assert page_starts(rows, (PAGE - 40, 6, 20, 3, 20), 100) == (1,)
    assert page_starts(rows, (PAGE - 40, 6, 10, 3, 20), 100) == ()


def test_a_sum_stands_with_the_last_of_what_it_sums() -> None:
    rows = sheet(text(), text(), Row((Cell("Total", "total words"),)))
    assert page_starts(rows, (PAGE - 30, 20, 20), 100) == (1,)


def test_a_block_goes_to_a_new_page_only_where_it_does_not_fit() -> None:
    rows = sheet(text(), text(starts=True), text())
    assert page_starts(rows, (300, 200, PAGE - 500), 100) == ()
    assert page_starts(rows, (300, 200, PAGE - 499), 100) == (1,)


def test_a_block_longer_than_a_page_begins_where_half_a_page_is_free() -> None:
    rows = sheet(text(), text(starts=True), *[text()] * 3)
    third = PAGE / 3 - 0.01
    assert page_starts(rows, (PAGE * 0.49, *[third] * 4), 100) == (2,)
    assert page_starts(rows, (PAGE * 0.51, *[third] * 4), 100) == (1, 4)


@pytest.mark.parametrize(("percent", "starts"), [(100, (2,)), (50, ())])
def test_smaller_print_holds_more(percent: float, starts: tuple[int, ...]) -> None:
    assert page_starts(sheet(text(), text(), text()), (PAGE / 2,) * 3, percent) == starts


def test_rows_that_head_every_page_take_their_room_on_each() -> None:
    rows = Sheet(name="one", widths=(40.0,), rows=(text(),) * 3, repeat=(0, 0))
    assert page_starts(rows, (20, PAGE - 40, 30), 100) == (2,)


def test_print_is_a_little_smaller_where_that_saves_a_page_with_a_few_rows() -> None:
    rows = sheet(text(), text())
    assert print_percent(rows, (PAGE / 2, PAGE / 2), 150) == 100
    assert print_percent(rows, (PAGE, 20), 150) == 97
    assert print_percent(rows, (PAGE, PAGE), 150) == 100
    assert print_percent(rows, (PAGE, 20), 100) == 100 * 0.91  # nothing between fits beside what printers need
    assert print_percent(sheet(text(), text(), scale=80), (PAGE / 0.8, 20), 150) >= LEAST_PERCENT


def test_print_is_smaller_still_where_that_keeps_a_block_whole() -> None:
    rows = sheet(text(starts=True), text(), text())
    assert print_percent(rows, (PAGE / 2, PAGE / 2, PAGE * 0.2), 150) == 82
    assert print_percent(rows, (PAGE, PAGE, PAGE), 150) == 100  # no size holds it


def test_air_at_the_end_of_a_block_may_fall_off_the_page() -> None:
    rows = sheet(text(), text(starts=True), Row((), 12.0), text(starts=True))
    assert page_starts(rows, (PAGE - 100, 100, 12, 20), 100) == (2,)
    assert parted_blocks(rows.rows, (2,)) == 0 and parted_blocks(rows.rows, (1,)) == 0


def test_a_block_over_the_turn_of_a_page_is_counted() -> None:
    rows = sheet(text(), text(starts=True), text(), text(starts=True))
    assert parted_blocks(rows.rows, (2,)) == 1
