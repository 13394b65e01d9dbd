"""A bare need and the line it lies on in, the stretch that reaches sound pipe out, with the reasons in words."""

from collections.abc import Iterable

from estimator.knowledge.pipe_family import family
from estimator.model.fall import LEVEL_REACH_FT, fall_over, level_stations
from estimator.model.frozen import Frozen
from estimator.model.judgement import Need
from estimator.model.profile import Profile
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.tables.tables import Tables

NUDGE_FT = 0.01
"""How far inside a stretch its end is looked at, so that a change of pipe right at the end does not count."""

SLIGHT_FT = 0.05
"""A shorter move nobody can measure in the ground: it is made and not spoken of."""


class Extent(Frozen):
    """A stretch and how it came about."""

    stretch: Stretch
    because: tuple[Say, ...] = ()

    def to(self, stretch: Stretch, *why: Say) -> "Extent":
        """A longer (or shorter) stretch for more reasons, where it moved by a length worth a word; the same one when it did not.

        >>> Extent(Stretch(3, 9)).reach(2.999, Say.of("no {ft} of old pipe left", ft=Feet(0.001))).because
        ()
        """
        if stretch == self.stretch:
            return self
        moved = max(abs(stretch.from_ft - self.stretch.from_ft), abs(stretch.to_ft - self.stretch.to_ft))
        return Extent(stretch, (*self.because, *why) if moved >= SLIGHT_FT else self.because)

    def reach(self, at_ft: float, *why: Say) -> "Extent":
        """As far as this station."""
        return self.to(self.stretch.union(Stretch(at_ft, at_ft)), *why)


def bare_stretch(needs: Iterable[Need]) -> Stretch:
    """From the first to the last of the needs."""
    stretches = [n.stretch for n in needs]
    return Stretch(min(s.from_ft for s in stretches), max(s.to_ft for s in stretches))


def sound_pipe(bare: Stretch, needs: tuple[Need, ...], profile: Profile, tables: Tables, run: Stretch) -> Extent:
    """Cut back to sound pipe on both ends, by the material there; never beyond `run`, the pipe that can be worked on.

    Plastic, iron, other kinds: settings pad_plastic_ft, pad_cast_iron_ft, pad_other_ft. Clay and concrete: whole joints, each piece that touches
    the need. Fibre: no sound pipe to couple to, so all of it. What was only suspected adds pad_suspected_ft and the
    locator's tolerance on both ends; a stretch no depth was read for adds the tolerance.
    Source: common practice; the numbers are the firm's.
    """
    low, why_low = _sound_end(bare, profile, tables, -1)
    high, why_high = _sound_end(bare, profile, tables, +1)
    out = Extent(bare).to(Stretch(low, high), *dict.fromkeys((why_low, why_high)))
    unsure = _unsure_ft(bare, needs, profile, tables)
    if unsure:
        why = Say.of("{ft} more on both ends, because the place is not certain", ft=Feet(unsure))
        out = out.to(out.stretch.padded(unsure, unsure), why)
    return _within(out, run, bare)


def _within(extent: Extent, run: Stretch, bare: Stretch) -> Extent:
    """Not past the ends of the run, but never shorter than the need itself."""
    low = min(max(extent.stretch.from_ft, run.from_ft), bare.from_ft)
    high = max(min(extent.stretch.to_ft, run.to_ft), bare.to_ft)
    return extent.to(Stretch(low, high), Say.of("not past the end of this run of pipe"))


def _sound_end(bare: Stretch, profile: Profile, tables: Tables, way: int) -> tuple[float, Say]:
    """The station of sound pipe at the lower (way −1) or upper (way +1) end."""
    end = bare.from_ft if way < 0 else bare.to_ft
    inside = min(max(end - way * NUDGE_FT, bare.from_ft), bare.to_ft)
    pipe = profile.pipe(inside).value
    match family(pipe):
        case "plastic":
            return _padded(end, way, tables.number("pad_plastic_ft"), pipe)
        case "clay" | "concrete":
            return _whole_joint(end, way, profile, tables, pipe)
        case "fibre":
            piece = next(s for s, p in profile.pipes(profile.extent.union(bare)) if p == pipe and s.holds(inside))
            return (piece.from_ft if way < 0 else piece.to_ft), Say.of("the whole run: no sound {pipe} pipe to couple to", pipe=pipe)  # fmt: skip
        case "iron" | "metal":
            return _padded(end, way, tables.number("pad_cast_iron_ft"), pipe)
        case _:
            return _padded(end, way, tables.number("pad_other_ft"), pipe)


def _padded(end_ft: float, way: int, pad_ft: float, pipe: str) -> tuple[float, Say]:
    return end_ft + way * pad_ft, Say.of("{ft} further to sound {pipe} pipe", ft=Feet(pad_ft), pipe=pipe)


def _whole_joint(end_ft: float, way: int, profile: Profile, tables: Tables, pipe: str) -> tuple[float, Say]:
    """The next joint beyond the need; a point at a joint touches the pieces on both sides of it.

    A joint read within the locator's least tolerance of the need is where the need is. Joints are taken as noted when the
    next one lies within a lay length (the noted one, or clay_lay_length_ft); else one lay length is added.
    """
    joints = profile.marks("joint")
    lay_ft = next((ft for m in joints if (ft := m.length("every"))), tables.number("clay_lay_length_ft"))
    beyond = [way * (m.stretch.from_ft - end_ft) for m in joints if not m.stretch.length_ft]
    off = tables.number("locator_tolerance_min_ft")
    near = min((ft for ft in beyond if off < ft <= lay_ft + off), default=None)
    if near is None:
        return end_ft + way * lay_ft, Say.of("{ft} further, one whole joint: no joint was noted there", ft=Feet(lay_ft))
    return end_ft + way * near, Say.of("whole joints of {pipe} pipe", pipe=pipe)


