"""The prism of a lens at many points, as arrays to draw.

Points and bases are given as drawn, facing the wearer: x to the observer's right and y up.
"""

from dataclasses import dataclass

import numpy as np

from lablib.errors import LabError, require_between
from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at

_FARTHEST_MM = 50.0
_MOST_POINTS = 201


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PrismField:
    """Prism at points of a lens; every array has one shape.

    x_mm, y_mm: the points, from the optical centre [mm].
    in_prism_d, up_prism_d: components base in and base up [prism D].
    base_x_prism_d, base_y_prism_d: the same as an arrow to draw, towards the base [prism D].
    """

    x_mm: np.ndarray
    y_mm: np.ndarray
    in_prism_d: np.ndarray
    up_prism_d: np.ndarray
    base_x_prism_d: np.ndarray
    base_y_prism_d: np.ndarray

    @property
    def amount_prism_d(self) -> np.ndarray:
        """Amount of prism at every point [prism D]."""
        return np.hypot(self.in_prism_d, self.up_prism_d)


def prism_on_grid(
    rx: Prescription,
    *,
    eye: Eye | str,
    half_width_mm: float,
    half_height_mm: float,
    columns: int = 9,
    rows: int = 7,
) -> PrismField:
    """Return the prism on a grid about the optical centre, shape (rows, columns).

    rx: the power for distance.
    eye: the eye it is for.
    half_width_mm, half_height_mm: how far the grid reaches to each side, and up and down [mm].
    columns, rows: how many points across and up, each from 2 to 201.

    Raises LabError for no eye or a number out of range.
    Source: `prism.prism_at`.
    """
    width, height = _reach("half-width", half_width_mm), _reach("half-height", half_height_mm)
    x, y = np.meshgrid(
        np.linspace(-width, width, _count("columns", columns)),
        np.linspace(-height, height, _count("rows", rows)),
    )
    return _field(rx, eye, x, y)


def prism_on_rings(
    rx: Prescription, *, eye: Eye | str, radius_mm: float, rings: int = 3, spokes: int = 24
) -> PrismField:
    """Return the prism on rings about the optical centre, shape (rings, spokes).

    rx: the power for distance.
    eye: the eye it is for.
    radius_mm: of the outermost ring [mm]; the others divide it evenly.
    rings: how many rings, from 1 to 201.
    spokes: points on each ring, from 2 to 201, from +x anticlockwise.

    Raises LabError for no eye or a number out of range.
    Source: `prism.prism_at`.
    """
    count = _count("rings", rings, least=1)
    radius = _reach("radius", radius_mm) * np.arange(1, count + 1)[:, None] / count
    angle = np.arange(_count("spokes", spokes)) * (2.0 * np.pi / spokes)
    return _field(rx, eye, radius * np.cos(angle), radius * np.sin(angle))


def _field(rx: Prescription, eye: Eye | str, x: np.ndarray, y: np.ndarray) -> PrismField:
    nasal = Eye.of(eye).nasal_sign
    in_prism, up_prism = prism_at(rx, eye=eye, in_mm=nasal * x, up_mm=y)
    return PrismField(
        x_mm=x,
        y_mm=y,
        in_prism_d=in_prism,
        up_prism_d=up_prism,
        base_x_prism_d=nasal * in_prism,
        base_y_prism_d=up_prism,
    )


def _reach(thing: str, value: float) -> float:
    return require_between(
        f"{thing} of the prism field", value, low=0.0, high=_FARTHEST_MM, unit="mm", open_low=True
    )


def _count(thing: str, value: int, *, least: int = 2) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not least <= value <= _MOST_POINTS:
        raise LabError(
            f"number of {thing} {value!r} cannot be drawn: give a whole number from {least} to {_MOST_POINTS}"
        )
    return value
