"""Rows that hold what nobody knows beforehand: what an unknown adds, and what may happen on a job."""

from dataclasses import dataclass
from decimal import Decimal

from estimator.tables.row_base import Kept, Usual, col


@dataclass(frozen=True, slots=True, kw_only=True)
class Contingency(Kept):
    fact: str = col("an unknown that asks for more: depth_unlocated, soil_unknown ...")
    percent: Decimal = col("added to the method's own", least=0, usual=Usual(0, 60, "above it look first"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Event(Kept):
    """Table events: what may happen once on a job, with its chance and what it costs the firm. Only the range reads it."""

    event: str = col("id, and what the office reads", needed=True)
    methods: tuple[str, ...] = col("the repairs it may happen to", refers="methods")
    when: tuple[str, ...] = col("facts that must hold, each optionally after `not`")
    chance_percent: float = col(
        "on how many of a hundred such jobs", least=0, usual=Usual(0.5, 60, "above it plan for it")
    )
    crew: str = col("whose hours it takes; empty: none", refers="crews")
    hours: float = col("crew-hours it takes", least=0, usual=Usual(0, 60, "more is another job"))
    cost: Decimal = col("dollars beside the hours", least=0)
