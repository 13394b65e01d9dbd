"""What a rule is: facts of a stretch and the limits in, one ruling (or several, or none) out."""

from collections.abc import Callable, Iterable, Iterator
from typing import Literal

from msgspec.structs import force_setattr

from estimator.model.basis import Basis
from estimator.model.frozen import Frozen
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.scopes.rules.concern import Concern
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured

COMMON_PRACTICE = "common practice"
FROM_MEMORY = "from memory, to be checked"

Worse = Literal[
    "offering what cannot work", "leaving out a caution", "hurting somebody", "leaving out a way that works"
]
"""Which mistake a rule is there to avoid; the first three make a doubtful case fire, the last makes it keep still."""


class Ruling(Frozen, kw_only=True):
    """A rule's answer: the effect, a sentence for the homeowner, one for the estimator, the facts it adds to takeoff.

    `stretch` is set where the answer is about less than the whole stretch asked about (a dip in a long line).
    """

    effect: Effect
    homeowner: Say
    estimator: Say
    facts: frozenset[str] = frozenset()
    stretch: Stretch | None = None


Answers = Ruling | Iterable[Ruling] | None


class Rule(Frozen, kw_only=True):
    """One rule. `concerns` says what works it is asked of. `numbers` are for those who build it; `reads` are the settings it asks for.

    `settled_by` is the kind of visit after which it no longer stands against a firm price, "" where no visit settles it.
    One that `goes_without_saying` (a tunnel in a lawn) is never printed as the reason why a way is not offered.
    One that `judges_the_cure` may answer that a way does not put right what is wrong, and alone may.
    `applies` is asked before takeoff; `measures`, where a rule needs the geometry, after it; `rests` of what the price of a
    whole option rests on. `guards_people` rules cannot be
    overruled without an approval on file.
    """

    id: str
    numbers: tuple[str, ...]
    concerns: Concern
    statement: str
    reason: str
    source: str
    worse: Worse
    reads: tuple[str, ...] = ()
    settled_by: str = "measure"
    guards_people: bool = False
    goes_without_saying: bool = False
    judges_the_cure: bool = False
    applies: Callable[[StretchFacts, Limits], Answers] | None = None
    measures: Callable[[Measured, Limits], Answers] | None = None
    rests: Callable[[Basis, Limits], Answers] | None = None

    @property
    def found_by_takeoff(self) -> bool:
        """It is asked in the takeoff, beside the geometry it needs; it stands here so that it can be read and looked up."""
        return not (self.applies or self.measures or self.rests)

    @property
    def asked_of(self) -> tuple[str, ...]:
        """What works it is asked of, in words."""
        return self.concerns.all_words


class Row(Rule, kw_only=True):
    """A rule that turns on one figure or one fact, as a row of a table: `when` it fires, and the one answer it then gives.

    `fires` and `misses` are examples, as facts made up by `tests/made_up/stretch.py`; a test tries each.
    """

    when: Callable[[StretchFacts, Limits], bool]
    effect: Effect
    homeowner: Say
    estimator: Say | Callable[[StretchFacts, Limits], Say]
    adds: frozenset[str] = frozenset()
    fires: tuple[str, ...]
    misses: tuple[str, ...]

    def __post_init__(self) -> None:
        force_setattr(self, "applies", self._answer)

    def _answer(self, it: StretchFacts, limits: Limits) -> Ruling | None:
        if not self.when(it, limits):
            return None
        estimator = self.estimator if isinstance(self.estimator, Say) else self.estimator(it, limits)
        return Ruling(effect=self.effect, homeowner=self.homeowner, estimator=estimator, facts=self.adds)


def asked(rules: Iterable[Rule], it: StretchFacts) -> Iterator[Rule]:
    """The rules that have anything to say of these works; each concern is asked once."""
    held: dict[int, bool] = {}
    for rule in rules:
        key = id(rule.concerns)
        if key not in held:
            held[key] = rule.concerns.holds(it)
        if held[key]:
            yield rule
