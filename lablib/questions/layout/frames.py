"""What questions about a lens in a frame share: invented frames, and their outlines as rows for a picture."""

from collections.abc import Sequence

from lablib.optics.frame import POINTS, Frame, Outline, OutlineShape
from lablib.study.draws import Draws
from lablib.study.question import Drawing
from lablib.working import Term

# Points of an outline that are handed to a picture.
_DRAWN = 72
# How much lower than wide the invented frames are [mm].
_LOWER_MM = (10.0, 12.0, 14.0, 16.0)


def draw_frame(
    draws: Draws,
    shapes: Sequence[OutlineShape],
    *,
    a_mm: tuple[float, float] = (46.0, 56.0),
    lower_mm: Sequence[float] = _LOWER_MM,
) -> Frame:
    """Return an invented frame.

    draws: to draw its numbers from.
    shapes: outlines to choose from.
    a_mm: the least and greatest boxed width, an even number of millimetres apart [mm].
    lower_mm: how much less than the width the height may be [mm].
    """
    width = draws.step(*a_mm, 2.0)
    return Frame(
        a_mm=width,
        b_mm=width - draws.one_of(lower_mm),
        dbl_mm=draws.step(15.0, 20.0, 1.0),
        shape=draws.one_of(shapes),
    )


def box_terms(frame: Frame) -> tuple[Term, Term]:
    """Return the frame's width and bridge as numbers that are given.

    frame: whose.
    """
    return (
        Term(symbol="A", value=frame.a_mm, unit="mm", digits=0, meaning="boxed width"),
        Term(symbol="DBL", value=frame.dbl_mm, unit="mm", digits=0, meaning="distance between lenses"),
    )


def outline_rows(outline: Outline) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return points round an outline as a row of numbers each way, from the boxed centre [mm].

    outline: of the lens.
    """
    every = POINTS // _DRAWN
    return tuple(outline.x_mm[::every].tolist()), tuple(outline.y_mm[::every].tolist())


def outline_drawing(
    name: str, outline: Outline, *, centre_x_mm: float, centre_y_mm: float, **more: object
) -> Drawing:
    """Return a drawing of one lens from the front.

    name: of the drawing; more: its other values.
    outline: of the lens.
    centre_x_mm, centre_y_mm: the optical centre, from the boxed centre [mm].
    """
    x, y = outline_rows(outline)
    return Drawing(
        name=name,
        values={
            "outline_x_mm": x,
            "outline_y_mm": y,
            "centre_x_mm": centre_x_mm,
            "centre_y_mm": centre_y_mm,
            **more,
        },
    )
