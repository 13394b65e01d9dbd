"""Visits accepted before a repair in; discounts that credit them to it, by the firm's setting, out."""

from collections.abc import Sequence
from decimal import Decimal

from estimator.model.money import cents
from estimator.model.say import Dollars, Say
from estimator.model.wanted import Discount, PastVisit
from estimator.model.work import JOB, Takeoff
from estimator.pricing.shown import plain
from estimator.tables.tables import Tables
from estimator.wording.say import say
from estimator.works.methods import prepares

SETTING = "visit_credit_percent"


def visit_credits(visits: Sequence[PastVisit], takeoffs: Sequence[Takeoff], tables: Tables) -> tuple[Discount, ...]:
    """Return a discount for each visit, `visit_credit_percent` of what was charged; none for a scope that is a visit itself."""
    if not visits or all(t.repair.method == JOB or prepares(t.repair.method) for t in takeoffs):
        return ()
    percent = tables.amount(SETTING)
    return tuple(_credit(visit, percent) for visit in visits if cents(visit.charged * percent / 100))


def _credit(visit: PastVisit, percent: Decimal) -> Discount:
    said = Say.of(
        "Credit for the visit of {day}: {percent}% of {amount}",
        day=visit.day,
        percent=plain(percent),
        amount=Dollars(visit.charged),
    )
    return Discount(
        reason=say(said, "en_US"), reason_es=say(said, "es_US"), amount=cents(visit.charged * percent / 100)
    )
