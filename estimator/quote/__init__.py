"""Step 6: priced scopes in, a Quote out: options side by side in words a homeowner compares by."""

from typing import TYPE_CHECKING

from estimator.model.on_demand import on_demand

if TYPE_CHECKING:
    from estimator.quote.build import build_quote, build_report
    from estimator.quote.recommend import Chosen
    from estimator.quote.refuse import PROBLEMS

__all__ = ["PROBLEMS", "Chosen", "build_quote", "build_report"]
HOMES = {"PROBLEMS": "refuse", "Chosen": "recommend", "build_quote": "build", "build_report": "build"}
__getattr__ = on_demand(__name__, HOMES)
