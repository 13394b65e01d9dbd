"""Liner design by ASTM F1216 appendix X1: pipe, cover and ground water in; the least wall out, inches. Pressures in psi.

The equations were read in a textbook (M. Najafi, Trenchless Technology Piping, pp. 75-83), whose printed "0.65" for 0.065,
"2.178" for e and (1-2/100)² in a denominator are misprints: its own numbers use the right values. A check, not a design:
a liner that carries soil is designed by who is allowed to.
"""

import math
from typing import Literal

from estimator.model.frozen import Frozen

SOURCE = "ASTM F1216 appendix X1, by way of a textbook (Najafi, pp. 75-83), read"
LOOKED = "2026-11-25"
WATER_PSI_PER_FT = 0.433
SQ_IN_PER_SQ_FT = 144.0
LEAST_BUOYANCY = 0.67
BUOYANCY_SHARE = 0.33
ELASTIC_RATE_PER_FT = 0.065
LEAST_STIFFNESS = 0.093  # E / (12 DR³), X1.4
COEFFICIENT = 0.721  # (12 / 32)^(1/3): I = t³/12 put into X1.3
Edition = Literal["from 07b", "before 07b"]


class Liner(Frozen, kw_only=True):
    """Resin and safety: short-term modulus psi, share kept over 50 years, flexural strength psi, ovality percent, factor."""

    modulus_psi: float = 250_000.0
    long_term_share: float = 0.5
    strength_psi: float = 4_500.0
    ovality_percent: float = 2.0
    safety: float = 2.0
    poisson: float = 0.3
    enhancement: float = 7.0

    @property
    def long_term_psi(self) -> float:
        return self.modulus_psi * self.long_term_share


class Ground(Frozen, kw_only=True):
    """Cover over the crown ft, water over the crown and over the invert ft, soil weight pcf, soil modulus psi, live load psi."""

    cover_ft: float
    water_over_crown_ft: float = 0.0
    water_over_invert_ft: float = 0.0
    soil_pcf: float = 120.0
    soil_modulus_psi: float = 1_000.0
    live_psi: float = 0.0


def ovality_factor(ovality_percent: float) -> float:
    """C = [(1 - q/100) / (1 + q/100)²]³.

    >>> round(ovality_factor(2), 4), ovality_factor(0)
    (0.8358, 1.0)
    """
    q = ovality_percent / 100
    return float(((1 - q) / (1 + q) ** 2) ** 3)


def buoyancy(water_ft: float, cover_ft: float) -> float:
    """R_w = 1 - 0.33 H_w / H, at least 0.67.

    >>> buoyancy(8, 16), buoyancy(16, 16), round(buoyancy(20, 16), 2)
    (0.835, 0.67, 0.67)
    """
    return max(LEAST_BUOYANCY, 1 - BUOYANCY_SHARE * water_ft / cover_ft) if cover_ft else 1.0


def elastic_support(cover_ft: float) -> float:
    """B' = 1 / (1 + 4 e^(-0.065 H)).

    >>> round(elastic_support(16), 4)
    0.4143
    """
    return 1 / (1 + 4 * math.exp(-ELASTIC_RATE_PER_FT * cover_ft))


def total_load_psi(ground: Ground) -> float:
    """q_t = 0.433 H_w + w H R_w / 144 + W_s, psi, at the crown.

    >>> round(total_load_psi(Ground(cover_ft=16, water_over_crown_ft=8, live_psi=0.3507)), 2)
    14.95
    """
    water = WATER_PSI_PER_FT * ground.water_over_crown_ft
    soil = ground.soil_pcf * ground.cover_ft * buoyancy(ground.water_over_crown_ft, ground.cover_ft) / SQ_IN_PER_SQ_FT
    return water + soil + ground.live_psi


