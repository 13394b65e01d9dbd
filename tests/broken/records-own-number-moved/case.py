from decimal import Decimal
from pathlib import Path

from estimator.model.problem import Problem
from estimator.records.edited_prices import set_by_hand, to_look_at
from estimator.records.recorded_text import plain
from tests.records.by_hand import with_own_tunnel


def problems(folder: Path) -> tuple[Problem, ...]:
    """The belly turned out longer, and the tunnel stays at the owner's 26 ft."""
    return to_look_at(set_by_hand(plain(with_own_tunnel(Decimal("22.3")))), with_own_tunnel(Decimal("28.3")))