def _unsure_ft(bare: Stretch, needs: tuple[Need, ...], profile: Profile, tables: Tables) -> float:
    """How far off the place may be beyond what the pads allow for."""
    depth = profile.depth_to_centre_ft(bare.middle_ft).value
    share = tables.number("locator_tolerance_percent") / 100
    tolerance = max(share * (depth or 0.0), tables.number("locator_tolerance_min_ft"))
    if any(n.grade != "seen" for n in needs):
        return tolerance + tables.number("pad_suspected_ft")
    return 0.0 if depth is not None else tolerance


def relay_of_sag(extent: Extent, profile: Profile, tables: Tables, new_fall: float | None, run: Stretch) -> Extent:
    """Past a dip, on downstream until the new fall meets the old pipe again.

    Extra length = new fall · length ÷ (old fall − new fall), falls in ft per ft: both ends of standing water are at one
    invert, so the wet length alone leaves no fall. Old fall from invert or level readings only; where it is not known
    the allowance sag_run_out_ft; where the old pipe has no more fall than the new, to the end of the run.
    Source: plain arithmetic on the two slopes.
    """
    flow = profile.line.downstream
    measured = None if new_fall is None else _to_where_levels_allow(extent, profile, new_fall, run)
    if measured is not None:
        return measured
    old_fall = _old_fall(extent.stretch, profile)
    end = extent.stretch.to_ft if profile.line.downstream == 1 else extent.stretch.from_ft
    last = run.to_ft if profile.line.downstream == 1 else run.from_ft
    if old_fall is None or new_fall is None:
        extra = tables.number("sag_run_out_ft")
        why = Say.of("{ft} downstream of the dip as an allowance: no levels were read", ft=Feet(extra))
    elif old_fall <= new_fall:
        extra, why = abs(last - end), Say.of("to the end of the run: the old pipe has no fall to spare")
    else:
        extra = new_fall * extent.stretch.length_ft / (old_fall - new_fall)
        why = Say.of("{ft} downstream of the dip, where the new fall meets the old pipe", ft=Feet(extra))
    relaid = extent.reach(end + flow * min(extra, abs(last - end)), why)
    return relaid if new_fall is None else _up_to_fall(relaid, profile, new_fall, run)


def _to_where_levels_allow(extent: Extent, profile: Profile, new_fall: float, run: Stretch) -> Extent | None:
    """To its own lower end, or the first level below it, where levels leave enough fall; None where they do not reach.

    A straight line between levels far from both sides of a dip says nothing of the dip: one must be read beside its upper end.
    """
    flow = profile.line.downstream
    up, down = (extent.stretch.from_ft, extent.stretch.to_ft)[::flow]
    read = level_stations(profile)
    beside_up, beside_down = (any(abs(ft - at) <= LEVEL_REACH_FT for ft in read) for at in (up, down))
    below = sorted((ft for ft in read if run.holds(ft) and (ft - down) * flow > 0), key=lambda ft: ft * flow)
    for at in (*((down,) if beside_down else ()), *below) if beside_up else ():
        fall = fall_over(profile, up, at)
        if fall is not None and fall >= new_fall * abs(at - up):
            return extent.reach(at, Say.of("downstream to where the levels leave enough fall"))
    return None


def _up_to_fall(extent: Extent, profile: Profile, new_fall: float, run: Stretch) -> Extent:
    """On upstream to the first level read there from which the new pipe falls enough; as it was where there is none."""
    flow = profile.line.downstream
    up, down = (extent.stretch.from_ft, extent.stretch.to_ft)[::flow]
    here = fall_over(profile, up, down)
    if here is None or here >= new_fall * abs(down - up):
        return extent
    read = {m.stretch.from_ft for m in profile.levels if run.holds(m.stretch.from_ft)}
    for at in sorted((ft for ft in read if (up - ft) * flow > 0), key=lambda ft: abs(ft - up)):
        fall = fall_over(profile, at, down)
        if fall is not None and fall >= new_fall * abs(down - at):
            return extent.reach(at, Say.of("upstream to where the levels leave enough fall"))
    return extent


def in_whole_pieces(padded: Extent, length_ft: float, run: Stretch) -> Extent:
    """As long as the pieces it is made of: what they have over lies half at each end, and none past the end of the run.

    So the pad at either end is never less than it was, whichever way the piece slips. Source: common practice.
    """
    over = max(0.0, length_ft - padded.stretch.length_ft)
    before, after = (
        max(0.0, room) for room in (padded.stretch.from_ft - run.from_ft, run.to_ft - padded.stretch.to_ft)
    )
    low = min(before, max(over / 2, over - after))
    return padded.to(
        padded.stretch.padded(low, over - low),
        Say.of("a piece of {ft}, its middle on the bad place", ft=Feet(length_ft)),
    )


def _old_fall(stretch: Stretch, profile: Profile) -> float | None:
    """Fall of the old pipe beyond the stretch, ft per ft, from readings at two stations or more; None where there are fewer."""
    stations = {m.stretch.from_ft for m in profile.levels}
    readings = sorted(ft for ft in stations if not stretch.holds(ft))
    if len(readings) < 2:
        return None
    fall = profile.fall_ft(readings[0], readings[-1]).value
    return None if fall is None else fall / (readings[-1] - readings[0])
