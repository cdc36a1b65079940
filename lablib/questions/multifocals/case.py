"""What questions about multifocals share: an eye in an invented frame, and a slip with the midline."""

from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.questions.layout.frames import draw_frame
from lablib.study.draws import Draws
from lablib.study.question import Drawing, Slip
from lablib.working import Term

_SHAPES = (OutlineShape(), OutlineShape.superellipse(2.2), OutlineShape.superellipse(3.2))
WHOLE_HEIGHT = Slip(
    name="b-for-half-b",
    step="the way from the lowest tangent to the midline",
    words="You took the whole of B from the height. The midline lies half of B above the lowest tangent.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class FramedEye:
    """A frame, and the eye asked about.

    frame: the frame; eye: which eye.
    """

    frame: Frame
    eye: Eye


def draw_framed_eye(draws: Draws, *, deep: bool = True) -> FramedEye:
    """Return an invented frame and one of the eyes.

    draws: to draw from; deep: whether it is as deep as a multifocal needs, which a shallow one is not.
    """
    lower = (12.0, 14.0, 16.0) if deep else (22.0, 24.0)
    frame = draw_frame(draws, _SHAPES, a_mm=(48.0, 56.0), lower_mm=lower)
    return FramedEye(frame=frame, eye=draws.one_of(EYES))


def millimetres(symbol: str, value_mm: float, meaning: str) -> Term:
    """Return a distance that is given.

    symbol, meaning: as in `Term`; value_mm: in whole or half millimetres [mm].
    """
    return Term(symbol=symbol, value=value_mm, unit="mm", digits=1, meaning=meaning)


def pair_drawing(frame: Frame, eye: Eye, *, right_pd_mm: float = 0.0, left_pd_mm: float = 0.0) -> Drawing:
    """Return both rims, with an answer counted inwards from the boxed centre.

    frame: the frame; eye: the one asked about.
    right_pd_mm, left_pd_mm: far distances that are shown [mm]; 0 for none.
    """
    return Drawing(
        name="pair",
        values={
            "a_mm": frame.a_mm,
            "b_mm": frame.b_mm,
            "dbl_mm": frame.dbl_mm,
            "right_pd_mm": right_pd_mm,
            "left_pd_mm": left_pd_mm,
            "eye": eye.value,
            "measured_from": "boxed centre",
        },
    )
