"""The options that several commands share, each said once."""

import math
from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.clock import today
from estimator.cli.completing import languages
from estimator.model.stretch import Stretch

JobFile = Annotated[Path, typer.Argument(metavar="JOB", help="The job file, such as larkspur/job.toml.")]
TablesFrom = Annotated[
    Path | None,
    typer.Option(
        "--tables",
        metavar="FOLDER",
        help="Price tables: a folder of CSV files or one workbook. Else ESTIMATOR_TABLES, else your settings file, "
        "else the invented demo prices.",
    ),
]
SetKeys = Annotated[
    list[str] | None,
    typer.Option(
        "--set", metavar="KEY=VALUE", help="What if: house.soil=rock, settings.bedding_ft=0.5. Nothing is saved."
    ),
]


AS_SET = "as set"
"""Stands where no language was typed; `guarded` puts the one of the settings file in its place."""


def _language(code: str) -> str:
    from estimator.model.languages import LANGUAGES

    if code not in (*LANGUAGES, AS_SET):
        raise typer.BadParameter(f"there are no texts in {code or 'no language'}; write {' or '.join(LANGUAGES)}.")
    return code


Language = Annotated[
    str,
    typer.Option(
        "--language",
        parser=_language,
        metavar="CODE",
        autocompletion=languages,
        help="en_US or es_US; else as your settings file says.",
        show_default=False,
    ),
]
Languages = Annotated[
    list[str] | None,
    typer.Option(
        "--language",
        parser=_language,
        metavar="CODE",
        autocompletion=languages,
        help="en_US or es_US; twice for both. Else as the job file says.",
    ),
]
AsJson = Annotated[bool, typer.Option("--json", help="The same answer as JSON, for other programs.")]


def _day(text: str) -> date:
    from estimator.fieldnotes.day_answers import read_day  # only where a day is given

    day = read_day(text, today())
    if day is None:
        raise typer.BadParameter(f"{text} is no day; write it as 2026-11-18.")
    return day


OnDayOrToday = Annotated[
    date | None, typer.Option("--on", parser=_day, metavar="YYYY-MM-DD", help="The day; else today.")
]
OnDay = Annotated[
    date | None,
    typer.Option("--on", parser=_day, metavar="YYYY-MM-DD", help="The day; else the day in the job file."),
]


def _stations(text: str) -> Stretch:
    try:
        ends = [float(part) for part in text.replace("–", "-").replace(" to ", "-").rsplit("-", 1)]
        stretch = Stretch.between(ends[0], ends[1])
        if not 0 < stretch.length_ft < math.inf:
            raise ValueError(text)
        return stretch
    except (ValueError, IndexError):
        raise typer.BadParameter(f"{text} is no stretch; write two stations in feet, such as 2-29.") from None


Stations = Annotated[
    Stretch | None,
    typer.Option("--where", parser=_stations, metavar="FROM-TO", help="Stations in feet, such as 2-29; needs --line."),
]
