"""What holds a lens and what turns it, as bars: the joints of the front stack, the back tip, the wheel."""

from matplotlib.colors import to_rgba
from matplotlib.patches import Rectangle

from lablib.bench.holding import Holding
from lablib.job.eye_sheet import EyeSheet
from lablib.job.report import where
from lablib.pictures.captions import WORDS_PT, step_up, write_still
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.label import Label
from lablib.pictures.palette import HOLDS, INK, JOINT, QUIET_INK, WEAKEST_JOINT, WHEEL, Look
from lablib.pictures.window import Box, add_axes

# Lines of the drawing from the top: words, four joints, words, the tip, words, hold, words, wheel.
_LINES = 11
_JOINT_LINES, _TIP_LINE, _HOLD_LINE, _TURN_LINE = (1, 2, 3, 4), 6, 8, 10
_NAME_PX, _BAR_PX, _HALF_BAR_PX, _AFTER_PX = 96.0, 150.0, 6.5, 6.0
# Few scales, so that a bar hardly ever changes its length for another's sake.
FULL_NMM = (2000.0, 3500.0, 5000.0, 8000.0)


class Bar:
    """One line of the drawing: a name, a bar and what is written after it.

    stack: the drawing it is part of; y_px: its height in it [shown px].
    """

    def __init__(self, stack: "JointStack", y_px: float) -> None:
        self.y_px = y_px
        self.bar = stack.picture.moving(
            stack.axes.add_patch(Rectangle((_NAME_PX, y_px - _HALF_BAR_PX), 0.0, 2.0 * _HALF_BAR_PX))
        )
        self.name, self.words = (stack.label(x, y_px) for x in (0.0, _NAME_PX))

    def update(self, name: str, length_px: float, words: str, look: dict) -> None:
        """Set what it shows.

        name, words: before and after the bar; length_px: [shown px]; look: matplotlib's keywords.
        """
        self.name.set_text(name)
        self.bar.set_width(length_px)
        self.bar.set(**look, visible=length_px > 0.0)
        self.words.set_text(words)
        self.words.set_position((_NAME_PX + length_px + _AFTER_PX, self.y_px))


class JointStack:
    """A rectangle of a picture that shows why a lens holds or turns.

    picture: the picture it is part of.
    box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        left, bottom, right, top = box_px
        self.picture = picture
        self.axes = add_axes(picture, box_px)
        self.axes.set_axis_off()
        set_limits(self.axes, x=(0.0, right - left), y=(0.0, top - bottom))
        pitch = (top - bottom) / _LINES
        lines = [top - bottom - pitch * (line + 0.5) for line in range(_LINES)]
        self.joints = [Bar(self, lines[line]) for line in _JOINT_LINES]
        self.tip, self.hold, self.turn = (Bar(self, lines[at]) for at in (_TIP_LINE, _HOLD_LINE, _TURN_LINE))
        self.place, self.less = (
            self.label(0.0, lines[at], QUIET_INK) for at in (_HOLD_LINE - 1, _TURN_LINE - 1)
        )
        for line, words in (
            (0, "front stack, in series: only the weakest counts"),
            (5, "back tip, added to it"),
        ):
            write_still(picture, (left, bottom + lines[line]), words, color=QUIET_INK)

    def label(self, x_px: float, y_px: float, colour: str = INK) -> Label:
        """Add a moving text that begins at a place of the drawing.

        x_px, y_px: from its lower left corner [shown px]; colour: of the letters.
        """
        label = self.picture.label(self.axes, fontsize=WORDS_PT, color=colour, va="center", zorder=5)
        label.set_position((x_px, y_px))
        return label

    def update(self, sheet: EyeSheet) -> None:
        """Draw what holds a lens and what turns it.

        sheet: the lens, worked; its cut is known.
        """
        cut = sheet.cut
        held, at = cut.holding, cut.least.index
        hold, turn = float(cut.hold_nmm[at]), float(cut.cutting.torque_nmm[at])
        longest = max(turn, *(joint.torque_nmm for joint in held.joints))
        self.px_per_nmm = _BAR_PX / step_up(FULL_NMM, longest)
        self._draw_joints(held)
        self._draw(self.tip, "back tip", held.back_nmm, _PLAIN)
        self._draw(self.hold, "holds", hold, _TOGETHER)
        self._draw(self.turn, "wheel turns", turn, _WHEEL, "  ◀ too much" if turn > hold else "")
        self.place.set_text(
            f"where the margin is least: turn {cut.least.turn}, {where(cut.least.angle_deg, sheet.eye)}"
        )
        parts = f"{_nm(held.front_nmm)} + {_nm(held.back_nmm)}"
        self.less.set_text(f"{parts}, less {_nm(held.torque_nmm - hold)} for the sideways load")

    def _draw_joints(self, held: Holding) -> None:
        shown = list(held.joints)
        if len(shown) < len(self.joints):
            shown.insert(-1, None)
        for bar, joint in zip(self.joints, shown, strict=True):
            if joint is None:
                bar.update("no film", 0.0, "", _PLAIN)
            elif joint is held.weakest:
                self._draw(bar, joint.name, joint.torque_nmm, _WEAKEST, "  ◀ weakest joint")
            else:
                self._draw(bar, joint.name, joint.torque_nmm, _PLAIN)

    def _draw(self, bar: Bar, name: str, torque_nmm: float, look: dict, words: str = "") -> None:
        bar.update(name, torque_nmm * self.px_per_nmm, _nm(torque_nmm) + words, look)


def _nm(torque_nmm: float) -> str:
    return f"{torque_nmm / 1000.0:.2f}"


def _look(look: Look, edge: str, width: float, hatch: str | None = None) -> dict:
    face = to_rgba(look.colour, look.opacity)
    return {"facecolor": face, "edgecolor": edge, "linewidth": width, "hatch": hatch}


_PLAIN = _look(JOINT, HOLDS.colour, 0.8)
_WEAKEST = _look(WEAKEST_JOINT, INK, 1.6)
_TOGETHER = _look(JOINT, HOLDS.colour, 1.6)
_WHEEL = _look(WHEEL, INK, 0.8, "////")
