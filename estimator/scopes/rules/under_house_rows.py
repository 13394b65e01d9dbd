"""Rules of work under a house that turn on one fact: each row says when it fires, and what it then answers."""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.scopes.rules.concern import HANGS, LAYS, NEW_PIPE, TESTS_SECTIONS, TUNNELS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Row


def _beams_over(it: StretchFacts) -> int:
    """Beams and footings noted over the tunnel; one where only the edge of the slab has a beam."""
    edge = it.edge.beam is not None and it.edge.beam.there and "slab" in it.zones
    return len(it.beams) + len(it.placed("footing")) or int(edge)


def _loose(it: StretchFacts, limits: Limits) -> list[str]:
    return [s for s in it.soils if (row := limits.soil(s)) is not None and not row.can_tunnel]


def _walls(it: StretchFacts) -> int:
    return sum(count for way in it.reroutes for what, count in way.penetrations if what == "wall")


def _outside_the_edge(it: StretchFacts, limits: Limits) -> list[Stretch]:
    if it.slab_edge_ft is None:
        return []
    return [Stretch.between(it.slab_edge_ft, it.slab_edge_ft + it.downstream * limits("slab_edge_near_ft"))]


ROWS: tuple[Row, ...] = (
    Row(
        id="tunnel-under-a-beam",
        numbers=("R18",),
        concerns=TUNNELS,
        when=lambda it, limits: _beams_over(it) > 0,
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of(
            "The tunnel passes under a grade beam, so a registered professional engineer reviews it first."
        ),
        estimator=lambda it, limits: Say.of(
            "Beams or footings over the tunnel: {count}; engineer's letter, support as it says (29 CFR 1926.651(i)).",
            count=_beams_over(it),
        ),
        adds=frozenset({"engineer"}),
        statement="A tunnel under a beam or footing: an engineer's letter first.",
        reason="Below a footing only a support system, stable rock or a registered engineer's word will do.",
        source="29 CFR 1926.651(i)(2)",
        settled_by="engineer",
        worse="hurting somebody",
        guards_people=True,
        fires=(
            'stretch(method="tunnel", zones=("slab",), beams=(beam(),))',
            'stretch(method="tunnel", zones=("slab",), edge=KnownEdge(EdgeBeam(2.0, 1.0), "the house"))',
        ),
        misses=('stretch(method="tunnel", zones=("slab",), beams=())',),
    ),
    Row(
        id="people-in-a-tunnel",
        numbers=("R25",),
        concerns=TUNNELS,
        when=lambda it, limits: True,
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("Do not run water or flush while anyone is under the house. We lock out and tag the drains."),
        estimator=Say.of(
            "Tunnel: gas test before and during entry, blower, attendant outside, low-voltage light, no engine at the mouth, drains locked out, rescue plan; the competent person decides on 29 CFR 1926.800, Subpart P or AA and signs."
        ),
        adds=frozenset({"tunnel", "air_plan", "drains_locked_out", "competent_person"}),
        statement="People under a house: air plan, second person, light, drains locked out, a named competent person, at any depth.",
        reason="An open sewer is a bad-air hazard, and one flush floods the face. Which federal rule applies hangs on where people work.",
        source="29 CFR 1926.651(g), 1926.800(a), 1926.1201(b) (from memory); the rest common practice",
        worse="hurting somebody",
        guards_people=True,
        fires=('stretch(method="tunnel", zones=("slab",))',),
        misses=('stretch(method="break-through")',),
    ),
    Row(
        id="drains-are-locked-out",
        numbers=("R25",),
        concerns=HANGS,
        when=lambda it, limits: True,
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("Do not run water or flush while anyone is under the house. We lock out and tag the drains."),
        estimator=Say.of("Crawl space: drains locked out and tagged while anyone is under the house."),
        adds=frozenset({"drains_locked_out"}),
        statement="The house drains are locked and tagged while anyone works on them under the house.",
        reason="One flush empties over whoever lies under an open pipe.",
        source=COMMON_PRACTICE,
        worse="hurting somebody",
        guards_people=True,
        fires=('stretch(method="crawl replace", zones=("crawl",))',),
        misses=('stretch(method="crawl replace", zones=("yard",))',),
    ),
    Row(
        id="soil-that-runs",
        numbers=("R26",),
        concerns=TUNNELS,
        when=lambda it, limits: bool(_loose(it, limits)),
        effect=Effect.UNTIL_APPROVED,
        homeowner=Say.of("The ground under the house is too loose for people to dig a tunnel in safely."),
        estimator=lambda it, limits: Say.of(
            "{soil}: no tunnel without full shoring designed for it.", soil=", ".join(_loose(it, limits))
        ),
        adds=frozenset({"engineer"}),
        statement="Loose sand, gravel, fill or running soil: no tunnel without full shoring by design.",
        reason="The face runs in on whoever digs.",
        source=COMMON_PRACTICE,
        settled_by="engineer",
        worse="hurting somebody",
        guards_people=True,
        fires=('stretch(method="tunnel", soils=("fill",))',),
        misses=('stretch(method="tunnel", soils=("firm clay",))',),
    ),
    Row(
        id="sleeve-through-the-wall",
        numbers=("R20",),
        concerns=LAYS,
        when=lambda it, limits: any(b.through for b in it.beams) or (it.works.goes_round and _walls(it) > 0),
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "The pipe passes through the foundation in a sleeve, so that the house can move without breaking it."
        ),
        estimator=lambda it, limits: Say.of(
            "Sleeve or arch two pipe sizes larger at each wall ({count}).",
            count=sum(b.through for b in it.beams) + _walls(it),
        ),
        adds=frozenset({"sleeve"}),
        statement="Through a foundation wall: a sleeve or arch two pipe sizes larger.",
        reason="A wall that settles shears a pipe cast into it.",
        source="IRC 2021 P2603.4 (foundation walls; 2006 edition P2603.5 also named footings); under a footing: common practice",
        worse="leaving out a caution",
        fires=('stretch(method="trench", beams=(beam(through=True),))',),
        misses=('stretch(method="trench")',),
    ),
    Row(
        id="flexible-joint-at-the-edge",
        numbers=("D15",),
        concerns=LAYS,
        when=lambda it, limits: any(
            f.stretch.touches(near) for near in _outside_the_edge(it, limits) for f in it.of("offset", "gap")
        ),
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("The house has moved there and may move again, so we use a flexible connection."),
        estimator=Say.of(
            "Joint moved at the slab edge: flexible connection; movement may recur, say so in the warranty."
        ),
        adds=frozenset({"flexible_connection"}),
        statement="A joint that moved at the slab edge: a flexible connection, and the warranty says that movement may recur.",
        reason="A stiff joint breaks in the same place.",
        source=COMMON_PRACTICE,
        worse="leaving out a caution",
        reads=("slab_edge_near_ft",),
        fires=('stretch("2 offset 20%", method="yard spot", slab_edge_ft=0.0)',),
        misses=('stretch("6 offset 20%", method="yard spot", slab_edge_ft=0.0)',),
    ),
    Row(
        id="empty-pipe-floats",
        numbers=(),
        concerns=TUNNELS,
        when=lambda it, limits: True,
        effect=Effect.CAUTION,
        homeowner=Say.of("We check the new pipe’s slope again after backfill."),
        estimator=Say.of(
            "Slurry or flowable fill: empty pipe floats and strap hangers hold only downward; fill the pipe with water, hold it down, place in lifts, watch the grade, film after."
        ),
        adds=frozenset({"film_after_fill"}),
        statement="Pipe in slurry or flowable fill is filled with water and held down; filmed again after.",
        reason="A 4 in plastic pipe in wet fill lifts with about 11 lb a foot.",
        source="plain arithmetic (buoyancy); common practice",
        worse="offering what cannot work",
        fires=('stretch(method="tunnel", zones=("slab",))',),
        misses=('stretch(method="trench")',),
    ),
    Row(
        id="test-the-new-pipe",
        numbers=("R42",),
        concerns=NEW_PIPE,
        when=lambda it, limits: it.under_floor or it.works.below_floor,
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("We fill the new pipe with water and watch it before we cover it."),
        estimator=Say.of(
            "New drain: 10 ft head, or 5 ft where the house code of 2015 or later rules, 15 min, before cover. Old pipe beside it: only to the lowest opening, watched, drained promptly; never 10 ft on old iron. Plugs rated, tethered, nobody in line; no air test on plastic."
        ),
        adds=frozenset({"new_pipe_test"}),
        statement="After any replacement under a slab: water test before cover; old systems only to their lowest opening and for minutes.",
        reason="A buried mistake costs the whole job again; filling a leaking old system soaks the soil that carries the house.",
        source="IPC 312 (10 ft, 15 min); IRC P2503.5.1 (5 ft since 2015, from memory); the old system: common practice",
        worse="hurting somebody",
        fires=('stretch(method="tunnel", zones=("slab",))',),
        misses=('stretch(method="trench", zones=("yard",))',),
    ),
    Row(
        id="test-water-and-plugs",
        numbers=("R42",),
        concerns=TESTS_SECTIONS,
        when=lambda it, limits: True,
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "Do not run water during the test. We fill only to the lowest opening and drain it right away."
        ),
        estimator=Say.of(
            "Fill only to the lowest opening, limit the minutes, watch, drain promptly. Plugs of the right size and pressure, tethered, nobody in line with the pipe, water down before deflating; no air test on plastic."
        ),
        statement="Old systems are filled to the lowest opening and for minutes only; plugs are rated, tethered and kept clear of.",
        reason="A 4 in plug under 10 ft of water holds back about 55 lb; an air plug far more when it bursts. Leaked water softens the soil under the house.",
        source="plain arithmetic (pressure); common practice",
        worse="hurting somebody",
        guards_people=True,
        fires=('stretch(method="isolation test")',),
        misses=('stretch(method="clean")',),
    ),
)
