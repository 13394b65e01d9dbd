"""A method, a line and a stretch in, the id of that repair out."""

from estimator.model.stretch import Stretch


def name_of(method: str, line: str, stretch: Stretch, entry: str = "", reroute: str = "") -> str:
    """Its line, its way, where.

    >>> name_of("tunnel", "main", Stretch(-2.0, 27.0), "exit")
    'main: tunnel by exit, -2 to 27 ft'
    """
    by = f" by {entry}" if entry else f" {reroute}" if reroute else ""
    return f"{line}: {method}{by}, {stretch.from_ft:.4g} to {stretch.to_ft:.4g} ft"
