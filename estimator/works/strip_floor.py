"""Openings in the floor, and the bottom of the dig below them: where each lies and how deep it is there, ft."""

from estimator.model.frozen import Frozen


class FloorCut(Frozen):
    """One opening in the floor: where it begins and ends inside the slab edge, and how wide, ft."""

    from_ft: float
    to_ft: float
    width_ft: float

    @property
    def length_ft(self) -> float:
        return self.to_ft - self.from_ft

    @property
    def middle_ft(self) -> float:
        return (self.from_ft + self.to_ft) / 2


class StripFloor(Frozen):
    """The dig's bottom below the slab's underside, straight from the nearer end of the strip to the farther, ft."""

    near_ft: float
    far_ft: float
    at_near_ft: float
    at_far_ft: float

    def depth_ft(self, inside_ft: float) -> float:
        """
        >>> StripFloor(0, 27, 2.7, 2.4).depth_ft(9)
        2.6
        """
        if self.far_ft == self.near_ft:
            return self.at_near_ft
        share = (inside_ft - self.near_ft) / (self.far_ft - self.near_ft)
        return self.at_near_ft + (self.at_far_ft - self.at_near_ft) * share

    @property
    def deepest_ft(self) -> float:
        return max(self.at_near_ft, self.at_far_ft)

    @property
    def shallowest_ft(self) -> float:
        return min(self.at_near_ft, self.at_far_ft)
