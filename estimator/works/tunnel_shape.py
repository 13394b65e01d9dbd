"""A tunnel's ends, its floor and the beams over it in; its heights, dips and volume out, ft and cubic ft."""

from collections.abc import Sequence
from itertools import pairwise

from estimator.model.frozen import Frozen
from estimator.works.earth import prismoid_cf
from estimator.works.grade import Crossing
from estimator.works.rounding import total, up


class Dip(Frozen):
    """A lower piece of floor under a beam: how much lower, from where to where along the tunnel, ft."""

    depth_ft: float
    from_ft: float
    to_ft: float

    @property
    def length_ft(self) -> float:
        return self.to_ft - self.from_ft


def dips_sf(dips: Sequence[Dip]) -> float:
    """Side view of all dips; where two overlap the deeper one counts, once.

    >>> dips_sf([Dip(0.4, 0, 3), Dip(0.6, 2, 5)]), dips_sf([])
    (2.6, 0.0)
    """
    cuts = sorted({at for d in dips for at in (d.from_ft, d.to_ft)})
    deepest = (
        (a, b, max((d.depth_ft for d in dips if d.from_ft <= a and b <= d.to_ft), default=0.0))
        for a, b in pairwise(cuts)
    )
    return total((b - a) * depth for a, b, depth in deepest)


class TunnelShape(Frozen, kw_only=True):
    """A straight tunnel from its mouth at the slab edge to its face; heights below the slab's underside, straight between."""

    length_ft: float
    width_ft: float
    mouth_ft: float
    face_ft: float
    dips: tuple[Dip, ...] = ()
    beams_cf: float = 0.0

    def height_ft(self, at_ft: float) -> float:
        """
        >>> round(TunnelShape(length_ft=29, width_ft=3, mouth_ft=3.3, face_ft=3.0).height_ft(15.4167), 3)
        3.141
        """
        if self.length_ft == 0:
            return self.mouth_ft
        return self.mouth_ft + (self.face_ft - self.mouth_ft) * at_ft / self.length_ft

    @property
    def deepest_ft(self) -> float:
        """Slab underside to the lowest floor, dips included.

        >>> round(TunnelShape(length_ft=29, width_ft=3, mouth_ft=3.3, face_ft=3.0, dips=(Dip(0.4, 0.0, 3.0),)).deepest_ft, 2)
        3.7
        """
        dipped = (max(self.height_ft(d.from_ft), self.height_ft(d.to_ft)) + d.depth_ft for d in self.dips)
        return max(self.mouth_ft, self.face_ft, *dipped)

    @property
    def plain_cf(self) -> float:
        """
        >>> round(TunnelShape(length_ft=29, width_ft=3, mouth_ft=3.3, face_ft=3.0).plain_cf, 2)
        274.05
        """
        w = self.width_ft
        middle = (self.mouth_ft + self.face_ft) / 2
        return prismoid_cf(self.length_ft, w * self.mouth_ft, w * middle, w * self.face_ft)

    @property
    def dips_cf(self) -> float:
        return dips_sf(self.dips) * self.width_ft

    @property
    def bank_cf(self) -> float:
        """Plain tunnel + dips - beam concrete left in."""
        return self.plain_cf + self.dips_cf - self.beams_cf


def height_ft(invert_ft: float, slab_ft: float, below_invert_ft: float, least_ft: float) -> float:
    """Slab underside to floor: the floor follows the pipe, a step below its invert, never lower headroom than the least.

    >>> round(height_ft(2.6, 1/3, 1.0, 3.0), 3), height_ft(2.2, 1/3, 1.0, 3.0)
    (3.267, 3.0)
    """
    return max(least_ft, invert_ft + below_invert_ft - slab_ft)


def dip_under(
    shape: TunnelShape, beam: Crossing, slab_ft: float, crawl_ft: float, margin_ft: float, step: float
) -> Dip:
    """Floor at the beam's bottom + crawling room, so far before and after the beam; only where it lies inside the tunnel.

    >>> plain = TunnelShape(length_ft=29, width_ft=3, mouth_ft=3.3, face_ft=3.0)
    >>> dip_under(plain, Crossing(15, 15 + 10/12, 2.0, False), 1/3, 2.0, 2.0, 0.1)
    Dip(depth_ft=0.6, from_ft=13.0, to_ft=17.833333333333336)
    >>> dip_under(plain, Crossing(0, 1, 2.0, False), 1/3, 2.0, 2.0, 0.1)
    Dip(depth_ft=0.4, from_ft=0.0, to_ft=3.0)
    """
    from_ft, to_ft = max(0.0, beam.from_ft - margin_ft), min(shape.length_ft, beam.to_ft + margin_ft)
    deep = beam.bottom_ft + crawl_ft - slab_ft - shape.height_ft(beam.middle_ft)
    return Dip(up(max(0.0, deep), step), from_ft, max(from_ft, to_ft))


def beam_concrete_cf(shape: TunnelShape, beams: Sequence[Crossing], slab_ft: float) -> float:
    """Beam below the slab that stays in the tunnel's section: its drop x its width inside the tunnel x tunnel width."""
    return sum(
        max(0.0, b.bottom_ft - slab_ft) * max(0.0, min(b.to_ft, shape.length_ft) - max(b.from_ft, 0.0)) * shape.width_ft
        for b in beams
    )
