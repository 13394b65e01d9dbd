"""What was asked for on the command line in; the price tables meant by it, read for a day, out."""

import os
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.model.problem import CannotGoOn, Problem

if TYPE_CHECKING:
    from estimator.tables.tables import Tables

TABLES_VARIABLE = "ESTIMATOR_TABLES"


def tables_for(
    day: date, asked: Path | None, before: "Tables | None" = None
) -> "tuple[Tables | None, tuple[Problem, ...]]":
    """The tables named on the command line, else in ESTIMATOR_TABLES, else in the settings file, else the demo's own.

    `before`: an older set to hold their figures against.
    """
    from estimator.tables.read import read_tables
    from estimator.takeoff.quantities import FACTS, QUANTITIES
    from estimator.works.methods import names

    units = {name: unit for name, (unit, _) in QUANTITIES.items()}
    reading = read_tables(tables_folder(asked), day, units, FACTS, (*names(), "job"), before)
    return reading.tables, reading.problems


def tables_before(day: date, asked: Path | None, before: Path | None) -> "Tables | None":
    """What the tables asked for are held against: the ones named, else the firm's own in use where those are others.

    Errors: CannotGoOn where the ones named cannot be read.
    """
    from estimator.tables.table_files import demo_folder

    if before is not None:
        return readable_tables(day, before)
    in_use = tables_folder(None)
    if asked is None or in_use.resolve() in (asked.resolve(), demo_folder().resolve()):
        return None
    return tables_for(day, None)[0]


def tables_folder(asked: Path | None) -> Path:
    """Where those tables lie."""
    from estimator.tables.table_files import demo_folder

    return firms_own(asked) or demo_folder()


def firms_own(asked: Path | None) -> Path | None:
    """The same, but None where only the demo's are left."""
    from estimator.cli.own_settings import own_settings

    named = os.environ.get(TABLES_VARIABLE)
    return asked or (Path(named) if named else own_settings().tables)


def readable_tables(day: date, asked: Path | None) -> "Tables":
    """The same, where nothing can be done without them. Errors: CannotGoOn with all that is wrong with them."""
    tables, problems = tables_for(day, asked)
    if tables is None:
        raise CannotGoOn(*problems)
    return tables
