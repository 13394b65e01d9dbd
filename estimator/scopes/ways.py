"""Needs that lie side by side on one line in, the shapes each way of repair could take there out. Rules come later."""

from collections.abc import Callable, Iterator

from msgspec import field

from estimator.model.frozen import Frozen
from estimator.model.job import Reroute
from estimator.model.judgement import Need
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch, missing
from estimator.scopes import reach
from estimator.scopes.extent import Extent, bare_stretch, in_whole_pieces, relay_of_sag, sound_pipe
from estimator.scopes.ground import Ground, runs_under, same_pipe
from estimator.tables.tables import Tables
from estimator.works.methods import RECORDS, Method
from estimator.works.methods import Shape as Shaping


class Shape(Frozen):
    """The stretch of one way of repair, how it gets in, which way round it follows.

    `stops_short` of a beam or a neighbor that the longer shape passes: for where it cannot. `apart` from a bad place so
    near that both are dug as one: for where that one cannot be dug.
    """

    extent: Extent
    entry: str = ""
    reroute: str = ""
    stops_short: bool = False
    apart: bool = False
    hands_over: bool = False  # the bad places it answers lie beyond its end, and are somebody else's to repair


class Place(Frozen):
    """Where shapes are asked for: neighbouring needs of one line. `new_fall` is the least fall of new pipe, ft per ft."""

    needs: tuple[Need, ...]
    profile: Profile
    tables: Tables
    new_fall: float | None = None
    reroutes: tuple[Reroute, ...] = ()
    house_too: bool = False  # something under the house must be repaired as well
    any_length: bool = False  # asked only how far it would reach, whatever a spot or a strip may be
    known: "dict[tuple[Ground, bool], tuple[tuple[Extent, Stretch], ...]]" = field(default_factory=dict)

    @property
    def bare(self) -> Stretch:
        return bare_stretch(self.needs)

    @property
    def whole_only(self) -> bool:
        return any(n.whole_line == "only" for n in self.needs)

    @property
    def whole_too(self) -> bool:
        return any(n.whole_line != "no" for n in self.needs)

    def runs(self, ground: Ground) -> tuple[Stretch, ...]:
        return runs_under(self.profile, ground, self.bare)


SAGS = ("sag", "reverse fall", "backfall")
Shaper = Callable[[Place], tuple[Shape, ...]]


def _replaced(place: Place, ground: Ground, regraded: bool) -> tuple[tuple[Extent, Stretch], ...]:
    """What would be replaced on each run of this ground: back to sound pipe, past a dip; and the run it lies on.

    Pipe laid new gets a new fall (`regraded`); pipe burst in place keeps the old one. Many ways ask, and it is found once.
    """
    if (ground, regraded) not in place.known:
        place.known[ground, regraded] = tuple(_found(place, ground, regraded))
    return place.known[ground, regraded]


def _found(place: Place, ground: Ground, regraded: bool) -> Iterator[tuple[Extent, Stretch]]:
    for run in place.runs(ground):
        here = tuple(n for n in place.needs if n.stretch.touches(run))
        sound = sound_pipe(place.bare.common(run) or run, here, place.profile, place.tables, run)
        if regraded and any(kind in SAGS for n in here for kind in n.kinds):
            sound = relay_of_sag(sound, place.profile, place.tables, place.new_fall, run)
        yield sound, run


def _spot_or_whole(place: Place, ground: Ground, regraded: bool = True) -> tuple[tuple[Extent, Stretch], ...]:
    """The padded stretch and, where the findings speak for it, the whole run of that pipe.

    In the yard also beside a repair under the house: whoever has that done may want the whole line new.
    """
    found: list[tuple[Extent, Stretch]] = []
    for sound, run in _replaced(place, ground, regraded):
        whole = sound.to(same_pipe(place.profile, run, sound.stretch), Say.of("the whole run of that pipe"))
        found += [] if place.whole_only else [(sound, run)]
        also = place.whole_too or (place.house_too and ground == "outside")
        found += [(whole, run)] if also and (place.whole_only or whole != sound) else []
    return tuple(found)


