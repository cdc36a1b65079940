"""A pair of lenses slid apart before two eyes: the base in each, and what the wearer gets of both."""

from lablib.optics.eye import Eye
from lablib.optics.prism import in_words
from lablib.pictures.captions import HEADING_PT, ScaleBar, add_key, moving_words, step_up, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.pair_above import ANGLE_TIMES, LIGHT, SEEN, FromAbove
from lablib.pictures.pair_data import PairSeen
from lablib.pictures.pair_front import LensBeforeEye
from lablib.pictures.palette import INK, MIDLINE, OPTICAL_CENTRE, QUIET_INK
from lablib.pictures.prism_field_arrows import BASE, PUPIL, scale_words
from lablib.pictures.window import Window

# Few scales, so that one prism looks larger than another [prism D for each mm of an arrow].
SCALES_PRISM_D_PER_MM = (0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8)
_LONGEST_MM = 14.0
_PX_PER_MM, _FRONT_PX, _FRONT_ZERO_PX = 4.4, (6.0, 286.0, 714.0, 572.0), 144.0
_ABOVE_PX = (6.0, 60.0, 462.0, 254.0)
_RESULT_X_PX, _RESULT_Y_PX, _LINE_PX = 474.0, 236.0, 24.0
_LINES = 4


class PairPicture(KeptPicture):
    """Two round lenses as an observer facing the wearer sees them; the same from above; what both give."""

    width_px = 720
    height_px = 600

    def build(self) -> None:
        """Add both lenses, the view from above, the lines of words and the key."""
        self.window = Window(self, _FRONT_PX, up_px=_FRONT_ZERO_PX, px_per_mm=_PX_PER_MM)
        self.window.axes.plot([0.0, 0.0], [-31.0, 26.0], zorder=1, **MIDLINE.line())
        self.lenses = {eye: LensBeforeEye(self.window, eye) for eye in Eye}
        self.above = FromAbove(self, _ABOVE_PX)
        write_still(self, (10, 588), "Facing the wearer", size=HEADING_PT)
        times = f"From above, angles {ANGLE_TIMES:g} times as large"
        write_still(self, (10, 266), times, size=HEADING_PT)
        write_still(self, (_RESULT_X_PX, 266), "What the wearer gets", size=HEADING_PT)
        axes = self.window.axes
        self.scale = moving_words(self, axes, (712, 588), ha="right", color=QUIET_INK)
        self.lines = [
            moving_words(self, axes, (_RESULT_X_PX, _RESULT_Y_PX - number * _LINE_PX), color=INK)
            for number in range(_LINES)
        ]
        ScaleBar(self.window, 214.0, 588.0).update()
        add_key(self, _KEY)

    def update(self, data: PairSeen) -> None:
        """Draw a pair before two eyes.

        data: what to draw.
        """
        scale = step_up(SCALES_PRISM_D_PER_MM, data.reach_prism_d / _LONGEST_MM)
        for lens in self.lenses.values():
            lens.update(data, scale)
        self.above.update(data)
        self.scale.set_text(scale_words(scale))
        for label, words in zip(self.lines, result_lines(data), strict=True):
            label.set_text(words)


def result_lines(data: PairSeen) -> tuple[str, ...]:
    """Return what is left between the eyes and what it asks of them, a line each.

    data: the pair.
    """
    sideways, upright = data.pair.between
    return (
        f"Sideways: {sideways_words(sideways)}",
        f"   {turning_words(sideways)}",
        f"Up and down: {upright_words(upright)}",
        f"   {level_words(upright)}",
    )


def sideways_words(sideways_prism_d: float) -> str:
    """Return what both eyes together have in or out.

    sideways_prism_d: base in of both [prism D].
    """
    if not _is_some(sideways_prism_d):
        return "nothing"
    return f"{in_words(sideways_prism_d, 0.0)} together"


def turning_words(sideways_prism_d: float) -> str:
    """Return what that asks of the eyes.

    sideways_prism_d: base in of both [prism D].
    """
    if not _is_some(sideways_prism_d):
        return "the eyes stay parallel"
    return f"the eyes must turn {'outwards' if sideways_prism_d > 0.0 else 'inwards'}"


def upright_words(upright_prism_d: float) -> str:
    """Return what is left between the eyes up and down.

    upright_prism_d: base up of the right eye over the left [prism D].
    """
    if not _is_some(upright_prism_d):
        return "nothing"
    return f"{abs(upright_prism_d):.2f} between them"


def level_words(upright_prism_d: float) -> str:
    """Return what that asks of the eyes.

    upright_prism_d: base up of the right eye over the left [prism D].
    """
    if not _is_some(upright_prism_d):
        return "both eyes look equally high"
    # Base up sends light up, so what is seen stands lower.
    lower = Eye.RIGHT if upright_prism_d > 0.0 else Eye.LEFT
    return f"the {lower} eye must look lower"


def _is_some(prism_d: float) -> bool:
    return in_words(prism_d, 0.0) != "no prism"


_KEY = (
    (10, 40, BASE, "base in each eye"),
    (178, 40, PUPIL, "the eye looks through here"),
    (424, 40, OPTICAL_CENTRE, "optical centre"),
    (10, 14, LIGHT, "light from far away"),
    (178, 14, SEEN, "where it seems to come from"),
    (424, 14, MIDLINE, "middle of the bridge"),
)
