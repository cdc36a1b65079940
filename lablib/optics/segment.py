"""Segments of bifocals: what they are like, and their outline.

A segment is a disc about its own optical centre whose top may be cut off: straight in a flat top, in an arc
in a curved top, not at all in a round one. Its top is its highest point.
"""

import math
from dataclasses import dataclass

import numpy as np

from lablib.datafile import read_table
from lablib.errors import LabError, require_one_of
from lablib.optics.limits import require_in_limits

STYLES = ("flat top", "round segment", "curved top")
_FLAT, _ROUND, _CURVED = STYLES
# Points round a segment: every two degrees.
_POINTS = 180


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """A segment by its style and sizes.

    style: "flat top", "round segment" or "curved top".
    width_mm: across its widest place [mm]; depth_mm: from its top to its lowest point [mm].
    centre_below_top_mm: its optical centre below its top [mm].
    top_rise_mm: how far the middle of a curved top lies above its corners [mm]; 0 for the others.
    words: as it is spoken; style and width where it is empty.

    Raises LabError for a style or a size that no segment has.
    Source: common practice.
    """

    style: str
    width_mm: float
    depth_mm: float
    centre_below_top_mm: float
    top_rise_mm: float = 0.0
    words: str = ""

    def __post_init__(self) -> None:
        require_one_of("segment style", self.style, STYLES)
        for name in ("width_mm", "depth_mm", "centre_below_top_mm"):
            require_in_limits(f"segment {name}", getattr(self, name), f"segment_{name}")
        if self.centre_below_top_mm >= self.depth_mm:
            raise LabError(
                f"segment centre {self.centre_below_top_mm:g} mm below the top lies outside a segment "
                f"{self.depth_mm:g} mm deep: check both against the maker's chart"
            )
        self._require_top()
        if not self.words:
            object.__setattr__(self, "words", f"{self.style.removesuffix(' segment')} {self.width_mm:g}")

    def _require_top(self) -> None:
        radius = self.width_mm / 2.0
        if self.style == _ROUND:
            if not (self.depth_mm == self.width_mm and self.centre_below_top_mm == radius):
                raise LabError(
                    f"round segment {self.width_mm:g} mm wide: its depth is its width and its centre lies "
                    f"{radius:g} mm below the top: change the numbers or the style"
                )
        elif self.centre_below_top_mm >= radius:
            raise LabError(
                f"{self.style} {self.width_mm:g} mm wide: its centre lies less than {radius:g} mm below the "
                f"top, not {self.centre_below_top_mm:g}: check the chart, or call it a round segment"
            )
        low, high = (0.0, self.centre_below_top_mm) if self.style == _CURVED else (0.0, 0.0)
        if not low <= self.top_rise_mm <= high or (self.style == _CURVED and not self.top_rise_mm):
            rule = "above 0 and up to the depth of its centre" if self.style == _CURVED else "0"
            raise LabError(f"top_rise_mm {self.top_rise_mm:g} of a {self.style}: give {rule}")

    @property
    def corner_mm(self) -> float:
        """How far to either side of its middle a cut top reaches [mm]; 0 for a round segment."""
        height = self.centre_below_top_mm - self.top_rise_mm
        return math.sqrt(max((self.width_mm / 2.0) ** 2 - height**2, 0.0))

    def ring_mm(self) -> np.ndarray:
        """Return the outline as points x + iy anticlockwise, from the middle of its top [mm].

        Shape (N,); x to the observer's right, y up, so that no y is above 0. It is alike on both sides. Where
        a chart's depth is not that of a disc, the part below the optical centre is drawn to the depth.
        """
        radius, below = self.width_mm / 2.0, self.depth_mm - self.centre_below_top_mm
        angle = 2.0 * np.pi * np.arange(_POINTS) / _POINTS
        if self.corner_mm:
            corner = math.atan2(self.centre_below_top_mm - self.top_rise_mm, self.corner_mm)
            angle = np.unique(np.append(angle, [corner, np.pi - corner]))
        x, y = radius * np.cos(angle), np.sin(angle)
        y = np.where(y > 0.0, radius, below) * y - self.centre_below_top_mm
        return x + 1j * np.minimum(y, self._top_mm(x))

    def _top_mm(self, x: np.ndarray) -> np.ndarray:
        """Height of the cut over each place, from the middle of the top."""
        if not self.top_rise_mm:
            return np.zeros_like(x)
        radius = (self.corner_mm**2 + self.top_rise_mm**2) / (2.0 * self.top_rise_mm)
        return np.sqrt(np.maximum(radius**2 - x**2, 0.0)) - radius


def segment_names() -> tuple[str, ...]:
    """Return the names of the table of usual segments."""
    return tuple(_rows())


def segment(name: str) -> Segment:
    """Return a usual segment by its name.

    name: of the table segments.toml, for example "flat-top-28".

    Raises LabError with the names there are.
    """
    row = _rows()[require_one_of("segment", name, segment_names())]
    return Segment(**row)


def usual_segment(style: str, width_mm: float) -> Segment:
    """Return the usual segment of a style and width.

    style: as in `Segment`; width_mm: [mm].

    Raises LabError with the widths the table has.
    """
    require_one_of("segment style", style, STYLES)
    widths = {row["width_mm"]: name for name, row in _rows().items() if row["style"] == style}
    if width_mm not in widths:
        known = ", ".join(f"{width:g}" for width in widths)
        raise LabError(
            f"{style} {width_mm} mm wide is not in the table: give {known} mm, or its depth and its centre "
            "as the maker's chart has them"
        )
    return segment(widths[width_mm])


def segment_source() -> str:
    """Return where the usual sizes come from, as a learner reads it."""
    return read_table("lablib.optics", "segments.toml")["source"]["text"]


def _rows() -> dict[str, dict]:
    return read_table("lablib.optics", "segments.toml")["segment"]
