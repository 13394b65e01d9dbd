"""Ground and soil: mud in the pipe, moved joints, lifted slabs, animals, ground water, sewage out, a settled place (D05, D15, D16, D20–D23).

Common practice: drain flies or mud mean an opening nearby.
"""

from collections.abc import Iterable

from estimator.diagnosis.case import Case
from estimator.diagnosis.reading import Hit, Reading, each
from estimator.diagnosis.standing_water import is_dip
from estimator.model.gas import fuel_gas
from estimator.model.line import Finding
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch, hull

SEWAGE_OUT = ("sewage", "sinkhole", "wet lawn", "smell", "odor")


def moved_at_the_edge(case: Case) -> Iterable[Hit]:
    """Pipe ends out of line at the slab edge or in the first feet outside it."""
    edge = case.profile.slab_edge_ft
    if edge is None:
        return ()
    far = edge + case.line.downstream * case.number("slab_edge_near_ft")
    near = Stretch.between(edge, far)
    return each(f for f in case.of("offset", "gap") if f.stretch.touches(near))


def pulled_joint(case: Case) -> Iterable[Hit]:
    lifted = case.job.foundation.work == "done"
    return each(
        f for f in case.of("gap", "offset") if lifted and case.family_at(f) == "plastic" and case.under_slab(f.stretch)
    )


def water_with_nobody_using_it(case: Case) -> Iterable[Hit]:
    signs = [s for s in case.job.signs if "meter" in s.what.lower() or "water running" in s.what.lower()]
    found = [f for f in case.of("leak") if "running in" in f.signs]
    return (Hit(None, tuple(found)),) if signs or found else ()


def sewage_out(case: Case) -> bool:
    """Somebody smelled, saw or stepped into it."""
    told = (s for s in case.job.signs if not fuel_gas(s))
    return any(word in s.what.lower() for s in told for word in SEWAGE_OUT)


def settled_places(case: Case) -> tuple[tuple[Stretch, tuple[Finding, ...]], ...]:
    """A dip, roots and an offset within a few feet of each other: the ground settled and the pipe broke there."""
    reach = case.number("settled_within_ft")
    out = []
    for dip in (f for f in case.of("sag") if is_dip(f)):
        near = [f for f in case.of("roots", "offset") if f.stretch.gap_ft(dip.stretch) <= reach]
        if {"roots", "offset"} <= {f.kind for f in near}:
            there = (dip, *near)
            out.append((hull(f.stretch for f in there), there))
    return tuple(out)


READINGS = (
    Reading(
        id="mud-in-the-pipe",
        numbers=("D05",),
        evidence="mud or gravel in the pipe",
        effect="urgency one higher under a slab or drive; an opening is suspected nearby",
        meaning=Say.of(
            "Soil in the pipe came in through an opening at or upstream of it; there may be a hollow in the ground."
        ),
        confirm=Say.of("Probe, locate, and sound the floor or paving above."),
        asks=True,
        sees=lambda case: each(case.of("mud")),
    ),
    Reading(
        id="moved-at-the-slab-edge",
        numbers=("D15",),
        evidence="offset or gap at the slab edge or in the first feet outside",
        effect="a flexible connection; movement may come again",
        meaning=Say.of("The joint moved where house and yard meet: soil or foundation moves there and may again."),
        confirm=Say.of("Ask for the dates of any foundation work or fresh fill."),
        asks=True,
        sees=moved_at_the_edge,
        reads=("slab_edge_near_ft",),
    ),
    Reading(
        id="joint-pulled-by-a-lift",
        numbers=("D16",),
        evidence="plastic joint apart under the slab after a lift",
        effect="test the whole system; test before and after a lift",
        meaning=Say.of("The joint was pulled apart when the house was lifted; others probably were too."),
        confirm=Say.of("Water-test the whole system."),
        asks=True,
        not_fixed=Say.of(
            "A joint pulled apart when the house was lifted; others may have too. We can set a firm price after a water test of all drains under the house."
        ),
        sees=pulled_joint,
    ),
    Reading(
        id="animals-in-the-pipe",
        numbers=("D20",),
        evidence="insects or rodents",
        effect="an opening is suspected nearby, never a repair by itself",
        meaning=Say.of("Insects or rodents come through a gap of a quarter inch or a dead branch left open nearby."),
        confirm=Say.of("Smoke or dye test."),
        asks=True,
        sees=lambda case: each(case.of("insects")),
    ),
    Reading(
        id="water-nobody-uses",
        numbers=("D21",),
        evidence="clear water running while nobody uses any",
        effect="ground-water caution for digging and lining",
        meaning=Say.of("Clear water runs though nobody uses any: ground water comes in, or a fixture leaks."),
        confirm=Say.of("Shut the house water and look again."),
        asks=True,
        sees=water_with_nobody_using_it,
    ),
    Reading(
        id="sewage-gets-out",
        numbers=("D22",),
        evidence="sewage smell, sinkhole, wet lawn",
        effect="urgency 4 where people can be exposed",
        meaning=Say.of("Sewage gets out where people can touch or breathe it: keep people, children and pets away."),
        confirm=Say.of("Dye test."),
        sees=lambda case: (Hit(),) if sewage_out(case) else (),
    ),
    Reading(
        id="settled-and-broken",
        numbers=("D23",),
        evidence="a dip, roots and an offset within about 10 ft",
        effect="one need: one dig that restores the slope, not three repairs",
        meaning=Say.of("A dip, roots and a shifted joint over {length}: the ground settled and the pipe broke there."),
        sees=lambda case: [
            Hit(s, found, (("length", Feet(round(s.length_ft, 1))),)) for s, found in settled_places(case)
        ],
        reads=("settled_within_ft",),
    ),
)
