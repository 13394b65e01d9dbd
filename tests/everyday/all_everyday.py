"""Ten everyday jobs: notes of an invented house each, the way of repair that is meant, and what such a job costs from memory."""

from dataclasses import dataclass
from pathlib import Path

from estimator.cli.priced_job import priced
from estimator.model.offer import Option

HERE = Path(__file__).parent


@dataclass(frozen=True, slots=True, kw_only=True)
class Everyday:
    """`folder` beside this file; `low` to `high` dollars: US prices of 2024–26, from memory."""

    folder: str
    what: str
    method: str
    low: int
    high: int

    def option(self) -> Option:
        """The cheapest option with this way alone. Errors: StopIteration where there is none."""
        options = priced(HERE / self.folder / "job.toml", None).quote.options
        mine = sorted(options, key=lambda o: o.price.total)
        return next(o for o in mine if {r.method for r in o.scope.repairs} == {self.method})


TEN = (
    Everyday(folder="clean-and-film", what="Roots cut out of a yard line from its cleanout, filmed before and after",
             method="clean", low=350, high=750),
    Everyday(folder="short-liner", what="One cracked place in 4 in clay lined from its cleanout, 4 ft",
             method="sectional liner", low=2000, high=4500),
    Everyday(folder="reline-40-ft", what="40 ft of 4 in clay in the yard lined in one shot",
             method="reline", low=4500, high=8500),
    Everyday(folder="yard-spot", what="A broken joint dug up in the lawn at 3 ft, 6 ft of pipe renewed",
             method="yard spot", low=2000, high=5000),
    Everyday(folder="trench-60-ft", what="60 ft of 4 in clay renewed by machine in a lawn, 3 ft deep",
             method="trench", low=7500, high=14000),
    Everyday(folder="burst-50-ft", what="50 ft of 4 in clay burst under a lawn, 3 ft deep",
             method="burst", low=7000, high=12500),
    Everyday(folder="kitchen-around-the-house", what="A 2 in kitchen line given up: through the wall and 18 ft along the house",
             method="reroute", low=3000, high=7000),
    Everyday(folder="tunnel-12-ft", what="4 in iron under a slab renewed by a tunnel of 12 ft",
             method="tunnel", low=6000, high=11000),
    Everyday(folder="slab-spot", what="4 ft of 4 in iron renewed through the hall floor, floor finish not in it",
             method="slab spot", low=2500, high=5500),
    Everyday(folder="crawl-space-30-ft", what="30 ft of hung 4 in iron renewed in a crawl space of 30 in",
             method="crawl replace", low=2500, high=6000),
)  # fmt: skip
