"""A job on the bench: the lens on its block, what holds it, what turns it, and the margin between the two."""

from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from lablib.job.eye_sheet import EyeSheet
from lablib.job.report import percent
from lablib.pictures.job_front import BenchFront
from lablib.pictures.joint_stack import JointStack
from lablib.pictures.kept import KeptPicture
from lablib.pictures.label import Label
from lablib.pictures.lens_section import HEADING_PT, WORDS_PT
from lablib.pictures.margin_band import MarginBand
from lablib.pictures.palette import (
    BITE,
    BLANK,
    BLOCK,
    CHUCK_AXIS,
    GREATEST,
    HOLDS,
    INK,
    LEAST_MARGIN,
    OPTICAL_CENTRE,
    OUTLINE,
    QUIET_INK,
    START_RIM,
    TURNS,
)
from lablib.pictures.torque_round import TorqueRound, too_much
from lablib.pictures.window import shown_px, write_still

# Few scales, so that a drawing hardly ever changes its size under a slider.
SCALES_PX_PER_MM = (3.4, 2.8, 2.2)


class JobPicture(KeptPicture):
    """A lens on its block, the joints that hold it, the torque of its worst turn, and its margin."""

    width_px = 720
    height_px = 640

    def build(self) -> None:
        """Add the drawings, their headings and the key."""
        self.front = BenchFront(self, (6, 352, 322, 616))
        self.stack = JointStack(self, (338, 352, 714, 616))
        self.torque = TorqueRound(self, (38, 138, 700, 250))
        self.band = MarginBand(self, (38, 26, 700, 64))
        self._fixed(338, 628, "What holds against what turns [N m]")
        self._fixed(10, 76, "Margin: hold / torque")
        self.heading = self._words((10, 628), size=HEADING_PT)
        self.turn = self._words((10, 264), size=HEADING_PT)
        self.left_side = self._words((10, 342), color=QUIET_INK)
        self.right_side = self._words((318, 342), ha="right", color=QUIET_INK)
        self.chance = self._words((712, 76), ha="right")
        self._add_scale()
        self._add_keys()

    def _fixed(
        self, x_px: float, y_px: float, words: str, *, size: float = HEADING_PT, color: str = INK
    ) -> None:
        write_still(self, (x_px, y_px), words, fontsize=size, color=color)

    def _words(self, at_px: tuple[float, float], *, size: float = WORDS_PT, **style: str) -> Label:
        style = {"transform": shown_px(self), "va": "center", "clip_on": False, "color": INK} | style
        label = self.label(self.front.window.axes, fontsize=size, **style)
        label.set_position(at_px)
        return label

    def _add_scale(self) -> None:
        """Draw a bar of ten millimetres, in axes of the drawing so that it follows the scale."""
        axes = self.front.window.axes
        self.bar = self.moving(axes.plot([], [], color=INK, linewidth=1.2, marker="|", markersize=6)[0])
        self.bar.set_clip_on(False)
        self._fixed(172, 342, "10 mm", size=WORDS_PT)

    def _add_keys(self) -> None:
        for x, y, look, words in _KEY:
            line = Line2D([x + 12] if look.mark else [x, x + 24], [y] if look.mark else [y, y])
            line.set(**(look.point() if look.mark else look.line()), transform=shown_px(self))
            if look is CHUCK_AXIS:
                line.set_markerfacecolor("none")
            self.figure.add_artist(line)
            self._fixed(x + 28, y, words, size=WORDS_PT, color=QUIET_INK)
        for x, y, style, words in _PATCHES:
            patch = Rectangle((x, y - 6), 24, 12, transform=shown_px(self), **style())
            self.figure.add_artist(patch)
            self._fixed(x + 28, y, words, size=WORDS_PT, color=QUIET_INK)

    def update(self, data: EyeSheet) -> None:
        """Draw a lens on the bench.

        data: the lens, worked; its cut is known.
        """
        fits = self.front.fits(data)
        self.front.window.set_scale(
            next((one for one in SCALES_PX_PER_MM if one <= fits), SCALES_PX_PER_MM[-1])
        )
        right, below = self.front.window.mm(166, 342)
        self.bar.set_data([right - 10.0, right], [below, below])
        for part in (self.front, self.stack, self.torque, self.band):
            part.update(data)
        self._write(data)

    def _write(self, sheet: EyeSheet) -> None:
        cut = sheet.cut
        self.heading.set_text(f"{sheet.eye.value.capitalize()} lens on its block, {_start(sheet)}")
        self.left_side.set_text(("temporal", "nasal")[:: sheet.eye.nasal_sign][0])
        self.right_side.set_text(("temporal", "nasal")[:: sheet.eye.nasal_sign][1])
        finishing = cut.cutting.plan.finishing
        kind = "finishing" if finishing[cut.least.turn - 1] else "roughing"
        self.turn.set_text(f"Worst turn, {cut.least.turn} of {finishing.size} ({kind}): torque round [N m]")
        now, calibrated = percent(cut.slip_probability), percent(cut.slip_probability_calibrated)
        self.chance.set_text(f"slips: {now} as known now, {calibrated} calibrated")


def _start(sheet: EyeSheet) -> str:
    return (
        "not cribbed" if sheet.cut.crib is None else f"cribbed to +{sheet.cut.setup.crib_allowance_mm:g} mm"
    )


def _bite() -> dict[str, object]:
    return BITE.fill()


def _cribbed() -> dict[str, object]:
    return {"facecolor": "none", "edgecolor": QUIET_INK, "hatch": "...", "linewidth": 0.0}


_KEY = (
    (10, 318, OUTLINE, "finished outline"),
    (152, 318, START_RIM, "cut starts here"),
    (288, 318, BLANK, "blank"),
    (370, 318, BLOCK, "block"),
    (10, 296, LEAST_MARGIN, "least margin"),
    (152, 296, CHUCK_AXIS, "chuck axis"),
    (288, 296, OPTICAL_CENTRE, "optical centre"),
    (420, 296, GREATEST, "greatest torque of the turn"),
    (410, 264, TURNS, "turns"),
    (490, 264, HOLDS, "holds"),
)
_PATCHES = (
    (452, 318, _bite, "worst turn's bite"),
    (600, 318, _cribbed, "cribbed"),
    (570, 264, too_much, "more than holds"),
)
