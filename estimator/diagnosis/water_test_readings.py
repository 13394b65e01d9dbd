"""What water tests mean beside what the camera saw (D09 to D14, D26): each reading, and where it is seen.

Common practice: a two-way cleanout under standing water makes a failed water test likely.
"""

from collections.abc import Iterable

from estimator.diagnosis.case import Case
from estimator.diagnosis.reading import Hit, Reading
from estimator.diagnosis.standing_water import is_dip
from estimator.diagnosis.tested import STATIC_TESTS, failed_sections, having, not_located, openings, read
from estimator.model.say import Feet, Say


def _failed_clean(case: Case) -> Iterable[Hit]:
    return [Hit(None, (), (("sections", s.parts),)) for s in not_located(case) if not s.isolated]


def _section_failed(case: Case) -> Iterable[Hit]:
    return [Hit(None, (), (("section", s.read.test.section),)) for s in not_located(case) if s.isolated]


def _holds(case: Case) -> Iterable[Hit]:
    for r in having(case, "failed"):
        if r.test.held_at_in is not None:
            yield Hit(
                None,
                (),
                (
                    ("height", Feet(round(r.test.held_at_in / 12, 2))),
                    ("level", r.test.level or Say.of("where it was filled to")),
                ),
            )


def _empties(case: Case) -> Iterable[Hit]:
    gone = case.number("test_emptied_in")
    for r in having(case, "failed"):
        if r.test.held_at_in is None and (any(drop >= gone for _, drop in r.test.readings) or "empt" in r.test.note):
            yield Hit(None)


def _rose(case: Case) -> Iterable[Hit]:
    return [Hit(None, (), (("where", t.rose_at),)) for t in case.tests if t.rose_at]


def _several(case: Case) -> Iterable[Hit]:
    sections = failed_sections(case)
    if len(sections) >= case.number("test_sections_fail") and case.tests:
        yield Hit(None, (), (("sections", ", ".join(sections)),))


def _not_sealed(case: Case) -> Iterable[Hit]:
    return [Hit(None, (), (("section", r.test.section),)) for r in having(case, "inconclusive")]


def _rate(case: Case) -> Iterable[Hit]:
    for r in read(case):
        if r.gallons_a_day and r.outcome == "failed":
            yield Hit(None, (), (("section", r.test.section), ("rate", f"{r.gallons_a_day:.0f}")))


def _passed_but_open(case: Case) -> Iterable[Hit]:
    seen = openings(case)
    passed = [r for r in having(case, "passed") if r.test.part is None]
    return (Hit(None, seen),) if seen and passed and not having(case, "failed") else ()


def _doubtful(case: Case) -> Iterable[Hit]:
    for r in read(case):
        if r.doubts and r.outcome != "inconclusive":
            yield Hit(None, (), (("section", r.test.section), ("doubts", r.doubts)))


def _exits(case: Case) -> Iterable[Hit]:
    whole = [t for t in case.tests if t.kind == "whole"]
    return (Hit(None, (), (("count", case.job.house.exits),)),) if case.job.house.exits > 1 and whole else ()


def _cleanout_under_water(case: Case) -> Iterable[Hit]:
    dips = [f for f in case.of("sag") if is_dip(f)]
    spots = [m.stretch for m in case.profile.marks("cleanout")]
    return [
        Hit(s, tuple(f for f in dips if f.stretch.touches(s))) for s in spots if any(f.stretch.touches(s) for f in dips)
    ]


