"""What decides in the yard: the difference, the drive that is opened, the dip that a lining keeps. Common practice."""

from dataclasses import replace
from decimal import Decimal

from estimator.model.stretch import Stretch
from estimator.studies.compare import compare
from tests.studies.test_compare import YARD_OF_ALDER, column


def said(comparison) -> list[str]:
    return [str(text) for text in comparison.decides]


def test_the_cheapest_is_named_and_what_each_other_costs_more(house, tables) -> None:
    found = compare(house("alder"), tables, "main", YARD_OF_ALDER)
    prices = {c.method: c.option.all_in for c in found.open}
    least = min(prices.values())
    assert all(f"costs ${p - least:,} more" in said(found)[0] for p in prices.values() if p != least)


def test_lining_and_bursting_are_said_to_keep_the_dip_and_the_trench_is_not(house, tables) -> None:
    kept = [
        text for text in said(compare(house("alder"), tables, "main", YARD_OF_ALDER)) if text.startswith("A dip from")
    ]
    assert kept
    assert all("lining it" in text and "bursting it" in text and "trench" not in text for text in kept)


def test_what_the_drive_costs_is_the_lines_of_the_quote_that_open_it_and_put_it_back(house, tables) -> None:
    found = compare(house("alder"), tables, "main", YARD_OF_ALDER)
    lines = column(found, "trench").option.price.lines
    drive = sum((x.amount for x in lines if x.work_item in ("drive opening", "drive back")), Decimal(0))
    assert (f"${drive:,} of that dig" in " ".join(said(found))) == bool(drive)


def test_a_yard_without_drive_or_dip_says_nothing_of_them(house, tables) -> None:
    """A lawn over clay pipe whose roots may be lined."""
    job = replace(house("maple"), water_tests=())
    found = compare(job, tables, "main", Stretch(30, 48), ("trench", "burst"))
    assert not any("drive" in text or "dip" in text for text in said(found))


def test_no_side_drain_is_said_in_words(house, tables) -> None:
    assert "no side drain joins there" in str(compare(house("maple"), tables).does)


def test_one_side_drain_joins_and_several_join(house, tables) -> None:
    job = house("pecan")
    main = job.line("main")
    branches = [m for m in main.marks if m.word == "branch" and 0 < m.stretch.middle_ft < 20]
    lone = replace(main, marks=(*(m for m in main.marks if m.word != "branch"), branches[0]))
    one = replace(job, lines=tuple(lone if x.name == "main" else x for x in job.lines))
    assert "one side drain joins there" in str(compare(one, tables, "main", Stretch(-2, 27)).does)
    assert "side drains join there" in str(compare(job, tables, "main", Stretch(-2, 27)).does)
