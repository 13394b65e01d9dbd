"""The dig as it lies in the ground in; what is put back on top, each to a stated finish, out."""

from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.haul import with_flatwork
from estimator.takeoff.working import up
from estimator.works.ground import surface

BARE = ("bare", "bare ground", "bare soil", "dirt", "soil", "gravel", "mulch")
BEDS = ("bed", "beds", "planting bed", "planting beds")
PAVED_ZONES = {"walk": "flatwork", "drive": "drive", "street": "street"}
"""Zones that are concrete, a street asphalt, where the notes say no other word."""
LAID_LOOSE = {"gravel": "gravel", "pavers": "pavers", "brick": "pavers", "dirt": "", "bare ground": ""}
"""Surfaces of a walk, drive or street that are neither sawn nor poured, and what is put back; "": graded back and left."""


def put_back(case: Case, *holes: tuple[Stretch, float]) -> None:
    """Lawn, beds, walk and driveway over holes of a top width each, zone by zone; bare ground is raked and left."""
    for hole, top_width_ft in holes:
        for part, zone in case.profile.zones(hole):
            ends = (part.from_ft == hole.from_ft) + (part.to_ft == hole.to_ft)
            put_back_zone(case, zone or "yard", surface(case, part.middle_ft)[1], part.length_ft, ends, top_width_ft)
    round_sod(case)
    with_flatwork(case)


def put_back_zone(case: Case, zone: str, word: str, length_ft: float, ends: int, top_width_ft: float) -> None:
    """One length in one zone; `ends` of the hole's own ends lie in it and take the margin."""
    if zone == "drive":
        case.paper.facts.add("drive")
    if zone in PAVED_ZONES and word in LAID_LOOSE:
        _laid_loose(case, LAID_LOOSE[word], length_ft, ends, top_width_ft)
        return
    if zone in PAVED_ZONES:
        name = "asphalt" if word == "asphalt" and zone != "street" else PAVED_ZONES[zone]
        _paved(case, name, length_ft, ends, top_width_ft)
        return
    with_margin = length_ft + ends * case.number("sod_margin_ft")
    if word in BEDS:
        _green(case, "bed_sf", with_margin, top_width_ft)
    elif word not in BARE and zone == "yard":
        case.paper.facts.add("lawn")
        _green(case, "sod_sf", with_margin, top_width_ft)


def _green(case: Case, name: str, length_ft: float, top_width_ft: float) -> None:
    margin = case.number("sod_margin_ft")
    case.paper.add(
        name,
        length_ft * (top_width_ft + 2 * margin),
        "(length + margin) x (top width + 2 x margin)",
        ("length with margin", length_ft, "ft"),
        ("top width", top_width_ft, "ft"),
        ("margin", margin, "ft"),
    )


def round_sod(case: Case) -> None:
    """Sod is ordered and laid in whole pieces: hours run on what is ordered."""
    area, step = case.paper.value("sod_sf"), case.number("sod_step_sf")
    if area:
        quantity = next(q for q in case.paper.quantities if q.name == "sod_sf")
        case.paper.put(
            "sod_sf",
            up(area, step),
            quantity.formula + ", up to what is sold",
            *case.paper.inputs_of("sod_sf"),
            ("before rounding", area, "sq ft"),
            ("sold by", step, "sq ft"),
        )


def note_small_finish(case: Case) -> None:
    """So little grass and bed that no crew comes for it."""
    if 0 < case.paper.value("sod_sf") + case.paper.value("bed_sf") <= case.number("small_finish_sf"):
        case.paper.facts.add("small_finish")


def to_panels(cut_ft: float, panel_ft: float, least_left_ft: float) -> float:
    """A cut in jointed concrete, ft: where less than so much of a panel would be left, the whole panel is taken.

    >>> to_panels(4.4, 5, 3), to_panels(1.5, 5, 3), to_panels(6.0, 5, 3), to_panels(8.5, 5, 3), to_panels(5, 5, 3)
    (5.0, 1.5, 6.0, 10.0, 5.0)
    """
    whole = up(cut_ft / panel_ft) * panel_ft
    return whole if 0 < whole - cut_ft < least_left_ft else float(cut_ft)


def _laid_loose(case: Case, name: str, length_ft: float, ends: int, top_width_ft: float) -> None:
    """Gravel is spread new, pavers are lifted and laid again, so far beyond the dig as paving is sawn; dirt is graded back."""
    paper, beyond = case.paper, case.number("flatwork_margin_ft")
    if not name:
        paper.assume("a dirt drive or road is graded back with the soil dug; no gravel is brought")
        return
    long, wide = length_ft + ends * beyond, top_width_ft + 2 * beyond
    paper.add(f"{name}_sf", long * wide, "length x width", ("length", long, "ft"), ("width", wide, "ft"))
    if name == "pavers":
        paper.assume("your pavers are laid again; those found broken are replaced with pavers you supply")


def _paved(case: Case, name: str, length_ft: float, ends: int, top_width_ft: float) -> None:
    """Saw 1 ft beyond the dig or to the next joint; break out; concrete poured back, a street patched as the city asks."""
    paper, beyond = case.paper, case.number("flatwork_margin_ft")
    panel = case.number("walk_panel_ft" if name == "flatwork" else "drive_panel_ft")
    least = case.number("flatwork_remnant_ft")
    long, wide = length_ft + ends * beyond, top_width_ft + 2 * beyond
    if name not in ("street", "asphalt"):  # asphalt has no joints
        long, wide = to_panels(long, panel, least), to_panels(wide, panel, least)
    paper.add(
        f"{name}_sf",
        long * wide,
        "length x width of the cut, whole panels where little would be left",
        ("length", long, "ft"),
        ("width", wide, "ft"),
        ("panel", panel, "ft"),
    )
    paper.add(
        f"{name}_saw_lf", 2 * long + 2 * wide, "2 x length + 2 x width", ("length", long, "ft"), ("width", wide, "ft")
    )
    if name == "street":
        paper.assume("the street patch is hot asphalt; the city sets its thickness, width and base")
    elif name == "asphalt":
        paper.assume("asphalt is patched, not resurfaced; the patch stays visible")
    else:
        paper.assume("outside concrete is left plain gray with a broom finish; color and pattern will not match")