def wall_for_water_in(bore_in: float, liner: Liner, water_over_invert_ft: float) -> float:
    """X1.1, partially deteriorated: t = D / ([2 K E_L C / (P N (1 - v²))]^(1/3) + 1), inches; 0 without water.

    >>> round(wall_for_water_in(48, Liner(), 12), 3)
    0.878
    """
    pressure = WATER_PSI_PER_FT * water_over_invert_ft
    if pressure <= 0:
        return 0.0
    strength = 2 * liner.enhancement * liner.long_term_psi * ovality_factor(liner.ovality_percent)
    ratio = strength / (pressure * liner.safety * (1 - liner.poisson**2))
    return float(bore_in / (ratio ** (1 / 3) + 1))


def wall_for_soil_in(bore_in: float, liner: Liner, ground: Ground, edition: Edition = "from 07b") -> float:
    """X1.3, fully deteriorated, inches.

    From edition 07b: t = 0.721 D [(N q_t)² / (E_L R_w B' E's C)]^(1/3). Before 07b C stood outside the root:
    q_t = (C/N) [32 R_w B' E's E_L I / D³]^(1/2), so it enters squared: (N q_t / C)² / (E_L R_w B' E's).

    >>> g = Ground(cover_ft=6, water_over_crown_ft=3)
    >>> round(wall_for_soil_in(4, Liner(), g) * 25.4, 2)
    1.26
    >>> wall_for_soil_in(4, Liner(), g, "before 07b") > wall_for_soil_in(4, Liner(), g)
    True
    """
    c = ovality_factor(liner.ovality_percent)
    power = 1 if edition == "from 07b" else 2
    support = buoyancy(ground.water_over_crown_ft, ground.cover_ft) * elastic_support(ground.cover_ft)
    bottom = liner.long_term_psi * support * ground.soil_modulus_psi * c**power
    return float(COEFFICIENT * bore_in * ((liner.safety * total_load_psi(ground)) ** 2 / bottom) ** (1 / 3))


def wall_for_stiffness_in(bore_in: float, liner: Liner) -> float:
    """X1.4: E / (12 DR³) >= 0.093, so t = D (12 x 0.093 / E)^(1/3), inches.

    >>> round(wall_for_stiffness_in(48, Liner()), 3)
    0.79
    """
    return float(bore_in * (12 * LEAST_STIFFNESS / liner.modulus_psi) ** (1 / 3))


def wall_for_stress_in(bore_in: float, liner: Liner, water_over_invert_ft: float) -> float:
    """X1.2: 1.5 (q/100)(1 + q/100) DR² - 0.5 (1 + q/100) DR = S / (P N), solved for DR; inches, 0 without water.

    >>> round(wall_for_stress_in(48, Liner(), 12), 3)
    0.517
    """
    pressure = WATER_PSI_PER_FT * water_over_invert_ft
    if pressure <= 0:
        return 0.0
    q = liner.ovality_percent / 100
    a, b, c = 1.5 * q * (1 + q), 0.5 * (1 + q), liner.strength_psi * liner.long_term_share / (pressure * liner.safety)
    if a == 0:
        return 0.0
    return bore_in / ((b + math.sqrt(b * b + 4 * a * c)) / (2 * a))


class LeastWall(Frozen, kw_only=True):
    """The four conditions, inches, and the largest of those that apply."""

    water_in: float
    stress_in: float
    soil_in: float
    stiffness_in: float

    @property
    def least_in(self) -> float:
        return max(self.water_in, self.stress_in, self.soil_in, self.stiffness_in)


def least_wall(
    bore_in: float, liner: Liner, ground: Ground, *, fully: bool, edition: Edition = "from 07b"
) -> LeastWall:
    """Partially deteriorated: X1.1 and X1.2. Fully deteriorated: X1.3 and X1.4 besides.

    >>> wall = least_wall(4, Liner(), Ground(cover_ft=6, water_over_crown_ft=3, water_over_invert_ft=6), fully=True)
    >>> round(wall.least_in * 25.4, 2)
    1.67
    """
    water = ground.water_over_invert_ft
    return LeastWall(
        water_in=wall_for_water_in(bore_in, liner, water),
        stress_in=wall_for_stress_in(bore_in, liner, water),
        soil_in=wall_for_soil_in(bore_in, liner, ground, edition) if fully else 0.0,
        stiffness_in=wall_for_stiffness_in(bore_in, liner) if fully else 0.0,
    )
