"""A level scale of powers, as much to either side of zero, on which marks are set."""

from lablib.pictures.captions import write_still
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import INK, QUIET_INK
from lablib.pictures.window import Box, add_axes

_TICK_PX, _TALL_PX = 3.0, 6.0


class LevelScale:
    """A line with ticks, some of them taller and numbered below; one unit up in its axes is one shown pixel.

    picture: the picture it is part of.
    box_px: left and right end of the line, and how far its axes reach down and up from it [shown px].
    most_d: where it ends on either side [D].
    every_d, numbered_d: from tick to tick, and from number to number [D].
    numbers_y_px: height of the numbers in the picture [shown px].
    """

    def __init__(
        self,
        picture: KeptPicture,
        box_px: Box,
        *,
        most_d: int,
        every_d: int,
        numbered_d: int,
        numbers_y_px: float,
    ) -> None:
        self.box_px, self.most_d = box_px, most_d
        axes = self.axes = add_axes(picture, box_px)
        axes.set_axis_off()
        half = (box_px[3] - box_px[1]) / 2.0
        set_limits(axes, x=(-most_d, most_d), y=(-half, half))
        axes.plot([-most_d, most_d], [0.0, 0.0], color=INK, linewidth=1.2, clip_on=False)
        for mark in range(-most_d, most_d + 1, every_d):
            reach = _TICK_PX if mark % numbered_d else _TALL_PX
            axes.plot([mark, mark], [-reach, reach], color=INK, linewidth=0.9, clip_on=False)
            if not mark % numbered_d:
                at, words = (self.px(mark), numbers_y_px), f"{mark:+d}" if mark else "0"
                write_still(picture, at, words, ha="center", color=QUIET_INK)

    def px(self, power_d: float) -> float:
        """Return how far from the picture's left rim a power stands [shown px].

        power_d: [D].
        """
        left, _, right, _ = self.box_px
        return left + (power_d + self.most_d) / (2.0 * self.most_d) * (right - left)
