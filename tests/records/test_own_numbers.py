"""A number set by hand stays, and the owner is told when what it was set against has moved."""

import io
import json
from dataclasses import replace
from decimal import Decimal

from openpyxl import load_workbook

from estimator.papers.office import office
from estimator.records.edited_prices import set_by_hand, to_look_at
from estimator.records.recorded_text import dumped, plain
from estimator.sheets.write import write
from tests.records.by_hand import with_own_tunnel

OLD = with_own_tunnel(Decimal("22.3"))


def codes(now):
    return [problem.code for problem in to_look_at(set_by_hand(json.loads(dumped(plain(OLD)))), now)]


def test_a_number_is_told_when_the_programs_own_has_moved_and_not_before():
    assert codes(OLD) == []
    assert codes(with_own_tunnel(Decimal("22.30"))) == []
    assert codes(with_own_tunnel(Decimal("28.3"))) == ["records/own-number-moved"]


def test_a_number_is_told_when_its_letter_has_come_to_mean_another_option():
    other = replace(OLD.options[0], name="Line the pipe from inside")
    assert codes(replace(OLD, options=(other, *OLD.options[1:]))) == ["records/own-number-elsewhere"]


def test_a_number_written_anew_with_its_own_reason_is_not_asked_about():
    first = OLD.options[0]
    anew = replace(first.price.overruled[0], ours=Decimal("28.3"), reason="measured again")
    assert codes(replace(OLD, options=(replace(first, price=replace(first.price, overruled=(anew,))),))) == []


def test_the_office_reads_it_in_red_beside_ours_and_mine():
    now = with_own_tunnel(Decimal("28.3"))
    said = tuple(str(problem.wrong) for problem in to_look_at(set_by_hand(plain(OLD)), now))
    sheet = load_workbook(io.BytesIO(write(office(replace(now, own_numbers=said))))).worksheets[0]
    cells = [cell for row in sheet.iter_rows() for cell in row if cell.value]
    assert any("quantity of tunnel 28.3 ft → 26 ft: measured by tape" in str(cell.value) for cell in cells)
    [red] = [cell for cell in cells if "was written when ours was 22.3 ft" in str(cell.value)]
    assert red.font.color.rgb == "FFA61B1B"
