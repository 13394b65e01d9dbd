"""The firm's liner wall and the ground over the pipe in; a warning where it is thinner than the equation or the place asks, out."""

from typing import cast

from estimator.knowledge.f1216 import SOURCE, Edition, Ground, LeastWall, Liner, least_wall
from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Say
from estimator.takeoff.case import Case
from estimator.works.ground import water_table_ft

MM_PER_IN = 25.4
ROTTEN = ("channel", "hole", "collapse", "oval")


def liner_of(case: Case) -> Liner:
    return Liner(
        modulus_psi=case.number("liner_modulus_psi"),
        long_term_share=case.number("liner_long_term_percent") / 100,
        strength_psi=case.number("liner_strength_psi"),
        ovality_percent=max(case.number("liner_ovality_percent"), _ovality(case)),
        safety=case.number("liner_safety_factor"),
    )


def _ovality(case: Case) -> float:
    return max(
        (f.worst_percent or 0.0 for f in case.line.findings if f.kind == "oval" and f.stretch.touches(case.stretch)),
        default=0.0,
    )


def ground_over(case: Case) -> Ground:
    """Cover from the depth read, water from the water table; soil weight and modulus as the firm counts."""
    centre = case.profile.depth_to_centre_ft(case.stretch.middle_ft).value
    depth = case.number("depth_if_unlocated_ft") if centre is None else centre
    half = case.bore_in / 24
    water = water_table_ft(case, case.stretch)
    over = [0.0 if water is None else max(0.0, depth + side * half - water) for side in (-1, 1)]
    return Ground(
        cover_ft=max(depth - half, half),
        water_over_crown_ft=over[0],
        water_over_invert_ft=over[1],
        soil_pcf=case.number("soil_weight_pcf"),
        soil_modulus_psi=case.number("soil_modulus_psi"),
    )


def is_rotten(case: Case) -> bool:
    """The old pipe is counted as carrying nothing: bottom gone, holes, out of round."""
    return any(f.kind in ROTTEN and f.stretch.touches(case.stretch) for f in case.line.findings)


def wall_finds(case: Case, wall_in: float) -> tuple[Verdict, ...]:
    fully = is_rotten(case)
    edition = cast(Edition, case.word("f1216_edition", "from 07b", "before 07b"))
    needed = least_wall(case.bore_in, liner_of(case), ground_over(case), fully=fully, edition=edition)
    _write(case, needed, fully)
    finds = []
    if wall_in < needed.least_in - 1e-9:
        finds.append(_thin(case, wall_in, needed.least_in, f"{SOURCE}, {edition}", "liner-wall-meets-the-equation"))
    place = case.place
    if place and place.min_liner_wall_mm and wall_in * MM_PER_IN < place.min_liner_wall_mm - 1e-9:
        finds.append(
            _thin(case, wall_in, place.min_liner_wall_mm / MM_PER_IN, place.text, "liner-wall-meets-the-place")
        )
    return tuple(finds)


def _write(case: Case, needed: LeastWall, fully: bool) -> None:
    case.paper.put(
        "liner_least_wall_in",
        needed.least_in,
        "the largest of what water, stress, soil and stiffness ask",
        ("bore", case.bore_in, "in"),
        ("old pipe carries", "nothing" if fully else "the soil"),
        ("water, X1.1", needed.water_in, "in"),
        ("stress, X1.2", needed.stress_in, "in"),
        ("soil, X1.3", needed.soil_in, "in"),
        ("stiffness, X1.4", needed.stiffness_in, "in"),
        source=SOURCE,
    )


def _thin(case: Case, wall_in: float, least_in: float, who: str, rule: str) -> Verdict:
    return case.find(
        rule,
        Effect.CAUTION,
        Say.of("A thicker liner than our usual one may be asked for here; we settle it with the city before we order."),
        Say.of(
            "wall {wall} mm is thinner than {least} mm ({who})",
            wall=round(wall_in * MM_PER_IN, 2),
            least=round(least_in * MM_PER_IN, 2),
            who=who,
        ),
        "liner_thickness_mm",
    )
