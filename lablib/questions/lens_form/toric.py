"""A minus lens in a frame, sphere or toric, as questions about its thickest edge draw it."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.lens import lens_for
from lablib.optics.prescription import Prescription
from lablib.working import Term

# Edges are compared when rounded to this, so that the last bit of a machine chooses nothing.
_DECIMALS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class FramedLens:
    """A lens in a frame.

    frame: the frame; eye: which lens.
    prescription: its power.
    index: of the lens; front_d: front surface power [D]; centre_mm: centre thickness [mm].
    in_mm, up_mm: its optical centre from the boxed centre, nasally and up [mm].
    """

    frame: Frame
    eye: Eye
    prescription: Prescription
    index: float
    front_d: float
    centre_mm: float
    in_mm: float
    up_mm: float

    @property
    def centre_x_mm(self) -> float:
        """The optical centre to the observer's right of the boxed centre [mm]."""
        return self.eye.nasal_sign * self.in_mm

    @property
    def temporal_deg(self) -> int:
        """Direction away from the nose, from the boxed centre [degrees]."""
        return 180 if self.eye is Eye.RIGHT else 0

    def thickness_mm(self, x_mm: np.ndarray, y_mm: np.ndarray) -> np.ndarray:
        """Return the thickness at points given from the boxed centre [mm].

        x_mm, y_mm: points [mm], of one shape.
        """
        lens = lens_for(
            self.prescription,
            index=self.index,
            front_curve_d=self.front_d,
            centre_thickness_mm=self.centre_mm,
        )
        thickness = lens.thickness_mm(x_mm - self.centre_x_mm, y_mm - self.up_mm)
        return np.round(thickness, _DECIMALS)

    @property
    def made_words(self) -> str:
        """What it is made with, inside a sentence."""
        return f"index {self.index:.3f}, front {self.front_d:.2f} D and {self.centre_mm:.1f} mm at the centre"

    @property
    def terms(self) -> tuple[Term, ...]:
        """Frame and place of the centre as numbers that are given."""
        up = Term(
            symbol="d_up",
            value=self.up_mm,
            unit="mm",
            digits=1,
            meaning="optical centre up from the boxed centre (minus: down)",
        )
        return (
            Term(symbol="A", value=self.frame.a_mm, unit="mm", digits=0, meaning="boxed width"),
            Term(symbol="B", value=self.frame.b_mm, unit="mm", digits=0, meaning="boxed height"),
            Term(
                symbol="d_in",
                value=self.in_mm,
                unit="mm",
                digits=1,
                meaning="optical centre in from the boxed centre",
            ),
            up,
        )


@lru_cache(maxsize=32)
def edge_each_degree_mm(lens: FramedLens) -> np.ndarray:
    """Return the edge thickness at every whole degree round the boxed centre, shape (360,) [mm].

    lens: the lens in its frame. Kept, because one question asks for the same edge several times.
    """
    edge = lens.thickness_mm(*_each_degree_mm(lens))
    edge.setflags(write=False)
    return edge


def meridian_ends(lens: FramedLens) -> tuple[tuple[int, float], tuple[int, float]]:
    """Return both ends of the meridian across the axis: direction [degrees] and way [mm], the farther first.

    lens: with a cylinder. The line runs through the optical centre, from which the way is counted; the
        direction is counted about the boxed centre, as it is for the edge.
    """
    x, y = _each_degree_mm(lens)
    away = (x - lens.centre_x_mm) + 1j * (y - lens.up_mm)
    along = np.exp(1j * np.radians(lens.prescription.axis_deg + 90.0))
    cosines = np.round((away / along).real / np.abs(away), _DECIMALS)
    ends = [(int(at), round(float(abs(away[at])), _DECIMALS)) for at in (cosines.argmax(), cosines.argmin())]
    first, second = sorted(ends, key=lambda end: -end[1])
    return first, second


def _each_degree_mm(lens: FramedLens) -> tuple[np.ndarray, np.ndarray]:
    """The outline at every whole degree, from the boxed centre."""
    outline = lens.frame.outline(lens.eye)
    every = outline.radius_mm.size // 360
    return outline.x_mm[::every], outline.y_mm[::every]
