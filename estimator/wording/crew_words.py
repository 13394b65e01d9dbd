"""Words of the log and the takeoff in, the words the crew knows them by out: places, utilities, quantities."""

from estimator.model.say import Say

FLOWS: dict[str, Say] = {
    "with flow": Say.of("with the flow"),
    "against flow": Say.of("against the flow"),
}
"""Which way the camera went."""


SIDES: dict[str, Say] = {
    "left": Say.of("left"),
    "right": Say.of("right"),
    "up": Say.of("from above"),
    "down": Say.of("from below"),
    "unknown": Say.of("side not given"),
}


LIVE: dict[str, Say] = {
    "live": Say.of("live"),
    "dead": Say.of("dead"),
    "unknown": Say.of("not known: treat as live"),
}


UTILITIES: dict[str, Say] = {
    "gas": Say.of("gas"),
    "water": Say.of("water"),
    "power": Say.of("power"),
    "phone": Say.of("phone"),
    "cable": Say.of("cable TV"),
    "fiber optic": Say.of("fiber optic"),
    "irrigation": Say.of("irrigation"),
    "storm drain": Say.of("storm drain"),
    "sewer": Say.of("another sewer"),
    "conduit": Say.of("conduit"),
    "unknown": Say.of("unknown utility"),
}
"""What crosses a drain, by its word in the notes."""


MARKS: dict[str, Say] = {
    "slab": Say.of("slab begins"),
    "yard": Say.of("yard begins"),
    "drive": Say.of("driveway begins"),
    "walk": Say.of("walkway begins"),
    "street": Say.of("street begins"),
    "crawl": Say.of("crawl space begins"),
    "basement": Say.of("basement begins"),
    "pipe": Say.of("pipe from here:"),
    "size": Say.of("size from here:"),
    "soil": Say.of("soil:"),
    "under": Say.of("over the pipe:"),
    "room": Say.of("room:"),
    "ground": Say.of("ground"),
    "access": Say.of("access"),
    "cleanout": Say.of("cleanout"),
    "beam": Say.of("BEAM: never cut"),
    "bend": Say.of("bend"),
    "joint": Say.of("joint"),
    "depth": Say.of("depth located"),
    "invert": Say.of("invert read"),
    "level": Say.of("level reading"),
    "loc": Say.of("located"),
    "pothole": Say.of("potholed"),
    "beside": Say.of("along the house, away from it:"),
    "clear": Say.of("room beside the pipe:"),
    "edge": Say.of("slab edge, away from it:"),
    "tree": Say.of("tree"),
    "crossing": Say.of("CROSSING: expose by hand"),
    "footing": Say.of("FOOTING: do not dig below without support or an engineer's letter"),
    "property line": Say.of("property line"),
    "water table": Say.of("groundwater"),
    "end": Say.of("ends at:"),
    "stop": Say.of("camera stopped"),
    "cleaned": Say.of("cleaned"),
    "branch": Say.of("branch"),
}
"""What a place word means to the crew."""


OVER_IT: tuple[Say, ...] = (
    Say.of("cabinets"), Say.of("tub"), Say.of("shower"), Say.of("wall"), Say.of("stairs"), Say.of("fireplace"),
    Say.of("deck"), Say.of("porch"), Say.of("pool"), Say.of("cable end"),
)  # fmt: skip
"""What stands over a pipe, and what stopped a camera, by the words of the notes."""


QUANTITIES: dict[str, Say] = {
    "dig_bcy": Say.of("dig by machine"),
    "hand_dig_bcy": Say.of("dig by hand"),
    "tunnel_bcy": Say.of("tunnel, soil out"),
    "pit_bcy": Say.of("pits, soil out"),
    "tunnel_ft": Say.of("tunnel, length"),
    "pits": Say.of("pits"),
    "spoil_lcy": Say.of("spoil pile, loose"),
    "pile_sf": Say.of("area of the spoil pile"),
    "export_lcy": Say.of("haul-off, loose"),
    "loads": Say.of("truck loads"),
    "saw_lf": Say.of("saw cut"),
    "slab_sf": Say.of("slab removed"),
    "patch_sf": Say.of("slab patch"),
    "dowels": Say.of("dowels"),
    "pipe_ft": Say.of("new pipe"),
    "liner_ft": Say.of("liner"),
    "hangers": Say.of("hangers"),
    "branches": Say.of("branches to tie in"),
    "branches_tunnel": Say.of("branches to tie in, in the tunnel"),
    "couplings": Say.of("couplings"),
    "cleanouts": Say.of("new cleanouts"),
    "sand_tons": Say.of("sand"),
    "slurry_cy": Say.of("slurry"),
    "sod_sf": Say.of("sod"),
}
"""Quantities a crew can see on site."""


ITEMS: tuple[Say, ...] = (
    Say.of("mobilization"), Say.of("private locate"), Say.of("tendon scan"), Say.of("asbestos test"),
    Say.of("street closure"), Say.of("inspection visit"), Say.of("film after"), Say.of("permit"),
    Say.of("film before"), Say.of("section test"), Say.of("locate place"), Say.of("level shot"),
    Say.of("site measure"), Say.of("water test of all"), Say.of("smoke test"), Say.of("engineer letter"),
    Say.of("potholes"), Say.of("trench box"), Say.of("pumping"), Say.of("haul away"), Say.of("floor opening"),
    Say.of("inside dig"), Say.of("floor shoring"), Say.of("flatwork opening"), Say.of("drive opening"),
    Say.of("street opening"), Say.of("asphalt opening"), Say.of("pavers opening"), Say.of("descaling"),
    Say.of("new pipe in tunnel"), Say.of("new pipe in crawl space"), Say.of("bursting"), Say.of("new route"),
    Say.of("penetrations"), Say.of("vents"), Say.of("side drains in tunnel"), Say.of("new junction"),
    Say.of("cleanouts"), Say.of("sectional lining"), Say.of("side drains reopened"), Say.of("caps"),
    Say.of("old pipe filled"), Say.of("bedding sand"), Say.of("refill"), Say.of("hand refill"),
    Say.of("inside refill"), Say.of("tunnel refill"), Say.of("fill dirt"), Say.of("floor patch"),
    Say.of("flatwork back"), Say.of("drive back"), Say.of("street back"), Say.of("asphalt back"),
    Say.of("gravel back"), Say.of("pavers back"), Say.of("planting beds"), Say.of("service scan"),
    Say.of("arborist visit"), Say.of("side drains proven"), Say.of("portable toilet"), Say.of("fixtures moved"),
    Say.of("ground water sealed"), Say.of("flexible joint"), Say.of("sleeves"), Say.of("test after lift"),
    Say.of("void fill"), Say.of("drain plan"), Say.of("film in a year"), Say.of("vacuum pothole"),
)  # fmt: skip
"""Work items by the names the tables come with, where no other list has them."""
