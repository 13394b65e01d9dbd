"""Every way of repair as one record, all that is to be known of it by its name. To add a way, add a record and its table rows.

Rules, takeoff, schedule and papers ask the record, or the works its plan makes; they know no way by its name.
"""

from collections.abc import Callable
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.say import Say
from estimator.model.works import Works
from estimator.works import plans
from estimator.works.case import Case

Plan = Callable[[Case], Works]
Ground = Literal["", "outside", "floor", "crawl"]
Shape = Literal[
    "",
    "where it is",
    "pieces",
    "shot",
    "spot",
    "tunnel",
    "strip",
    "trench",
    "pits",
    "hung",
    "way round",
    "to the lot line",
]  # how far a way reaches over a bad place (scopes/ways.py); "" where it is never chosen by itself
Measure = Literal[
    "cleaning", "pieces", "lining", "open spot", "open run", "floor spot", "floor strip", "tunnel", "pits", "way round",
    "closing", "section tests", "look", "hung", "to the lot line", "visit", "works",
]  # fmt: skip
"""What a takeoff counts (takeoff/takeoff.py); `works`: what the openings and the pipe of its plan come to."""
DIG, AT_THE_PIPE, FINDING = ("reach", "pipe", "put back"), ("pipe",), ("find",)
YARD, SLAB, UNDER = "merge_gap_yard_ft", "merge_gap_slab_ft", "merge_gap_tunnel_ft"


class Method(Frozen, kw_only=True):
    """One way of repair.

    `plan` says what it does to ground, floor and house; `renews` is False where the pipe is as old afterwards as before.
    `kind` is what a homeowner would call it, `reach` how it comes to the pipe, which the house lives with; `ground` what
    must lie over the pipe. Settings by name: `merge_gap` (two bad places nearer than this are one), `longest` (as far as
    the tool or a single dig reaches), `bores` (least and greatest bore it works in).

    Words: `label` its name in the tables, `short` in a title after the main way, `does` what it does in a sentence,
    `at_the_pipe` the step of the work on the pipe, `beside` how it is set against others. `too_long`, `too_short` say why
    it has no shape where no rule speaks. `hours` are the classes of work in which it always has hours. `settles` are kinds
    of trouble it finds the truth of. `weighed` is its turn when two ways are set against each other, 0 for none.
    """

    name: str
    plan: Plan
    kind: str
    label: Say
    short: Say
    does: Say
    measure: Measure = "works"
    shape: Shape = ""
    ground: Ground = ""
    entry: str = ""
    renews: bool = True
    reach: str = ""
    merge_gap: str = ""
    longest: str = ""
    bores: tuple[str, str] | None = None
    hours: tuple[str, ...] = DIG
    at_the_pipe: Say | None = None
    beside: Say | None = None
    no_shape: tuple[str, Say, Say] | None = None
    settles: tuple[str, ...] = ()
    at_a_point: bool = False  # it needs no length
    lined: bool = False
    first: bool = False  # it may come before a lining or a pull, at one place
    longer: str = ""  # what it is called where it goes on past one place
    across: bool = False  # it may do one side of a change of ground
    weighed: int = 0
    off: Literal["at the pipe", "when joined", "never"] = "at the pipe"  # when nobody may use the drain

    @property
    def to_the_edge(self) -> bool:
        """It goes on along the pipe to where that leaves the slab."""
        return self.shape in ("tunnel", "strip")

    @property
    def spot(self) -> bool:
        """It opens one place, so long and no longer."""
        return self.shape == "spot"

    @property
    def goes_round(self) -> bool:
        """It replaces pipe by pipe another way, one of those that were seen on site."""
        return self.shape == "way round"

    @property
    def hands_over(self) -> bool:
        """It ends at the property line; what lies beyond is somebody else's to repair."""
        return self.shape == "to the lot line"


REPLACE = Say.of("Replace {length} of the {line} with new pipe")
LINE = Say.of("Line {length} of the {line}")
OUT_AND_IN = Say.of("old pipe out, new pipe in")
NEW_WALL = Say.of("new wall inside the old pipe, hardened and filmed")
LINING, THROUGH_THE_FLOOR = Say.of("lining"), Say.of("new pipe through the floor")
TOO_LONG = Say.of("What would have to be dug there is longer than a single spot.")
ONE_PLACE = Say.of("One opening is enough there.")
LOOK_AGAIN = Say.of("It is filmed again first; a hole is dug to look only where the camera cannot pass.")
LENGTH = "length-fits-the-method"

