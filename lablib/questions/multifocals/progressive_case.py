"""A progressive of an invented chart in an invented frame, as questions tell it."""

from lablib.optics.progressive import ProgressiveDesign
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.questions.multifocals.case import (
    FramedEye,
    draw_framed_eye,
    millimetres,
)
from lablib.study.draws import Draws
from lablib.working import Term

_HALF = 0.5


def draw_layout(draws: Draws) -> ProgressiveLayout:
    """Return a progressive of an invented chart in an invented frame, its cross above the midline.

    draws: to draw from.
    """
    place = draw_framed_eye(draws)
    design = ProgressiveDesign(
        engraving_below_cross_mm=draws.one_of((2.0, 3.0, 4.0, 5.0, 6.0)),
        near_circle_below_cross_mm=draws.one_of((12.0, 13.0, 14.0)),
        near_inset_mm=draws.one_of((2.0, 2.5)),
    )
    return ProgressiveLayout(
        frame=place.frame,
        eye=place.eye,
        design=design,
        monocular_pd_mm=draws.step(29.0, 34.0, 0.5),
        height_mm=place.frame.b_mm * _HALF + draws.one_of((1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0)),
    )


def place_of(layout: ProgressiveLayout) -> FramedEye:
    """Return frame and eye of a layout."""
    return FramedEye(frame=layout.frame, eye=layout.eye)


def below_cross_term(design: ProgressiveDesign) -> Term:
    """Return how far below the cross the engravings lie, as a number that is given."""
    return millimetres(
        "e", design.engraving_below_cross_mm, "engravings below the fitting cross, by the chart"
    )
