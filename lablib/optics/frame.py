"""The frame: boxing numbers, the outline inside the box, and what follows from the outline.

Boxing system as in ISO 8624. The boxed centre is the origin; x runs to the right as an observer
facing the wearer sees it, y up.
"""

from dataclasses import dataclass
from functools import cache, lru_cache
from typing import TYPE_CHECKING

import numpy as np

from lablib.datafile import read_table
from lablib.errors import LabError, require_one_of
from lablib.optics.eye import Eye
from lablib.optics.limits import require_in_limits

if TYPE_CHECKING:
    from lablib.optics.frame_traces import FrameTraces

# Points round an outline: every half degree.
POINTS = 720

# 45 halvings of under 110 mm leave less than 1e-11 mm.
_HALVINGS = 45

_SUPERELLIPSE = "superellipse"
FRAME_KINDS = ("plastic", "metal", "grooved", "drilled")


@dataclass(frozen=True, slots=True, kw_only=True)
class OutlineShape:
    """How an outline fills its box: a quarter of a superellipse to each corner.

    family: "superellipse" or a name from the data table.
    upper_nasal, upper_temporal, lower_nasal, lower_temporal: exponents of the four quarters.
    widest_up: height of the widest line above the horizontal midline, as a share of B.

    Raises LabError for a number outside its limits.
    """

    family: str = _SUPERELLIPSE
    upper_nasal: float = 2.6
    upper_temporal: float = 2.6
    lower_nasal: float = 2.6
    lower_temporal: float = 2.6
    widest_up: float = 0.0

    def __post_init__(self) -> None:
        for quarter in ("upper_nasal", "upper_temporal", "lower_nasal", "lower_temporal"):
            require_in_limits(f"outline exponent {quarter}", getattr(self, quarter), "outline_exponent")
        require_in_limits("outline widest_up", self.widest_up, "widest_up")

    def exponents(self, *, nasal: np.ndarray, upper: np.ndarray) -> np.ndarray:
        """Return the exponent that rules at each point.

        nasal, upper: shape (N,), which side of the widest point and line each point lies on.
        """
        above = np.where(nasal, self.upper_nasal, self.upper_temporal)
        return np.where(upper, above, np.where(nasal, self.lower_nasal, self.lower_temporal))

    @property
    def words(self) -> str:
        """The shape as people read it."""
        if self.family == _SUPERELLIPSE:
            return f"superellipse {self.upper_nasal:g}"
        return self.family

    @classmethod
    def superellipse(cls, exponent: float) -> "OutlineShape":
        """Return the shape |x/a|^n + |y/b|^n = 1.

        exponent: n, 2 for an ellipse, larger for a squarer outline.

        Raises LabError for an exponent outside its limits.
        """
        return cls(
            upper_nasal=exponent, upper_temporal=exponent, lower_nasal=exponent, lower_temporal=exponent
        )

    @classmethod
    def named(cls, family: str) -> "OutlineShape":
        """Return a family of the data table.

        Raises LabError with the names there are.
        """
        known = read_table("lablib.optics", "outlines.toml")["family"]
        if not isinstance(family, str) or family not in known:
            names = ", ".join([_SUPERELLIPSE, *known])
            raise LabError(f"outline family {family!r} is not in the table: give one of {names}")
        return cls(family=family, **{key: value for key, value in known[family].items() if key != "words"})


