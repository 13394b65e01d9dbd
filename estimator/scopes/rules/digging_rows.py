"""Rules of digging that turn on one depth or one fact: each row says when it fires, and what it then answers."""

from estimator.knowledge.excavation import needs_engineer, needs_ladder
from estimator.model.judgement import Effect
from estimator.model.opening import Opening
from estimator.model.say import Feet, Say
from estimator.model.works import PAVED
from estimator.scopes.rules.concern import CUTS_FLOOR, DIGS, OPENS_GROUND, PEOPLE_BELOW, RENEWS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.rule import COMMON_PRACTICE, Row


def _deep(it: StretchFacts) -> float:
    """How deep people go, the locator's tolerance counted, ft; 0 where nobody goes down."""
    return it.safe_depth_ft or 0.0


def _opened(it: StretchFacts, *zones: str) -> list[Opening]:
    return [o for o in it.works.open_digs if set(zones) & set(o.zones)]


ROWS: tuple[Row, ...] = (
    Row(
        id="depth-was-located",
        numbers=("R01",),
        concerns=DIGS,
        when=lambda it, limits: (
            any(not o.depth_known for o in it.works.digs)
            or (it.depth_ft is None and any(o.line == it.line for o in it.works.digs))
        ),
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of("The depth of the pipe is not measured yet. We can set a firm price after we measure it."),
        estimator=Say.of("No depth on this line: locate it, say from which surface, before a fixed price for digging."),
        adds=frozenset({"depth_unlocated"}),
        statement="A dig on a line without any depth reading has no fixed price.",
        reason="Depth decides protection, hours and whether a footing is in the way.",
        source=COMMON_PRACTICE,
        settled_by="locate",
        worse="offering what cannot work",
        fires=('stretch(method="trench", depth_ft=None)',),
        misses=('stretch(method="trench", depth_ft=3.0)',),
    ),
    Row(
        id="slabs-are-not-undermined",
        numbers=("R18",),
        concerns=OPENS_GROUND,
        when=lambda it, limits: bool(_opened(it, "walk", "drive")),
        effect=Effect.CAUTION,
        homeowner=Say.of("We support or cut back paving beside the excavation, so that it does not sink later."),
        estimator=Say.of("No walk, drive or slab undermined without support (29 CFR 1926.651(i)(3))."),
        statement="Paving beside or over a dig is supported or taken out.",
        reason="Undermined paving drops on whoever works below, or cracks later.",
        source="29 CFR 1926.651(i)(3)",
        settled_by="engineer",
        worse="hurting somebody",
        guards_people=True,
        fires=('stretch(method="trench", zones=("yard", "walk"))',),
        misses=('stretch(method="trench", zones=("yard",))',),
    ),
    Row(
        id="street-work",
        numbers=("R41",),
        concerns=OPENS_GROUND,
        when=lambda it, limits: bool(_opened(it, "street")),
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "Part of the work is in the street. It includes the city permit, traffic control and a patch to city standard."
        ),
        estimator=lambda it, limits: Say.of(
            "Right of way, opened by {opening}: city permit, traffic control, bond, street patch to the city's rule; who owns the pipe there?",
            opening=_opened(it, "street")[0].name,
        ),
        adds=frozenset({"street_permit"}),
        statement="Street or right of way: city permit, traffic control, bond and patch by the city's rule.",
        reason="The road is not the homeowner's to open; ownership from property line to main differs by city.",
        source=COMMON_PRACTICE,
        settled_by="",
        worse="leaving out a caution",
        fires=('stretch(method="trench", zones=("yard", "street"))',),
        misses=('stretch(method="trench", zones=("yard",))',),
    ),
    Row(
        id="ladder-from-four-feet",
        numbers=("R21",),
        concerns=PEOPLE_BELOW,
        when=lambda it, limits: needs_ladder(_deep(it)),
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("We fence the open excavation and leave a ladder in it. Keep children and pets away."),
        estimator=lambda it, limits: Say.of(
            "{opening}, {depth} with tolerance: ladder or ramp within reach (29 CFR 1926.651(c)(2)); air tested where bad air can be expected.",
            opening=it.deepest.name if it.deepest else "",
            depth=Feet(round(_deep(it), 2)),
        ),
        adds=frozenset({"ladder"}),
        statement="A dig 4 ft deep or more, locator's tolerance and bedding counted: a ladder or ramp, and air tested where bad air is likely.",
        reason="A way out must be near when a side begins to move.",
        source="29 CFR 1926.651(c)(2), (g)",
        worse="hurting somebody",
        guards_people=True,
        fires=("dug(4.0)",),
        misses=("dug(3.99)",),
    ),
    Row(
        id="competent-person-is-named",
        numbers=("R22", "R25"),
        concerns=PEOPLE_BELOW,
        when=lambda it, limits: not it.site.competent_person and (bool(it.works.tunnels) or needs_ladder(_deep(it))),
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("The competent person in charge of the excavation checks its safety every day."),
        estimator=Say.of("Name the competent person (site, competent_person) before a crew sheet is written."),
        adds=frozenset({"competent_person"}),
        statement="A tunnel, or a dig of 4 ft and more with tolerance: the competent person is named before a crew sheet is written.",
        reason="Somebody must decide, inspect and stop the work.",
        source="29 CFR 1926.651(k)",
        worse="hurting somebody",
        guards_people=True,
        fires=(
            'dug(2.0, method="tunnel")',
            "dug(4.0)",
        ),
        misses=(
            "dug(3.99)",
            'dug(4.0, site={"competent_person": "the foreman"})',
        ),
    ),
    Row(
        id="engineer-past-twenty-feet",
        numbers=("R23",),
        concerns=PEOPLE_BELOW,
        when=lambda it, limits: needs_engineer(_deep(it)),
        effect=Effect.UNTIL_APPROVED,
        homeowner=Say.of("The excavation is so deep that an engineer must design its protective system."),
        estimator=Say.of("Over 20 ft: protective system designed by a registered engineer."),
        adds=frozenset({"engineer"}),
        statement="Deeper than 20 ft: not without a registered engineer's design.",
        reason="The published tables of slopes and boxes end there.",
        source="29 CFR 1926.652(b), (c); Subpart P App. B Table B-1 note 3 (read second-hand)",
        settled_by="engineer",
        worse="hurting somebody",
        guards_people=True,
        fires=("dug(20.01)",),
        misses=("dug(20.0)",),
    ),
    Row(
        id="machine-reaches",
        numbers=(),
        concerns=OPENS_GROUND,
        when=lambda it, limits: _deep(it) > limits("machine_reach_ft"),
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "The pipe is deeper than our machine digs. We set a firm price after we choose the larger machine and the protective system."
        ),
        estimator=lambda it, limits: Say.of(
            "Depth with tolerance {depth}, the machine digs {reach}: a larger machine and its access, boxes one on another, priced apart; by hand it is not dug so deep without an engineer.",
            depth=Feet(round(_deep(it), 2)),
            reach=Feet(limits("machine_reach_ft")),
        ),
        statement="Deeper than the firm's machine reaches, locator's tolerance counted: no fixed price.",
        reason="Another machine, another way in and other protection are another job.",
        source=COMMON_PRACTICE + "; the reach is a firm's default",
        worse="offering what cannot work",
        reads=("machine_reach_ft",),
        fires=('dug(10.1, facts=("depth_over_8",))',),
        misses=('dug(10.0, facts=("depth_over_8",))',),
    ),
    Row(
        id="heat-wires-sewage-night",
        numbers=(),
        concerns=DIGS,
        when=lambda it, limits: True,
        effect=Effect.CAUTION,
        homeowner=Say.of("We cover or fence the excavation at night."),
        estimator=Say.of(
            "Heat plan; look up for wires before the machine swings; gloves and washing for sewage-soaked soil; pit covered and lit at night."
        ),
        statement="Every dig carries cautions for heat, overhead wires, soaked soil and night cover.",
        reason="These hurt people on days when nothing caves in.",
        source=COMMON_PRACTICE,
        worse="hurting somebody",
        guards_people=True,
        fires=('stretch(method="trench")',),
        misses=('stretch(method="reline")',),
    ),
    Row(
        id="void-needs-an-engineer",
        numbers=("D05",),
        concerns=RENEWS,
        when=lambda it, limits: it.has_sign("void") and bool({"slab", "drive", "basement", "street"} & set(it.zones)),
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of(
            "There is an empty space in the soil under the floor or paving. Keep off it until an engineer has looked. The price includes an allowance to fill it."
        ),
        estimator=Say.of(
            "Void under slab or paving: engineer first, keep people and machines off; the fill is priced as an allowance (void_fill_cy)."
        ),
        adds=frozenset({"engineer", "void"}),
        statement="A void under slab, drive or street: an engineer first.",
        reason="What stands on it has no support.",
        source=COMMON_PRACTICE,
        settled_by="engineer",
        worse="hurting somebody",
        guards_people=True,
        fires=('stretch("hole void", method="tunnel", zones=("slab",))',),
        misses=('stretch("hole soil seen", method="tunnel", zones=("slab",))',),
    ),
    Row(
        id="concrete-dust",
        numbers=("R31",),
        concerns=CUTS_FLOOR | OPENS_GROUND,
        when=lambda it, limits: it.works.cuts_floor or bool(PAVED & set(it.works.zones)),
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("We cut concrete with water and hang dust barriers. Keep out of the work area."),
        estimator=lambda it, limits: (
            Say.of(
                "Inside or enclosed: water-fed saw and shrouded breaker, respirator APF 10 for both at any duration (29 CFR 1926.1153 Table 1)."
            )
            if it.works.cuts_floor
            else Say.of(
                "Outside: water-fed saw, shrouded breaker; respirator APF 10 for handheld saw and breaker over 4 hours a shift (29 CFR 1926.1153 Table 1)."
            )
        ),
        adds=frozenset({"concrete_dust"}),
        statement="Cutting or breaking concrete: water-fed saw, shrouded breaker; indoors APF 10 for saws and breakers alike, outdoors over 4 h too.",
        reason="Fine silica dust scars lungs for good.",
        source="29 CFR 1926.1153(c)(1) Table 1",
        worse="hurting somebody",
        guards_people=True,
        fires=('stretch(method="break-through", zones=("slab",))',),
        misses=('stretch(method="trench", zones=("yard",))',),
    ),
)
