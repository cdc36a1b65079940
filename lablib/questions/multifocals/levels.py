"""The picture of a level in a lens: its box, a ruler up from the lowest tangent, and engravings if any."""

from lablib.questions.layout.frames import outline_drawing
from lablib.questions.multifocals.case import FramedEye
from lablib.study.question import Drawing


def level_drawing(
    place: FramedEye,
    *,
    measured_from: str,
    engravings_in_mm: tuple[float, float] = (),
    engravings_up_mm: float = 0.0,
) -> Drawing:
    """Return a lens in its box, of which a level is asked.

    place: frame and eye.
    measured_from: what the answer counts from, "midline" or "lowest tangent"; up is positive.
    engravings_in_mm: inwards of the boxed centre, nasal and temporal [mm]; empty for none.
    engravings_up_mm: their level above the midline [mm].
    """
    sign = place.eye.nasal_sign
    return outline_drawing(
        "level",
        place.frame.outline(place.eye),
        centre_x_mm=0.0,
        centre_y_mm=0.0,
        half_b_mm=place.frame.b_mm / 2.0,
        eye=place.eye.value,
        measured_from=measured_from,
        engraving_x_mm=tuple(sign * inwards for inwards in engravings_in_mm),
        engraving_y_mm=engravings_up_mm,
    )
