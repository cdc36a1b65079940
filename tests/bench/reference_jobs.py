"""The reference jobs of the slip model: invented lenses with plain sagittae, sharing no code with lenses.

Frame 50 x 36 superellipse (exponent 2.6), optical and blank centre 2 mm off the chuck axis on +x,
thin-lens curves F1 = F/2 + 6 and F2 = F - F1, specific energy 0.35 J/mm3 whatever the index.
"""

from dataclasses import replace

import numpy as np

from lablib.bench.faces import LensFaces
from lablib.bench.machine import Bench, LensMaterial, lens_material
from lablib.bench.margin import CutResult, work_cut
from lablib.bench.plan import UncutLens
from lablib.bench.setup import Setup

AWAY_MM = 2.0


def superellipse(
    exponent: float = 2.6, a_mm: float = 50.0, b_mm: float = 36.0, points: int = 720
) -> np.ndarray:
    """Distances of |x / (A/2)|^n + |y / (B/2)|^n = 1 from its centre, shape (points,) [mm]."""
    angle = np.arange(points) * (2.0 * np.pi / points)
    across, up = np.abs(np.cos(angle)) * 2.0 / a_mm, np.abs(np.sin(angle)) * 2.0 / b_mm
    return (across**exponent + up**exponent) ** (-1.0 / exponent)


def sag(radius_mm: float, away_mm: np.ndarray) -> np.ndarray:
    """Depth of a sphere at a distance from its vertex [mm]."""
    return radius_mm - np.sign(radius_mm) * np.sqrt(radius_mm**2 - away_mm**2)


def lens(
    *,
    power_d: float = -8.0,
    index: float = 1.67,
    centre_mm: float = 1.2,
    blank_mm: float = 72.0,
    outline: np.ndarray | None = None,
    away_mm: float = AWAY_MM,
    faces: LensFaces | None = None,
) -> UncutLens:
    """The hard reference lens, single figures replaced."""
    front_d = power_d / 2.0 + 6.0
    back_d = power_d - front_d
    front, back = 1000.0 * (index - 1.0) / front_d, -1000.0 * (index - 1.0) / back_d

    def thickness(x_mm: np.ndarray, y_mm: np.ndarray) -> np.ndarray:
        away = np.hypot(x_mm - away_mm, y_mm)
        return centre_mm + sag(back, away) - sag(front, away)

    return UncutLens(
        outline_mm=superellipse() if outline is None else outline,
        blank_diameter_mm=blank_mm,
        blank_x_mm=away_mm,
        blank_y_mm=0.0,
        thickness_mm=thickness,
        centre_thickness_mm=centre_mm,
        faces=faces,
    )


EASY = {"power_d": -1.0, "index": 1.5, "centre_mm": 2.0, "blank_mm": 70.0}
REFERENCE = replace(lens_material("hard-resin-1.50"), specific_energy_j_per_mm3=0.35)


def work(
    lens_parts: dict | None = None,
    *,
    material: LensMaterial = REFERENCE,
    bench: Bench | None = None,
    **setup: object,
) -> CutResult:
    """The hard job with a slick coat, single figures replaced."""
    chosen = Setup(**({"coat": "slick"} | setup))
    return work_cut(lens(**(lens_parts or {})), material=material, setup=chosen, bench=bench)
