"""The torque of one turn unrolled: what turns the lens against what holds it, from the nose round."""

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.job.eye_sheet import EyeSheet
from lablib.pictures.captions import WORDS_PT, step_up
from lablib.pictures.cutting_turn import ShownTurn, worst_turn
from lablib.pictures.edge_round import axes_round
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import BITE, GREATEST, HOLDS, INK, LEAST_MARGIN, QUIET_INK, TOO_MUCH, TURNS
from lablib.pictures.window import Box, place, shown_px

# Few tops, so that the scale hardly ever changes; each parts well at this many ticks.
TOPS_NM = (1.0, 2.0, 4.0, 8.0)
_TICKS = 5
# Above the torque stand its own mark and, higher, that of the least margin; the hold only stays below that.
_TORQUE_ROOM, _HOLD_ROOM = 0.7, 0.88
_EVERY = 2
_MARK_PX, _HALF_MARK_PX, _BESIDE_PX = 9.0, 6.0, 8.0


class TorqueRound:
    """A rectangle of a picture that shows the torque round one turn.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the plot without its ticks [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.box_px = box_px
        self.axes = axes = axes_round(picture, box_px)
        self._set_top(TOPS_NM[0])
        moving = picture.moving
        under = {"facecolor": to_rgba(BITE.colour, 0.25), "linewidth": 0.0}
        self.area = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **under)))
        self.too_much = moving(axes.add_patch(Polygon(NOWHERE, zorder=3, **hatched_excess())))
        self.turns = moving(axes.plot([], [], zorder=4, **TURNS.line())[0])
        self.holds = moving(axes.plot([], [], zorder=5, **HOLDS.line())[0])
        self.least_line = moving(axes.plot([], [], zorder=6, color=QUIET_INK, linewidth=0.8)[0])
        self.peak = moving(axes.plot([], [], zorder=7, **GREATEST.point())[0])
        self.least = moving(axes.plot([], [], zorder=7, **LEAST_MARGIN.point())[0])
        for mark in (self.peak, self.least):
            mark.set(markersize=7, clip_on=False)
        words = {"fontsize": WORDS_PT, "color": INK, "ha": "center", "va": "center", "zorder": 8}
        self.peak_words, self.least_words = (
            picture.label(axes, transform=shown_px(picture), **words) for _ in range(2)
        )

    def update(self, sheet: EyeSheet, shown: ShownTurn | None = None, *, top_nm: float | None = None) -> None:
        """Draw one turn of a cut.

        sheet: the lens, worked; its cut is known.
        shown: which turn of which cut; None for the one with the least margin.
        top_nm: where the scale ends, one of `TOPS_NM`; None for the one that holds this turn [N m].
        """
        shown = shown or worst_turn(sheet.cut)
        turns, holds = (_unrolled(sheet, part) for part in (shown.torque_nmm, shown.hold_nmm))
        self._set_top(top_for(turns.max(), holds.max()) if top_nm is None else top_nm)
        angle = np.linspace(0.0, 360.0, turns.size)
        every = slice(None, None, _EVERY)
        self.turns.set_data(angle[every], turns[every])
        self.holds.set_data(angle[every], holds[every])
        self.area.set_xy(np.concatenate([_points(angle, turns)[every], [(360.0, 0.0), (0.0, 0.0)]]))
        upper = _points(angle, np.maximum(turns, holds))
        self.too_much.set_xy(np.concatenate([upper, _points(angle, holds)[::-1]]))
        self.too_much.set_visible(bool((turns > holds).any()))
        self._mark(sheet, shown, angle, turns, holds)

    def _set_top(self, top_nm: float) -> None:
        if self.axes.get_ylim() == (0.0, top_nm):
            return
        set_limits(self.axes, x=(0.0, 360.0), y=(0.0, top_nm))
        self.axes.set_yticks(np.linspace(0.0, top_nm, _TICKS))

    def _mark(
        self, sheet: EyeSheet, shown: ShownTurn, angle: np.ndarray, turns: np.ndarray, holds: np.ndarray
    ) -> None:
        """Mark the greatest torque above its curve, and the least margin above a line down to both."""
        greatest = int(turns[:-1].argmax())
        least = int(np.flatnonzero(sheet.from_nasal == shown.point)[0])
        top = self.axes.get_ylim()[1] - self._nm(_MARK_PX)
        self.peak.set_data([angle[greatest]], [turns[greatest] + self._nm(_MARK_PX)])
        self.least.set_data([angle[least]], [top])
        self.least_line.set_data([angle[least]] * 2, [top, min(turns[least], holds[least])])
        marks = [self._px(*mark.get_xydata()[0]) for mark in (self.peak, self.least)]
        taken = [_box(*mark) for mark in marks]
        written = (f"{turns[greatest]:.2f}", f"margin {shown.margin:.2f}")
        for label, words, (x, y) in zip((self.peak_words, self.least_words), written, marks, strict=True):
            spots = [(x + side * _BESIDE_PX, y, side, 0) for side in (1, -1)]
            place(label, words, spots, inside=self.box_px, taken=taken)

    def _px(self, angle_deg: float, torque_nm: float) -> tuple[float, float]:
        left, bottom, right, _ = self.box_px
        return left + angle_deg / 360.0 * (right - left), bottom + torque_nm / self._nm(1.0)

    def _nm(self, px: float) -> float:
        """So many shown pixels up the plot as torque [N m]."""
        _, bottom, _, top = self.box_px
        return px * self.axes.get_ylim()[1] / (top - bottom)


def top_for(turns_nm: float, holds_nm: float) -> float:
    """Return where a scale ends that holds two torques and the marks above them, one of `TOPS_NM` [N m].

    turns_nm, holds_nm: greatest torque that turns and that holds [N m].
    """
    return step_up(TOPS_NM, max(turns_nm / _TORQUE_ROOM, holds_nm / _HOLD_ROOM))


def hatched_excess() -> dict[str, object]:
    """Return matplotlib's keywords for the part where turning exceeds holding."""
    face = to_rgba(TOO_MUCH.colour, TOO_MUCH.opacity)
    return {"facecolor": face, "edgecolor": TOO_MUCH.colour, "linewidth": 0.0, "hatch": "////"}


def _unrolled(sheet: EyeSheet, torque_nmm: np.ndarray) -> np.ndarray:
    """Return a torque from the nose round to the nose again, shape (N + 1,) [N m]."""
    turned = torque_nmm[sheet.from_nasal] / 1000.0
    return np.append(turned, turned[0])


def _points(angle: np.ndarray, torque: np.ndarray) -> np.ndarray:
    return np.column_stack([angle, torque])


def _box(x: float, y: float) -> Box:
    return (x - _HALF_MARK_PX, y - _HALF_MARK_PX, x + _HALF_MARK_PX, y + _HALF_MARK_PX)
