"""Quantities in as they are worked out, one under another; the finished tuple out."""

from estimator.model.work import Input, Quantity
from estimator.takeoff.quantities import QUANTITIES
from estimator.works.notes import Given as Given
from estimator.works.notes import Notes
from estimator.works.rounding import shown as shown
from estimator.works.rounding import total as total
from estimator.works.rounding import up as up

CUBIC_FT_PER_CY = 27.0
COMMON_PRACTICE = "common practice"


class Working(Notes):
    """The sheet of paper of one takeoff: each quantity with its formula, inputs and source; what was assumed; cautions.

    >>> paper = Working()
    >>> paper.put("hangers", 11, "pipe / 4 ft, up, + 1 + branches", ("pipe", 27, "ft"), ("branches", 3), source="IRC P2605.1")
    11
    >>> paper.quantities[0].unit
    'each'

    Errors: KeyError for a quantity not in QUANTITIES.
    """

    def __init__(self) -> None:
        super().__init__()
        self._found: dict[str, Quantity] = {}

    def put(self, name: str, value: float, formula: str, *inputs: Given, source: str = COMMON_PRACTICE) -> float:
        """Write a quantity down and give its value back. Writing the same name again replaces it."""
        unit = QUANTITIES[name][0]
        given = tuple([Input(*i) for i in inputs])
        self._found[name] = Quantity(name=name, value=value, unit=unit, formula=formula, inputs=given, source=source)
        return value

    def add(self, name: str, value: float, formula: str, *inputs: Given, source: str = COMMON_PRACTICE) -> float:
        """Add to a quantity already written down, keeping how both parts came about."""
        old = self._found.get(name)
        if old is None:
            return self.put(name, value, formula, *inputs, source=source)
        total = old.value + value
        formula = f"{old.formula}; plus {formula}"
        return self.put(name, total, formula, *self.inputs_of(name), *inputs, source=old.source)

    def drop(self, name: str) -> None:
        """Strike a quantity that another way of working makes unneeded."""
        self._found.pop(name, None)

    def value(self, name: str) -> float:
        found = self._found.get(name)
        return found.value if found else 0.0

    def inputs_of(self, name: str) -> tuple[Given, ...]:
        """The inputs of a quantity already written down."""
        return tuple((i.name, i.value, i.unit) for i in self._found[name].inputs)

    def given(self, name: str) -> Given:
        """A quantity already written down, as an input of the next one."""
        return (QUANTITIES[name][1], self.value(name), QUANTITIES[name][0])

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """Everything that is more than nothing, in the order it was worked out."""
        return tuple(q for q in self._found.values() if q.value > 0)


def cubic_yards(cubic_ft: float) -> float:
    """
    >>> cubic_yards(54.0)
    2.0
    """
    return cubic_ft / CUBIC_FT_PER_CY
