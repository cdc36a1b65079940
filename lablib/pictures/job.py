"""A job on the bench: the lens on its block, what holds it, what turns it, and the margin between the two."""

from matplotlib.patches import Rectangle

from lablib.job.eye_sheet import EyeSheet
from lablib.job.report import percent
from lablib.pictures.captions import (
    HEADING_PT,
    KEY_WORDS_PX,
    ScaleBar,
    add_key,
    moving_words,
    step_down,
    write_still,
)
from lablib.pictures.job_front import BenchFront, hatched_cribbed
from lablib.pictures.joint_stack import JointStack
from lablib.pictures.kept import KeptPicture
from lablib.pictures.margin_band import MarginBand, doubted
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
from lablib.pictures.torque_round import TorqueRound, hatched_excess
from lablib.pictures.window import shown_px

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
        self.torque = TorqueRound(self, (44, 138, 700, 250))
        self.band = MarginBand(self, (44, 26, 700, 64))
        write_still(self, (338, 628), "What holds against what turns [N m]", size=HEADING_PT)
        axes = self.front.window.axes
        self.heading, self.turn, self.margin = (
            moving_words(self, axes, (10, y), size=HEADING_PT, color=INK) for y in (628, 264, 76)
        )
        self.left_side = moving_words(self, axes, (10, 342), color=QUIET_INK)
        self.right_side = moving_words(self, axes, (318, 342), ha="right", color=QUIET_INK)
        self.chance = moving_words(self, axes, (712, 76), ha="right", color=INK)
        self.scale = ScaleBar(self.front.window, 166, 342)
        add_key(self, _KEY)
        for x, y, style, words in _PATCHES:
            patch = Rectangle((x, y - 6), 24, 12, transform=shown_px(self), **style)
            self.figure.add_artist(patch)
            write_still(self, (x + KEY_WORDS_PX, y), words, color=QUIET_INK)

    def update(self, data: EyeSheet) -> None:
        """Draw a lens on the bench.

        data: the lens, worked; its cut is known.
        """
        self.front.window.set_scale(step_down(SCALES_PX_PER_MM, self.front.fits(data)))
        for part in (self.front, self.stack, self.torque, self.band):
            part.update(data)
        self.scale.update()
        self._write(data)

    def _write(self, sheet: EyeSheet) -> None:
        cut = sheet.cut
        self.heading.set_text(f"{sheet.eye.value.capitalize()} lens, {_blank(sheet)}, {_start(sheet)}")
        sides = ("temporal", "nasal")[:: sheet.eye.nasal_sign]
        self.left_side.set_text(sides[0])
        self.right_side.set_text(sides[1])
        finishing, turn = cut.cutting.plan.finishing, cut.least.turn
        kind = "finishing" if finishing[turn - 1] else "roughing"
        self.turn.set_text(f"Worst turn, {turn} of {finishing.size} ({kind}): torque all round [N m]")
        low, high = doubted(sheet)
        self.margin.set_text(f"Margin {cut.margin:.2f}, doubt {low:.2g} to {high:.2g}")
        now, calibrated = percent(cut.slip_probability), percent(cut.slip_probability_calibrated)
        self.chance.set_text(f"slip: {now} now, {calibrated} once calibrated")


def _blank(sheet: EyeSheet) -> str:
    words = f"{sheet.order.lens.blank_diameter_mm:g} mm blank"
    return words if sheet.blank_covers else f"{words} too small"


def _start(sheet: EyeSheet) -> str:
    return "not cribbed" if sheet.cut.crib is None else f"crib +{sheet.cut.setup.crib_allowance_mm:g} mm"


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
    (452, 318, BITE.fill(), "worst turn's bite"),
    (600, 318, hatched_cribbed(), "cribbed"),
    (570, 264, hatched_excess(), "more than holds"),
)
