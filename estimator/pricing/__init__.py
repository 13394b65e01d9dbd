"""Step 5: takeoffs of a scope in, its price out; the cost of a candidate for the search; the range; the homeowner's money."""

from estimator.pricing.build import price_scope
from estimator.pricing.cancellation import cancel_until
from estimator.pricing.likely_range import likely_range, range_of
from estimator.pricing.payments import deposit_cap, deposit_known, payments_of
from estimator.pricing.present_worth import cost_a_year, cost_a_year_of_life
from estimator.pricing.price_by_class import price_by_class
from estimator.pricing.problems import PROBLEMS
from estimator.pricing.rough import RoughCost, rough_cost, smooth_price

__all__ = [
    "PROBLEMS",
    "RoughCost",
    "cancel_until",
    "cost_a_year",
    "cost_a_year_of_life",
    "deposit_cap",
    "deposit_known",
    "likely_range",
    "payments_of",
    "price_by_class",
    "price_scope",
    "range_of",
    "rough_cost",
    "smooth_price",
]
