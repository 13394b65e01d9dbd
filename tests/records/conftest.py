"""A small quote made by hand, its inputs, and papers of a few bytes: enough to issue revisions without the whole way."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from estimator.model.job import Customer, House, Job
from estimator.model.judgement import Diagnosis
from estimator.model.line import Finding, Line, Origin
from estimator.model.offer import Firm, Option, Quote
from estimator.model.price import LineItem, Price
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.work import Scope
from estimator.records.issue import Made
from estimator.records.record import Inputs
from estimator.tables.rows import TABLES, Setting
from estimator.tables.tables import Tables

DAY = date(2026, 11, 18)


def _line(amount: str) -> LineItem:
    return LineItem(
        id="A1",
        work_item="mobilize",
        work_class="find",
        repair="job",
        text_en="Coming and going",
        text_es="Ir y venir",
        size=1,
        size_unit="job",
        billed="lump",
        quantity=Decimal(1),
        unit="job",
        unit_price=Decimal(amount),
        amount=Decimal(amount),
    )


def _option(amount: str) -> Option:
    price = Price(
        tasks=(),
        crews=(),
        costs=(),
        steps=(),
        lines=(_line(amount),),
        direct=Decimal(100),
        contingency_percent=Decimal(5),
        before_rounding=Decimal(amount),
        total=Decimal(amount),
    )
    return Option(
        letter="A",
        title=Say("Dig at one spot"),
        under_title=Say("from the lawn"),
        scope=Scope(repairs=(), needs=()),
        takeoffs=(),
        price=price,
        days_on_site=Decimal(1),
        days_without_drains=Decimal(1),
        floors_opened=(),
        floor_sf=0,
        yard_sf=60,
        old_pipe_left_ft=20,
        stays_old=(),
        water_test="yes",
        water_test_text=Say("yes"),
        life_low=50,
        life_high=100,
        warranty_en="two years",
        warranty_es="dos años",
        main_risk=Say("rain"),
        extras=(),
        terms=(),
        payments=(),
    )


def made_up_quote(amount: str = "4200.00", row: int = 3, revision: int = 1) -> Quote:
    found = Finding(
        id="f1", kind="hole", stretch=Stretch(12, 12), size_in=3, origin=Origin("main.txt", row, "12 hole 3in")
    )
    job = Job(
        number="2026-131",
        day=DAY,
        prepared_by="Ines Calloway",
        customer=Customer(name="Wren Castellane", site="417 Larkspur Court, Fernbrook"),
        house=House(floor="slab", jurisdiction="demo"),
        lines=(Line(name="main", size_in=4, pipe="clay", findings=(found,)),),
        demo=True,
    )
    return Quote(
        job=job,
        diagnosis=Diagnosis(needs=()),
        options=(_option(amount),),
        blocked=(),
        firm=Firm(name="Juniper", address="", phone="", email="", licence="", insurance="", accent="2F6B4F"),
        place="demo",
        revision=revision,
        day=DAY,
        valid_until=date(2026, 12, 18),
        seen=(),
        not_seen=(),
        found=(),
    )


def made_up_inputs(note: str = "") -> Inputs:
    setting = Setting(key="round_to", value="25", unit="dollars", min=None, max=None, why="the price's step", note=note)
    rows = dict.fromkeys(TABLES, ()) | {"settings": (setting,)}
    texts = {"job.toml": "[job]\n", "main.txt": "12 hole 3in\n"}
    return Inputs(
        job_file="job.toml",
        texts=texts,
        tables=Tables(rows, DAY, "f1", "/home/x/tables"),
        day=DAY,
        languages=("en_US",),
    )


def made_up_papers(quote: Quote) -> Callable[[int], Made]:
    def make(number: int) -> Made:
        numbered = replace(quote, revision=number)
        name = f"Drain quote r{number} - 417 Larkspur Court.xlsx"
        data = f"{number} {quote.options[0].price.total}".encode() * 400
        return Made(numbered, {f"to send/{name}": data, f"internal/Office r{number}.xlsx": data})

    return make


@pytest.fixture(name="quote")
def _quote() -> Quote:
    return made_up_quote()


@pytest.fixture(name="inputs")
def _inputs() -> Inputs:
    return made_up_inputs()


@pytest.fixture(name="quote_at")
def _quote_at() -> Callable[..., Quote]:
    return made_up_quote


@pytest.fixture(name="papers")
def _papers() -> Callable[[Quote], Callable[[int], Made]]:
    return made_up_papers
