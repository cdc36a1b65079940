"""A cut turn by turn: the bite of one turn, every turn's torque, and that turn unrolled."""

from matplotlib.patches import Rectangle

from lablib.pictures.captions import (
    HEADING_PT,
    KEY_WORDS_PX,
    ScaleBar,
    add_key,
    moving_words,
    step_down,
    write_still,
)
from lablib.pictures.cutting_bars import TurnBars
from lablib.pictures.cutting_data import CRIBBING, FINISHING, ROUGHING, CutView, bar_style
from lablib.pictures.cutting_strip import BITE_DEPTH, WheelStrip
from lablib.pictures.job import SCALES_PX_PER_MM
from lablib.pictures.job_front import BenchFront, hatched_cribbed
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import (
    BITE,
    BLANK,
    BLOCK,
    CHUCK_AXIS,
    EDGE,
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


class CuttingPicture(KeptPicture):
    """A lens from the front with one turn's bite, the torque of every turn, and that turn unrolled."""

    width_px = 720
    height_px = 640

    def build(self) -> None:
        """Add the drawings, their headings and the key."""
        self.front = BenchFront(self, (6, 352, 322, 616))
        self.bars = TurnBars(self, (374, 384, 706, 604))
        self.torque = TorqueRound(self, (44, 158, 700, 262))
        self.strip = WheelStrip(self, (44, 26, 700, 106))
        write_still(self, (338, 628), "Greatest torque of each turn [N m]", size=HEADING_PT)
        axes = self.front.window.axes
        self.heading, self.turn, self.wheel = (
            moving_words(self, axes, (10, y), size=HEADING_PT, color=INK) for y in (628, 276, 120)
        )
        self.left_side = moving_words(self, axes, (10, 342), color=QUIET_INK)
        self.right_side = moving_words(self, axes, (318, 342), ha="right", color=QUIET_INK)
        self.scale = ScaleBar(self.front.window, 166, 342)
        add_key(self, _KEY)
        for x, y, style, words in _PATCHES:
            self.figure.add_artist(Rectangle((x, y - 6), 24, 12, transform=shown_px(self), **style))
            write_still(self, (x + KEY_WORDS_PX, y), words, color=QUIET_INK)

    def update(self, data: CutView) -> None:
        """Draw one turn of a cut.

        data: what to draw.
        """
        sheet, shown = data.sheet, data.shown
        self.front.window.set_scale(step_down(SCALES_PX_PER_MM, self.front.fits(sheet)))
        self.front.update(sheet, shown)
        self.torque.update(sheet, shown, top_nm=data.top_nm)
        self.bars.update(data)
        self.strip.update(data)
        self.scale.update()
        sides = ("temporal", "nasal")[:: sheet.eye.nasal_sign]
        self.left_side.set_text(sides[0])
        self.right_side.set_text(sides[1])
        self.heading.set_text(f"{sheet.eye.value.capitalize()} lens: turn {data.at + 1}, {data.kind}")
        which = f"Turn {data.at + 1} of {len(data.bars)}"
        self.turn.set_text(f"{which}: torque all round [N m]")
        self.wheel.set_text(f"{which}: what the wheel meets [mm]")


_KEY = (
    (10, 320, OUTLINE, "finished outline"),
    (152, 320, START_RIM, "cut starts here"),
    (288, 320, BLANK, "blank"),
    (370, 320, BLOCK, "block"),
    (10, 300, LEAST_MARGIN, "least margin of the turn"),
    (196, 300, CHUCK_AXIS, "chuck axis"),
    (296, 300, OPTICAL_CENTRE, "optical centre"),
    (420, 300, GREATEST, "greatest torque"),
    (410, 276, TURNS, "turns"),
    (490, 276, HOLDS, "holds"),
    (440, 120, BITE_DEPTH, "depth of the bite"),
)
_PATCHES = (
    (452, 320, BITE.fill(), "this turn's bite"),
    (592, 320, hatched_cribbed(), "cribbed before"),
    (570, 276, hatched_excess(), "more than holds"),
    (592, 120, EDGE.fill(), "thickness"),
    (374, 346, bar_style(CRIBBING), CRIBBING),
    (488, 346, bar_style(ROUGHING), ROUGHING),
    (602, 346, bar_style(FINISHING), FINISHING),
)
