"""A caution in, whether the same hazard stands on the page in other words, out: told by whole sentences, never by a name.

A firm that rewords one of its own sentences gets the caution back beside it, until somebody lists the new pair here. A number
that differs from the one listed (3 ft for 2 ft) brings it back too.
"""

from collections.abc import Collection

from estimator.model.offer import Option, Quote
from estimator.model.say import Say
from estimator.papers.crew_boxes import ASBESTOS, DOCUMENTS, HEAT, INSPECTION, LEAD, LOCATED, SHIFT, SLAB
from estimator.papers.hazards_of_a_dig import verdicts
from estimator.wording.say import say

PLUG = "Test plugs: rated size and pressure, tethered. Stay out of line with the pipe. Let the water down before you deflate. No air test on plastic."
SPOIL = "Keep spoil, tools and machines at least 2 ft from the edge. Provide egress within 25 ft where it is 4 ft or deeper."
FOOTING = "Do not dig below a footing without a support system, stable rock or a registered professional engineer's letter (29 CFR 1926.651(i)). Do not undermine a walkway, driveway or slab without support."
AIR = "Test the air before entry and keep testing: an open sewer is an expected hazard. Blower on. Attendant stays outside and never enters. Rescue plan reviewed, retrieval gear ready. No engine at the pit or inside."
LOCKOUT = "Lock out and tag the house drains. Do not flush while anyone is under the house."
WHICH_RULE = "Competent person decides and signs which rule applies: 29 CFR 1926 Subpart P, underground construction 1926.800, or confined spaces Subpart AA: ______"
VAPOR = "Primer and cement vapor burns and dulls. Ventilate. No sparks. Use low-voltage light on a GFCI."
FLOAT = "Empty pipe floats in wet fill. Fill it with water and hold it down. Pour in lifts and check the slope. Inspect again with the camera."
SILICA = "Wet saw or shrouded breaker. Breaker, walk-behind or hand saw indoors or in a tunnel: respirator, APF 10, for any time (29 CFR 1926.1153 Table 1)."
BEAM = "Never notch or cross a grade beam. Stop on each side and go under by hand as the plan says."
OVERHEAD = "Look up for overhead power lines before the excavator swings."
NIGHT = "Cover or fence what is open at night, and light it."
FILM_TWICE = "Video before cover and again after backfill. Leave the test water up until the inspector has seen it."
PROTECTIVE = "Protective system: ______ designed by ______ (competent person, tabulated data or engineer). Shoring sets listed here are a count to load, not a design."
SEWAGE = "Wear gloves and eye protection. Wash before eating. Handle sewage-soaked soil separately."
"""The firm's sentences for its crew, as the tables come."""

RESIN = "Lived in: drains shut during the cure, traps filled, vents and doors planned, air out; low-odor resin. Styrene has passed the immediate-danger level outdoors."
FILL = "Fill only to the lowest opening, limit the minutes, watch, drain promptly. Plugs of the right size and pressure, tethered, nobody in line with the pipe, water down before deflating; no air test on plastic."
"""Sentences of rules, which stand on the page in their own words."""

ELSEWHERE: dict[str, tuple[str, ...]] = {
    "a test plug is rated and tied, nobody stands in line with the pipe, and the water is let down before the plug": (
        PLUG,
    ),
    "no air test on plastic pipe": (PLUG,),
    "fill no higher than the lowest opening, watch it, and let the water out at once after the reading": (FILL,),
    "drains stay shut during the cure; traps are filled and the house is aired against the resin's smell": (RESIN,),
    "spoil, tools and machines stay at least 2 ft from the edge": (SPOIL,),
    "the pipe is filled with water and held down before fill is pumped: an empty pipe floats": (FLOAT,),
    "concrete dust is deadly over the years: wet saw, shrouded breaker, and masks indoors for saw and breaker alike": (
        SILICA,
    ),
    "Inside or enclosed: water-fed saw and shrouded breaker, respirator APF 10 for both at any duration (29 CFR 1926.1153 Table 1).": (
        SILICA,
    ),
    "nobody flushes while someone is under the house; air is tested before entry and all the time": (LOCKOUT, AIR),
    "no beam is sawn or notched; the crew stops on each side and digs under it by hand": (BEAM,),
    "No walk, drive or slab undermined without support (29 CFR 1926.651(i)(3)).": (FOOTING,),
    "Tunnel: gas test before and during entry, blower, attendant outside, low-voltage light, no engine at the mouth, drains locked out, rescue plan; the competent person decides on 29 CFR 1926.800, Subpart P or AA and signs.": (
        AIR,
        LOCKOUT,
        VAPOR,
        WHICH_RULE,
    ),
    "Heat plan; look up for wires before the machine swings; gloves and washing for sewage-soaked soil; pit covered and lit at night.": (
        HEAT.text,
        OVERHEAD,
        SEWAGE,
        NIGHT,
    ),
    "the pit mouth is held by what the competent person decides, fenced, and covered at night": (PROTECTIVE, NIGHT),
    "Slurry or flowable fill: empty pipe floats and strap hangers hold only downward; fill the pipe with water, hold it down, place in lifts, watch the grade, film after.": (
        FLOAT,
    ),
    "Inspection before cover: water standing, pipe open, safe to look at without entering, or pictures agreed beforehand; film before cover and after backfill.": (
        INSPECTION.text,
        FILM_TWICE,
    ),
    "One-call locate (811) before digging; wait as the state says; hand-dig in the tolerance zone.": (LOCATED.text,),
    "Floor, mastic or duct of that age: asbestos test by the state's rule before cutting.": (ASBESTOS.text,),
    "Built before 1978 and painted area not measured: ask; over the limit a lead-safe firm and the pamphlet (40 CFR 745.83).": (
        LEAD.text,
    ),
    "water, gas, power and ducts in and under the floor are found and shut off before the first cut": (SLAB.text,),
}
"""A caution of the rules or the takeoff in English, its numbers filled in, and the sentences that together say as much."""


def standing(quote: Quote, option: Option) -> frozenset[str]:
    """What the safety page of an option says anyway, in English: its terms for the crew, its rules, and its boxes or what stands for them."""
    terms = (term.text_en for term in option.terms if term.kind == "crew caution")
    ticked = (box.what.text for box in (*DOCUMENTS, *SHIFT) if box.when(quote, option))
    rules = (say(v.estimator, "en_US") for v in verdicts(option))
    return frozenset([*terms, *ticked, *(rule for rule in rules if rule not in ELSEWHERE)])


def said_elsewhere(caution: Say, stands: Collection[str]) -> bool:
    """Every sentence that together says the same stands there.

    >>> said_elsewhere(Say.of("no air test on plastic pipe"), {PLUG}), said_elsewhere(Say.of("no air test on plastic pipe"), {AIR})
    (True, False)
    """
    others = ELSEWHERE.get(say(caution, "en_US"))
    return others is not None and all(other in stands for other in others)
