"""What holds a lens: joints like links of a chain, the back tip on the lens's other side, each with a bar."""

from dataclasses import dataclass
from itertools import zip_longest

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Ellipse, Polygon, Rectangle

from lablib.errors import LabError, require_between
from lablib.pictures.asked_base import HIGH_PX, RIM_PX, WIDE_PX, Asked, AskedPicture
from lablib.pictures.asked_sign import Stand, spots_round, words_in
from lablib.pictures.captions import step_up
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import GLASS, HOLDS, INK, JOINT, QUIET_INK
from lablib.working import plain

# Few tops, so that the scale follows the case in large steps; each with what lies between two ticks [N m].
TICKS_NM = {
    1.0: 0.25,
    1.5: 0.5,
    2.0: 0.5,
    2.5: 0.5,
    3.0: 1.0,
    4.0: 1.0,
    6.0: 2.0,
    8.0: 2.0,
    12.0: 4.0,
    20.0: 5.0,
}
_MOST_TICKS = 6
_MOST_NM = 10.0
MOST_JOINTS, _LONGEST_NAME = 5, 18
# Left of the bars stand the names, left of those the chain.
_ZERO_PX, _FULL_PX, _CHAIN_PX, _NAMES_PX = 154.0, 250.0, -132.0, -110.0
_BLOCK_PX, _AXIS_PX, _TICKS_PX = 196.0, 24.0, 11.0
# Both values are written above the bars, each in a line of its own.
_YOURS_PX, _RIGHT_PX = HIGH_PX - 11.0, HIGH_PX - 33.0
_PITCH_PX, _ROWS_PX = 27.0, 158.0
# Links are so long that each passes through the next, and through block and lens, in pitches of the rows.
_LINK, _TO_PLATE = 1.16, 0.68
# From the lens down to the row of the tip and on to the plate it stands on, in pitches of the rows.
_TO_TIP, _TO_FOOT = 0.95, 0.5
_HALF_PLATE_PX, _HALF_PLATE_HIGH_PX, _HALF_STEM_PX, _HALF_PAD_PX, _PAD_HIGH_PX = 14.0, 4.5, 4.0, 10.0, 4.0
_HALF_BAR_PX, _AFTER_PX = 6.5, 6.0
# What a figure takes, so that the line of an answer breaks off before a number it would cross.
_FIGURE_PX, _HALF_NUMBER_PX, _CLEAR_PX = 7.5, 8.0, 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Joints:
    """What holds a lens.

    names: of the joints between block and lens, in their order, shape (N,).
    values: torque that each bears, shape (N,) [N m].
    back: torque that the back tip bears [N m].

    Raises LabError for rows of different length, too many joints, a long name or a number that cannot be.
    """

    names: tuple[str, ...]
    values: tuple[float, ...]
    back: float

    def __post_init__(self) -> None:
        if len(self.names) != len(self.values) or not 1 <= len(self.names) <= MOST_JOINTS:
            raise LabError(
                f"joints of a drawing: {len(self.names)} names and {len(self.values)} values: "
                f"give as many of both, 1 to {MOST_JOINTS}"
            )
        for name in self.names:
            if len(name) > _LONGEST_NAME:
                raise LabError(f"joint {name!r} is too long a name: give {_LONGEST_NAME} letters at most")
        for name, value in (*zip(self.names, self.values, strict=True), ("back", self.back)):
            require_between(f"torque of {name}", value, low=0.0, high=_MOST_NM, unit="N m")


