"""The ways to renew one stretch side by side, and where two of them break even."""

from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.judgement import Verdict
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.model.stretch import Stretch


class Column(Frozen, kw_only=True):
    """One way over the stretch: an option with its dollars by class of work; or the rule that stands against it.

    `differs` says what is not the same work as in the first column; empty: the same.
    """

    method: str
    option: Option | None = None
    against: Verdict | None = None
    by_class: tuple[tuple[str, Decimal], ...] = ()
    differs: tuple[Say, ...] = ()


class Comparison(Frozen, kw_only=True):
    """Columns in order of the all-in price, those that may not be offered last; `decides` the sentence for the driveway."""

    line: str
    stretch: Stretch
    does: Say
    columns: tuple[Column, ...]
    decides: tuple[Say, ...]

    @property
    def open(self) -> tuple[Column, ...]:
        return tuple(c for c in self.columns if c.option is not None)


class Axis(Frozen, kw_only=True):
    """What is turned, from where to where, in steps; `now` is where the job stands."""

    name: Say
    unit: str
    low: float
    high: float
    step: float
    now: float
    known: bool = True  # the notes say where the job stands


class Turn(Frozen, kw_only=True):
    """One crossing: the way that is cheaper below it and the one above, and both real all-in prices a step away."""

    at: float
    below: str
    above: str
    prices_below: tuple[Decimal, Decimal]
    prices_above: tuple[Decimal, Decimal]


class AlongAxis(Frozen, kw_only=True):
    """All turns along one axis, and (value, first, second) smooth all-in prices in dollars for a small chart."""

    axis: Axis
    turns: tuple[Turn, ...]
    points: tuple[tuple[float, float, float], ...]


class BreakEven(Frozen, kw_only=True):
    first: str
    second: str
    along: tuple[AlongAxis, ...]
