"""Arrows that point to the base of a prism, as lines to draw."""

import numpy as np

from lablib.pictures.palette import INK, OKABE_ITO, Look

BASE = Look(colour=OKABE_ITO["vermilion"], dashes="solid", width_pt=2.6)
BASE_ELSEWHERE = Look(colour=OKABE_ITO["vermilion"], dashes="solid", width_pt=1.0)
PUPIL = Look(colour=INK, mark="o", width_pt=1.8, hollow=True)
# Of a head's barbs: how far they reach back and to the side, for a head of length 1.
_BACK, _ASIDE = 0.87, 0.5
# A head is never longer than this share of its arrow.
_MOST_HEAD = 0.45


def prism_dioptres(amount_prism_d: float) -> str:
    """Return an amount of prism with its unit in full.

    amount_prism_d: [prism D].
    """
    return f"{amount_prism_d:g} prism dioptre{'' if amount_prism_d == 1.0 else 's'}"


def scale_words(prism_d_per_mm: float) -> str:
    """Return what the length of the bar of ten millimetres stands for on an arrow.

    prism_d_per_mm: prism for each mm of an arrow [prism D/mm].
    """
    return f"arrows: 10 mm for {prism_dioptres(10.0 * prism_d_per_mm)}"


def arrows(start: np.ndarray, reach: np.ndarray, *, head: float) -> np.ndarray:
    """Return arrows as one line that breaks off between them, shape (7 N, 2).

    start: where they begin, x + iy, shape (N,) [units of the drawing].
    reach: from there to their points, x + iy, shape (N,) [units of the drawing].
    head: length of the barbs of a long arrow [units of the drawing].
    """
    start, reach = np.atleast_1d(start), np.atleast_1d(reach)
    length = np.abs(reach)
    way = np.divide(reach, length, out=np.zeros_like(reach), where=length > 0.0)
    barb = np.minimum(head, _MOST_HEAD * length) * way
    point, gap = start + reach, np.full(start.shape, complex(np.nan, np.nan))
    left, right = (point - barb * complex(_BACK, side * _ASIDE) for side in (-1.0, 1.0))
    line = np.stack([start, point, gap, left, point, right, gap], axis=1).ravel()
    return np.column_stack([line.real, line.imag])
