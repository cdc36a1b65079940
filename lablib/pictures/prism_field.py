"""The prism of a lens: an arrow to the base all over it, and the prism at one point taken apart."""

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Circle

from lablib.optics.prescription import Prescription
from lablib.pictures.captions import HEADING_PT, ScaleBar, add_key, moving_words, step_up, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import CYLINDER_AXIS, GLASS, INK, MIDLINE, OPTICAL_CENTRE, OUTLINE, QUIET_INK
from lablib.pictures.prism_field_arrows import BASE, BASE_ELSEWHERE, PUPIL, arrows, scale_words
from lablib.pictures.prism_field_compass import ACROSS, UPRIGHT, Compass
from lablib.pictures.prism_field_data import PrismThere
from lablib.pictures.window import Window

# The lens drawn is a round uncut one of this radius.
RADIUS_MM = 25.0
# Few scales, so that one prism looks larger than another [prism D for each mm of an arrow].
SCALES_PRISM_D_PER_MM = (0.1, 0.2, 0.3, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0)
# Arrows stand on points so far out at most, and none of them leaves the lens.
_OUTMOST_MM, _LONGEST_MM, _HEAD_MM = 19.0, 5.8, 1.2
_PX_PER_MM = 6.8
_FRONT_PX = (6.0, 92.0, 366.0, 452.0)


class PrismFieldPicture(KeptPicture):
    """A lens as an observer facing the wearer sees it, with its bases; beside it the parts at one point."""

    width_px = 720
    height_px = 480

    def build(self) -> None:
        """Add lens, arrows, compass and key."""
        self.window = Window(self, _FRONT_PX, px_per_mm=_PX_PER_MM)
        self._add_lens()
        self._add_arrows()
        self.compass = Compass(self, (376.0, 92.0, 714.0, 452.0))
        self._add_words()

    def _add_lens(self) -> None:
        axes = self.window.axes
        glass = {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "edgecolor": OUTLINE.colour}
        axes.add_patch(Circle((0.0, 0.0), RADIUS_MM, linewidth=OUTLINE.width_pt, zorder=1, **glass))
        for x, y in (([-RADIUS_MM, RADIUS_MM], [0.0, 0.0]), ([0.0, 0.0], [-RADIUS_MM, RADIUS_MM])):
            axes.plot(x, y, zorder=2, **MIDLINE.line())
        self.axis = self.moving(axes.plot([], [], zorder=3, **CYLINDER_AXIS.line())[0])
        # It does not move, but must not be hidden by an axis that does.
        self.centre = self.moving(axes.plot([0.0], [0.0], zorder=5, **OPTICAL_CENTRE.point())[0])
        self.centre.set_markersize(11)

    def _add_arrows(self) -> None:
        axes = self.window.axes
        style = {"solid_capstyle": "round", "solid_joinstyle": "round"}
        self.elsewhere = self.moving(axes.plot([], [], zorder=4, **style, **BASE_ELSEWHERE.line())[0])
        self.there = self.moving(axes.plot([], [], zorder=7, **style, **BASE.line())[0])
        self.eye = self.moving(
            axes.plot([], [], zorder=6, **(PUPIL.point() | {"markersize": 10, "markerfacecolor": "none"}))[0]
        )

    def _add_words(self) -> None:
        axes = self.window.axes
        self.heading = moving_words(self, axes, (10, 468), size=HEADING_PT, color=INK)
        self.sides = (
            moving_words(self, axes, (10, 98), color=QUIET_INK),
            moving_words(self, axes, (362, 98), ha="right", color=QUIET_INK),
        )
        write_still(self, (390, 468), "The prism at the point the eye looks through", size=HEADING_PT)
        self.length = moving_words(self, axes, (10, 72), color=QUIET_INK)
        self.bar = ScaleBar(self.window, 334.0, 72.0)
        self.bar.update()
        add_key(self, _KEY)

    def update(self, data: PrismThere) -> None:
        """Draw a lens and the prism at one point of it.

        data: what to draw.
        """
        self._show_axis(data.rx)
        points, bases = _arrows_of(data)
        scale = step_up(SCALES_PRISM_D_PER_MM, float(np.abs(bases).max()) / _LONGEST_MM)
        self.elsewhere.set_data(*arrows(points, bases / scale, head=_HEAD_MM).T)
        self.there.set_data(*arrows(data.point, data.base / scale, head=2.0 * _HEAD_MM).T)
        self.eye.set_data([data.point.real], [data.point.imag])
        self.compass.update(data)
        self.heading.set_text(f"{data.eye.value.capitalize()} lens, facing the wearer: {data.rx}")
        for label, words in zip(self.sides, ("temporal", "nasal")[:: data.eye.nasal_sign], strict=True):
            label.set_text(words)
        self.length.set_text(scale_words(scale))

    def _show_axis(self, rx: Prescription) -> None:
        self.axis.set_visible(rx.axis_deg is not None)
        if rx.axis_deg is not None:
            line = np.array([-RADIUS_MM, RADIUS_MM]) * np.exp(1j * np.radians(rx.axis_deg))
            self.axis.set_data(line.real, line.imag)


def _arrows_of(data: PrismThere) -> tuple[np.ndarray, np.ndarray]:
    """Return the points of the lens with an arrow, and their bases, x + iy, each of shape (N,)."""
    field = data.field
    inside = np.hypot(field.x_mm, field.y_mm) <= _OUTMOST_MM
    return (
        (field.x_mm + 1j * field.y_mm)[inside],
        (field.base_x_prism_d + 1j * field.base_y_prism_d)[inside],
    )


_KEY = (
    (10, 40, BASE, "base at the point"),
    (166, 40, BASE_ELSEWHERE, "base elsewhere"),
    (306, 40, ACROSS, "part in or out"),
    (446, 40, UPRIGHT, "part up or down"),
    (10, 16, PUPIL, "the eye looks through here"),
    (306, 16, OPTICAL_CENTRE, "optical centre"),
    (446, 16, CYLINDER_AXIS, "cylinder axis"),
)
