"""What works a rule concerns: asked of the works of a repair, whatever its method is called."""

from collections.abc import Callable

from estimator.model.frozen import Frozen
from estimator.scopes.rules.facts import StretchFacts
from estimator.works.methods import Method, known
from estimator.works.properties import PROPERTIES

Holds = Callable[[StretchFacts], bool]


class Concern(Frozen):
    """A property of works, in words for the list of rules, and how it is asked."""

    words: str
    holds: Holds
    or_else: tuple["Concern", ...] = ()

    def __or__(self, other: "Concern") -> "Concern":
        """Whether the works are such, or such as the other."""
        return Concern(self.words, lambda it: self.holds(it) or other.holds(it), (*self.or_else, other))

    @property
    def all_words(self) -> tuple[str, ...]:
        return (self.words, *(word for other in self.or_else for word in other.all_words))


def _of(it: StretchFacts) -> Method | None:
    """The record of the way asked about: what tool it is; what it does is asked of its works."""
    return known(it.method)


def _of_works(name: str) -> Concern:
    one = PROPERTIES[name]
    return Concern(words=one.words, holds=lambda it: one.holds(it.works))


CUTS_FLOOR = _of_works("floor_cut")
BELOW_FLOOR = _of_works("below_floor")
PEOPLE_BELOW = _of_works("people_below")
TUNNELS = Concern(words="people work under the house", holds=lambda it: bool(it.works.tunnels))
OPENS_GROUND = _of_works("ground_opened")
DIGS = _of_works("dug")
BREAKS_PIPE = _of_works("bursting")
LAYS = Concern(
    words="new pipe is laid where the old pipe lay", holds=lambda it: any(x.line == it.line for x in it.works.laid)
)
NEW_PIPE = _of_works("pipe_laid")
A_NEW_RUN = Concern(
    words="a run of new pipe is laid or pulled", holds=lambda it: bool(it.works.new_pipe) and not it.works.piece
)
LINES = _of_works("lining")
LINED_IN_PIECES = Concern(
    words="old pipe is lined in pieces", holds=lambda it: any(x.pieces_ft for x in it.works.lined)
)
LINED_WHOLE = Concern(
    words="old pipe is lined in one shot", holds=lambda it: any(not x.pieces_ft for x in it.works.lined)
)
KEEPS_THE_OLD_PATH = Concern(
    words="the new inside lies where the old pipe lay", holds=lambda it: bool(it.works.lined or it.works.burst)
)
RENEWS = Concern(words="pipe is laid, pulled or lined in its place", holds=lambda it: bool(it.works.renewed))
FROM_INSIDE = _of_works("from_inside")
CLEANS = Concern(words="the pipe is cleaned", holds=lambda it: bool(it.works.cleans) and not it.works.lined)
HANGS = Concern(
    words="pipe is hung in a crawl space", holds=lambda it: "crawl" in it.zones and any(x.hung for x in it.works.laid)
)
ONLY_CLEANS = Concern(
    words="the pipe is cleaned and nothing else", holds=lambda it: bool(it.works.cleans) and not it.works.renewed
)
TESTS_SECTIONS = _of_works("sections_tested")
LOOKS = Concern(
    words="the pipe is uncovered to see it",
    holds=lambda it: bool(it.works.openings) and not it.works.new_pipe and not it.works.lined,
)
GOES_ROUND = Concern(words="new pipe goes another way", holds=lambda it: it.works.goes_round)
CLOSES = Concern(words="old pipe is closed off and left", holds=lambda it: it.works.closes)
ONLY_CLOSES = Concern(
    words="old pipe is closed off and nothing laid", holds=lambda it: it.works.closes and not it.works.new_pipe
)
A_PIECE = Concern(
    words="a piece of a run is renewed by itself", holds=lambda it: it.works.piece and bool(it.works.renewed)
)
PIECE_IN_A_FLOOR = Concern(
    words="a piece is renewed through one opening in the floor", holds=lambda it: it.works.piece and it.works.cuts_floor
)
LAID_UNDER_A_FLOOR = Concern(
    words="new pipe is laid under a floor",
    holds=lambda it: it.works.below_floor and bool(it.works.laid) and not it.works.piece,
)
A_WAY_ROUND = Concern(
    words="a way that goes round the old pipe",
    holds=lambda it: (way := _of(it)) is not None and way.goes_round,
)
HANDS_OVER = Concern(
    words="pipe is handed over at the property line",
    holds=lambda it: (way := _of(it)) is not None and way.hands_over,
)
HAS_A_GROUND = Concern(
    words="a way that belongs under one kind of ground",
    holds=lambda it: (way := _of(it)) is not None and bool(way.ground),
)
HAS_BORES = Concern(
    words="a tool made for some sizes of pipe", holds=lambda it: (way := _of(it)) is not None and bool(way.bores)
)
HAS_A_LENGTH = Concern(
    words="a tool or a dig that reaches so far", holds=lambda it: (way := _of(it)) is not None and bool(way.longest)
)
ANYTHING = Concern(words="any repair", holds=lambda it: True)
