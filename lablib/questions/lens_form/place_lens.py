"""Lenses for the question about the thickest place of an edge: drawn so that the place is clear."""

import numpy as np

from lablib.optics.eye import EYES
from lablib.optics.frame import OutlineShape
from lablib.optics.prescription import Prescription
from lablib.questions.layout.frames import draw_frame
from lablib.questions.lens_form.terms import index_for
from lablib.questions.lens_form.toric import FramedLens, edge_each_degree_mm
from lablib.study.draws import Draws

# With corners far out the distance can decide alone; on the others only a cylinder makes one place clear.
CORNERED = tuple(OutlineShape.named(name) for name in ("rectangle", "pilot"))
BLUNT = (OutlineShape(), *(OutlineShape.named(name) for name in ("round", "panto")))
TOLERANCE_DEG = 12
_LOWER_MM = (8.0, 12.0)
# By so much the edge must be thinner beyond the tolerance, which a caliper can tell, and beyond twice that,
# or the marker could not be put fairly.
_CLEARLY_MM = ((TOLERANCE_DEG, 0.1), (2 * TOLERANCE_DEG, 0.3))


def draw_lens(draws: Draws, shape: OutlineShape) -> FramedLens:
    """Return a minus lens, toric or, in an outline with corners, a sphere as well.

    draws: to draw its numbers from; shape: of its outline.
    """
    is_cornered = shape in CORNERED
    sphere = draws.step(-5.0, -0.5, 0.25)
    cylinder = draws.step(-4.0, -1.5 if is_cornered else -2.0, 0.25)
    if is_cornered and draws.whole(2) == 0:
        cylinder = 0.0
    return FramedLens(
        frame=draw_frame(draws, (shape,), a_mm=(48.0, 56.0), lower_mm=_LOWER_MM),
        eye=draws.one_of(EYES),
        prescription=Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=draws.step(5.0, 180.0, 5.0)),
        index=index_for(sphere + cylinder),
        front_d=draws.step(2.0, 4.5, 0.5),
        centre_mm=1.8,
        in_mm=draws.step(1.5, 5.0, 0.5),
        up_mm=draws.step(0.0, 4.0, 0.5),
    )


def thickest_deg(lens: FramedLens) -> int:
    """Return the direction of the thickest edge from the boxed centre [degrees].

    lens: the lens in its frame.
    """
    return int(edge_each_degree_mm(lens).argmax())


def is_clear(lens: FramedLens) -> bool:
    """Return whether the edge is clearly thinner everywhere but near its thickest place.

    lens: the lens in its frame.
    """
    at = thickest_deg(lens)
    edge = np.roll(edge_each_degree_mm(lens), -at)
    return all(edge[away + 1 : -away].max() <= edge[0] - clearly for away, clearly in _CLEARLY_MM)