class Row:
    """One line of the drawing: a name, a bar and a torque.

    picture: the picture it is part of.
    """

    def __init__(self, picture: "JointsPicture") -> None:
        axes, moving = picture.window.axes, picture.moving
        bar = {"facecolor": to_rgba(JOINT.colour, JOINT.opacity), "edgecolor": HOLDS.colour, "linewidth": 0.9}
        self.bar = moving(axes.add_patch(Rectangle((0.0, 0.0), 1.0, 2.0 * _HALF_BAR_PX, zorder=3, **bar)))
        self.name, self.words = (words_in(picture.window, ha="left", zorder=14) for _ in range(2))
        self.picture, self.artists = picture, [self.bar, self.name, self.words]
        self.number = (0.0, 0.0, 0.0)

    def show(self, y_px: float, name: str, torque_nm: float) -> None:
        """Draw a joint.

        y_px: its height in the window [shown px]; name: its name; torque_nm: that it bears [N m].
        """
        for artist in self.artists:
            artist.set_visible(True)
        length = torque_nm * self.picture.px_per_nm
        self.bar.set_xy((0.0, y_px - _HALF_BAR_PX))
        self.bar.set_width(length)
        self.name.set_text(name)
        self.name.set_position(self.picture.window.px(_NAMES_PX, y_px))
        said, at = plain(torque_nm, 2), length + _AFTER_PX
        self.words.set_text(said)
        self.words.set_position(self.picture.window.px(at, y_px))
        # Where the number begins and ends, and its height.
        self.number = (at - _CLEAR_PX, at + _FIGURE_PX * len(said), y_px)

    def hide(self) -> None:
        """Show nothing."""
        for artist in self.artists:
            artist.set_visible(False)


class JointRow(Row):
    """A line of the drawing with its link of the chain.

    picture: the picture it is part of.
    """

    def __init__(self, picture: "JointsPicture") -> None:
        super().__init__(picture)
        link = {"facecolor": "none", "edgecolor": INK, "linewidth": 1.6, "zorder": 4}
        ring = Ellipse((_CHAIN_PX, 0.0), 12.0, 1.0, **link)
        self.link = picture.moving(picture.window.axes.add_patch(ring))
        self.artists.append(self.link)

    def show(self, y_px: float, name: str, torque_nm: float) -> None:
        """Draw a joint as a row is drawn, and its link.

        y_px: its height in the window [shown px]; name: its name; torque_nm: that it bears [N m].
        """
        super().show(y_px, name, torque_nm)
        self.link.set_center((_CHAIN_PX, y_px))
        self.link.set_height(_LINK * self.picture.pitch_px)


