"""Rules of where a method belongs at all: each row says when it fires, and what it then answers."""

from estimator.model.judgement import Effect
from estimator.model.line import CLEANABLE
from estimator.model.say import Feet, Say
from estimator.scopes.rules.cleaning_closes_no_opening import lived_with
from estimator.scopes.rules.concern import (
    A_PIECE,
    A_WAY_ROUND,
    DIGS,
    FROM_INSIDE,
    GOES_ROUND,
    HAS_A_GROUND,
    HAS_A_LENGTH,
    LAYS,
    LOOKS,
    NEW_PIPE,
    ONLY_CLEANS,
    ONLY_CLOSES,
    TESTS_SECTIONS,
)
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.lining_keeps_the_grade import DIPS
from estimator.scopes.rules.rule import COMMON_PRACTICE, Row
from estimator.works.methods import RECORDS, record_of

WHERE = {
    "outside": frozenset({"yard", "drive", "walk", "street"}),
    "floor": frozenset({"slab", "basement"}),
    "crawl": frozenset({"crawl"}),
}
"""Every zone over the stretch must be one of these; a tunnel needs a slab over a part of it."""


def in_its_place(it: StretchFacts) -> bool:
    zones, way = set(it.zones), record_of(it.method)
    return "slab" in zones if way.shape == "tunnel" else bool(zones) and zones <= WHERE[way.ground]


