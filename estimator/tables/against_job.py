"""A job and the firm's tables in; the job's own settings, its place and its soils that the tables do not have, out."""

from collections.abc import Iterator
from dataclasses import replace

from estimator.model.job import Job
from estimator.model.problem import CannotGoOn, Kind, Place, Problem, error, warning
from estimator.model.say import Say
from estimator.tables import against_add_ons, own_facts
from estimator.tables.cell_problems import near_or_all
from estimator.tables.check_settings import wrong_with
from estimator.tables.row_reader import tidy
from estimator.tables.rows import PlaceRow, Setting, Soil
from estimator.tables.tables import Tables

JOB_FILE = "the job file"
UNKNOWN_SETTING = error(
    "job/setting",
    "[settings] {key} is no setting of the firm's tables.",
    "Write one that stands in the settings table{near}.",
    "A setting changed for one job must be one that the tables have.",
)
UNKNOWN_PLACE = error(
    "job/jurisdiction",
    "jurisdiction = “{word}” is no place of the firm's tables.",
    "{near} Write “unknown” where nobody has checked that place yet.",
    "Tax, permits, inspection and the right to cancel all hang on the place; a misspelt one would leave them all open.",
)
UNKNOWN_SOIL = warning(
    "job/soil",
    "the soil “{word}” is not in the firm's tables, so it counts as unknown, the worst type.",
    "{near}",
    "Soil decides protection, hours and loads; a word nobody knows must not pass for one that somebody does.",
)
PROBLEMS: tuple[Kind, ...] = (
    UNKNOWN_SETTING,
    UNKNOWN_PLACE,
    UNKNOWN_SOIL,
    *own_facts.PROBLEMS,
    *against_add_ons.PROBLEMS,
)


def against_job(job: Job, tables: Tables) -> tuple[Problem, ...]:
    """Everything the job names that the tables do not have, or have otherwise."""
    return (
        *wrong_settings(job, tables),
        *_place(job, tables),
        *_soils(job, tables),
        *own_facts.unknown_facts(job, tables),
        *against_add_ons.against_add_ons(job, tables),
    )


def wrong_settings(job: Job, tables: Tables) -> Iterator[Problem]:
    """Each key the tables lack, and each value that the settings table itself would refuse."""
    from difflib import get_close_matches

    known = {row.key: row for row in tables.settings}
    for key, value in job.settings:
        if key in known:
            place = Place(JOB_FILE, table="settings", cell=key)
            yield from wrong_with(replace(known[key], value=value.strip()), place)
            continue
        close = get_close_matches(key, known, 1)
        yield UNKNOWN_SETTING(Place(JOB_FILE), key=key, near=Say.of(", such as {key}", key=close[0]) if close else "")


def with_settings_of(job: Job, tables: Tables) -> Tables:
    """The tables with the settings this job changes. Errors: CannotGoOn naming each that the tables would refuse."""
    if not job.settings:
        return tables
    if wrong := tuple(wrong_settings(job, tables)):
        raise CannotGoOn(*wrong)
    rows = {key: tidy(replace(tables.setting(key), value=value.strip())) for key, value in job.settings}
    return tables.with_settings({key: row.value for key, row in rows.items() if isinstance(row, Setting)})


def _place(job: Job, tables: Tables) -> Iterator[Problem]:
    known = [row.place for row in tables.every(PlaceRow)]
    word = job.house.jurisdiction
    if word not in (*known, "unknown"):
        yield UNKNOWN_PLACE(
            Place(JOB_FILE, table="house", cell="jurisdiction"), word=word, near=near_or_all(word, known)
        )


def _soils(job: Job, tables: Tables) -> Iterator[Problem]:
    known = [row.soil for row in tables.current("soils") if isinstance(row, Soil)]
    named = [(job.house.soil, Place(JOB_FILE, table="house", cell="soil"))]
    for line in job.lines:
        marks = (mark for mark in line.marks if mark.word == "soil")
        named += [(mark.choice, Place(mark.origin.file, mark.origin.row or None)) for mark in marks]
    for word, place in dict(reversed(named)).items():  # each word once, where it stands first
        if word and word not in known:
            yield UNKNOWN_SOIL(place, word=word, near=near_or_all(word, known))
