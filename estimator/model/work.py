"""A way of repair over a real stretch, and the quantities it takes: Repair, Quantity, Takeoff, Scope."""

from collections.abc import Iterable, Mapping
from decimal import Decimal
from functools import cached_property

from estimator.model.frozen import Frozen
from estimator.model.judgement import Need, Verdict
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.works import Works


class Repair(Frozen, kw_only=True):
    """One method over one stretch of one line.

    `stretch` is the pipe replaced or lined, pads and remnants included (stations, ft). `answers` are ids of needs it puts
    right, `leaves` ids of needs inside it that it does not. `facts` are the yes/no facts known before takeoff (rules add
    theirs through verdicts). `first` are repairs that must come before and are priced with it (a dig before a liner).
    `entry` is "exit" (along the pipe from where it leaves the slab), "wall" (straight in from the nearest open wall) or "".
    """

    id: str
    method: str
    line: str
    stretch: Stretch
    answers: tuple[str, ...] = ()
    leaves: tuple[str, ...] = ()
    entry: str = ""
    reroute: str = ""  # the name of the way round it follows
    facts: frozenset[str] = frozenset()
    verdicts: tuple[Verdict, ...] = ()
    first: tuple["Repair", ...] = ()
    because: tuple[Say, ...] = ()  # how the stretch came about: pads, whole joints, remnants


def name_of(method: str, line: str, stretch: Stretch, entry: str = "", reroute: str = "") -> str:
    """Return the id of a repair: its line, its way, where.

    >>> name_of("tunnel", "main", Stretch(-2.0, 27.0), "exit")
    'main: tunnel by exit, -2 to 27 ft'
    """
    by = f" by {entry}" if entry else f" {reroute}" if reroute else ""
    return f"{line}: {method}{by}, {stretch.from_ft:.4g} to {stretch.to_ft:.4g} ft"


def all_repairs(repairs: Iterable[Repair]) -> tuple[Repair, ...]:
    """Return every repair, each after those that must come before it."""
    return tuple(one for repair in repairs for one in (*all_repairs(repair.first), repair))


LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
"""What options are called by, in the order in which they are shown."""

JOB = "job"
"""The method of the one takeoff a scope has besides its repairs: mobilizing, permit, film, waits."""


class Input(Frozen):
    """One number that went into a quantity, as a person would write it down."""

    name: str
    value: float | str
    unit: str = ""


class Quantity(Frozen, kw_only=True):
    """How much: name (one of takeoff.quantities.NAMES), value, unit, formula in words, inputs, where the formula is from."""

    name: str
    value: float
    unit: str
    formula: str = ""
    inputs: tuple[Input, ...] = ()
    source: str = ""


class Takeoff(Frozen, kw_only=True, dict=True):
    """All quantities of one repair (or of the job itself, repair.method == JOB), and the facts recipes ask for.

    `sizes` names what {size} in a recipe means here, in inches as text: "4", "3x4" ... `finds` are findings of the takeoff
    itself, such as a pipe crown that would hit a beam: verdicts on the repair found only once its geometry is known.
    `works` are the openings and pipe that the quantities measure.
    """

    repair: Repair
    quantities: tuple[Quantity, ...]
    facts: frozenset[str]
    size: str = ""
    assumptions: tuple[Say, ...] = ()
    cautions: tuple[Say, ...] = ()
    finds: tuple[Verdict, ...] = ()
    works: Works = Works(line="")

    def value(self, name: str) -> float:
        """The value of a quantity; 0.0 when this repair has none of it."""
        found = self._by_name.get(name)
        return found.value if found else 0.0

    def quantity(self, name: str) -> Quantity | None:
        return self._by_name.get(name)

    @cached_property
    def _by_name(self) -> Mapping[str, Quantity]:
        return {q.name: q for q in reversed(self.quantities)}  # the first of a name counts

    @property
    def filled_with_the_rest(self) -> bool:
        """It lays pipe that must hold water before it is covered: once for all such pipe of a visit, as its job has it."""
        return bool(self.works.new_pipe) and self.value("test_head_ft") > 0


def tested(takeoffs: Iterable[Takeoff]) -> frozenset[str]:
    """Return the ids of repairs whose new pipe or lining has a water test among these takeoffs, the job's among them."""
    every = tuple(takeoffs)
    of_all = any(t.repair.method == JOB and t.value("tests") for t in every)
    return frozenset(t.repair.id for t in every if t.value("tests") or (of_all and t.filled_with_the_rest))


class Candidate(Frozen, kw_only=True):
    """A repair as the search sees it. `cost` in whole cents; `shared` are keys of charges paid once a scope.

    `kind` is what people call it where its method does not say, such as a spot; else "".
    """

    id: str
    line: str
    stretch: Stretch
    answers: frozenset[str]
    cost: int
    shared: frozenset[str] = frozenset()
    method: str = ""
    kind: str = ""
    cleans: bool = False  # it works inside the pipe and leaves its wall as it is: it may go on where another repair is


class Scope(Frozen, kw_only=True):
    """Repairs that together answer a set of needs; what they leave; and by how much at most the price could be beaten."""

    repairs: tuple[Repair, ...]
    needs: tuple[Need, ...]
    leaves: tuple[Need, ...] = ()
    bound: Decimal = Decimal(0)
