"""What is known of one stretch of a line: the record that the rules ask."""

from typing import Literal

from estimator.knowledge.pipe_family import family
from estimator.model.edge_beam import KnownEdge
from estimator.model.frozen import Frozen
from estimator.model.job import SLAB_FLOORS, Foundation, House, Reroute, Sign, Site, WaterTest, Wishes
from estimator.model.judgement import Need
from estimator.model.line import Finding, Mark, Unclear
from estimator.model.opening import Opening
from estimator.model.profile import Beam, Branch
from estimator.model.stretch import Stretch
from estimator.model.wanted import Approval, Override
from estimator.model.works import Works


class StretchFacts(Frozen, kw_only=True):
    """What is known of one stretch of one line. `method` is the way of repair being asked about.

    `findings`, `marks` and `needs` are those that touch the stretch; `line_*` those of the whole line. `sizes_in` are in the
    order of the flow. `edge` is what is known of the beam along the slab's edge. `depth_ft` is the deepest centre below the surface, None where no depth was read; `fall_ft` how
    much the bottom drops along the stretch, from levels only; `line_fall` the whole line's slope, ft per ft, likewise. `works` is what the repair would do there; `marks_of` are the
    marks of every line of the house, for what stands near an opening.
    """

    line: str
    stretch: Stretch
    method: str = ""
    findings: tuple[Finding, ...] = ()
    line_findings: tuple[Finding, ...] = ()
    unclear: tuple[Unclear, ...] = ()  # log lines asked back and not answered, that touch the stretch or name no place
    line_unclear: tuple[Unclear, ...] = ()
    needs: tuple[Need, ...] = ()
    marks: tuple[Mark, ...] = ()
    line_marks: tuple[Mark, ...] = ()
    branches: tuple[Branch, ...] = ()
    beams: tuple[Beam, ...] = ()
    zones: tuple[str, ...] = ()
    pipes: tuple[str, ...] = ()
    sizes_in: tuple[float, ...] = ()
    sizes_below_in: tuple[float, ...] = ()  # down the drain from its lower end, the nearest first
    soils: tuple[str, ...] = ()
    under: tuple[str, ...] = ()
    rooms: tuple[str, ...] = ()
    filmed: bool = True
    run_out_seen: bool = True  # sound pipe beyond both ends was filmed, or the line ends there
    depth_ft: float | None = None
    fall_ft: float | None = None
    line_fall: float | None = None
    slab_edge_ft: float | None = None
    cleanouts_ft: tuple[float, ...] = ()
    extent: Stretch = Stretch(0.0, 0.0)
    downstream: Literal[1, -1] = 1
    is_branch: bool = False
    ends: str = ""
    works: Works = Works(line="")
    marks_of: tuple[tuple[str, tuple[Mark, ...]], ...] = ()
    house: House = House(floor="slab", jurisdiction="")
    site: Site = Site()
    wishes: Wishes = Wishes()
    foundation: Foundation = Foundation()
    tests: tuple[WaterTest, ...] = ()
    reroutes: tuple[Reroute, ...] = ()
    signs: tuple[Sign, ...] = ()
    edge: KnownEdge = KnownEdge(None, "nobody")
    approvals: tuple[Approval, ...] = ()
    overrides: tuple[Override, ...] = ()

    # ── how deep people go ────────────────────────────────────────────────────────────────────

    @property
    def deepest(self) -> Opening | None:
        """The deepest opening people go down into; a tunnel's own floor counts by its pits, where they climb."""
        down = [o for o in self.works.with_people if o.kind != "tunnel"] or list(self.works.with_people)
        return max(down, key=lambda o: o.safety_ft, default=None)

    @property
    def safe_depth_ft(self) -> float | None:
        """Its bottom with the locator's tolerance, never rounded, ft; None where nobody goes down."""
        return None if self.deepest is None else self.deepest.safety_ft

    # ── what lies near an opening ─────────────────────────────────────────────────────────────

    def near(self, opening: Opening, *words: str, at_top: bool = False) -> tuple[tuple[Mark, float], ...]:
        """Marks of these words on the opening's own line, each with how far off its edge it lies in plan, ft.

        Nearest first. What was noted without a distance from the line stands on it.
        """
        marks = dict(self.marks_of).get(opening.line, self.line_marks if opening.line == self.line else ())
        found = ((m, opening.distance_ft(m.stretch, away_ft(m), at_top=at_top)) for m in marks if m.word in words)
        return tuple(sorted(found, key=lambda pair: pair[1]))

    # ── short questions ───────────────────────────────────────────────────────────────────────

    def of(self, *kinds: str) -> tuple[Finding, ...]:
        """Findings of these kinds in the stretch."""
        return tuple(f for f in self.findings if f.kind in kinds)

    def worst(self, *kinds: str) -> float | None:
        """The highest percent of these kinds of finding in the stretch; None where none gave a percent."""
        return max((percent_of(f, self.bore_in) for f in self.of(*kinds)), default=None)

    def has_sign(self, *signs: str) -> bool:
        return any(sign in f.signs for f in self.findings for sign in signs)

    def placed(self, *words: str) -> tuple[Mark, ...]:
        """Marks of these words in the stretch."""
        return tuple(m for m in self.marks if m.word in words)

    @property
    def bore_in(self) -> float:
        return min(self.sizes_in, default=0.0)

    @property
    def families(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(family(p) for p in self.pipes))

    @property
    def length_ft(self) -> float:
        return self.stretch.length_ft

    @property
    def on_slab(self) -> bool:
        """The house stands on a slab and the stretch, or a part of it, lies under it."""
        return "slab" in self.zones and self.house.floor in SLAB_FLOORS

    @property
    def on_slab_house(self) -> bool:
        """The house stands on a slab, whatever lies over the stretch."""
        return self.house.floor in SLAB_FLOORS

    @property
    def under_floor(self) -> bool:
        return bool({"slab", "basement"} & set(self.zones))

    @property
    def must(self) -> bool:
        return any(n.must for n in self.needs)

    @property
    def kinds(self) -> frozenset[str]:
        return frozenset(kind for n in self.needs for kind in n.kinds) | frozenset(f.kind for f in self.findings)


def away_ft(mark: Mark) -> float:
    """How far off the line a thing stands, ft; 0 where nobody said."""
    away = mark.length("away")
    return away if away is not None else mark.length() or 0.0


def percent_of(finding: Finding, bore_in: float) -> float:
    """The share of the bore a finding takes, percent; 0 where nobody said."""
    return finding.share_percent(bore_in) or 0.0