READINGS = (
    Reading(
        id="test-fails-camera-clean",
        numbers=("D09",),
        evidence="the water test fails, the camera saw no opening that explains it",
        effect="no repair until it is isolated; the isolation test is priced",
        meaning=Say.of(
            "Failed water test, leak not located: the camera saw no opening in {sections} that explains it. The leak is in a branch drain, a riser, a fixture connection or a joint above the water."
        ),
        confirm=Say.of("Test each section by itself, with a plug at each branch drain."),
        asks=True,
        source=STATIC_TESTS,
        sees=_failed_clean,
    ),
    Reading(
        id="section-fails-nothing-seen",
        numbers=("D09",),
        evidence="a section fails its test by itself, and nothing seen in it explains it",
        effect="the leak is in that section and no other; it is inspected before it is repaired",
        meaning=Say.of("Failed water test, leak not located in {section}: this section leaks by itself."),
        confirm=Say.of(
            "Inspect the section that failed with the camera, and read the height at which its level stops."
        ),
        asks=True,
        source=STATIC_TESTS,
        sees=_section_failed,
    ),
    Reading(
        id="level-drops-and-holds",
        numbers=("D10",),
        evidence="the level drops and then holds",
        effect="narrows the leak to about that height; nothing is known above it",
        meaning=Say.of(
            "The water fell to {height} below {level} and held: a leak is at about that height and the pipe below it is tight; above it nothing is known, other holes may be higher."
        ),
        confirm=Say.of("Measure from the slab top; in old iron hold it 15 minutes more."),
        sees=_holds,
    ),
    Reading(
        id="whole-system-empties",
        numbers=("D11",),
        evidence="the level drops until the whole system is empty",
        effect="may be a false fail",
        meaning=Say.of("Everything ran out: the leak is at or near the low end, or the test plug itself leaked."),
        confirm=Say.of("Set the plug again, and once in pipe known to be sound."),
        asks=True,
        sees=_empties,
        reads=("test_emptied_in",),
    ),
    Reading(
        id="water-rises-elsewhere",
        numbers=("D12",),
        evidence="water rises at another fixture during the test",
        effect="a cross level, no fail",
        meaning=Say.of("The water rose at {where}: the level evened out; that is no leak."),
        sees=_rose,
    ),
    Reading(
        id="several-sections-fail",
        numbers=("D13",),
        evidence="several sections fail",
        effect="the system is treated as failed: compare replacing all of it with going around it",
        meaning=Say.of("Several sections leak: {sections}. Treat the whole system as failed."),
        sees=_several,
        reads=("test_sections_fail",),
    ),
    Reading(
        id="section-would-not-seal",
        numbers=("D14",),
        evidence="a section could not be sealed, or the test proves nothing",
        effect="inconclusive, never a pass; stays an exclusion",
        meaning=Say.of("The test of {section} proves nothing; that part counts as not tested."),
        confirm=Say.of("Descale, or cut in a test tee, and test again."),
        asks=True,
        sees=_not_sealed,
    ),
    Reading(
        id="pass-cancels-nothing-seen",
        numbers=("D26",),
        evidence="the test passes, the camera saw an opening",
        effect="the opening stands",
        meaning=Say.of(
            "The test held, yet the camera saw an opening: it lies higher than the water stood, is packed with soil or scale, or was not in the test. What was seen stands."
        ),
        confirm=Say.of("Compare the height of the water and the place of the plug with the opening."),
        source="plain reasoning",
        sees=_passed_but_open,
    ),
    Reading(
        id="leak-rate",
        numbers=(),
        evidence="readings over time and all open risers",
        effect="shown with the test",
        meaning=Say.of("{section} loses about {rate} gallons a day at that level, all open risers counted."),
        source="plain arithmetic",
        sees=_rate,
        reads=("test_settle_min",),
    ),
    Reading(
        id="test-leaves-open",
        numbers=(),
        evidence="parts not in the test, too short, water dripping in, a plug nobody saw seal",
        effect="shown with the test; what was not in it stays an exclusion",
        meaning=Say.of("The test of {section} leaves open: {doubts}."),
        source=STATIC_TESTS,
        sees=_doubtful,
        reads=("test_minutes",),
    ),
    Reading(
        id="two-building-exits",
        numbers=(),
        evidence="more than one drain leaves the house, and one plug was set",
        effect="what leaves by the other exit was not in the test",
        meaning=Say.of(
            "{count} drains leave this house; kitchen and laundry often leave apart. One plug tests only what drains through it."
        ),
        confirm=Say.of("Plug and test each exit."),
        asks=True,
        sees=_exits,
    ),
    Reading(
        id="cleanout-under-water",
        numbers=(),
        evidence="a two-way cleanout stands in a dip",
        effect="a failed test is likely; the plug sits in water",
        meaning=Say.of("The cleanout stands in a dip: a water test from there is likely to fail or to prove nothing."),
        sees=_cleanout_under_water,
    ),
)
