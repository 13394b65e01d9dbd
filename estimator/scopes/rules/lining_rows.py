"""Rules of lining that turn on one fact: each row says when it fires, and what it then answers."""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.bottom_gone_dig_first import missing_percent
from estimator.scopes.rules.concern import KEEPS_THE_OLD_PATH, LINED_IN_PIECES, LINED_WHOLE, LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.lining_keeps_the_grade import DIPS
from estimator.scopes.rules.rule import COMMON_PRACTICE, FROM_MEMORY, Row

TOO_MUCH = frozenset({"collapse", "blister", "channel", "oval", "reverse fall", "backfall"})
"""What leaves no round pipe for a short liner to hold on to."""


def _dirt(it: StretchFacts) -> set[str]:
    return {f.kind for f in it.of("roots", "scale", "grease", "mud") if not f.after_cleaning}


def _no_hold(it: StretchFacts, limits: Limits) -> list[str]:
    wide = [f.kind for f in it.of("gap") if (f.size_in or 0.0) > limits("gap_2_in")]
    return sorted(TOO_MUCH & {k for n in it.needs for k in n.kinds}) + wide


def _square_bends(it: StretchFacts, limits: Limits) -> int:
    return sum((m.degrees or 0.0) > limits("bend_blocks_degrees") for m in it.placed("bend"))


