"""Every limit of the table checks at its edge and one step off, and the program's own crew rates."""

import zipfile
from decimal import Decimal
from io import BytesIO
from pathlib import Path

import pytest

from estimator.model.problem import Place
from estimator.sheets.gate import LAST_ROW, gate
from estimator.tables.values import MOST
from tests.tables.workbench import demo, reading, with_edits


@pytest.mark.parametrize(
    ("edit", "codes"),
    [
        ("subs_and_fees | load | price_day | 2026-05-29", []),  # 180 days before 2026-11-25 [computed]
        ("subs_and_fees | load | price_day | 2026-05-28", ["tables/old-price"]),
        ("subs_and_fees | load | valid_until | 2026-11-25", []),  # good through the day itself
        ("subs_and_fees | load | valid_until | 2026-11-24", ["tables/price-ended"]),
        ("pricing | own | margin_percent | 60", []),
        ("pricing | own | margin_percent | 60.1", ["tables/margin-or-markup"]),
        ("pricing | own | margin_percent | 99.9", ["tables/margin-or-markup"]),
        ("pricing | own | margin_percent | 100", ["tables/margin-100"]),
        ("pricing | sub | floor_margin_percent | 25", []),
        ("pricing | sub | floor_margin_percent | 25.1", ["tables/floor-margin"]),
        ("settings | crew_day_hours | value | 12", []),
        ("settings | crew_day_hours | value | 12.1", ["tables/setting-range"]),
        ("settings | crew_day_hours | value | 4", []),
        ("settings | crew_day_hours | value | 3.9", ["tables/setting-range"]),
        ("contingency | over_fill | percent | 1.1", []),
        ("contingency | over_fill | percent | 1", ["tables/far-from-before"]),  # a fifth of the demo's 5
        ("contingency | over_fill | percent | 0.99", ["tables/percent-share"]),
        ("contingency | over_fill | percent | 0", ["tables/far-from-before"]),
        (f"extras | rock | price | {MOST}", ["tables/far-from-before"]),
        (f"extras | rock | price | {MOST + Decimal('0.01')}", ["tables/too-large"]),
        ("extras | rock | price | 0.01", ["tables/far-from-before"]),
        ("extras | rock | price | 0", ["tables/no-price"]),
        ("extras | rock | cap | 0.01", ["tables/far-from-before"]),
        ("extras | rock | cap | 0", ["tables/negative"]),
        ("factors | hard_clay | multiplier | 0.1", ["tables/far-from-before"]),
        ("factors | hard_clay | multiplier | 0", ["tables/negative"]),
        ("soils | loam | shrink_machine | 0.1", ["tables/far-from-before"]),
        ("soils | loam | shrink_hand | 0", ["tables/negative"]),
        ("soils | loam | tons_per_bcy | 0", ["tables/negative"]),
        ("places | texas separated | tax_percent | 0.5", ["tables/percent-typed-as-share"]),  # asked about, not refused
        ("places | texas separated | tax_percent | 1", []),
        ("materials | sand | waste_percent | 0.5", ["tables/percent-typed-as-share"]),
        ("roles | helper | burden_percent | 0.99", ["tables/percent-share"]),
        ("settings | firm_name | value | J", []),
        ("settings | firm_name | value | ", ["tables/empty-cell"]),
        ("settings | accent_colour | value | #2f5d50", []),
        ("settings | accent_colour | value | 2F5D5", ["tables/color"]),
        ("production | box | low | 1.5", []),  # low may equal likely
        ("production | box | low | 1.51", ["tables/low-likely-high"]),
        ("production | box | high | 1.5", []),
        ("production | box | high | 1.49", ["tables/low-likely-high"]),
    ],
)
def test_a_limit_holds_at_its_edge_and_not_one_step_off(edit: str, codes: list[str], tmp_path: Path) -> None:
    assert [problem.code for problem in reading(with_edits(tmp_path, [edit])).problems] == codes


@pytest.mark.parametrize(
    ("units", "codes"),
    [("280000", ["tables/far-from-before"]), ("300000", ["tables/no-price", "tables/far-from-before"])],
)
def test_a_price_for_so_many_units_that_one_costs_nothing_is_refused(
    units: str, codes: list[str], tmp_path: Path
) -> None:
    # 28 ÷ 280,000 is a hundredth of a cent, the least one of anything costs [computed]
    assert [
        p.code for p in reading(with_edits(tmp_path, [f"materials | sand | price_for | {units}"])).problems
    ] == codes


@pytest.mark.parametrize(("first_day", "codes"), [("2027-01-01", []), ("2027-01-02", ["tables/gap"])])
def test_a_price_that_begins_the_day_after_the_old_one_leaves_no_gap(
    first_day: str, codes: list[str], tmp_path: Path
) -> None:
    edits = ["subs_and_fees | load | valid_until | 2026-12-31", "subs_and_fees | load | copied as | load"]
    target = with_edits(tmp_path, [*edits, f"subs_and_fees | load | last from | {first_day}"])
    assert [problem.code for problem in reading(target).problems] == codes


def test_a_crew_costs_the_sum_of_its_people_an_hour() -> None:
    """38 × 1.32 = 50.16, 22 × 1.32 = 29.04, 20 × 1.32 = 26.40, 32 × 1.32 = 42.24, 34 × 1.32 = 44.88 [computed]."""
    crews = ("plumbing", "tunnel", "labor", "excavation", "lining")
    assert [str(demo().rate(crew)) for crew in crews] == ["79.20", "79.20", "52.80", "68.64", "124.08"]
    with pytest.raises(KeyError):
        demo().rate("nobody")


def sheet_with_cell(cell: str) -> bytes:
    out = BytesIO()
    with zipfile.ZipFile(out, "w") as parts:
        parts.writestr("xl/workbook.xml", "<workbook/>")
        parts.writestr(
            "xl/worksheets/sheet1.xml", f'<worksheet><row r="1"><c r="{cell}"><v>1</v></c></row></worksheet>'
        )
    return out.getvalue()


@pytest.mark.parametrize(
    ("cell", "passes"),
    [
        (f"A{LAST_ROW}", True),
        (f"A{LAST_ROW + 1}", False),
        ("ZZ1", True),
        ("AAA1", False),
        ("ZZ1424", True),
        ("ZZ1425", False),
    ],  # 702 x 1,425 > 1,000,000
)
def test_a_far_away_cell_is_stopped_before_any_reader_sees_it(cell: str, passes: bool) -> None:
    wrong = gate(sheet_with_cell(cell), Place("prices.xlsx"))
    assert (wrong is None) == passes
    assert passes or (wrong is not None and wrong.code == "sheet/far-cell")


@pytest.mark.parametrize(
    ("edit", "codes"),
    [
        (
            "work_items | sod | active | no",
            ["tables/work-item-off"],
        ),  # a line the firm does not sell; its recipe is passed over
        ("methods | abandon | active | no", []),
        ("factors | hot_season | active | no", []),
        ("production | jet | active | no", ["tables/out-of-use"]),  # a recipe would have no hours
        ("materials | sod | active | no", ["tables/out-of-use"]),
        ("roles | helper | active | no", ["tables/out-of-use"] * 2),
        ("pricing | sub | active | no", ["tables/out-of-use"] * 9 + ["tables/missing-class"]),
        ("settings | factor_cap | active | no", ["tables/missing-setting"]),
    ],
)
def test_setting_a_row_out_of_use_never_leaves_a_price_without_it(edit: str, codes: list[str], tmp_path: Path) -> None:
    found = reading(with_edits(tmp_path, [edit])).problems
    assert sorted(p.code for p in found if p.code != "tables/unused") == sorted(codes)
