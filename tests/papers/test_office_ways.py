"""The ways to one stretch stand in the office's book, with a chart of where two break even, and nowhere else."""

import io
import zipfile
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.cli.price_tables import readable_tables
from estimator.cli.priced_job import ready
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.ways import Turning, Way, Ways
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.office import office, workings
from estimator.papers.office_ways import turned
from estimator.pipeline.costing import with_job_settings
from estimator.sheets.write import write
from estimator.studies.ways import ways_of
from tests.made_up.quote import example_quote

POINTS = ((4.0, 7311.13, 5311.17), (10.0, 8311.19, 8311.19), (20.0, 9311.23, 12311.29))
TURNING = Turning(
    what=Say("length of pipe"), unit="ft", now=14.0, points=POINTS, turns=((10.0, "break-through", "tunnel"),)
)
FOUND = Ways(
    line="main", stretch=Stretch(0.0, 14.0), does=Say("14 ft of the main line"), first="tunnel", second="break-through",
    ways=(
        Way(method="tunnel", price=Decimal("8713.00"), all_in=Decimal("8713.00"), by_class=(("reach", Decimal("4417.00")),)),
        Way(method="reline", against=Say("CANARYagainst")),
    ),
    decides=(Say("CANARYdecides"),), turnings=(TURNING,),
)  # fmt: skip
QUOTE = replace(example_quote(), ways=FOUND)


def parts(data: bytes) -> str:
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        return "\n".join(archive.read(name).decode("utf-8", "replace") for name in archive.namelist())


def test_the_office_sees_the_ways_what_stands_against_one_and_the_chart() -> None:
    sheet = next(s for s in workings(QUOTE).sheets if s.name == "Ways")
    assert [chart.kind for chart in sheet.charts] == ["scatter"]
    text = parts(write(workings(QUOTE)))
    assert "CANARYagainst" in text and "CANARYdecides" in text and "7311" in text
    assert "Ways" not in [s.name for s in (*workings(example_quote()).sheets, *office(QUOTE).sheets)]


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_neither_homeowner_nor_crew_sees_any_of_it(language: str) -> None:
    for book in (homeowner(QUOTE, language), crew(QUOTE, language)):
        text = parts(write(book))
        assert not [odd for odd in ("CANARY", "7311", "12311", "8713", "4417") if odd in text]


def test_where_the_choice_turns_is_said_in_words() -> None:
    assert turned(FOUND, TURNING) == "Up to 10.0 ft break-through is cheaper, beyond that tunnel."
    assert "all the way from 4.0 to 20.0 ft" in turned(FOUND, replace(TURNING, turns=()))


def test_a_job_s_ways_carry_the_prices_of_the_comparison() -> None:
    folder = Path(__file__).parent.parent / "jobs" / "pecan"
    job, read, _ = ready(folder / "job.toml", None, (), None)
    found = ways_of(job, with_job_settings(job, readable_tables(read.day, None)))
    assert found is not None and {found.first, found.second} == {"tunnel", "break-through"}
    for way in found.ways:
        assert (way.price is None) == (way.against is not None)
        if way.price is not None:
            assert sum((amount for _, amount in way.by_class), Decimal(0)) == way.price
