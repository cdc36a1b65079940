"""Boxing numbers of a trace, its outline about the boxed centre, and what a file states against them.

Points of a trace are joined by straight lines. A smooth curve through them (a periodic cubic) was tried and
left out: on outlines without sharp corners both agree within 0.02 mm in A, B and the effective diameter
from 180 radii on (circle, ellipse and superellipses to exponent 12, 50 x 36 mm, rounded to the standard's
hundredths). At the sharp corners of a rectangle traced at 400 equal angles the straight lines leave the
effective diameter 0.37 mm short, because no radius meets the corner; the curve still leaves 0.26 mm and
makes the box up to 0.13 mm too large, because it swings past the corner. No curve knows a corner that no
radius has met. Rounding to hundredths alone lengthens the circumference by 0.05 mm at 1,000 radii.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from lablib.errors import LabError, require_between, require_finite
from lablib.optics.frame import POINTS, Outline, unit_circle
from lablib.optics.practice import usual
from lablib.optics.trace import Trace

_HUNDREDTHS = 2
_MOST_MM = 300.0
BOXING_WORDS = {
    "a_mm": "A",
    "b_mm": "B",
    "effective_diameter_mm": "effective diameter",
    "circumference_mm": "circumference",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Boxing:
    """Boxing numbers of one rim, to a hundredth of a millimetre; None for one that is not told.

    a_mm, b_mm: width and height of the box [mm].
    effective_diameter_mm: twice the longest distance from the boxed centre [mm].
    circumference_mm: length of the outline [mm].

    Raises LabError for a number that no rim has.
    Source: ISO 8624.
    """

    a_mm: float | None = None
    b_mm: float | None = None
    effective_diameter_mm: float | None = None
    circumference_mm: float | None = None

    def __post_init__(self) -> None:
        for name, words in BOXING_WORDS.items():
            value = getattr(self, name)
            if value is not None:
                rounded = round(require_finite(words, value, unit="mm"), _HUNDREDTHS)
                require_between(words, rounded, low=0.0, high=_MOST_MM, unit="mm", open_low=True)
                object.__setattr__(self, name, rounded)


NOTHING_STATED = Boxing()


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """Two values of one boxing number that lie further apart than they should.

    name: of the field of `Boxing`.
    first_mm, second_mm: the values [mm].
    limit_mm: how far apart they may lie [mm].
    """

    name: str
    first_mm: float
    second_mm: float
    limit_mm: float

    @property
    def words(self) -> str:
        """The number, both values, how far apart they are, and how far they may be."""
        apart = abs(self.first_mm - self.second_mm)
        return (
            f"{BOXING_WORDS[self.name]} {self.first_mm:.2f} and {self.second_mm:.2f} mm, {apart:.2f} mm "
            f"apart where up to {self.limit_mm:g} mm passes without a word"
        )


def differences(first: Boxing, second: Boxing, *, limit_mm: float | None = None) -> tuple[Difference, ...]:
    """Return the boxing numbers that lie further apart than they should; what is not told is left out.

    first, second: boxing numbers of one rim, or of both.
    limit_mm: how far apart they may lie [mm]; None for the usual half millimetre.

    Raises LabError for a limit below 0.
    """
    most = usual("boxing_differs") if limit_mm is None else limit_mm
    require_between("limit", most, low=0.0, high=_MOST_MM, unit="mm")
    pairs = [(name, getattr(first, name), getattr(second, name)) for name in BOXING_WORDS]
    return tuple(
        Difference(name=name, first_mm=one, second_mm=other, limit_mm=most)
        for name, one, other in pairs
        if None not in (one, other) and round(abs(one - other), _HUNDREDTHS) > most
    )


def boxing_of(trace: Trace) -> Boxing:
    """Return the boxing numbers of a traced rim.

    trace: of one rim.
    """
    ring = boxed_ring_mm(trace)
    return Boxing(
        a_mm=float(np.ptp(ring.real)),
        b_mm=float(np.ptp(ring.imag)),
        effective_diameter_mm=2.0 * float(np.abs(ring).max()),
        circumference_mm=float(np.abs(np.diff(ring, append=ring[0])).sum()),
    )


def boxed_centre_mm(trace: Trace) -> complex:
    """Return where the boxed centre lies from the tracer's origin, x to the observer's right [mm].

    trace: of one rim.
    """
    points = trace.points_mm
    return complex(*((part.max() + part.min()) / 2.0 for part in (points.real, points.imag)))


def boxed_ring_mm(trace: Trace) -> np.ndarray:
    """Return the traced points about the boxed centre, shape (N,), complex, x to the observer's right [mm].

    trace: of one rim.
    """
    return trace.points_mm - boxed_centre_mm(trace)


@lru_cache(maxsize=64)
def outline_of(trace: Trace) -> Outline:
    """Return the outline of a traced rim about its boxed centre, straight between the traced points.

    trace: of one rim.

    Raises LabError for a rim that folds back as seen from its boxed centre.
    """
    ring = boxed_ring_mm(trace)
    following = np.roll(ring, -1)
    turn = np.angle(following / ring) if np.all(np.abs(ring) > 0.0) else np.zeros(1)
    if np.any(turn <= 0.0) or not np.isclose(turn.sum(), 2.0 * np.pi):
        raise LabError(
            f"trace of the {trace.eye} rim folds back as seen from its boxed centre: an outline has one "
            "distance in each direction; trace the rim again"
        )
    return Outline(radius_mm=_straight_between(ring, following, turn))


def _straight_between(ring: np.ndarray, following: np.ndarray, turn: np.ndarray) -> np.ndarray:
    """Distances at equal angles to the lines from point to point."""
    start = float(np.angle(ring[0]))
    begins = start + np.concatenate([[0.0], np.cumsum(turn)[:-1]])
    wanted = start + (np.arange(POINTS) * (2.0 * np.pi / POINTS) - start) % (2.0 * np.pi)
    at = np.searchsorted(begins, wanted, side="right") - 1
    near, far = ring[at], following[at]
    cosine, sine = unit_circle(POINTS)
    return _cross(near, far) / _cross(cosine + 1j * sine, far - near)


def _cross(one: np.ndarray, other: np.ndarray) -> np.ndarray:
    return one.real * other.imag - one.imag * other.real
