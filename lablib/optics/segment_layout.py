"""Where the segment of a bifocal lies in the frame: insets, the height of its top, and what the rim leaves.

Points are inwards and upwards from the boxed centre; heights are above the lowest tangent of the outline.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from lablib.errors import LabError, require_between
from lablib.optics.clipping import area_mm2, clipped, ring_of
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.layout import decentration_mm
from lablib.optics.limits import require_in_limits
from lablib.optics.power import without_noise
from lablib.optics.segment import Segment


def segment_inset_mm(*, far_pd_mm: float, near_pd_mm: float) -> float:
    """Return how far the middle of a segment lies inwards of the distance centre, one eye [mm].

    far_pd_mm, near_pd_mm: of that eye, from the middle of the bridge [mm].

    Raises LabError for a distance no wearer has, or a near one that is the larger.
    Source: common practice.
    """
    far = require_in_limits("far distance", far_pd_mm, "monocular_pd_mm")
    near = require_in_limits("near distance", near_pd_mm, "monocular_pd_mm")
    if near > far:
        raise LabError(
            f"near distance {near:g} mm is larger than the far one, {far:g} mm: eyes turn inwards to read; "
            "check whether the two are exchanged"
        )
    return far - near


def total_inset_mm(frame: Frame, *, near_pd_mm: float) -> float:
    """Return how far the middle of a segment lies inwards of the boxed centre [mm]; minus is outwards.

    frame: the frame; near_pd_mm: of this eye, from the middle of the bridge [mm].

    Raises LabError for a distance no wearer has, or a segment outside the lens.
    Source: (A + DBL) / 2 less the near distance; common practice.
    """
    return decentration_mm(frame, monocular_pd_mm=near_pd_mm)[0]


def top_up_mm(frame: Frame, *, segment_height_mm: float) -> float:
    """Return how far the top of a segment lies above the horizontal midline [mm]; minus is below.

    frame: the frame; segment_height_mm: of the top above the lowest tangent [mm].

    Raises LabError for a top outside the frame's box.
    Source: h less B / 2; common practice.
    """
    height = require_between(
        "segment_height_mm",
        segment_height_mm,
        low=0.0,
        high=frame.b_mm,
        unit="mm above the lowest tangent, inside B",
        open_low=True,
    )
    return height - frame.b_mm / 2.0


def reading_drop_mm(*, top_below_centre_mm: float, below_top_mm: float) -> float:
    """Return how far below the distance centre the eye reads, for prism at near [mm].

    top_below_centre_mm: top of the segment below the distance centre [mm]; minus where it lies above.
    below_top_mm: the place read through, below the top [mm].

    Raises LabError for a place above the top.
    Source: common practice: prism at near is counted from the centre of the distance part.
    """
    below = require_between("reading place below the top", below_top_mm, low=0.0, high=30.0, unit="mm")
    return top_below_centre_mm + below


@dataclass(frozen=True, kw_only=True)
class SegmentLayout:
    """A segment laid out for one eye.

    frame: the frame; eye: which eye; segment: the segment.
    far_pd_mm, near_pd_mm: from the middle of the bridge [mm].
    segment_height_mm: of its top above the lowest tangent [mm].
    height_mm: of the distance centre above the lowest tangent [mm]; None: on the horizontal midline.

    Raises LabError for distances or heights that cannot be.
    """

    frame: Frame
    eye: Eye
    segment: Segment
    far_pd_mm: float
    near_pd_mm: float
    segment_height_mm: float
    height_mm: float | None = None

    def __post_init__(self) -> None:
        segment_inset_mm(far_pd_mm=self.far_pd_mm, near_pd_mm=self.near_pd_mm)
        total_inset_mm(self.frame, near_pd_mm=self.near_pd_mm)
        top_up_mm(self.frame, segment_height_mm=self.segment_height_mm)
        decentration_mm(self.frame, monocular_pd_mm=self.far_pd_mm, height_mm=self.height_mm)

    @property
    def distance_centre_mm(self) -> tuple[float, float]:
        """Centre of the distance part, inwards and upwards from the boxed centre [mm]."""
        return decentration_mm(self.frame, monocular_pd_mm=self.far_pd_mm, height_mm=self.height_mm)

    @property
    def segment_inset_mm(self) -> float:
        """Middle of the segment, inwards of the distance centre [mm]."""
        return segment_inset_mm(far_pd_mm=self.far_pd_mm, near_pd_mm=self.near_pd_mm)

    @property
    def total_inset_mm(self) -> float:
        """Middle of the segment, inwards of the boxed centre [mm]."""
        return total_inset_mm(self.frame, near_pd_mm=self.near_pd_mm)

    @property
    def top_up_mm(self) -> float:
        """Top of the segment, above the horizontal midline [mm]."""
        return top_up_mm(self.frame, segment_height_mm=self.segment_height_mm)

    @property
    def top_below_centre_mm(self) -> float:
        """Top of the segment, below the distance centre [mm]; minus where it lies above."""
        return without_noise(self.distance_centre_mm[1] - self.top_up_mm)

    @property
    def segment_centre_mm(self) -> tuple[float, float]:
        """Optical centre of the segment, inwards and upwards from the boxed centre [mm]."""
        return self.total_inset_mm, self.top_up_mm - self.segment.centre_below_top_mm

    @property
    def whole_ring_mm(self) -> np.ndarray:
        """The segment before the lens is cut, points x + iy from the boxed centre, facing the wearer [mm]."""
        middle = self.eye.nasal_sign * self.total_inset_mm
        return self.segment.ring_mm() + complex(middle, self.top_up_mm)

    @cached_property
    def ring_mm(self) -> np.ndarray:
        """What of the segment lies in the finished lens, as `whole_ring_mm`; empty where nothing does."""
        outline = self.frame.outline(self.eye)
        return clipped(ring_of(outline.x_mm, outline.y_mm), self.whole_ring_mm)

    @property
    def share_left(self) -> float:
        """How much of the segment's area lies in the finished lens, from 0 to 1."""
        return min(area_mm2(self.ring_mm) / area_mm2(self.whole_ring_mm), 1.0)

    @property
    def depth_left_mm(self) -> float:
        """From the top of the segment down to where it or the lens ends [mm]; 0 where nothing is left."""
        return self.top_up_mm - float(self.ring_mm.imag.min()) if self.ring_mm.size else 0.0