def _spot(ground: Ground, longest: str) -> Shaper:
    def shapes(place: Place) -> tuple[Shape, ...]:
        if place.whole_only:
            return ()
        most = place.tables.number(longest)
        return tuple(
            Shape(sound)
            for sound, _ in _replaced(place, ground, regraded=True)
            if place.any_length or sound.stretch.length_ft <= most + 1e-9
        )

    return shapes


def tunnel(place: Place) -> tuple[Shape, ...]:
    """Along the pipe from where it leaves the slab; and straight in from an open wall where one was measured."""
    shapes: list[Shape] = []
    beside = [m.stretch for m in place.profile.marks("beside")]
    for sound, _ in _spot_or_whole(place, "floor"):
        shapes += _to_the_exit(place, sound, "exit")
        if any(m.touches(sound.stretch) for m in beside):
            shapes.append(Shape(sound, entry="wall"))
    return tuple(shapes)


def break_through(place: Place) -> tuple[Shape, ...]:
    """The floor opened over the pipe, and on to the slab edge where little old pipe would be left."""
    found = _longer_than_a_spot(place, "floor", "slab_spot_max_ft")
    return tuple(shape for sound, _ in found for shape in _to_the_exit(place, sound, ""))


def _to_the_exit(place: Place, sound: Extent, entry: str) -> Iterator[Shape]:
    """On to the slab edge; and, for where it cannot go on so far, coupled to the old pipe where sound pipe begins."""
    whole = reach.from_the_exit(sound, place.profile, place.tables)
    yield Shape(whole, entry)
    if whole.stretch == sound.stretch or place.any_length:
        return
    more = missing(whole.stretch, [sound.stretch])
    beam = any(beam.stretch.overlaps(part) for beam in place.profile.beams for part in more)
    why = (
        Say.of("coupled to the old pipe before the beam: new pipe under it would touch it")
        if beam
        else Say.of("coupled to the old pipe there: what lies beyond is put right another way")
    )
    yield Shape(Extent(sound.stretch, (*sound.because, why)), entry, stops_short=True)


def trench(place: Place) -> tuple[Shape, ...]:
    """The stretch that must be replaced; and, where it goes on past the property line, up to that line alone."""
    found = _longer_than_a_spot(place, "outside", "yard_spot_max_ft")
    whole = tuple(Shape(reach.no_remnants(sound, place.profile, place.tables, run)) for sound, run in found)
    return (*whole, *(Shape(cut) for s in whole if (cut := reach.to_the_lot_line(s.extent, place.profile)) is not None))


def _longer_than_a_spot(
    place: Place, ground: Ground, longest: str, regraded: bool = True
) -> tuple[tuple[Extent, Stretch], ...]:
    """A shorter one is a spot dig by another name."""
    most = place.tables.number(longest)
    found = _spot_or_whole(place, ground, regraded)
    return tuple((s, run) for s, run in found if place.whole_only or place.any_length or s.stretch.length_ft > most)


def burst(place: Place) -> tuple[Shape, ...]:
    """From pit to pit, the pits clear of trees and utilities; what the pits alone would open is a spot dig."""
    shapes = []
    for sound, run in _longer_than_a_spot(place, "outside", "yard_spot_max_ft", regraded=False):
        no_rest = reach.no_remnants(sound, place.profile, place.tables, run)
        shapes.append(Shape(reach.pits_in_the_clear(no_rest, place.profile, place.tables, run)))
    return tuple(shapes)


def crawl_replace(place: Place) -> tuple[Shape, ...]:
    return tuple(Shape(sound) for sound, _ in _spot_or_whole(place, "crawl"))


