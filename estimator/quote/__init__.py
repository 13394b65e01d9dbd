"""Step 6: priced scopes in, a Quote out: options side by side in words a homeowner compares by."""

from typing import TYPE_CHECKING

from estimator.model.on_demand import on_demand

if TYPE_CHECKING:
    from estimator.quote.build import build_quote
    from estimator.quote.chosen import Chosen
    from estimator.quote.refuse import PROBLEMS
    from estimator.quote.report import build_report

__all__ = ["PROBLEMS", "Chosen", "build_quote", "build_report"]
HOMES = {"PROBLEMS": "refuse", "Chosen": "chosen", "build_quote": "build", "build_report": "report"}
__getattr__ = on_demand(__name__, HOMES)
