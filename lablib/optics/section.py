"""Straight cuts through a finished lens, as curves ready to draw."""

import math
from dataclasses import dataclass

import numpy as np

from lablib.errors import LabError
from lablib.optics.frame import Outline
from lablib.optics.solid import FinishedLens

_POINTS = 81


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Section:
    """A cut through the lens, and the blank it came from.

    along_mm: shape (N,), place on the cutting line, from the point it was laid through [mm].
    front_mm, back_mm: shape (N,), depth of the two surfaces behind the front vertex [mm].
    blank_along_mm, blank_front_mm, blank_back_mm: the same across the blank, ending where the surfaces
        meet or the blank's rim is reached [mm].
    """

    along_mm: np.ndarray
    front_mm: np.ndarray
    back_mm: np.ndarray
    blank_along_mm: np.ndarray
    blank_front_mm: np.ndarray
    blank_back_mm: np.ndarray

    @property
    def end_thickness_mm(self) -> tuple[float, float]:
        """Thickness where the line leaves the outline, at its start and at its end [mm]."""
        thickness = self.back_mm - self.front_mm
        return float(thickness[0]), float(thickness[-1])


def section(
    finished: FinishedLens, *, blank_diameter_mm: float, x_mm: float, y_mm: float, direction_deg: float
) -> Section:
    """Cut the finished lens along a line.

    finished: the lens in its outline.
    blank_diameter_mm: of the blank, centred on the optical centre [mm].
    x_mm, y_mm: a point inside the outline the line is laid through, from the boxed centre [mm].
    direction_deg: of the line, anticlockwise from +x [degrees].

    Raises LabError when the point lies outside the outline.
    """
    cosine, sine = math.cos(math.radians(direction_deg)), math.sin(math.radians(direction_deg))
    start, end = _crossings(finished.outline, x_mm, y_mm, cosine, sine)
    from_x, from_y = x_mm - finished.centre_x_mm, y_mm - finished.centre_y_mm
    along = np.linspace(start, end, _POINTS)
    blank_along = np.linspace(*_chord(blank_diameter_mm / 2.0, from_x, from_y, cosine, sine), _POINTS)
    front, back = _depths(finished, from_x + along * cosine, from_y + along * sine)
    blank_front, blank_back = _depths(finished, from_x + blank_along * cosine, from_y + blank_along * sine)
    with np.errstate(invalid="ignore"):
        there = blank_back >= blank_front
    return Section(
        along_mm=along,
        front_mm=front,
        back_mm=back,
        blank_along_mm=blank_along[there],
        blank_front_mm=blank_front[there],
        blank_back_mm=blank_back[there],
    )


def _depths(finished: FinishedLens, x: np.ndarray, y: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    lens = finished.lens
    return lens.front.sag_or_nan_mm(x, y), lens.centre_thickness_mm + lens.back.sag_or_nan_mm(x, y)


def _crossings(outline: Outline, x_mm: float, y_mm: float, cosine: float, sine: float) -> tuple[float, float]:
    """Where the line through the point enters and leaves the outline, as distances along it."""
    dx, dy = outline.x_mm - x_mm, outline.y_mm - y_mm
    off, along = dy * cosine - dx * sine, dx * cosine + dy * sine
    after = np.roll(off, -1)
    crossed = (off <= 0.0) != (after <= 0.0)
    share = off[crossed] / (off[crossed] - after[crossed])
    places = along[crossed] + share * (np.roll(along, -1)[crossed] - along[crossed])
    before, behind = places[places < 0.0], places[places > 0.0]
    if not before.size or not behind.size:
        raise LabError(
            f"section through ({x_mm:g}, {y_mm:g}) mm misses the lens: "
            f"lay it through a point inside the outline"
        )
    return float(before.max()), float(behind.min())


def _chord(radius: float, x: float, y: float, cosine: float, sine: float) -> tuple[float, float]:
    """Ends of the line's chord across the blank; the blank may end short of the point itself."""
    nearest = -(x * cosine + y * sine)
    half = math.sqrt(max(radius**2 - (x * sine - y * cosine) ** 2, 0.0))
    return nearest - half, nearest + half
