"""A visit accepted before a repair comes off it, by hand to the cent: the firm's percent of what was charged, before tax."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from estimator.model.problem import CannotGoOn
from estimator.model.wanted import Override, PastVisit
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.discounts import visit_credits
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

D = Decimal
VISIT = PastVisit(day=date(2026, 11, 20), charged=D("450.25"))
Scope = tuple[Takeoff, ...]


@pytest.fixture(name="half")
def _half(make_tables: Callable[..., Tables]) -> Tables:
    return make_tables(settings={"visit_credit_percent": "50"})


def test_half_of_a_visit_comes_off_before_the_whole_charge_is_taxed(
    maple: Scope, half: Tables, make_place: Callable[..., PlaceRow]
) -> None:
    """450.25 × 50 % = 225.125, so 225.13. 4,150 − 225.13 = 3,924.87; tax (3,924.87 − 150 permit) × 8.25 % = 311.4268."""
    place = make_place(tax_kind="whole charge")
    price = price_scope(maple, half, place, discounts=visit_credits([VISIT], maple, half))
    line = price.lines[-1]
    assert (line.amount, price.tax, price.total) == (D("-225.13"), D("311.43"), D("4236.30"))
    assert sum(line.amount for line in price.lines) == price.total - price.tax
    assert line.text_en == "Credit for the visit of November 20, 2026: 50% of $450.25"
    assert line.text_es == "Crédito por la visita del 20 de noviembre de 2026: 50 % de $450.25"


def test_two_visits_are_two_lines(maple: Scope, half: Tables, place: PlaceRow) -> None:
    """4,200 − 225.13 − 50 = 3,924.87."""
    both = [VISIT, PastVisit(day=date(2026, 12, 1), charged=D(100))]
    assert price_scope(maple, half, place, discounts=visit_credits(both, maple, half)).total == D("3924.87")


def test_a_visit_is_credited_to_no_other_visit_and_none_where_the_firm_gives_none(
    maple: Scope, half: Tables, make_tables: Callable[..., Tables]
) -> None:
    for method in ("visit", "clean", "isolation test", "look and see"):
        visit = [replace(t, repair=replace(t.repair, method=method)) for t in maple if t.repair.method != "job"]
        once = [t for t in maple if t.repair.method == "job"]
        assert visit_credits([VISIT], [*visit, *once], half) == ()
        assert len(visit_credits([VISIT], [*visit, *maple], half)) == 1
    assert visit_credits([VISIT], maple, make_tables(settings={"visit_credit_percent": "0"})) == ()


def test_the_floor_margin_stands_and_no_credit_is_more_than_the_price(
    maple: Scope, place: PlaceRow, make_tables: Callable[..., Tables]
) -> None:
    """All of 748.93 may come off 4,200 and 748.94 may not (tests/pricing/test_owners_word.py); the owner's word lets all go."""
    whole = make_tables(settings={"visit_credit_percent": "100"})

    def credited(charged: str) -> Decimal:
        off = visit_credits([replace(VISIT, charged=D(charged))], maple, whole)
        return price_scope(maple, whole, place, discounts=off, overrides=mine).total

    mine: list[Override] = []
    assert credited("748.93") == D("3451.07")
    with pytest.raises(CannotGoOn) as stopped:
        credited("748.94")
    assert stopped.value.problems[0].code == "pricing/below-floor"
    assert "Credit for the visit of November 20, 2026" in str(stopped.value.problems[0])
    mine.append(Override(rule="floor-margin", reason="my sister's house"))
    assert credited("9000") == D(0)
