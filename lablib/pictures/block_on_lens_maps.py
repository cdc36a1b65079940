"""Where a face bears on a lens, seen along the chuck axis: lifted off, bearing, bearing hard."""

import numpy as np
from matplotlib.patches import Ellipse as EllipsePatch

from lablib.bench.foundation import Pressed
from lablib.pictures.captions import moving_words
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import INK, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.window import Box, Window

LIFTED = Look(colour=QUIET_INK, mark="x", width_pt=0.7)
BEARS = Look(colour=OKABE_ITO["sky blue"], mark="o")
HARD = Look(colour=OKABE_ITO["blue"], mark="s")
_PX_PER_MM = 5.4
# Every so many places of the model are as many as the eye can tell apart. They are counted round from ring to
# ring, 60 to a ring: so each stands a golden angle from the one before, and none makes rays with others.
_EVERY = 60.0 * (5.0**0.5 - 1.0) / 2.0
# Twice the mean pressure and more is called hard.
_HARD = 2.0


class BearingMap:
    """A rectangle of a picture that shows where one face bears.

    picture: the picture it is part of; box_px: left, bottom, right and top [shown px]; name: of the face.
    """

    def __init__(self, picture: KeptPicture, box_px: Box, name: str) -> None:
        self.window, self.name = Window(picture, box_px, px_per_mm=_PX_PER_MM), name
        axes, moving = self.window.axes, picture.moving
        rim = EllipsePatch((0.0, 0.0), 0.0, 0.0, facecolor="none", edgecolor=INK, linewidth=1.2, zorder=2)
        self.rim = moving(axes.add_patch(rim))
        self.marks = [
            moving(axes.plot([], [], zorder=3, **look.point() | {"markersize": size})[0])
            for look, size in ((LIFTED, 4.0), (BEARS, 3.4), (HARD, 4.6))
        ]
        left, _, right, top = box_px
        middle = {"ha": "center", "color": INK}
        self.words = moving_words(picture, axes, ((left + right) / 2.0, top + 8.0), **middle)
        self.share = moving_words(picture, axes, ((left + right) / 2.0, box_px[1] - 6.0), **middle)

    def update(self, on: Pressed) -> None:
        """Draw where a face bears.

        on: the face, pressed on.
        """
        shape, picked = on.face.shape, picked_places(on.pressure_mpa.size)
        pressure = on.pressure_mpa[picked]
        self.rim.set(width=2.0 * shape.half_width_mm, height=2.0 * shape.half_height_mm)
        kinds = (
            pressure <= 0.0,
            (pressure > 0.0) & (pressure < _HARD * on.mean_mpa),
            pressure >= _HARD * on.mean_mpa,
        )
        for mark, kind in zip(self.marks, kinds, strict=True):
            mark.set_data(on.face.x_mm[picked][kind], on.face.y_mm[picked][kind])
        self.words.set_text(f"{self.name}: bears on {100.0 * on.contact_share:.0f} %")
        self.share.set_text(f"peak {on.peak_mpa:.2f}, mean {on.mean_mpa:.2f} MPa")


def picked_places(count: int) -> np.ndarray:
    """Return which of so many places of a face are drawn, spread evenly over it.

    count: places of the model.
    """
    return np.arange(0.0, count, _EVERY).astype(int)