ROWS: tuple[Row, ...] = (
    Row(
        id="clean-before-lining",
        numbers=("R02", "D01"),
        concerns=LINES,
        when=lambda it, limits: bool(_dirt(it)),
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("We clean the pipe and inspect it again before we line it."),
        estimator=lambda it, limits: Say.of(
            "{what} in the length to be lined: clean, inspect again, then decide.",
            what=", ".join(sorted(_dirt(it))),
        ),
        adds=frozenset({"clean_first", "film_again"}),
        statement="Roots and build-up are removed and the pipe is filmed again before any liner.",
        reason="A liner hardens over whatever it touches; a root mass or crust under it stays there as a bump.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        fires=('stretch("roots 30%")',),
        misses=('stretch("crack")',),
    ),
    Row(
        id="cut-flush-before-lining",
        numbers=("R02",),
        concerns=LINES,
        when=lambda it, limits: bool(it.of("intruding")),
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("A branch pipe sticks into the drain. We cut it back and inspect it before we line."),
        estimator=lambda it, limits: Say.of(
            "Intruding at {at}: cut flush by robot, film; know first what it is.",
            at=Feet(it.of("intruding")[0].stretch.from_ft),
        ),
        adds=frozenset({"clean_first", "film_again"}),
        statement="A pipe that sticks in is cut flush and filmed before any liner.",
        reason="The liner hangs on it or folds round it.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        fires=('stretch("intruding 20%")',),
        misses=('stretch("crack")',),
    ),
    Row(
        id="descale-iron-before-lining",
        numbers=("R03", "D07", "D08"),
        concerns=LINES,
        when=lambda it, limits: "iron" in it.families and any(not f.after_cleaning for f in it.of("scale", "channel")),
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of(
            "We descale the iron pipe and inspect it first. If it no longer holds its shape, it cannot be lined. We will show you the video."
        ),
        estimator=Say.of(
            "Iron with scale or a groove: descale to bare wall, inspect, check that it holds shape; have the stop-gap price ready if it opens."
        ),
        adds=frozenset({"descale_first", "film_again"}),
        statement="Iron is descaled to bare wall and checked for shape before lining; the price of lining hangs on the result.",
        reason="Scale hides grooves and holes, and sometimes the scale is all that is left of the pipe.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        fires=('stretch("scale 30%", pipes=("cast iron",))',),
        misses=('stretch("scale 30%", pipes=("clay",))',),
    ),
    Row(
        id="half-gone-no-liner",
        numbers=("R04",),
        concerns=LINES,
        when=lambda it, limits: any(
            missing_percent(f) > limits("channel_missing_block_percent") for f in it.of("channel", "hole", "crack")
        ),
        effect=Effect.BLOCKS,
        homeowner=Say.of("Too much of the pipe is gone to hold a liner."),
        estimator=Say.of("More than half of the round is missing: no host for a liner."),
        statement="More than half of the round missing: no liner.",
        reason="Nothing holds the liner's shape while it cures.",
        source=FROM_MEMORY,
        worse="offering what cannot work",
        reads=("channel_missing_block_percent",),
        fires=('stretch("20-22 hole at 2-9")',),
        misses=('stretch("20-22 hole at 3-9")',),
    ),
    Row(
        id="short-liner-needs-sound-ends",
        numbers=("R04",),
        concerns=LINED_IN_PIECES,
        when=lambda it, limits: bool(_no_hold(it, limits)),
        effect=Effect.BLOCKS,
        homeowner=Say.of("A short liner needs good pipe at both ends. Here there is too little."),
        estimator=lambda it, limits: Say.of(
            "{kinds}: no sound, round host at both ends for a sectional liner.", kinds=", ".join(_no_hold(it, limits))
        ),
        statement="No short liner over a collapse, a groove, a wide gap or a deformed pipe.",
        reason="It seals only where it overlaps sound pipe by about a foot at each end.",
        source=COMMON_PRACTICE,
        reads=("gap_2_in",),
        worse="offering what cannot work",
        fires=(
            'stretch(method="sectional liner", needs=(need("collapse"),))',
            'stretch("gap 1.1in", method="sectional liner")',
        ),
        misses=(
            'stretch(method="sectional liner", needs=(need("crack"),))',
            'stretch("gap 1in", method="sectional liner")',
        ),
    ),
    Row(
        id="deep-dip-is-not-lined",
        numbers=("R07",),
        concerns=KEEPS_THE_OLD_PATH,
        when=lambda it, limits: (
            bool(it.of(*DIPS))
            and ({k for n in it.needs for k in n.kinds} or {f.kind for f in it.findings}) <= set(DIPS)
        ),
        effect=Effect.BLOCKS,
        homeowner=Say.of("This method does not remove a low spot or a wrong slope."),
        estimator=Say.of(
            "A dip or reverse slope is the only trouble: a liner or burst pipe follows it and cures nothing."
        ),
        statement="A dip or wrong slope that is the only trouble is not cured by lining or bursting.",
        reason="It would be paid for and still hold water.",
        source=COMMON_PRACTICE,
        worse="offering what cannot work",
        fires=(
            'stretch("sag 36%", needs=(need("sag"),))',
            'stretch("sag 14%", needs=(need("sag", 1),))',
        ),
        misses=('stretch("sag 36%", "crack", needs=(need("sag"), need("crack")))',),
    ),
    Row(
        id="out-of-round-no-liner",
        numbers=("R08",),
        concerns=LINES,
        when=lambda it, limits: (
            (it.worst("oval") or 0.0) > limits("oval_blocks_percent") or any("flat" in f.signs for f in it.of("oval"))
        ),
        effect=Effect.BLOCKS,
        homeowner=Say.of("The pipe is too far out of round for a liner."),
        estimator=Say.of("Deformed over the limit: no liner; burst or trench."),
        statement="Deformed by more than a tenth: no liner.",
        reason="The liner takes the same shape and keeps the loss of strength.",
        source=FROM_MEMORY,
        worse="offering what cannot work",
        reads=("oval_blocks_percent",),
        fires=('stretch("oval 12%")',),
        misses=('stretch("oval 10%")',),
    ),
    Row(
        id="pieces-or-full-liner",
        numbers=("R10",),
        concerns=LINED_IN_PIECES,
        when=lambda it, limits: any(n.whole_line == "option" for n in it.needs),
        effect=Effect.CAUTION,
        homeowner=Say.of("If you line the whole run later, you pay twice for these pieces."),
        estimator=Say.of("Choose pieces or the full liner, never both over the same length."),
        statement="Sectional liners inside a later full reline: choose one, not both.",
        reason="The same length would be charged twice.",
        source="plain arithmetic",
        worse="leaving out a caution",
        fires=('stretch(method="sectional liner", needs=(need("crack", whole_line="option"),))',),
        misses=('stretch(method="sectional liner", needs=(need("crack"),))',),
    ),
    Row(
        id="many-sharp-bends",
        numbers=("R13",),
        concerns=LINED_WHOLE,
        when=lambda it, limits: _square_bends(it, limits) > limits("liner_bends_max"),
        effect=Effect.CAUTION,
        homeowner=Say.of("The pipe has many sharp turns. We may have to line it in parts."),
        estimator=lambda it, limits: Say.of(
            "{count} square bends in one shot: split it or try another way.", count=_square_bends(it, limits)
        ),
        statement="More than two square bends in one shot: caution.",
        reason="Each bend adds drag; the liner can stall inside the house.",
        source=FROM_MEMORY,
        worse="leaving out a caution",
        reads=("bend_blocks_degrees", "liner_bends_max"),
        fires=('stretch(marks=tuple(mark("bend", at, degrees=90.0) for at in (5.0, 10.0, 15.0)))',),
        misses=('stretch(marks=tuple(mark("bend", at, degrees=90.0) for at in (5.0, 10.0)))',),
    ),
    Row(
        id="long-liner",
        numbers=("R14",),
        concerns=LINED_WHOLE,
        when=lambda it, limits: (
            it.length_ft
            > limits("liner_small_max_ft" if it.bore_in <= limits("liner_small_bore_in") else "liner_max_ft")
        ),
        effect=Effect.CAUTION,
        homeowner=Say.of("The run is long, so we line it in two parts that overlap."),
        estimator=lambda it, limits: Say.of(
            "{length} in one shot is past the rig's usual reach: split it.", length=Feet(it.length_ft)
        ),
        adds=frozenset({"split_shot"}),
        statement="Over about 120 ft, or 60 ft in 2 to 3 in pipe: split the shot.",
        reason="Limits of small rigs.",
        source=FROM_MEMORY,
        worse="leaving out a caution",
        reads=("liner_small_bore_in", "liner_small_max_ft", "liner_max_ft"),
        fires=(
            "stretch(stretch=Stretch(0.0, 120.5))",
            "stretch(stretch=Stretch(0.0, 60.5), sizes_in=(3.0,))",
        ),
        misses=("stretch(stretch=Stretch(0.0, 120.0))",),
    ),
)
