"""The power of a lens along each of its meridians, as a curve over the degrees."""

from matplotlib.lines import Line2D

from lablib.pictures.captions import moving_words, step_up, write_still
from lablib.pictures.cross_data import CrossThere
from lablib.pictures.cross_front import MINUS_AXIS, PLUS_AXIS, READ_OFF, TURNING
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import INK, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.window import Box, add_axes, shown_px

# Few scales, so that a curve moves rather than its scale [D].
TOPS_D = (2.0, 4.0, 8.0, 16.0)
CURVE = Look(colour=INK, dashes="solid", width_pt=2.0)
EQUIVALENT = Look(colour=OKABE_ITO["bluish green"], dashes=(0, (4, 1.4, 1.2, 1.4)), width_pt=1.6)
_SHARES, _HIGHEST = (-1.0, -0.5, 0.0, 0.5, 1.0), 1.08
_TICK_PX = 4.0


class CrossCurve:
    """A curve of power over meridian; heights are shares of a round power that stands beside them.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the curve's own field [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.box_px = box_px
        self.axes = add_axes(picture, box_px)
        self.axes.set_axis_off()
        set_limits(self.axes, x=(0.0, 180.0), y=(-_HIGHEST, _HIGHEST))
        self._add_scales(picture)
        axes, moving = self.axes, picture.moving
        self.minus, self.plus = (
            moving(axes.plot([], [], zorder=2, **(look.line() | {"linewidth": 1.4}))[0])
            for look in (MINUS_AXIS, PLUS_AXIS)
        )
        self.middle = moving(axes.plot([], [], zorder=2, **EQUIVALENT.line())[0])
        self.curve = moving(axes.plot([], [], zorder=4, **CURVE.line())[0])
        self.turning = moving(axes.plot([], [], zorder=3, **TURNING.line())[0])
        self.point = moving(axes.plot([], [], zorder=6, clip_on=False, **READ_OFF.point())[0])

    def _add_scales(self, picture: KeptPicture) -> None:
        """Add the frame, degrees below, and places for five powers at the left."""
        left, bottom, right, top = self.box_px
        style = {"color": QUIET_INK, "transform": shown_px(picture)}
        frame = Line2D([left, right, right, left, left], [bottom, bottom, top, top, bottom], **style)
        frame.set_linewidth(0.8)
        picture.figure.add_artist(frame)
        self.powers = []
        for share in _SHARES:
            y = self._px(0.0, share)[1]
            strong = 1.0 if share == 0.0 else 0.5
            picture.figure.add_artist(Line2D([left - _TICK_PX, right], [y, y], linewidth=strong, **style))
            at = (left - _TICK_PX - 3.0, y)
            self.powers.append(moving_words(picture, self.axes, at, ha="right", color=QUIET_INK))
        for degrees in range(0, 181, 30):
            x = self._px(degrees, 0.0)[0]
            ticks = Line2D([x, x], [bottom, bottom - _TICK_PX], linewidth=0.8, **style)
            picture.figure.add_artist(ticks)
            write_still(picture, (x, bottom - 13.0), f"{degrees}", color=QUIET_INK, ha="center")

    def _px(self, meridian_deg: float, share: float) -> tuple[float, float]:
        """Where a meridian and a share of the top lie in the picture [shown px]."""
        left, bottom, right, top = self.box_px
        up = (share + _HIGHEST) / (2.0 * _HIGHEST)
        return left + (right - left) * meridian_deg / 180.0, bottom + (top - bottom) * up

    def update(self, data: CrossThere) -> None:
        """Draw the powers of a lens and the meridian to read.

        data: what to draw.
        """
        cross = data.cross
        top = step_up(TOPS_D, max(abs(cross.first_d), abs(cross.second_d)))
        for label, share in zip(self.powers, _SHARES, strict=True):
            label.set_text(f"{share * top:+g}" if share else "0")
        self.curve.set_visible(not data.is_hidden)
        self.curve.set_data(data.meridians_deg, data.powers_d / top)
        for line, power in ((self.minus, cross.first_d), (self.plus, cross.second_d)):
            line.set_visible(data.shows_cross)
            line.set_data([0.0, 180.0], [power / top] * 2)
        self.middle.set_visible(data.shows_cross)
        self.middle.set_data([0.0, 180.0], [data.minus.spherical_equivalent_d / top] * 2)
        self.turning.set_data([data.meridian_deg] * 2, [-_HIGHEST, _HIGHEST])
        self.point.set_data([data.meridian_deg], [data.power_d / top])
