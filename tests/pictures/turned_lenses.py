"""Lenses that turned on their blocks, and one that did not, for tests of drawings of them; all invented."""

import numpy as np

from lablib.job.spoiled import spoiled
from lablib.pictures.turned_lens_data import SeenLens, marks_of, seen_lens

# By their names among the practice lenses.
HOLDS, LINE_OFF, BUMPED, BURNT = "holds", "line-off", "bumped", "burnt"
NAMES = (HOLDS, LINE_OFF, BUMPED, BURNT, "loaded-progressive", "cribbed-flat-top", "glazed-half-eye")


def seen(name: str, turn: int | None = None) -> SeenLens:
    """Return a practice lens as it is drawn."""
    sheet = spoiled(name)
    return seen_lens(sheet.simulation, marks_of(sheet), turn=turn)


def points_of(patch) -> np.ndarray:
    """Return the corners of a polygon as complex points, without the one that closes it."""
    return patch.get_xy()[:-1] @ np.array([1.0, 1j])


def line_of(line) -> np.ndarray:
    """Return the points of a line as complex numbers."""
    return line.get_xydata() @ np.array([1.0, 1j])