RECORDS: dict[str, Method] = {
    m.name: m
    for m in (
        Method(
            name="clean", plan=plans.clean, kind="clean", renews=False, shape="where it is", measure="cleaning",
            longest="clean_length_max_ft", bores=("clean_bore_min_in", "clean_bore_max_in"), hours=AT_THE_PIPE,
            label=Say.of("clean"), short=Say.of("cleaning"), does=Say.of("Clean {length} of the {line}"),
        ),
        Method(
            name="sectional liner", plan=plans.sectional, kind="lined spot", reach="lining", shape="pieces", measure="pieces",
            longest="sectional_length_max_ft", bores=("sectional_bore_min_in", "sectional_bore_max_in"), hours=AT_THE_PIPE,
            lined=True, at_the_pipe=NEW_WALL, label=Say.of("sectional liner"), short=LINING, does=LINE,
        ),
        Method(
            name="reline", plan=plans.reline, kind="line", reach="lining", shape="shot", measure="lining",
            longest="reline_length_max_ft", bores=("reline_bore_min_in", "reline_bore_max_in"), hours=AT_THE_PIPE, weighed=6,
            lined=True, at_the_pipe=NEW_WALL, label=Say.of("reline"), short=LINING, does=LINE, beside=Say.of("lining it"),
        ),
        Method(
            name="yard spot", plan=plans.yard_spot, kind="spot", reach="trench", shape="spot", measure="open spot",
            ground="outside", merge_gap=YARD, longest="yard_spot_max_ft", first=True, longer="trench", weighed=4, at_the_pipe=OUT_AND_IN,
            no_shape=(LENGTH, TOO_LONG, Say.of("Cut back to sound pipe, with what lies near it, longer than a spot: a trench.")),
            label=Say.of("yard spot"), short=Say.of("a yard repair"), does=REPLACE, beside=Say.of("the dig in one place"),
        ),
        Method(
            name="slab spot", plan=plans.slab_spot, kind="spot", reach="floor", shape="spot", measure="floor spot",
            ground="floor", merge_gap=SLAB, longest="slab_spot_max_ft", first=True, longer="break-through", at_the_pipe=OUT_AND_IN,
            no_shape=(LENGTH, TOO_LONG, Say.of("Cut back to sound pipe, with what lies near it, longer than a spot: a strip or a tunnel.")),
            label=Say.of("slab spot"), short=THROUGH_THE_FLOOR, does=REPLACE,
        ),
        Method(
            name="tunnel", plan=plans.tunnel, kind="replace", reach="tunnel", shape="tunnel", measure="tunnel",
            ground="floor", entry="exit", merge_gap=UNDER, first=True, across=True, weighed=1, at_the_pipe=OUT_AND_IN,
            label=Say.of("tunnel"), short=Say.of("new pipe by tunnel"), does=REPLACE, beside=Say.of("the tunnel"),
        ),
        Method(
            name="break-through", plan=plans.break_through, kind="replace", reach="floor", shape="strip", measure="floor strip",
            ground="floor", merge_gap=SLAB, across=True, weighed=2, at_the_pipe=OUT_AND_IN,
            no_shape=(LENGTH, ONE_PLACE, Say.of("Short enough for one opening: a slab spot.")),
            label=Say.of("break-through"), short=THROUGH_THE_FLOOR, does=REPLACE, beside=Say.of("opening the floor"),
        ),
        Method(
            name="trench", plan=plans.trench, kind="replace", reach="trench", shape="trench", measure="open run",
            ground="outside", merge_gap=YARD, across=True, weighed=3, at_the_pipe=OUT_AND_IN,
            no_shape=(LENGTH, ONE_PLACE, Say.of("Short enough for one dig: a yard spot.")),
            label=Say.of("trench"), short=Say.of("new pipe by open trench"), does=REPLACE, beside=Say.of("the trench"),
        ),
        Method(
            name="burst", plan=plans.burst, kind="replace", reach="pulled", shape="pits", measure="pits", merge_gap=YARD,
            longest="burst_length_max_ft", bores=("burst_min_in", "burst_max_in"), weighed=5,
            at_the_pipe=Say.of("new pipe pulled in where the old one is"),
            label=Say.of("burst"), short=Say.of("pipe bursting"), does=REPLACE, beside=Say.of("bursting it"),
        ),
        Method(
            name="reroute", plan=plans.reroute, kind="go around", reach="way round", shape="way round", measure="way round",
            hours=AT_THE_PIPE, off="when joined", at_the_pipe=Say.of("new pipe another way"), beside=Say.of("the way round"),
            label=Say.of("reroute"), short=Say.of("a reroute"),
            does=Say.of("Run {length} of new pipe on another route: {way}. Cap the old {line}."),
        ),
        Method(
            name="abandon", plan=plans.abandon, kind="close", renews=False, measure="closing", hours=AT_THE_PIPE, off="never",
            at_the_pipe=Say.of("old pipe closed off"), label=Say.of("abandon"), short=Say.of("capping the old pipe"),
            does=Say.of("Cap {length} of the {line} and leave it in the ground"),
        ),
        Method(
            name="isolation test", plan=plans.isolation_test, kind="find out", renews=False, shape="where it is",
            measure="section tests", hours=FINDING, settles=("failed test", "leak"), at_a_point=True,
            label=Say.of("isolation test"), short=Say.of("a test of each section"), does=Say.of("Test the {line} section by section."),
        ),
        Method(
            name="look and see", plan=plans.look_and_see, kind="find out", renews=False, shape="where it is", measure="look",
            hours=FINDING, settles=("blocked", "collapse"), at_a_point=True,
            no_shape=("look-where-it-is-unclear", LOOK_AGAIN, Say.of("Suspected, but nothing stopped the camera: film it again.")),
            label=Say.of("look and see"), short=Say.of("an exploratory opening"), does=Say.of("Open one place on the {line} ({place}) and look."),
        ),
        Method(
            name="crawl replace", plan=plans.crawl_replace, kind="replace", shape="hung", measure="hung", ground="crawl",
            merge_gap=UNDER, hours=AT_THE_PIPE, first=True, across=True, at_the_pipe=OUT_AND_IN,
            label=Say.of("crawl replace"), short=Say.of("new pipe in the crawl space"), does=REPLACE,
        ),
        Method(
            name="hand over", plan=plans.hand_over, kind="hand over", reach="trench", shape="to the lot line",
            measure="to the lot line", ground="outside", at_the_pipe=OUT_AND_IN,
            label=Say.of("hand over"), short=Say.of("handing over to the city at the property line"),
            does=Say.of("Replace {length} of the {line} up to the property line, with a cleanout there, and hand over to the city"),
        ),
        Method(
            name="visit", plan=plans.visit, kind="find out", renews=False, measure="visit", hours=FINDING,
            label=Say.of("visit"), short=Say.of("a return visit"),
            does=Say.of("Return visit to the {line} ({place}): {tasks}. This visit repairs nothing."),
        ),
    )
}  # fmt: skip
"""Every way by name, in the order of the tables."""


def names() -> tuple[str, ...]:
    """Return the ways in the words of the tables; each has a row in methods.csv."""
    return tuple(RECORDS)


def record_of(name: str) -> Method:
    """Return the record of a way. Errors: KeyError for a name nobody knows."""
    return RECORDS[name]


def known(name: str) -> Method | None:
    """Return the record of a way; None for what is none, such as what a job has once."""
    return RECORDS.get(name)


def renews(name: str) -> bool:
    """Whether the pipe is new afterwards; what comes once a job renews nothing by itself but is no lesser way either."""
    return name not in RECORDS or RECORDS[name].renews


def prepares(name: str) -> bool:
    """Whether it cleans, tests, looks or hands over: what is wrong is neither repaired nor closed off by it."""
    record = known(name)
    return record is not None and (record.hands_over or (not record.renews and record.kind != "close"))


def of(**what: object) -> tuple[Method, ...]:
    """Return the ways whose record says so, in their order.

    >>> [m.name for m in of(kind="clean")], [m.name for m in of(ground="crawl")]
    (['clean'], ['crawl replace'])
    """
    return tuple(m for m in RECORDS.values() if all(getattr(m, key) == value for key, value in what.items()))
