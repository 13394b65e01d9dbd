"""Step 6: priced scopes in, a Quote out: options side by side in words a homeowner compares by."""

from estimator.quote.build import build_quote
from estimator.quote.chosen import Chosen
from estimator.quote.refuse import PROBLEMS
from estimator.quote.report import build_report

__all__ = ["PROBLEMS", "Chosen", "build_quote", "build_report"]
