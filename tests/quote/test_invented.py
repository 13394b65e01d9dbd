"""A quote for a real customer on the demo's figures is no offer, whatever its place is called; with the firm's own it is one."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from estimator.fieldnotes import read_job
from estimator.model.job import Job
from estimator.model.offer import Quote
from estimator.model.say import Say
from estimator.papers.homeowner import homeowner
from estimator.papers.letter import not_real
from estimator.papers.message import LONGEST, message
from estimator.pipeline import run
from estimator.quote.invented import IDENTITY, figures_of, share_of
from estimator.tables.lookups import SETUP_TASK
from estimator.tables.rows import TABLES
from estimator.tables.tables import Tables
from tests.made_up.quote import example_quote
from tests.tables.workbench import demo


@cache
def real() -> Job:
    job = read_job(Path(__file__).parents[1] / "jobs" / "j10-chestnut" / "job.toml").job
    assert job is not None
    return replace(job, demo=False, house=replace(job.house, jurisdiction="texas lump sum"))


def signed(tables: Tables, *names: str) -> Tables:
    """Every row of these tables looked at by somebody of the firm."""
    rows = {
        t: tuple(replace(r, changed_by="Ana", changed_on=date(2026, 11, 20)) for r in rows) if t in names else rows
        for t, rows in tables.rows.items()
    }
    return Tables(rows, tables.day)


def quoted(job: Job, tables: Tables) -> Quote:
    quote = run(job, tables, job.day).quote
    assert quote is not None
    return quote


def test_a_real_customers_quote_on_the_demos_figures_says_what_is_invented() -> None:
    said = [str(one) for one in quoted(real(), demo()).invented]
    assert said[:5] == [f"{key} in the table settings is the demo's invention" for key in IDENTITY]  # fmt: skip
    assert any(text.startswith("the wages of ") for text in said)
    assert said[-1].endswith("% of the cost comes from demo figures") and said[-1] > "95"


def test_a_demo_is_a_demo_and_says_so_already() -> None:
    assert quoted(replace(real(), demo=True), demo()).invented == ()


def test_rows_that_somebody_of_the_firm_has_signed_are_its_own() -> None:
    quote = quoted(real(), signed(demo(), *TABLES))
    assert quote.invented == ()


def test_the_share_of_what_is_not_yet_the_firms_own_is_counted_in_cost() -> None:
    """With the firm's own wages, times, margins and papers only what is bought is left [computed from the cost lines]."""
    tables = signed(demo(), "settings", "roles", "production", "pricing")
    quote = quoted(real(), tables)
    told = [str(w) for w in quote.paper_warnings if "comes from demo figures" in str(w)]
    assert len(told) == len(quote.options) and told[0].startswith("A: ")
    for option in quote.options:
        bought = sum(
            (c.amount for c in option.price.costs if c.part in ("material", "equipment", "sub", "fee")), Decimal(0)
        )
        total = sum((c.amount for c in option.price.costs), Decimal(0))
        assert float(share_of(option, tables)) == pytest.approx(float(100 * bought / total))


def test_setting_up_each_day_is_a_figure_like_any_other() -> None:
    """All tables the firm's own but the row of daily set-up: its hours, a part of each crew's [computed from the crews]."""
    tables = signed(demo(), *TABLES)
    rows = {**tables.rows, "production": tuple(r for r in tables.rows["production"] if r.task != SETUP_TASK)}  # type: ignore[attr-defined]
    rows["production"] += tuple(r for r in demo().rows["production"] if r.task == SETUP_TASK)  # type: ignore[attr-defined]
    one = Tables(rows, tables.day)
    for option in quoted(real(), one).options:
        total = sum((c.amount for c in option.price.costs), Decimal(0))
        theirs = sum(float(c.amount) * c.setup_hours / (c.setup_hours + c.work_hours) for c in option.price.crews)
        assert dict(figures_of(option, one)).keys() == {("production", SETUP_TASK)}
        assert float(share_of(option, one)) == pytest.approx(100 * theirs / float(total), rel=1e-4)


@pytest.mark.parametrize(
    ("demo", "said"), [(False, "DEMO. The prices and papers are invented."), (True, "Example only. The house")]
)
def test_the_message_to_send_says_the_same_as_the_paper_and_names_no_day_it_is_good_until(
    demo: bool, said: str
) -> None:
    example = example_quote()
    quote = replace(example, job=replace(example.job, demo=demo), invented=() if demo else (Say.of("wages"),))
    for language in ("en_US", "es_US"):
        text = message(quote, language)
        assert text.startswith(not_real(quote, language)) and len(text) < LONGEST
        assert "Good until" not in text and "Vigente" not in text
    assert message(quote, "en_US").startswith(said)


def test_every_sheet_of_a_quote_on_invented_prices_says_so() -> None:
    example = example_quote()
    quote = replace(example, job=replace(example.job, demo=False), invented=(Say.of("wages"),))
    for sheet in homeowner(quote, "en_US").sheets:
        assert any(not_real(quote, "en_US") == cell.value for row in sheet.rows for cell in row.cells), sheet.name
