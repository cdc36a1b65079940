"""Two eyes behind two lenses, from above: light from far away is bent, and the eyes turn to meet it."""

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Circle

from lablib.optics.eye import Eye
from lablib.pictures.captions import moving_words
from lablib.pictures.kept import KeptPicture
from lablib.pictures.pair_data import PairSeen
from lablib.pictures.palette import BLUE_INK, FRONT_SURFACE, INK, MIDLINE, OKABE_ITO, PAPER, QUIET_INK, Look
from lablib.pictures.window import Box, Window

ANGLE_TIMES = 10.0
LIGHT = Look(colour=OKABE_ITO["orange"], dashes="solid", width_pt=1.8)
SEEN = Look(colour=BLUE_INK, dashes=(0, (4, 2)), width_pt=1.4)
_PX_PER_MM = 3.1
# Down the page, from the eyes' centres of rotation: the lens and the end of the drawing [mm].
_LENS_MM, _END_MM = 20.0, 50.0
_EYE_MM, _HALF_LENS_MM, _BULGE_MM, _THIN_MM = 8.0, 18.0, 2.2, 0.7
_POINTS = 21
# The words stand beside the eyes, clear of those to the right of the drawing.
_ASIDE_PX = 20.0


class FromAbove:
    """A rectangle of a picture with both eyes at its top, looking down the page.

    picture: the picture it is part of.
    box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        left, bottom, right, top = box_px
        up = top - bottom - _EYE_MM * _PX_PER_MM - 4.0
        self.window = Window(picture, box_px, up_px=up, px_per_mm=_PX_PER_MM)
        axes = self.window.axes
        axes.plot([0.0, 0.0], [-_END_MM, _EYE_MM], zorder=1, **MIDLINE.line())
        self.eyes = {eye: _EyeFromAbove(self.window, eye) for eye in Eye}
        for x, words, align in (
            (left + _ASIDE_PX, "right eye", "left"),
            (right - _ASIDE_PX, "left eye", "right"),
        ):
            label = moving_words(picture, axes, (x, top - 10.0), color=QUIET_INK, ha=align)
            label.set_text(words)

    def update(self, data: PairSeen) -> None:
        """Draw both eyes.

        data: the pair.
        """
        for eye in self.eyes.values():
            eye.update(data)


class _EyeFromAbove:
    def __init__(self, window: Window, eye: Eye) -> None:
        axes, moving = window.axes, window.picture.moving
        self.eye = eye
        self.ball = moving(
            axes.add_patch(Circle((0, 0), _EYE_MM, facecolor=PAPER, edgecolor=INK, linewidth=1.2, zorder=2))
        )
        self.lens: Line2D = moving(axes.plot([], [], zorder=3, **FRONT_SURFACE.line())[0])
        self.seen = moving(axes.plot([], [], zorder=4, **SEEN.line())[0])
        self.light = moving(axes.plot([], [], zorder=5, **LIGHT.line())[0])
        self.pupil = moving(axes.plot([], [], color=INK, linewidth=4.0, zorder=6)[0])

    def update(self, data: PairSeen) -> None:
        pupil, centre = data.pupil_mm(self.eye), data.centre_mm(self.eye)
        # Light is bent towards the base on its way up the page; the eye turns to look back along it.
        slope = ANGLE_TIMES * data.base_prism_d(self.eye).real / 100.0
        at_lens, at_end = pupil - slope * _LENS_MM, pupil - slope * _END_MM
        self.ball.set_center((pupil, 0.0))
        self.lens.set_data(*_lens(centre, data.power_d(self.eye)))
        self.light.set_data([at_lens, at_lens, pupil], [-_END_MM, -_LENS_MM, 0.0])
        self.seen.set_data([at_lens, at_end], [-_LENS_MM, -_END_MM])
        way = complex(-slope, -1.0) / abs(complex(slope, 1.0))
        front, half = complex(pupil, 0.0) + _EYE_MM * way, 2.0 * way * 1j
        self.pupil.set_data(
            [(front - half).real, (front + half).real], [(front - half).imag, (front + half).imag]
        )


def _lens(centre_mm: float, power_d: float) -> tuple[np.ndarray, np.ndarray]:
    """Return the outline of a lens cut in two: thick in its middle if plus, at its ends if minus."""
    along = np.linspace(-1.0, 1.0, _POINTS)
    bulge = (1.0 - along**2) if power_d >= 0.0 else along**2
    half = _THIN_MM + (_BULGE_MM * bulge if power_d else 0.0 * along)
    x = centre_mm + _HALF_LENS_MM * np.concatenate([along, along[::-1], along[:1]])
    return x, -_LENS_MM + np.concatenate([half, -half[::-1], half[:1]])
