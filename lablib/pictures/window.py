"""A part of a picture in which millimetres are drawn true, and labels find a free place."""

from collections.abc import Sequence

from matplotlib.axes import Axes
from matplotlib.transforms import Affine2D

from lablib.pictures.kept import DOTS_PER_INCH, KeptPicture, set_limits
from lablib.pictures.label import Label

Box = tuple[float, float, float, float]
# A point [shown px], and to which side of it a label stands: -1 left or below, 0 on it, 1 right or above.
Spot = tuple[float, float, float, float]
# A label's white rim is part of it.
_RIM_PX = 2.0


class Window:
    """A rectangle of a picture with a scale in millimetres, the same across and up.

    picture: the picture it is part of.
    box_px: left, bottom, right and top, from the picture's lower left corner [shown px].
    across_px, up_px: where the zero of both axes lies, from the window's lower left corner [shown px];
        None for the middle.
    px_per_mm: the scale it starts with [shown px/mm].
    """

    def __init__(
        self,
        picture: KeptPicture,
        box_px: Box,
        *,
        across_px: float | None = None,
        up_px: float | None = None,
        px_per_mm: float = 1.0,
    ) -> None:
        left, bottom, right, top = box_px
        self.picture, self.box_px = picture, box_px
        self._origin = (
            (right - left) / 2.0 if across_px is None else across_px,
            (top - bottom) / 2.0 if up_px is None else up_px,
        )
        self.axes = add_axes(picture, box_px)
        self.axes.set_axis_off()
        self.set_scale(px_per_mm)

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

    def mm(self, x_px: float, y_px: float) -> tuple[float, float]:
        """Return which point of the window's axes lies at a place in the picture [mm].

        x_px, y_px: from the picture's lower left corner [shown px].
        """
        left, bottom, _, _ = self.box_px
        return (
            (x_px - left - self._origin[0]) / self.px_per_mm,
            (y_px - bottom - self._origin[1]) / self.px_per_mm,
        )

    def label(self, **style: object) -> Label:
        """Add a moving text that is placed in shown pixels.

        style: matplotlib's keywords for a text.
        """
        return self.picture.label(self.axes, transform=shown_px(self.picture), **style)


def add_axes(picture: KeptPicture, box_px: Box) -> Axes:
    """Add axes that fill a rectangle and keep the limits they are given.

    picture: where.
    box_px: left, bottom, right and top, from the picture's lower left corner [shown px].
    """
    left, bottom, right, top = box_px
    width, height = picture.width_px, picture.height_px
    place_in_figure = (left / width, bottom / height, (right - left) / width, (top - bottom) / height)
    return picture.figure.add_axes(place_in_figure, autoscale_on=False)


def shown_px(picture: KeptPicture) -> Affine2D:
    """Return the transform from shown pixels, from the lower left corner, to dots."""
    return Affine2D().scale(1.0 / DOTS_PER_INCH) + picture.figure.dpi_scale_trans


def place(
    label: Label,
    text: str,
    spots: Sequence[Spot],
    *,
    inside: Box,
    taken: list[Box],
    drawn: Sequence[Box] = (),
) -> None:
    """Set a label at the best of several spots, moved in from the rim, and add its box to those taken.

    label: a label of `Window.label`, centred both ways.
    text: what it says.
    spots: where to try, best first.
    inside: the box it must stay in [shown px].
    taken: boxes of other labels and of marks, to keep clear of first of all [shown px].
    drawn: boxes of what is drawn, to keep clear of where that can be had [shown px].
    """
    label.set_text(text)
    half = tuple(side / 2.0 + _RIM_PX for side in size_px(label))
    boxes = [_at(spot, half, inside) for spot in spots]
    best = min(boxes, key=lambda box: (_count(box, taken), _count(box, drawn)))
    label.set_position(((best[0] + best[2]) / 2.0, (best[1] + best[3]) / 2.0))
    taken.append(best)


def _at(spot: Spot, half: tuple[float, float], inside: Box) -> Box:
    x, y, beside, above = spot
    x = min(max(x + beside * half[0], inside[0] + half[0]), inside[2] - half[0])
    y = min(max(y + above * half[1], inside[1] + half[1]), inside[3] - half[1])
    return (x - half[0], y - half[1], x + half[0], y + half[1])


def _count(box: Box, others: Sequence[Box]) -> int:
    return sum(overlap(box, other) for other in others)


def size_px(label: Label) -> tuple[float, float]:
    """Return width and height of a label's text [shown px]."""
    figure = label.get_figure()
    extent = label.get_window_extent(figure.canvas.get_renderer())
    shown = DOTS_PER_INCH / figure.dpi
    return extent.width * shown, extent.height * shown


def overlap(one: Box, other: Box) -> bool:
    """Return whether two boxes share any space."""
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
