"""One way over the stretch that is compared: what it costs and brings, or the rule that stands against it."""

from dataclasses import dataclass
from decimal import Decimal

from estimator.model.judgement import Verdict
from estimator.model.offer import Option
from estimator.model.say import Say


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One way over the stretch: an option with its dollars by class of work; or the rule that stands against it.

    `differs` says what is not the same work as in the first column; empty: the same.
    """

    method: str
    option: Option | None = None
    against: Verdict | None = None
    by_class: tuple[tuple[str, Decimal], ...] = ()
    differs: tuple[Say, ...] = ()
