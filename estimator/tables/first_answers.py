"""Answers to the first questions in; the cells they fill, and how much of a usual job is the firm's own, out."""

import re
from collections.abc import Collection, Mapping, Sequence
from decimal import Decimal, InvalidOperation

from estimator.tables.first_numbers import measured
from estimator.tables.first_questions import PRICED, Question
from estimator.tables.tables import Tables
from estimator.tables.whose import own_rows

OWNED = re.compile(
    r"(?P<amount>[\d.,]*\d)\W+(?:(?P<own>own|ours?|mine|propi[oa]|nuestr[oa])|rent(?:ed|al|ad[oa]|a)?)", re.IGNORECASE
)
"""A machine's cost and whether the firm owns it, as people type it: “120 own”, “320 rented”, “120 propia”."""
MEMBER = re.compile(r"(\d+(?:\.\d+)?|\.\d+)\s+(.+)")


def share_of_own(tables: Tables) -> float:
    """Return the percent of a usual job's cost on the firm's own rows: prices, and task times once every wage is its own."""
    own = own_rows(tables)
    paid = all(("roles", m.role) in own for m in tables.crew_members)
    return sum(
        number.share
        for number in measured()
        if (number.table, number.row) in own and (number.table in PRICED or (number.table == "production" and paid))
    )


def members_of(typed: str, roles: Sequence[str]) -> Mapping[str, str]:
    """Return how many of each role: “1 lead plumber, 2 helper”. Errors: ValueError with the part that cannot be read.

    >>> members_of("1 lead plumber, 0.5 helpers", ["lead plumber", "helper"])
    {'lead plumber': '1', 'helper': '0.5'}
    """
    out: dict[str, str] = {}
    for part in typed.split(","):
        match = MEMBER.fullmatch(part.strip())
        role = _role(match[2].strip().lower(), roles) if match else ""
        if match is None or not role or float(match[1]) <= 0:
            raise ValueError(part.strip())
        out[role] = match[1]
    return out


def _role(word: str, roles: Collection[str]) -> str:
    return next((role for role in roles if word in (role, f"{role}s")), "")


def written_values(question: Question, typed: str, standing: Mapping[str, str]) -> Mapping[str, str]:
    """Return the cells of an answer; a task's good and bad day move in proportion to its likely time, a machine is own or rented."""
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
