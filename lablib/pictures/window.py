"""A part of a picture in which millimetres are drawn true, and labels find a free place."""

from collections.abc import Sequence

from matplotlib.axes import Axes
from matplotlib.transforms import Affine2D

from lablib.pictures.kept import DOTS_PER_INCH, KeptPicture, set_limits
from lablib.pictures.label import Label

Box = tuple[float, float, float, float]


class Window:
    """A rectangle of a picture with a scale in millimetres, the same across and up.

    picture: the picture it is part of.
    left_px, bottom_px, width_px, height_px: where, from the picture's lower left corner [shown px].
    origin_x_px, origin_y_px: where the zero of both axes lies in the window [shown px].
    """

    def __init__(
        self,
        picture: KeptPicture,
        *,
        left_px: float,
        bottom_px: float,
        width_px: float,
        height_px: float,
        origin_x_px: float,
        origin_y_px: float,
    ) -> None:
        self.picture = picture
        self.box_px: Box = (left_px, bottom_px, left_px + width_px, bottom_px + height_px)
        self._origin = (origin_x_px, origin_y_px)
        self.px_per_mm = 1.0
        self.axes = add_axes(picture, self.box_px)
        self.axes.set_axis_off()
        self.set_scale(self.px_per_mm)

    def set_scale(self, px_per_mm: float) -> None:
        """Draw a millimetre so long from now on.

        px_per_mm: [shown px/mm].
        """
        self.px_per_mm = px_per_mm
        left, bottom, right, top = self.box_px
        across, up = self._origin
        set_limits(
            self.axes,
            x=(-across / px_per_mm, (right - left - across) / px_per_mm),
            y=(-up / px_per_mm, (top - bottom - up) / px_per_mm),
        )

    def px(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        """Return where a point lies in the picture, from its lower left corner [shown px].

        x_mm, y_mm: in the window's own axes [mm].
        """
        left, bottom, _, _ = self.box_px
        return (
            left + self._origin[0] + x_mm * self.px_per_mm,
            bottom + self._origin[1] + y_mm * self.px_per_mm,
        )

    def label(self, **style: object) -> Label:
        """Add a moving text that is placed in shown pixels.

        style: matplotlib's keywords for a text.
        """
        return self.picture.label(self.axes, transform=shown_px(self.picture), **style)


def add_axes(picture: KeptPicture, box_px: Box) -> Axes:
    """Add axes that fill a rectangle.

    picture: where.
    box_px: left, bottom, right and top, from the picture's lower left corner [shown px].
    """
    left, bottom, right, top = box_px
    width, height = picture.width_px, picture.height_px
    return picture.figure.add_axes(
        (left / width, bottom / height, (right - left) / width, (top - bottom) / height)
    )


def shown_px(picture: KeptPicture) -> Affine2D:
    """Return the transform from shown pixels, from the lower left corner, to dots."""
    return Affine2D().scale(1.0 / DOTS_PER_INCH) + picture.figure.dpi_scale_trans


def place(
    label: Label, text: str, spots: Sequence[tuple[float, float]], *, inside: Box, taken: list[Box]
) -> Box:
    """Set a label at the first of several spots that is free, moved in from the rim, and return its box.

    label: a label of `Window.label`, centred both ways.
    text: what it says.
    spots: centres to try, best first [shown px]; the last is taken when none is free.
    inside: the box it must stay in [shown px].
    taken: boxes that other labels and marks have [shown px]; the label's own is added.
    """
    label.set_text(text)
    half_x, half_y = (side / 2.0 + 2.0 for side in size_px(label))
    for x, y in spots:
        x = min(max(x, inside[0] + half_x), inside[2] - half_x)
        y = min(max(y, inside[1] + half_y), inside[3] - half_y)
        box = (x - half_x, y - half_y, x + half_x, y + half_y)
        if not any(overlap(box, other) for other in taken):
            break
    label.set_position((x, y))
    taken.append(box)
    return box


def size_px(label: Label) -> tuple[float, float]:
    """Return width and height of a label's text [shown px]."""
    figure = label.get_figure()
    extent = label.get_window_extent(figure.canvas.get_renderer())
    shown = DOTS_PER_INCH / figure.dpi
    return extent.width * shown, extent.height * shown


def overlap(one: Box, other: Box) -> bool:
    """Return whether two boxes share any space."""
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
