"""Answers to the first questions in; the cells they fill, and how much of a usual job is the firm's own, out."""

import re
import unicodedata
from collections.abc import Mapping
from decimal import Decimal, InvalidOperation

from estimator.tables.first_questions import CITY, OF_THE_MARGIN, PRICED, Question, measured
from estimator.tables.invented_rows import own_rows
from estimator.tables.read import demo_rows
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

OWNED = re.compile(
    r"(?P<amount>[\d.,]*\d)\W+(?:(?P<own>own|ours?|mine|propi[oa]|nuestr[oa])|rent(?:ed|al|ad[oa]|a)?)", re.IGNORECASE
)
"""A machine's cost and whether the firm owns it, as people type it: “120 own”, “320 rented”, “120 propia”."""
MEMBER = re.compile(r"(\d+(?:\.\d+)?|\.\d+)\s+(.+)")
BETWEEN = re.compile(r"[,;+]|\b(?:y|and)\b", re.IGNORECASE)
ENDING = re.compile(r"(?:es|s|e)\b")
US_DAY = re.compile(r"(\d{1,2})/(\d{1,2})/(\d{4})", re.ASCII)
BURDEN_TYPED = "burden typed in tables start"
"""In the note of a wage's row: the burden is the firm's own, even where it is the figure of the demo."""
TYPED = "typed in tables start: "
"""How the source of a place begins, before the columns that somebody has typed."""


def answered(question: Question, tables: Tables) -> bool:
    """Return whether the tables hold the firm's own answer, so that it is not asked again."""
    if question.row == CITY:
        place = own_place(tables)
        return place is not None and question.column in typed_columns(place.source, question.column)
    if question.column == "burden_percent":
        theirs = {row.role: row.burden_percent for row in demo_rows().roles}
        return any(
            BURDEN_TYPED in role.note or role.burden_percent != theirs.get(role.role)
            for role in tables.roles
            if ("roles", role.role) in own_rows(tables)
        )
    return (question.table, question.row) in own_rows(tables)


def own_place(tables: Tables) -> PlaceRow | None:
    """The last place that the demo does not have."""
    theirs = {row.place for row in demo_rows().every(PlaceRow)}
    rows = [row for row in tables.current("places") if isinstance(row, PlaceRow) and row.place not in theirs]
    return rows[-1] if rows else None


def typed_columns(source: str, *otherwise: str) -> tuple[str, ...]:
    """The columns of a place that were typed; once its source says something else, somebody has looked at all of it.

    >>> typed_columns("typed in tables start: text, tax_kind; write who said so"), typed_columns("our accountant", "text")
    (('text', 'tax_kind'), ('text',))
    """
    if not source.startswith(TYPED):
        return otherwise
    return tuple(source.removeprefix(TYPED).split(";")[0].split(", "))


def share_of_own(tables: Tables) -> float:
    """Return the percent of a usual job's cost on the firm's own rows: prices, and task times once every wage is its own."""
    own = own_rows(tables)
    paid = all(("roles", m.role) in own for m in tables.crew_members)
    return sum(
        number.share
        for number in measured()
        if (number.table, number.row) in own and (number.table in PRICED or (number.table == "production" and paid))
    )


def members_of(typed: str, roles: Mapping[str, str]) -> Mapping[str, str]:
    """Return how many of each role: “1 lead plumber, 2 helper”. `roles`: each by the names it may be typed as, without accents
    and plurals. Errors: ValueError with the part that cannot be read.

    >>> names = {"lead plumber": "lead plumber", "helper": "helper", "ayudante": "helper"}
    >>> members_of("1 lead plumber, 0.5 helpers", names), members_of("1 Lead Plumber y 2 ayudantes", names)
    ({'lead plumber': '1', 'helper': '0.5'}, {'lead plumber': '1', 'helper': '2'})
    """
    known = {_stem(name): role for name, role in roles.items()}
    out: dict[str, str] = {}
    for part in BETWEEN.split(typed):
        match = MEMBER.fullmatch(part.strip())
        role = known.get(_stem(match[2])) if match else None
        if match is None or not role or float(match[1]) <= 0:
            raise ValueError(part.strip())
        out[role] = match[1]
    return out


def _stem(words: str) -> str:
    plain = unicodedata.normalize("NFKD", words.lower()).encode("ascii", "ignore").decode()
    return " ".join(ENDING.sub("", word) for word in plain.split())


def written_values(question: Question, typed: str, standing: Mapping[str, str]) -> Mapping[str, str]:
    """Return the cells of an answer; a task's good and bad day move in proportion to its likely time, a machine is own or rented."""
    if question.row.endswith("_until") and (day := US_DAY.fullmatch(typed)):
        return {"value": f"{day[3]}-{int(day[1]):02}-{int(day[2]):02}"}
    if question.row in OF_THE_MARGIN:
        return {"value": re.sub(r"[$,%\s]", "", typed)}
    if question.table != "production":
        amount = typed.replace("$", "").strip()
        whose = OWNED.fullmatch(amount) if question.table == "equipment" else None
        if whose is None:
            return {question.column: amount}
        return {question.column: whose["amount"].strip(), "own": "yes" if whose["own"] else "no"}
    try:
        likely = Decimal(typed)
        factor = likely / Decimal(standing["likely"])
    except (InvalidOperation, ZeroDivisionError):
        return {"likely": typed}
    return {"likely": typed, **{c: f"{round(Decimal(standing[c]) * factor, 4).normalize():f}" for c in ("low", "high")}}