ROWS: tuple[Row, ...] = (
    Row(
        id="look-where-it-is-unclear",
        numbers=("D19", "R01"),
        concerns=LOOKS,
        when=lambda it, limits: it.filmed and not any(n.grade in ("suspected", "not inspected") for n in it.needs),
        effect=Effect.BLOCKS,
        homeowner=Say.of("The camera shows what is wrong there, so an exploratory excavation is not needed."),
        estimator=Say.of("Seen clearly: no look-and-see."),
        statement="A look-and-see dig only where the trouble is suspected, hidden or beyond where the camera stopped.",
        reason="It is a fixed small price for certainty before a large one.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        goes_without_saying=True,
        fires=('stretch(method="look and see", needs=(need("crack"),))',),
        misses=('stretch(method="look and see", needs=(need("blocked", grade="suspected"),))',),
    ),
    Row(
        id="isolate-before-repair",
        numbers=("D09", "D14"),
        concerns=FROM_INSIDE | NEW_PIPE | DIGS,
        when=lambda it, limits: bool(it.needs) and all("failed test" in n.kinds for n in it.needs),
        effect=Effect.BLOCKS,
        homeowner=Say.of(
            "The drains lose water and the leak is not located. We test each section separately before we price a repair."
        ),
        estimator=Say.of("Failed test, clean camera: price the isolation, no repair."),
        statement="A failed water test with a clean camera yields an isolation test and no repair.",
        reason="The leak may be in a side drain, a riser or a fixture's connection that this repair would not touch.",
        source="common practice; contractors' pages on static tests (read second-hand)",
        worse="offering what cannot work",
        fires=('stretch(method="tunnel", needs=(need("failed test"),))',),
        misses=('stretch(method="tunnel", needs=(need("failed test"), need("hole")))',),
    ),
    Row(
        id="nothing-to-clean",
        numbers=(),
        concerns=ONLY_CLEANS,
        when=lambda it, limits: not it.kinds & CLEANABLE and not any(lived_with(n) for n in it.needs),
        effect=Effect.BLOCKS,
        homeowner=Say.of("The pipe has nothing to clean out."),
        estimator=Say.of("No roots, scale, grease, mud or soft blockage over this stretch."),
        statement="Cleaning is offered only where there is something to clean out, or a dip that may stay and gathers dirt.",
        reason="An honest quote sells nothing that is not needed.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        goes_without_saying=True,
        fires=(
            'stretch("crack", method="clean")',
            'stretch("20-26 sag 20%", method="clean", needs=(need("sag", 3),))',
        ),
        misses=(
            'stretch("roots 10%", method="clean")',
            'stretch("20-26 sag 20%", method="clean", needs=(need("sag", 2),))',
        ),
    ),
    Row(
        id="nothing-to-isolate",
        numbers=("D09",),
        concerns=TESTS_SECTIONS,
        when=lambda it, limits: not any("failed test" in n.kinds for n in it.needs),
        effect=Effect.BLOCKS,
        homeowner=Say.of("There is no hidden leak to look for here."),
        estimator=Say.of("No failed test without a visible cause: nothing to isolate."),
        statement="An isolation test is offered only after a failed test without a visible cause.",
        reason="An honest quote sells nothing that is not needed.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        goes_without_saying=True,
        fires=('stretch(method="isolation test", needs=(need("hole"),))',),
        misses=('stretch(method="isolation test", needs=(need("failed test"),))',),
    ),
    Row(
        id="place-fits-the-method",
        numbers=(),
        concerns=HAS_A_GROUND,
        when=lambda it, limits: not in_its_place(it),
        effect=Effect.BLOCKS,
        homeowner=Say.of("This method does not fit the surface above the pipe there."),
        estimator=lambda it, limits: Say.of(
            "Over the pipe: {zones}; not where this method works. Split the stretch at the change.",
            zones=", ".join(it.zones) or "not stated",
        ),
        statement="A yard dig lies in open ground, a floor opening under a floor, a tunnel under a slab, a crawl-space job in a crawl space.",
        reason="Different zones over the pipe do not merge into one scope.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        goes_without_saying=True,
        fires=(
            'stretch(method="tunnel", zones=("yard",))',
            'stretch(method="trench", zones=("yard", "slab"))',
            'stretch(method="crawl replace", zones=("slab",))',
        ),
        misses=('stretch(method="tunnel", zones=("yard", "slab"))',),
    ),
    Row(
        id="length-fits-the-method",
        numbers=("R14",),
        concerns=HAS_A_LENGTH,
        when=lambda it, limits: it.length_ft > limits(record_of(it.method).longest),
        effect=Effect.BLOCKS,
        homeowner=Say.of("The damaged part is too long for this method."),
        estimator=lambda it, limits: Say.of(
            "{length} is over the {most} this method is good for.",
            length=Feet(round(it.length_ft, 1)),
            most=Feet(limits(record_of(it.method).longest)),
        ),
        statement="A spot, a short liner, a shot, a pull and a jet each reach only so far.",
        reason="Past that another way is meant: a trench for a yard spot, a strip for a floor spot.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        reads=tuple(method.longest for method in RECORDS.values() if method.longest),
        fires=('stretch(method="sectional liner", stretch=Stretch(0.0, 10.1))',),
        misses=('stretch(method="sectional liner", stretch=Stretch(0.0, 10.0))',),
    ),
    Row(
        id="no-spots-on-worn-out-pipe",
        numbers=("D06", "D17", "D18"),
        concerns=A_PIECE,
        when=lambda it, limits: any(n.whole_line == "only" for n in it.needs),
        effect=Effect.BLOCKS,
        homeowner=Say.of("The whole run needs replacement. Spot repairs would not last."),
        estimator=Say.of("Whole-run renewal is the only right answer here: no spots."),
        statement="Iron grooved along most of the run, clay with roots at most joints, or fiber: renewal of the run, no spots.",
        reason="The next hole opens beside the new piece.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        fires=('stretch(method="slab spot", needs=(need("channel", whole_line="only"),))',),
        misses=('stretch(method="slab spot", needs=(need("channel", whole_line="option"),))',),
    ),
    Row(
        id="dip-length-is-measured",
        numbers=("D02",),
        concerns=LAYS,
        when=lambda it, limits: (
            it.fall_ft is None and any(set(DIPS) & set(n.kinds) and not n.watched for n in it.needs)
        ),
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "The length of pipe to replace so that it drains is not measured yet. The length here is an allowance."
        ),
        estimator=lambda it, limits: Say.of(
            "No levels at both ends: run-out taken as {allowance}; take levels before a fixed price.",
            allowance=Feet(limits("sag_run_out_ft")),
        ),
        adds=frozenset({"levels_missing"}),
        statement="A dip is relaid until the new fall meets the old pipe; without levels that length is an allowance and no fixed price.",
        reason="Both ends of standing water lie at one height, so the wet length alone gives no fall. A locator's depth never gives fall.",
        source="plain arithmetic",
        settled_by="level",
        worse="offering what cannot work",
        reads=("sag_run_out_ft",),
        fires=('stretch(method="trench", needs=(need("sag"),), fall_ft=None)',),
        misses=('stretch(method="trench", needs=(need("sag"),), fall_ft=0.5)',),
    ),
    Row(
        id="no-drain-by-the-attic",
        numbers=(),
        concerns=GOES_ROUND,
        when=lambda it, limits: any(leg.zone == "attic" for way in it.reroutes for leg in way.legs),
        effect=Effect.BLOCKS,
        homeowner=Say.of("A drain cannot go up through the attic."),
        estimator=Say.of("A leg by the attic: gravity drains of floors below cannot; vents can."),
        statement="No drain by the attic, except for fixtures above it; vents may.",
        reason="Drains run by gravity.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        fires=('stretch(method="reroute", reroutes=(reroute(attic_ft=20.0),))',),
        misses=('stretch(method="reroute", reroutes=(reroute(wall_ft=20.0),))',),
    ),
    Row(
        id="way-round-was-seen",
        numbers=("R36",),
        concerns=A_WAY_ROUND,
        when=lambda it, limits: not any(leg.length_ft > 0 for way in it.reroutes for leg in way.legs),
        effect=Effect.BLOCKS,
        homeowner=Say.of("We found no reroute for this drain on site."),
        estimator=Say.of(
            "No reroute in the notes replaces this stretch: walk it, measure legs and fall, write it down."
        ),
        statement="A reroute is offered only along a way that was seen on site.",
        reason="Fall, walls and vents decide, and only a visit shows them.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        goes_without_saying=True,
        fires=(
            'stretch(method="reroute")',
            'stretch(method="reroute", reroutes=(reroute(),))',
        ),
        misses=('stretch(method="reroute", reroutes=(reroute(yard_ft=20.0),))',),
    ),
    Row(
        id="abandon-follows-a-way-round",
        numbers=("R48",),
        concerns=ONLY_CLOSES,
        when=lambda it, limits: not it.reroutes and all(b.live != "dead" for b in it.branches),
        effect=Effect.BLOCKS,
        homeowner=Say.of("This pipe is in use, so it cannot simply be closed."),
        estimator=Say.of("Live pipe without a way round: nothing to abandon."),
        statement="A pipe is abandoned after a reroute, or where it is dead.",
        reason="Something drains through it.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        goes_without_saying=True,
        fires=('stretch(method="abandon")',),
        misses=('stretch(method="abandon", branches=(branch(2.0, "dead"),))',),
    ),
)
