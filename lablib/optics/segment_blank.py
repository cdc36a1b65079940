"""The blank of a bifocal: its segment lies at a fixed place, so the outline is slid over it.

The optical centre of the distance part is ground where it is wanted; the segment is there already. So the
segment decides where the finished outline comes to lie on the blank.
"""

from dataclasses import dataclass

import numpy as np

from lablib.datafile import read_table
from lablib.errors import require_one_of
from lablib.optics.blank_fit import BlankFit
from lablib.optics.limits import require_in_limits
from lablib.optics.segment_layout import SegmentLayout


@dataclass(frozen=True, slots=True, kw_only=True)
class SegmentBlank:
    """A semi-finished blank by what its maker's chart says.

    diameter_mm: [mm].
    inset_mm: middle of the segment inwards of the blank's centre [mm]; right and left blanks differ.
    drop_mm: top of the segment below the blank's centre [mm]; minus above it.

    Raises LabError for a number no blank has.
    """

    diameter_mm: float
    inset_mm: float
    drop_mm: float

    def __post_init__(self) -> None:
        require_in_limits("blank diameter_mm", self.diameter_mm, "blank_diameter_mm")
        require_in_limits("blank's own segment inset_mm", self.inset_mm, "blank_segment_inset_mm")
        require_in_limits("blank's own segment drop_mm", self.drop_mm, "blank_segment_drop_mm")


@dataclass(frozen=True, slots=True, kw_only=True)
class CutOut:
    """An outline laid over the blank of a segment.

    layout: where the segment is wanted; blank: where it is on the blank.
    """

    layout: SegmentLayout
    blank: SegmentBlank

    @property
    def blank_centre_mm(self) -> tuple[float, float]:
        """The blank's centre, inwards and upwards from the boxed centre [mm]."""
        return (
            self.layout.total_inset_mm - self.blank.inset_mm,
            self.layout.top_up_mm + self.blank.drop_mm,
        )

    @property
    def fit(self) -> BlankFit:
        """The blank laid on the outline, its middle where its segment wants it."""
        inwards, upwards = self.blank_centre_mm
        layout = self.layout
        return BlankFit(
            eye=layout.eye,
            outline=layout.frame.outline(layout.eye),
            in_mm=inwards,
            up_mm=upwards,
            blank_mm=self.blank.diameter_mm,
        )

    @property
    def least_blank_mm(self) -> float:
        """Diameter of the least blank with its segment at this place that covers, with the allowance [mm]."""
        return self.fit.least.exact_mm

    @property
    def covers(self) -> bool:
        """Whether the blank covers the outline."""
        return self.fit.blank_covers

    @property
    def short_mm(self) -> float:
        """How far the outline lies beyond the usable blank at its worst place [mm]; minus where it covers."""
        return -self.fit.spare_mm / 2.0

    @property
    def beyond_mm(self) -> np.ndarray:
        """How far each outline point lies beyond the usable blank, shape (N,) [mm]; minus inside it."""
        return self.fit.beyond_mm

    @property
    def worst_deg(self) -> float:
        """Where on the outline it fails first, from the boxed centre, anticlockwise as observed [degrees]."""
        return self.fit.least.farthest_deg

    @property
    def worst_words(self) -> str:
        """The same place in words, such as "upper temporal"."""
        worst = np.exp(1j * np.radians(self.worst_deg))
        side = "nasal" if worst.real * self.layout.eye.nasal_sign > 0.0 else "temporal"
        return f"{'upper' if worst.imag > 0.0 else 'lower'} {side}"


def segment_blank_names() -> tuple[str, ...]:
    """Return the names of the blanks of the invented chart."""
    return tuple(_table()["blank"])


def segment_blank(name: str) -> SegmentBlank:
    """Return a blank of the invented chart.

    name: of the table segments.toml, for example "70".

    Raises LabError with the names there are.
    """
    row = _table()["blank"][require_one_of("segment blank", name, segment_blank_names())]
    return SegmentBlank(**{key: value for key, value in row.items() if key != "words"})


def segment_blank_source() -> str:
    """Return where the places of segments on blanks come from, as a learner reads it."""
    return _table()["blank_source"]["text"]


def _table() -> dict:
    return read_table("lablib.optics", "segments.toml")