class JointsPicture(AskedPicture):
    """Joints in a row from the block to the lens, the back tip on its other side, and their torques."""

    case = Joints
    unit, digits = "N m", 2

    def add_case(self) -> None:
        """Add the rows, the block, the lens and the scale."""
        self.add_window(up_px=0.0, across_px=_ZERO_PX)
        self.heading("Joints in a row, the back tip beside them: torque each bears [N m]")
        self.pitch_px, self.px_per_nm = _PITCH_PX, 1.0
        axes, moving = self.window.axes, self.moving
        self.joints, self.tip = [JointRow(self) for _ in range(MOST_JOINTS)], Row(self)
        solid, size = (
            {"facecolor": QUIET_INK, "edgecolor": INK},
            (2 * _HALF_PLATE_PX, 2 * _HALF_PLATE_HIGH_PX),
        )
        self.block, self.lens = (
            moving(axes.add_patch(Rectangle((_CHAIN_PX - _HALF_PLATE_PX, 0.0), *size, zorder=5, **style)))
            for style in (solid, solid | {"facecolor": GLASS.colour})
        )
        self.post = moving(axes.add_patch(Polygon(NOWHERE, zorder=4, **solid)))
        self.block_name, self.lens_name = (words_in(self.window, ha="left") for _ in range(2))
        self.block_name.set_text("block")
        self.lens_name.set_text("lens")
        self._add_scale()

    def _add_scale(self) -> None:
        axes = self.window.axes
        style = {"color": QUIET_INK, "linewidth": 0.8}
        axes.plot([0.0, 0.0], [_AXIS_PX, _BLOCK_PX], **style)
        axes.plot([0.0, _FULL_PX], [_AXIS_PX] * 2, **style)
        self.marks = self.moving(axes.plot([], [], linestyle="none", marker="|", markersize=6, **style)[0])
        self.ticks = [words_in(self.window, color=QUIET_INK) for _ in range(_MOST_TICKS)]

    def show_case(self, case: Joints, data: Asked) -> None:
        """Draw the joints from the block down to the lens, and the tip below it.

        case: the joints; data: nothing else counts.
        """
        self._set_scale(max(case.values) + case.back)
        count = len(case.names)
        high = count - 1.0 + 2.0 * _TO_PLATE + _TO_TIP + _TO_FOOT
        self.pitch_px = pitch = min(_PITCH_PX, _ROWS_PX / high)
        for at, row in enumerate(self.joints):
            if at < count:
                row.show(_BLOCK_PX - pitch * (_TO_PLATE + at), case.names[at], case.values[at])
            else:
                row.hide()
        lens = _BLOCK_PX - pitch * (count - 1.0 + 2.0 * _TO_PLATE)
        self.tip.show(lens - _TO_TIP * pitch, "back tip", case.back)
        self.post.set_xy(_post(lens, lens - (_TO_TIP + _TO_FOOT) * pitch))
        for patch, name, y in ((self.block, self.block_name, _BLOCK_PX), (self.lens, self.lens_name, lens)):
            patch.set_y(y - _HALF_PLATE_HIGH_PX)
            name.set_position(self.window.px(_NAMES_PX, y))

    def _set_scale(self, most_nm: float) -> None:
        """Have the scale reach the strongest joint and the back tip together: no answer below is off it."""
        top = step_up(tuple(TICKS_NM), most_nm)
        self.px_per_nm = _FULL_PX / top
        torques = np.arange(0.0, top + TICKS_NM[top] / 2.0, TICKS_NM[top]).tolist()
        for tick, torque in zip_longest(self.ticks, torques):
            tick.set_visible(torque is not None)
            if torque is not None:
                tick.set_text(f"{torque:g}")
                tick.set_position(self.window.px(torque * self.px_per_nm, _TICKS_PX))
        self.marks.set_data([torque * self.px_per_nm for torque in torques], [_AXIS_PX] * len(torques))

    def stand(self, case: Joints, value: float, right: bool) -> Stand:
        """Return an upright line through all bars, at a torque; it breaks off where a number is written.

        case: the joints; value: torque [N m]; right: whether it is the right one.
        """
        x, y = value * self.px_per_nm, _RIGHT_PX if right else _YOURS_PX
        off = "right" if x > _FULL_PX else ("left" if x < 0.0 else "")
        shown = {"right": WIDE_PX - _ZERO_PX - RIM_PX, "left": -RIM_PX, "": x}[off]
        # A value beyond the scale has no place on it: an arrow leads there from the scale's end.
        end = min(max(x, 0.0), _FULL_PX)
        line = [(end, y), (shown, y)] if off else self._upright(shown, y)
        side = -1 if off == "right" else 1
        spots = spots_round(*self.window.px(end, y), (side, 0), (-side, 0))
        return Stand(line=np.array(line), mark=(shown, y), spots=spots, off=off)

    def _upright(self, x: float, top: float) -> list[tuple[float, float]]:
        rows = [row for row in (*self.joints, self.tip) if row.bar.get_visible()]
        line = [(x, top)]
        for begins, ends, level in (row.number for row in rows):
            if begins <= x <= ends:
                above, below = level + _HALF_NUMBER_PX, level - _HALF_NUMBER_PX
                line += [(x, above), (np.nan, np.nan), (x, below)]
        return [*line, (x, _AXIS_PX)]


def _post(lens_px: float, foot_px: float) -> np.ndarray:
    """Return the outline of the tip: a pad against the lens, a stem, and the plate it stands on."""
    under, on = lens_px - _HALF_PLATE_HIGH_PX, foot_px + _HALF_PLATE_HIGH_PX
    right = [
        (_HALF_PAD_PX, under),
        (_HALF_PAD_PX, under - _PAD_HIGH_PX),
        (_HALF_STEM_PX, under - _PAD_HIGH_PX),
        (_HALF_STEM_PX, on),
        (_HALF_PLATE_PX, on),
        (_HALF_PLATE_PX, foot_px - _HALF_PLATE_HIGH_PX),
    ]
    ring = [*right, *((-x, y) for x, y in reversed(right))]
    return np.array([(_CHAIN_PX + x, y) for x, y in ring])
