"""A fact of the firm's own: named in a setting, read by a factor, told by the job; hours and price follow it."""

from dataclasses import replace
from datetime import date
from functools import cache

import pytest
from conftest import NotesOf, demo_tables

from estimator.model.offer import Quote
from estimator.pipeline import run
from estimator.scopes.owners_words import unknown_words
from estimator.tables.tables import Tables

YARD = """
pass front cleanout to street, surface
 0      yard lawn, cleanout
 0-60   depth 3ft from lawn
28      offset 30%
60      end city main, stop reached main
"""
SLOWER = 1.5


@cache
def firms() -> Tables:
    """The demo's tables with a fact of their own that makes digging half as long again."""
    tables = demo_tables()
    hard_clay = next(f for f in tables.factors if f.fact == "hard_clay")
    rows = (*tables.rows["factors"], replace(hard_clay, fact="steep yard", multiplier=SLOWER))
    return replace(tables, rows={**tables.rows, "factors": rows}).with_settings({"own_facts": "steep yard, dogs"})


def _quote(notes: NotesOf, *told: str) -> Quote:
    job = notes(YARD)
    quote = run(replace(job, house=replace(job.house, own_facts=told)), firms(), date(2026, 11, 25)).quote
    assert quote is not None
    return quote


def _hours(quote: Quote, task: str) -> float:
    """Crew-hours of a task in the cheapest option."""
    return sum(t.hours for t in quote.options[0].price.tasks if t.task == task)


@pytest.mark.parametrize("told", [(), ("not steep yard",), ("dogs",)])
def test_a_fact_that_does_not_hold_slows_nothing_down(notes: NotesOf, told: tuple[str, ...]) -> None:
    assert [o.price.total for o in _quote(notes, *told).options] == [o.price.total for o in _quote(notes).options]


def test_a_fact_that_holds_slows_its_tasks_down_by_its_factor(notes: NotesOf) -> None:
    before, after = _quote(notes), _quote(notes, "steep yard")
    assert _hours(after, "hand dig") == pytest.approx(SLOWER * _hours(before, "hand dig"))


def test_it_is_asked_for_only_while_a_row_reads_it(notes: NotesOf) -> None:
    job = notes(YARD)
    assert [p.code for p in unknown_words(job, firms())] == ["job/own-fact-open"]  # nothing reads “dogs”
    assert not unknown_words(replace(job, house=replace(job.house, own_facts=("not steep yard",))), firms())
    assert not unknown_words(job, demo_tables())
