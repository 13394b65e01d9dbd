"""Rules about the house and the people in it that turn on one fact: each row says when it fires, and what it then answers."""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import BELOW_FLOOR, LINES, NEW_PIPE, ONLY_CLEANS, PIECE_IN_A_FLOOR, RENEWS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.rule import COMMON_PRACTICE, Row

EASY_FLOORS = ("carpet", "bare", "concrete", "vinyl")


def _easy_floor(it: StretchFacts) -> bool:
    """A floor that is simple to put back, that nobody wants kept and no tendon runs in."""
    kept = it.wishes.keep_floors or it.house.floor == "post-tensioned slab"
    return not kept and any(word in it.house.floor_finish.lower() for word in EASY_FLOORS)


ROWS: tuple[Row, ...] = (
    Row(
        id="keep-the-floors",
        numbers=("R27",),
        concerns=RENEWS,
        when=lambda it, limits: (
            it.under_floor and not it.works.cuts_floor and (it.wishes.keep_floors or it.house.lived_in)
        ),
        effect=Effect.PREFERS,
        homeowner=Say.of("This method leaves your floors as they are."),
        estimator=Say.of("Lived in, or floors to be kept: tunnel, reroute or liner before breaking the floor."),
        statement="Floors to be kept, or a lived-in house: tunnel, reroute or liner come first.",
        reason="The finish, the dust and the days out of the rooms often cost more than the digging.",
        source=COMMON_PRACTICE,
        worse="leaving out a way that works",
        fires=('stretch(method="tunnel", zones=("slab",), wishes={"keep_floors": True})',),
        misses=('stretch(method="tunnel", zones=("slab",), house={"lived_in": False})',),
    ),
    Row(
        id="cheap-floor-short-dig",
        numbers=("R28",),
        concerns=PIECE_IN_A_FLOOR,
        when=lambda it, limits: (
            _easy_floor(it)
            and it.depth_ft is not None
            and it.depth_ft < limits("slab_spot_shallow_ft")
            and it.length_ft < limits("slab_spot_max_ft")
        ),
        effect=Effect.PREFERS,
        homeowner=Say.of(
            "The floor there is simple to restore and the pipe is shallow, so opening the floor is the short way."
        ),
        estimator=Say.of("Cheap floor, shallow and short: the least charge of a tunnel is more than the spot."),
        statement="Bare concrete or carpet, shallow and short, no tendons: list through the floor first.",
        reason="A tunnel's minimum charge is more than the whole spot.",
        source=COMMON_PRACTICE,
        worse="leaving out a way that works",
        reads=("slab_spot_shallow_ft", "slab_spot_max_ft"),
        fires=(
            'stretch(method="slab spot", zones=("slab",), stretch=Stretch(0.0, 5.9), depth_ft=2.9, house={"floor_finish": "carpet"})',
        ),
        misses=(
            'stretch(method="slab spot", zones=("slab",), stretch=Stretch(0.0, 6.0), depth_ft=2.9, house={"floor_finish": "carpet"})',
        ),
    ),
    Row(
        id="foundation-work-planned",
        numbers=("R49",),
        concerns=NEW_PIPE | LINES,
        when=lambda it, limits: it.foundation.work == "planned",
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "Your foundation will be lifted. We test before and after the lift. Before it we repair only what leaks or would break. The warranty starts after it."
        ),
        estimator=Say.of(
            "Lift planned: test, fix what feeds the soil, lift, test after. Ask where the piers stand. Does their crew want the tunnel? Call before you backfill it. No warranty across a lift."
        ),
        adds=frozenset({"foundation_planned", "test_after_lift"}),
        statement="Foundation work planned: test before, fix only what feeds the soil, lift, test after, then the rest; no warranty across a lift.",
        reason="A lift pulls joints apart; new pipe set too early breaks, and a leak left open softens the soil the piers stand in.",
        source=COMMON_PRACTICE,
        worse="leaving out a caution",
        fires=('stretch(method="tunnel", zones=("slab",), foundation=Foundation(work="planned"))',),
        misses=('stretch(method="tunnel", zones=("slab",))',),
    ),
    Row(
        id="one-bathroom",
        numbers=("R50",),
        concerns=NEW_PIPE,
        when=lambda it, limits: it.house.bathrooms == 1 and it.house.lived_in,
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "You have one bathroom. If the drains are out for more than a day, you need a portable toilet or a hotel."
        ),
        estimator=Say.of("One bathroom, lived in, drains off over a day: portable toilet or hotel allowance."),
        adds=frozenset({"portable_toilet"}),
        statement="One bathroom, lived in, and drains off over a day: a portable toilet or hotel allowance.",
        reason="Nobody can go a day without a toilet.",
        source=COMMON_PRACTICE,
        worse="leaving out a caution",
        fires=('stretch(method="break-through", zones=("slab",), house={"bathrooms": 1})',),
        misses=('stretch(method="break-through", zones=("slab",), house={"bathrooms": 2})',),
    ),
    Row(
        id="septic-tank",
        numbers=("R47",),
        concerns=NEW_PIPE | LINES | ONLY_CLEANS,
        when=lambda it, limits: it.house.sewer == "septic" or it.ends == "septic tank",
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "Your house drains to a septic tank. A health department permit may be required. Nothing from our work goes into the tank."
        ),
        estimator=Say.of("Septic: health-department permit, catch debris before the tank."),
        adds=frozenset({"septic", "septic_permit"}),
        statement="Septic tank: health-department permit, debris kept out of the tank.",
        reason="Debris blocks the tank and its field.",
        source=COMMON_PRACTICE,
        worse="leaving out a caution",
        fires=('stretch(house={"sewer": "septic"})',),
        misses=("stretch()",),
    ),
    Row(
        id="sewage-under-pressure",
        numbers=(),
        concerns=NEW_PIPE | LINES | ONLY_CLEANS,
        when=lambda it, limits: bool(it.house.force_main),
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "A pump pushes your sewage out through a pressure pipe. We confirm which pipe is under pressure before we give a fixed price."
        ),
        estimator=Say.of(
            "Force main: find where it runs. Lock out and tag the pump, let the pressure down, before any pipe is opened; a pressure pipe has no fall and gets a pressure test."
        ),
        statement="A force main: the pump locked out and the pressure let down first; no fixed price before it is known where it runs.",
        reason="Sewage under pressure sprays whoever opens the pipe, and fall and water tests say nothing of it.",
        source=COMMON_PRACTICE,
        settled_by="locate",
        worse="hurting somebody",
        guards_people=True,
        fires=('stretch(house={"force_main": True})',),
        misses=('stretch(house={"force_main": False})',),
    ),
    Row(
        id="shared-lateral",
        numbers=(),
        concerns=NEW_PIPE | LINES | ONLY_CLEANS,
        when=lambda it, limits: bool(it.house.shared_lateral),
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "Another house drains into this line. Its owner must agree to the work. That house must not use water while the pipe is open."
        ),
        estimator=Say.of(
            "Shared lateral: written consent of the other owner; no water from there while the pipe is open; watch that house's lowest fixture while cleaning or jetting."
        ),
        statement="A line another house drains into: consent of its owner, its water stopped, its fixtures watched.",
        reason="Sewage of the other house comes while the pipe is open, and a jet can push it up into that house.",
        source=COMMON_PRACTICE,
        worse="leaving out a caution",
        fires=('stretch(house={"shared_lateral": True})',),
        misses=("stretch()",),
    ),
    Row(
        id="only-the-main-is-lined",
        numbers=("R43",),
        concerns=LINES,
        when=lambda it, limits: any(t.result == "failed" for t in it.tests),
        effect=Effect.CAUTION,
        homeowner=Say.of("A water test of the whole house can still fail at branch drains."),
        estimator=Say.of(
            "Test was the trigger: unlined branches, risers and liner ends can still leak; price end seals or promise “main lined” only."
        ),
        adds=frozenset({"end_seals"}),
        statement="Lining after a failed test: the whole system can still fail at unlined parts; price end seals or promise the main only.",
        reason="The test fills everything, the liner covers one pipe.",
        source=COMMON_PRACTICE,
        worse="leaving out a caution",
        fires=('stretch(tests=(WaterTest(section="all", result="failed"),))',),
        misses=("stretch()",),
    ),
    Row(
        id="resin-smell",
        numbers=("R45",),
        concerns=LINES,
        when=lambda it, limits: it.house.lived_in,
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "Lining smells while it cures. Fill every drain with water and keep windows open. Sensitive people should be away that day."
        ),
        estimator=Say.of(
            "Lived in: drains shut during the cure, traps filled, vents and doors planned, air out; low-odor resin. Styrene has passed the immediate-danger level outdoors."
        ),
        adds=frozenset({"low_odor_resin"}),
        statement="Lining a lived-in house: traps filled, air out, low-odor resin.",
        reason="Styrene of 1,070 ppm was once measured outdoors; 700 ppm is the immediate-danger level; indoor cases are reported.",
        source="published measurements of styrene at lining sites (read second-hand); NIOSH immediate-danger level",
        worse="hurting somebody",
        guards_people=True,
        fires=("stretch()",),
        misses=('stretch(house={"lived_in": False})',),
    ),
    Row(
        id="treated-soil",
        numbers=(),
        concerns=BELOW_FLOOR,
        when=lambda it, limits: True,
        effect=Effect.CAUTION,
        homeowner=Say.of("We disturb soil treated for termites. Ask about your pest warranty."),
        estimator=Say.of("Treated soil is cut: re-treat or exclude in writing."),
        statement="Opening a slab or the soil under it: the termite treatment is cut, said in writing.",
        reason="The pest warranty may end there.",
        source=COMMON_PRACTICE,
        worse="leaving out a caution",
        fires=('stretch(method="break-through", zones=("slab",))',),
        misses=('stretch(method="trench")',),
    ),
)
