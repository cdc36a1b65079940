"""A progressive in the frame: where its marks lie, what the rim leaves, and what its engravings tell.

Points are inwards and upwards from the boxed centre; heights are above the lowest tangent of the outline.
"""

import math
from dataclasses import dataclass

from lablib.errors import LabError, require_finite
from lablib.optics.clipping import area_mm2, circle, clipped, ring_of
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.layout import decentration_mm
from lablib.optics.power import without_noise
from lablib.optics.practice import usual
from lablib.optics.progressive import (
    FITTING_CROSS,
    NASAL_ENGRAVING,
    NEAR_CIRCLE,
    TEMPORAL_ENGRAVING,
    Mark,
    ProgressiveDesign,
    named,
)

Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProgressiveLayout:
    """A progressive laid out for one eye.

    frame: the frame; eye: which eye; design: by the maker's chart.
    monocular_pd_mm: far distance from the middle of the bridge [mm].
    height_mm: of the fitting cross above the lowest tangent [mm].

    Raises LabError for a distance or a height that cannot be.
    """

    frame: Frame
    eye: Eye
    design: ProgressiveDesign
    monocular_pd_mm: float
    height_mm: float

    def __post_init__(self) -> None:
        require_finite("height_mm", self.height_mm, unit="mm above the lowest tangent")
        decentration_mm(self.frame, monocular_pd_mm=self.monocular_pd_mm, height_mm=self.height_mm)

    @property
    def cross_mm(self) -> Point:
        """The fitting cross, inwards and upwards from the boxed centre [mm]."""
        return decentration_mm(self.frame, monocular_pd_mm=self.monocular_pd_mm, height_mm=self.height_mm)

    @property
    def marks(self) -> tuple[Mark, ...]:
        """Every mark, inwards and upwards from the boxed centre."""
        inwards, upwards = self.cross_mm
        return tuple(mark.moved(in_mm=inwards, up_mm=upwards) for mark in self.design.marks())

    def mark(self, name: str) -> Mark:
        """Return one mark, inwards and upwards from the boxed centre.

        name: one of `lablib.optics.progressive.MARKS`.

        Raises LabError with the names there are.
        """
        return named(self.marks, name)

    @property
    def height_short_mm(self) -> float:
        """How far the cross lies under the least fitting height [mm]; 0 where it is high enough."""
        return max(self.design.least_fitting_height_mm - self.height_mm, 0.0)

    @property
    def room_above_short_mm(self) -> float:
        """How much room is missing above the cross [mm]; 0 where there is enough."""
        above = without_noise(self.frame.b_mm - self.height_mm)
        return max(self.design.least_above_cross_mm - above, 0.0)

    @property
    def near_centre_room_mm(self) -> float:
        """Middle of the near circle above the lowest tangent [mm]; minus where it lies below."""
        return self.height_mm - self.design.near_circle_below_cross_mm

    @property
    def near_circle_left(self) -> float:
        """How much of the near circle's area lies in the finished lens, from 0 to 1."""
        near = self.mark(NEAR_CIRCLE)
        whole = circle(complex(near.x_mm(self.eye), near.up_mm), near.diameter_mm, points=60)
        outline = self.frame.outline(self.eye)
        left = clipped(ring_of(outline.x_mm, outline.y_mm), whole)
        return min(area_mm2(left) / area_mm2(whole), 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Engravings:
    """Both engravings of a finished lens, as they were found.

    nasal_mm, temporal_mm: inwards and upwards from the boxed centre [mm].

    Raises LabError for a place that is not a number, or a nasal engraving that does not lie nasally.
    """

    nasal_mm: Point
    temporal_mm: Point

    def __post_init__(self) -> None:
        for which, point in (("nasal", self.nasal_mm), ("temporal", self.temporal_mm)):
            for way, value in zip(("in", "up"), point, strict=True):
                require_finite(f"{which} engraving, {way}", value, unit="mm")
        if self.nasal_mm[0] <= self.temporal_mm[0]:
            raise LabError(
                f"nasal engraving {self.nasal_mm[0]:g} mm in lies outwards of the temporal one, "
                f"{self.temporal_mm[0]:g} mm in: the lens lies face down, or the eyes are exchanged; turn it "
                "front up"
            )

    @property
    def apart_mm(self) -> float:
        """From engraving to engraving [mm]."""
        return math.dist(self.nasal_mm, self.temporal_mm)

    @property
    def middle_mm(self) -> Point:
        """Midway between them, inwards and upwards from the boxed centre [mm]."""
        return (
            (self.nasal_mm[0] + self.temporal_mm[0]) / 2.0,
            (self.nasal_mm[1] + self.temporal_mm[1]) / 2.0,
        )

    def tilt_deg(self, eye: Eye) -> float:
        """Return how far the line through both is off level, anticlockwise as observed [degrees].

        eye: whose lens it is.
        """
        return eye.nasal_sign * math.degrees(self._nasal_up_rad) + 0.0

    def marks(self, design: ProgressiveDesign) -> tuple[Mark, ...]:
        """Return every mark as it is put back on, inwards and upwards from the boxed centre.

        design: by its maker's chart.

        Raises LabError where the two are not as far apart as the chart says.
        """
        self.require_of(design)
        middle, turned = complex(*self.middle_mm), math.cos(self._nasal_up_rad)
        turn = complex(turned, math.sin(self._nasal_up_rad))
        placed = [
            (mark, middle + turn * complex(mark.in_mm, mark.up_mm)) for mark in design.marks_from_engravings()
        ]
        return tuple(
            Mark(name=mark.name, in_mm=at.real, up_mm=at.imag, diameter_mm=mark.diameter_mm)
            for mark, at in placed
        )

    def require_of(self, design: ProgressiveDesign) -> None:
        """Refuse engravings that are not as far apart as a chart says.

        design: by its maker's chart.

        Raises LabError with both distances.
        """
        if abs(self.apart_mm - design.engravings_apart_mm) > usual("engravings_slack"):
            raise LabError(
                f"engravings {self.apart_mm:.1f} mm apart are not those of the chart, "
                f"{design.engravings_apart_mm:g} mm: look for both again, front up against a dark background"
            )

    @property
    def _nasal_up_rad(self) -> float:
        return math.atan2(self.nasal_mm[1] - self.temporal_mm[1], self.nasal_mm[0] - self.temporal_mm[0])


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeTo:
    """What a finished progressive was made to, told by its engravings.

    monocular_pd_mm: from the middle of the bridge to the fitting cross [mm].
    height_mm: of the fitting cross above the lowest tangent [mm].
    tilt_deg: of the engravings, anticlockwise as observed [degrees].
    """

    monocular_pd_mm: float
    height_mm: float
    tilt_deg: float


def made_to(frame: Frame, *, eye: Eye, design: ProgressiveDesign, engravings: Engravings) -> MadeTo:
    """Return what a finished progressive was made to.

    frame: it is in; eye: which eye; design: by its maker's chart; engravings: as they were found.

    Raises LabError where the engravings are not as far apart as the chart says.
    """
    cross = named(engravings.marks(design), FITTING_CROSS)
    return MadeTo(
        monocular_pd_mm=frame.bridge_to_boxed_centre_mm - cross.in_mm,
        height_mm=cross.up_mm + frame.b_mm / 2.0,
        tilt_deg=engravings.tilt_deg(eye),
    )


def engravings_of(layout: ProgressiveLayout) -> Engravings:
    """Return where the engravings of a lens lie that was made without error.

    layout: what it was made to.
    """
    nasal, temporal = layout.mark(NASAL_ENGRAVING), layout.mark(TEMPORAL_ENGRAVING)
    return Engravings(nasal_mm=(nasal.in_mm, nasal.up_mm), temporal_mm=(temporal.in_mm, temporal.up_mm))