def sectional(place: Place) -> tuple[Shape, ...]:
    """Over the needs and a little beyond on both ends, in stock lengths; a rule says how long is too long."""
    if place.whole_only:
        return ()
    pad, stock = place.tables.number("pad_liner_ft"), place.tables.text("sectional_stock_ft").split(",")
    padded = Extent(place.bare).to(place.bare.padded(pad, pad), Say.of("onto sound pipe on both ends"))
    pieces = reach.in_stock(padded.stretch.length_ft, sorted(float(ft) for ft in stock))
    return (Shape(in_whole_pieces(padded, sum(pieces), place.profile.extent)),)


def reline(place: Place) -> tuple[Shape, ...]:
    """From an access to sound, round pipe beyond the needs; or from access to access."""
    sound = sound_pipe(place.bare, place.needs, place.profile, place.tables, place.profile.extent)
    found = [sound]
    if place.whole_too:
        whole = same_pipe(place.profile, place.profile.extent, sound.stretch)
        found = [*([] if place.whole_only else found), sound.to(whole, Say.of("the whole run of that pipe"))]
    return tuple(Shape(shot) for s in found for shot in reach.liner_shots(s, place.profile, place.tables))


def reroute(place: Place) -> tuple[Shape, ...]:
    """Each way round that was seen on site and takes the place of all of these needs."""
    shapes = []
    for way in place.reroutes:
        whole = place.profile.extent
        low = whole.from_ft if way.replaces_from_ft is None else way.replaces_from_ft
        high = whole.to_ft if way.replaces_to_ft is None else way.replaces_to_ft
        replaced = Stretch.between(low, high)
        if way.replaces_line == place.profile.line.name and replaced.covers(place.bare):
            shapes.append(Shape(Extent(place.bare).to(replaced, Say.of("what the new way replaces")), reroute=way.name))
    return tuple(shapes)


def to_the_lot_line(place: Place) -> tuple[Shape, ...]:
    """A piece that ends just short of the property line, from before what is bad on this side of it."""
    lot, flow = place.profile.lot_line_ft, place.profile.line.downstream
    if lot is None or not place.profile.past_the_lot(place.bare):
        return ()
    room, piece = place.tables.number("dig_end_ft"), place.tables.number("hand_over_piece_ft")
    end = lot - flow * (room + place.tables.number("locator_tolerance_min_ft"))
    begin = end - flow * piece
    first = place.bare.from_ft if flow == 1 else place.bare.to_ft
    if (lot - first) * flow > 0:  # some of it is on this side
        pad = place.tables.number("pad_other_ft")
        begin = min(begin, first - pad) if flow == 1 else max(begin, first + pad)
    why = Say.of("to the property line: beyond it the pipe is somebody else's to repair")
    made = Stretch.between(begin, end).common(place.profile.extent)
    return (Shape(Extent(made, (why,)), hands_over=True),) if made else ()


def where_it_is(place: Place) -> tuple[Shape, ...]:
    """The needs themselves: cleaning, testing, looking."""
    return (Shape(Extent(place.bare)),)


SHAPES: dict[Shaping, Callable[[Method], Shaper]] = {
    "where it is": lambda _: where_it_is,
    "pieces": lambda _: sectional,
    "shot": lambda _: reline,
    "spot": lambda method: _spot(method.ground or "outside", method.longest),
    "tunnel": lambda _: tunnel,
    "strip": lambda _: break_through,
    "trench": lambda _: trench,
    "pits": lambda _: burst,
    "hung": lambda _: crawl_replace,
    "way round": lambda _: reroute,
    "to the lot line": lambda _: to_the_lot_line,
}
"""What a record says of how far a way reaches, and the function that says where that is."""


def ways() -> tuple[tuple[Method, Shaper], ...]:
    """Return every way of repair that can be a candidate. What closes old pipe follows a way round and is none by itself."""
    return tuple((method, SHAPES[method.shape](method)) for method in RECORDS.values() if method.shape)
