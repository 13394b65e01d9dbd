"""The boxes that every safety page has, to be ticked: what is on paper before the first spade, and what is done each shift."""

from estimator.model.say import Say

LOCATED = Say.of(
    "Public lines marked (811) and the waiting time over: ticket, marked on, ends on; dig by hand near the marks"
)
SLAB = Say.of("Slab: scanned for cables; water, gas, power and ducts in or under it found and shut off")
ASBESTOS = Say.of("Asbestos: floor, glue, duct and cement pipe tested by the state's rule before cutting, or presumed")
LEAD = Say.of(
    "Lead: house before 1978: painted area measured; over the limit a lead-safe firm and the leaflet (40 CFR 745.83)"
)
PAPERS = (
    LOCATED,
    Say.of("Private lines found: water, gas, power, sprinklers, pool"),
    Say.of("Permit: number, card on site"),
    Say.of("Engineer's letter or approval, where one is asked for"),
    SLAB,
    ASBESTOS,
    LEAD,
    Say.of("Shut-offs: where the water main, gas and power are"),
    Say.of("Inspection called for: water standing, pipe open, safe to look at"),
)
HEAT = Say.of("Heat: water, shade, rests")
DAILY = (
    Say.of("Sides, water, cracks at the edge, heap, ladder looked at"),
    Say.of("Air tested before entry and all the time: oxygen, gas, hydrogen sulfide; blower on"),
    Say.of("House drains locked and tagged; people in the house told not to flush"),
    Say.of("Attendant outside who never goes in; how a man is pulled out is clear"),
    Say.of("No gasoline engine at the mouth of the pit or inside; lights and tools on a ground-fault breaker"),
    Say.of("Open pit covered or fenced for the night"),
    HEAT,
)