def outline_families() -> dict[str, str]:
    """Return the named families and what each looks like in words."""
    known = read_table("lablib.optics", "outlines.toml")["family"]
    return {name: row["words"] for name, row in known.items()}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Outline:
    """A closed outline as distances from the boxed centre at equal angles.

    radius_mm: shape (N,), distance at 0, 360/N, ... degrees anticlockwise from +x [mm].

    Raises LabError for fewer than 8 points or a distance that is not positive.
    """

    radius_mm: np.ndarray

    def __post_init__(self) -> None:
        radius = np.array(self.radius_mm, dtype=float)
        if radius.ndim != 1 or radius.size < 8:
            raise LabError(
                f"outline of shape {radius.shape} is too coarse: give 8 or more distances in one row"
            )
        if not np.all(np.isfinite(radius)) or np.any(radius <= 0.0):
            raise LabError(
                f"outline has the distance {radius.min()} mm: every distance from the centre is above 0"
            )
        radius.setflags(write=False)
        object.__setattr__(self, "radius_mm", radius)

    @property
    def angle_deg(self) -> np.ndarray:
        """Shape (N,), the angle of every point [degrees]."""
        return np.arange(self.radius_mm.size) * (360.0 / self.radius_mm.size)

    @property
    def x_mm(self) -> np.ndarray:
        """Shape (N,), to the observer's right of the boxed centre [mm]."""
        return self.radius_mm * unit_circle(self.radius_mm.size)[0]

    @property
    def y_mm(self) -> np.ndarray:
        """Shape (N,), above the boxed centre [mm]."""
        return self.radius_mm * unit_circle(self.radius_mm.size)[1]

    @property
    def effective_diameter_mm(self) -> float:
        """Twice the longest distance from the boxed centre to the outline [mm] (ISO 8624)."""
        return 2.0 * float(self.radius_mm.max())

    @property
    def perimeter_mm(self) -> float:
        """Length of the outline, taken as straight between its points [mm]."""
        x, y = self.x_mm, self.y_mm
        return float(np.hypot(np.diff(x, append=x[0]), np.diff(y, append=y[0])).sum())

    def mirrored(self) -> "Outline":
        """Return the outline seen in a mirror, as one eye's lens mirrors the other's; of N even points."""
        return Outline(radius_mm=np.roll(self.radius_mm[::-1], 1 - self.radius_mm.size // 2))


@cache
def unit_circle(points: int) -> tuple[np.ndarray, np.ndarray]:
    """Return cosine and sine at so many equal angles; do not write into them."""
    angle = np.arange(points) * (2.0 * np.pi / points)
    return np.cos(angle), np.sin(angle)


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """A frame by its boxing numbers, or by the traces of its rims.

    a_mm, b_mm: width and height of the box round one lens [mm].
    dbl_mm: distance between the lenses [mm].
    shape: how the outline fills the box.
    kind: "plastic", "metal", "grooved" or "drilled"; None where it is not said.
    rim_curve_d: how the rims are bowed, as a lens curve for index 1.530 [D]; None where it was not taken.
    traces: of the rims, where they were traced; then they give the outlines, A and B, and shape counts for
        nothing. `frame_traces.traced_frame` makes such a frame.

    Raises LabError for a number no frame has, or that is not the one of its traces.
    Source: ISO 8624, spectacle frames, measuring system and vocabulary.
    """

    a_mm: float
    b_mm: float
    dbl_mm: float
    shape: OutlineShape = OutlineShape()
    kind: str | None = None
    rim_curve_d: float | None = None
    traces: "FrameTraces | None" = None

    def __post_init__(self) -> None:
        for name in ("a_mm", "b_mm", "dbl_mm", *(() if self.rim_curve_d is None else ("rim_curve_d",))):
            require_in_limits(name, getattr(self, name), name)
        if self.traces is not None and (self.a_mm, self.b_mm) != (self.traces.a_mm, self.traces.b_mm):
            raise LabError(
                f"frame {self.a_mm:g} x {self.b_mm:g} mm was traced as {self.traces.a_mm:g} x "
                f"{self.traces.b_mm:g} mm: take A and B from its traces"
            )
        if self.kind is not None:
            require_one_of("frame kind", self.kind, FRAME_KINDS)

    @property
    def bridge_to_boxed_centre_mm(self) -> float:
        """From the middle of the bridge to either boxed centre, half the distance between them [mm]."""
        return (self.a_mm + self.dbl_mm) / 2.0

    @property
    def outline_words(self) -> str:
        """Where the outline comes from, as people read it."""
        return self.shape.words if self.traces is None else "as traced"

    def outline(self, eye: Eye) -> Outline:
        """Return the outline of one eye's lens: as traced, or else the left a mirror of the right.

        eye: which lens.
        """
        if self.traces is not None:
            return self.traces.outline(eye)
        return _outline(self.a_mm, self.b_mm, self.shape, eye)


@lru_cache(maxsize=256)
def _outline(a_mm: float, b_mm: float, shape: OutlineShape, eye: Eye) -> Outline:
    """Kept, because a panel asks for the same frame at every redraw."""
    if eye is Eye.LEFT:
        return _outline(a_mm, b_mm, shape, Eye.RIGHT).mirrored()
    radius = _quarters(a_mm, b_mm, shape) if shape.widest_up == 0.0 else _lifted(a_mm, b_mm, shape)
    return Outline(radius_mm=radius)


def _quarters(a_mm: float, b_mm: float, shape: OutlineShape) -> np.ndarray:
    """Distances in closed form, where all four quarters meet at the boxed centre."""
    cosine, sine = unit_circle(POINTS)
    exponent = shape.exponents(nasal=cosine > 0.0, upper=sine > 0.0)
    # Powers of a ratio to the larger term, so that an exponent of 40 does not underflow.
    across, along = np.abs(cosine) * 2.0 / a_mm, np.abs(sine) * 2.0 / b_mm
    larger = np.maximum(across, along)
    smaller = np.minimum(across, along)
    return 1.0 / (larger * (1.0 + (smaller / larger) ** exponent) ** (1.0 / exponent))


def _lifted(a_mm: float, b_mm: float, shape: OutlineShape) -> np.ndarray:
    """Distances by bisection, where the quarters meet off the boxed centre."""
    cosine, sine = unit_circle(POINTS)
    lift = shape.widest_up * b_mm
    low, high = np.zeros(POINTS), np.full(POINTS, float(np.hypot(a_mm, b_mm)))
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        x, y = middle * np.abs(cosine), middle * sine - lift
        half_b = np.where(y > 0.0, b_mm / 2.0 - lift, b_mm / 2.0 + lift)
        exponent = shape.exponents(nasal=cosine > 0.0, upper=y > 0.0)
        with np.errstate(over="ignore"):
            outside = (x * 2.0 / a_mm) ** exponent + (np.abs(y) / half_b) ** exponent > 1.0
        low, high = np.where(outside, low, middle), np.where(outside, middle, high)
    return (low + high) / 2.0
