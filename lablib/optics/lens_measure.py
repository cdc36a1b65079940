"""The lens measure: three pins on a surface, and what its dial shows.

The outer pins are fixed, the plunger between them moves, and the dial turns its travel, the sagitta, into
the power a sphere of index 1.530 would have. Heights are measured from the vertex towards the instrument,
so that a hollow surface reads minus on either side of the lens.
"""

import math
from dataclasses import dataclass, replace

import numpy as np
from scipy.optimize import brentq

from lablib.errors import require_between, require_finite
from lablib.optics.practice import usual_or
from lablib.optics.surface import LENS_MEASURE_INDEX, Surface, curvature_per_mm, surface_power_d

_MOST_LEAN_DEG = 30.0
# Farther than the plunger has to travel on any surface the outer pins can stand on.
_TRAVEL_MM = 20.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PinsOnSurface:
    """A lens measure held square on a surface, in the plane of its pins.

    pin_along_mm: shape (3,), outer pin, plunger, outer pin, along the meridian from the vertex [mm].
    pin_height_mm: shape (3,), height of their tips, the plunger's being 0 [mm].
    profile_along_mm, profile_height_mm: shape (N,), the surface in that plane [mm]; the height is
        not-a-number where the surface does not reach.
    sagitta_mm: how far the plunger stands beyond the line of the outer pins [mm].
    reading_d: what the dial shows [D].
    """

    pin_along_mm: np.ndarray
    pin_height_mm: np.ndarray
    profile_along_mm: np.ndarray
    profile_height_mm: np.ndarray
    sagitta_mm: float
    reading_d: float


def dial_d(sagitta_mm: float, *, pin_mm: float | None = None) -> float:
    """Return what the dial shows for a sagitta, 530 * 2 s / (y^2 + s^2) [D].

    sagitta_mm: how far the plunger stands beyond the line of the outer pins [mm], minus on a hollow surface.
    pin_mm: distance of the outer pins from the plunger [mm]; None for the usual one.

    Raises LabError for a number out of range.
    Source: r = (y^2 + s^2) / (2 s) of a sphere, the inverse of the exact sagitta.
    """
    sagitta = require_finite("sagitta", sagitta_mm, unit="mm")
    pin = _pin(pin_mm)
    return surface_power_d(2.0 * sagitta / (pin**2 + sagitta**2), LENS_MEASURE_INDEX)


def sagitta_of_pins_mm(
    surface: Surface,
    *,
    along_deg: float = 180.0,
    is_back: bool = False,
    lean_deg: float = 0.0,
    pin_mm: float | None = None,
) -> float:
    """Return how far the plunger stands beyond the line of the outer pins, exactly [mm].

    surface: the surface; a tilt of it is left aside, for the instrument is held to the surface itself.
    along_deg: meridian along which the three pins stand [degrees].
    is_back: whether the instrument is set on the eye's side.
    lean_deg: how far it leans sideways out of square [degrees], from -30 to 30.
    pin_mm: distance of the outer pins from the plunger [mm]; None for the usual one.

    Raises LabError for a number out of range, SurfaceTooSteep where the pins do not reach the surface.
    Source: geometry of the sphere and of the torus of tyre formation, `surface.Surface`.
    """
    level, pin = replace(surface, tilt_x=0.0, tilt_y=0.0), _pin(pin_mm)
    along = math.radians(require_finite("meridian", along_deg, unit="degrees"))
    lean = math.radians(
        require_between("lean", lean_deg, low=-_MOST_LEAN_DEG, high=_MOST_LEAN_DEG, unit="degrees")
    )
    outwards = 1.0 if is_back else -1.0
    outer = float(level.sag_mm(pin * math.cos(along), pin * math.sin(along)))
    if not lean:
        return -outwards * outer + 0.0

    def above_mm(travel_mm: float) -> float:
        aside = travel_mm * math.sin(lean)
        tip = outer + outwards * travel_mm * math.cos(lean)
        below = level.sag_mm(-aside * math.sin(along), aside * math.cos(along))
        return outwards * (tip - float(below))

    return float(brentq(above_mm, -_reach_mm(level, lean), _reach_mm(level, lean), xtol=1e-12))


def reading_d(
    surface: Surface,
    *,
    along_deg: float = 180.0,
    is_back: bool = False,
    lean_deg: float = 0.0,
    pin_mm: float | None = None,
) -> float:
    """Return what a lens measure shows on a surface [D].

    surface, along_deg, is_back, lean_deg, pin_mm: as in `sagitta_of_pins_mm`, which also says what it raises.

    Source: `dial_d` of the exact sagitta.
    """
    sagitta = sagitta_of_pins_mm(
        surface, along_deg=along_deg, is_back=is_back, lean_deg=lean_deg, pin_mm=pin_mm
    )
    return dial_d(sagitta, pin_mm=pin_mm)


def reading_of_power_d(power_d: float, index: float) -> float:
    """Return what the dial shows on a spherical surface of so much power, F * 0.530 / (n - 1) [D].

    power_d: surface power in its own index [D]; index: refractive index of the lens.

    Source: the inverse of `surface.power_from_lens_measure_d`.
    """
    return surface_power_d(curvature_per_mm(power_d, index), LENS_MEASURE_INDEX)


def warpage_d(reading_along_d: float, reading_across_d: float) -> float:
    """Return the warpage of a surface that should be a sphere [D].

    reading_along_d, reading_across_d: two readings of one surface, in meridians 90 apart [D].

    Raises LabError for a reading that is not a number.
    Source: common practice; the limit is in ANSI Z80.1-2015.
    """
    along = require_finite("reading along the first meridian", reading_along_d, unit="D")
    across = require_finite("reading along the second meridian", reading_across_d, unit="D")
    return abs(along - across)


def pins_on(
    surface: Surface,
    *,
    along_deg: float = 180.0,
    is_back: bool = False,
    pin_mm: float | None = None,
    reach_mm: float = 25.0,
    points: int = 101,
) -> PinsOnSurface:
    """Return a lens measure held square on a surface, to draw.

    surface, along_deg, is_back, pin_mm: as in `sagitta_of_pins_mm`, which also says what it raises.
    reach_mm: how far the profile is drawn to either side of the vertex [mm].
    points: how many points the profile has.
    """
    pin = _pin(pin_mm)
    reach = require_between("profile", reach_mm, low=pin, high=50.0, unit="mm")
    sagitta = sagitta_of_pins_mm(surface, along_deg=along_deg, is_back=is_back, pin_mm=pin)
    level, along = replace(surface, tilt_x=0.0, tilt_y=0.0), math.radians(along_deg)
    profile = np.linspace(-reach, reach, points)
    depth = level.sag_or_nan_mm(profile * math.cos(along), profile * math.sin(along))
    return PinsOnSurface(
        pin_along_mm=np.array([-pin, 0.0, pin]),
        pin_height_mm=np.array([-sagitta, 0.0, -sagitta]),
        profile_along_mm=profile,
        profile_height_mm=depth if is_back else -depth,
        sagitta_mm=sagitta,
        reading_d=dial_d(sagitta, pin_mm=pin),
    )


def _pin(value: float | None) -> float:
    return usual_or("pin_distance", "distance of the outer pins from the plunger", value)


def _reach_mm(surface: Surface, lean: float) -> float:
    """Travel that stays above the surface's reach sideways, and beyond any the plunger can need."""
    steepest = abs(surface.steep_per_mm)
    aside = abs(math.sin(lean))
    return min(_TRAVEL_MM, 0.999 / (steepest * aside)) if steepest else _TRAVEL_MM
