"""A work line of the quote in, the same work as the crew reads it out: verb first, no word to the customer, no money."""

from estimator.model.price import LineItem
from estimator.model.say import Say
from estimator.papers.letter import Letter

FOR_THE_CREW: dict[str, Say] = {
    "mobilisation": Say.of("Set up; protect the way in"),
    "private locate": Say.of("Locate private lines: pool, irrigation, gas to the grill"),
    "tendon scan": Say.of("Scan the slab for post-tension cables"),
    "asbestos test": Say.of("Test the floor for asbestos"),
    "street closure": Say.of("Close the lane while anyone works in the street"),
    "inspection visit": Say.of("Wait for the inspector before cover"),
    "film after": Say.of("Run the camera when the work is done"),
    "permit": Say.of("City plumbing permit and inspection"),
    "film before": Say.of("Run the camera before work, from the access named"),
    "section test": Say.of("Test one section by itself"),
    "look and see": Say.of("Uncover the pipe in one place; take pictures"),
    "locate place": Say.of("Locate the pipe from above, with its depth; mark it"),
    "level shot": Say.of("Shoot the level of the pipe's bottom"),
    "site measure": Say.of("Measure the way in: walls, open ground, joins"),
    "smoke test": Say.of("Smoke test drains and vents"),
    "engineer letter": Say.of("Letter from a registered professional engineer (P.E.)"),
    "potholes": Say.of("Pothole pipe and buried lines by hand before digging"),
    "machine dig": Say.of("Dig to the pipe by machine"),
    "hand dig": Say.of("Dig to the pipe by hand"),
    "trench box": Say.of("Set trench boxes before anyone enters"),
    "pumping": Say.of("Pump ground water out of the excavation"),
    "haul away": Say.of("Haul off spoil and concrete"),
    "tunnel": Say.of("Hand-dig the tunnel from its access pit; cut no floor for it"),
    "floor opening": Say.of("Open the floor: dust walls, wet saw, break, carry out"),
    "inside dig": Say.of("Dig inside by hand; carry the soil out"),
    "floor shoring": Say.of("Shore the opening before anyone enters"),
    "flatwork opening": Say.of("Saw and remove the walk or patio over the pipe"),
    "drive opening": Say.of("Saw and remove the driveway over the pipe"),
    "street opening": Say.of("Saw and remove the street's asphalt over the pipe"),
    "cleaning": Say.of("Clean the pipe with jetter or cutter"),
    "descaling": Say.of("Descale to bare wall; run the camera. If it cannot be lined: stop, call, show the customer"),
    "side drains": Say.of("Reconnect the branch drain with new fittings"),
    "side drains in tunnel": Say.of("Reconnect the branch drain from the tunnel with new fittings"),
    "new junction": Say.of("Cut a new wye into the line it joins, a coupling on each side"),
    "penetrations": Say.of("Cut through wall, floor or roof; seal afterward"),
    "vents": Say.of("Install the vent the code asks for"),
    "cleanouts": Say.of("Install the cleanout"),
    "lining": Say.of("Line the pipe; cure hard"),
    "sectional lining": Say.of("Set the short liner"),
    "side drains reopened": Say.of("Reopen the branch drain in the liner"),
    "caps": Say.of("Cap the end of the old pipe"),
    "old pipe filled": Say.of("Fill the old pipe"),
    "toilets": Say.of("Pull and reset the toilet with a new wax ring"),
    "water test": Say.of("Water-test the new pipe; leave it full for the inspector"),
    "bedding sand": Say.of("Bed the pipe in clean sand"),
    "refill": Say.of("Backfill in thin lifts, each compacted"),
    "hand refill": Say.of("Backfill in thin lifts, each compacted by hand"),
    "inside refill": Say.of("Backfill under the floor in thin lifts, each compacted by hand"),
    "tunnel refill": Say.of("Backfill tunnel and pit: pack by hand, fill the gaps as the plan says"),
    "fill dirt": Say.of("Import clean fill"),
    "floor patch": Say.of("Pour the floor patch, doweled to the slab; leave bare concrete"),
    "flatwork back": Say.of("Pour the walk or patio in plain concrete"),
    "drive back": Say.of("Pour the driveway in plain concrete"),
    "street back": Say.of("Patch the street in hot asphalt as the city asks"),
    "sod": Say.of("Lay sod"),
    "planting beds": Say.of("Rake and replant the bed"),
    "service scan": Say.of("Locate water, gas and power in and under the floor before cutting or digging"),
    "arborist visit": Say.of("Arborist marks the roots that must stay"),
    "side drains proven": Say.of("Run water at every fixture; note which branch drains are live"),
    "lead-safe set-up": Say.of("Set up lead-safe work: plastic all around, careful cleaning"),
    "portable toilet": Say.of("Set up the portable toilet while the only bathroom has no drain"),
    "fixtures moved": Say.of("Take out what stands over the pipe; set it back"),
    "ground water sealed": Say.of("Seal off ground water so that the liner can cure"),
    "flexible joint": Say.of("Set the flexible joint at the slab edge"),
    "sleeves": Say.of("Set the larger sleeve in the foundation wall"),
    "backwater valve": Say.of("Install the backwater valve with its access cover"),
    "test after lift": Say.of("Come back after the lift: water test and camera"),
    "void fill": Say.of("Fill the void under the floor or paving"),
    "drain plan": Say.of("Draw the drains on the house plan: where, how deep, where each joins"),
    "film in a year": Say.of("Come back in a year: run the camera"),
}
"""Work items by their name in the tables. An item of the firm's own is read out whole: nothing is cut off."""
BY_OTHERS = ("sub", "pass-through")
"""Classes of price of what others do and the office arranges."""


def crew_words(letter: Letter, line: LineItem) -> str:
    """The same work said to the crew; the whole text of an item it has no words for."""
    known = FOR_THE_CREW.get(line.work_item)
    return letter.say(known) if known else letter.text(line)
