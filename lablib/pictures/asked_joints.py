"""What holds a lens: joints in a row like the links of a chain, and the back tip, each with its bar."""

from dataclasses import dataclass

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Ellipse, Rectangle

from lablib.errors import LabError, require_between
from lablib.pictures.asked_base import HIGH_PX, RIM_PX, WIDE_PX, Asked, AskedPicture
from lablib.pictures.asked_sign import Stand, spots_round, words_in
from lablib.pictures.captions import step_up
from lablib.pictures.palette import GLASS, HOLDS, INK, JOINT, QUIET_INK
from lablib.working import plain

# Few tops, so that the scale follows the case in large steps [N m].
TOPS_NM = (1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 30.0, 40.0, 60.0)
_MOST_NM = 10.0
# Beyond its top the scale goes on by a fifth: torques all added up, a usual mistake, are to be seen.
_BEYOND = 1.2
MOST_JOINTS, _LONGEST_NAME = 5, 18
# Left of the bars stand the names, left of those the chain.
_ZERO_PX, _FULL_PX, _CHAIN_PX, _NAMES_PX = 154.0, 250.0, -132.0, -110.0
_BLOCK_PX, _AXIS_PX, _TICKS_PX = 196.0, 24.0, 11.0
# Both values are written above the bars, each in a line of its own.
_YOURS_PX, _RIGHT_PX = HIGH_PX - 11.0, HIGH_PX - 33.0
_PITCH_PX, _ROWS_PX = 27.0, 158.0
# Links are so long that each passes through the next, and through block and lens, in pitches of the rows.
_LINK, _TO_PLATE = 1.16, 0.68
_HALF_BAR_PX, _AFTER_PX, _TICKS = 6.5, 6.0, 4


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
    """One line of the drawing: a link of the chain, its name, its bar and its torque.

    picture: the picture it is part of; solid: whether it is no link of the chain but pushes from beyond it.
    """

    def __init__(self, picture: "JointsPicture", *, solid: bool = False) -> None:
        axes, moving = picture.window.axes, picture.moving
        face = QUIET_INK if solid else "none"
        link = {"facecolor": face, "edgecolor": INK, "linewidth": 1.6, "zorder": 4}
        self.link = moving(axes.add_patch(Ellipse((_CHAIN_PX, 0.0), 12.0, 1.0, **link)))
        bar = {"facecolor": to_rgba(JOINT.colour, JOINT.opacity), "edgecolor": HOLDS.colour, "linewidth": 0.9}
        self.bar = moving(axes.add_patch(Rectangle((0.0, 0.0), 1.0, 2.0 * _HALF_BAR_PX, zorder=3, **bar)))
        self.name, self.words = (words_in(picture.window, ha="left", zorder=14) for _ in range(2))
        self.picture, self.artists = picture, (self.link, self.bar, self.name, self.words)

    def show(self, y_px: float, name: str, torque_nm: float) -> None:
        """Draw a joint.

        y_px: its height in the window [shown px]; name: its name; torque_nm: that it bears [N m].
        """
        for artist in self.artists:
            artist.set_visible(True)
        length = torque_nm * self.picture.px_per_nm
        self.link.set_center((_CHAIN_PX, y_px))
        self.link.set_height(_LINK * self.picture.pitch_px)
        self.bar.set_xy((0.0, y_px - _HALF_BAR_PX))
        self.bar.set_width(length)
        self.name.set_text(name)
        self.name.set_position(self.picture.window.px(_NAMES_PX, y_px))
        self.words.set_text(plain(torque_nm, 2))
        self.words.set_position(self.picture.window.px(length + _AFTER_PX, y_px))

    def hide(self) -> None:
        """Show nothing."""
        for artist in self.artists:
            artist.set_visible(False)


class JointsPicture(AskedPicture):
    """Joints in a row from the block to the lens, the back tip on its other side, and their torques."""

    case = Joints
    unit, digits = "N m", 2

    def add_case(self) -> None:
        """Add the rows, the block, the lens and the scale."""
        self.add_window(up_px=0.0, across_px=_ZERO_PX)
        self.heading("Joints in a row, and the back tip: torque each bears [N m]")
        self.pitch_px, self.px_per_nm = _PITCH_PX, 1.0
        axes, moving = self.window.axes, self.moving
        self.joints, self.tip = [Row(self) for _ in range(MOST_JOINTS)], Row(self, solid=True)
        self.block, self.lens = (
            moving(axes.add_patch(Rectangle((_CHAIN_PX - 14.0, 0.0), 28.0, 9.0, zorder=5, **style)))
            for style in (
                {"facecolor": QUIET_INK, "edgecolor": INK},
                {"facecolor": GLASS.colour, "edgecolor": INK},
            )
        )
        self.block_name, self.lens_name = (words_in(self.window, ha="left") for _ in range(2))
        self.block_name.set_text("block")
        self.lens_name.set_text("lens")
        self._add_scale()

    def _add_scale(self) -> None:
        axes = self.window.axes
        style = {"color": QUIET_INK, "linewidth": 0.8}
        axes.plot([0.0, 0.0], [_AXIS_PX, _BLOCK_PX], **style)
        ticks = np.linspace(0.0, _FULL_PX, _TICKS + 1)
        axes.plot(ticks, np.full_like(ticks, _AXIS_PX), marker="|", markersize=6, **style)
        self.ticks = [words_in(self.window, color=QUIET_INK) for _ in ticks]
        for tick, x in zip(self.ticks, ticks, strict=True):
            tick.set_position(self.window.px(x, _TICKS_PX))

    def show_case(self, case: Joints, data: Asked) -> None:
        """Draw the joints from the block down to the lens, and the tip below it.

        case: the joints; data: nothing else counts.
        """
        added = (sum(case.values) + case.back) / _BEYOND
        top = step_up(TOPS_NM, max(added, *case.values, case.back))
        self.px_per_nm = _FULL_PX / top
        for part, tick in enumerate(self.ticks):
            tick.set_text(f"{top * part / _TICKS:g}")
        count = len(case.names)
        self.pitch_px = pitch = min(_PITCH_PX, _ROWS_PX / (count + 1.7))
        for at, row in enumerate(self.joints):
            if at < count:
                row.show(_BLOCK_PX - pitch * (_TO_PLATE + at), case.names[at], case.values[at])
            else:
                row.hide()
        lens = _BLOCK_PX - pitch * (count - 1.0 + 2.0 * _TO_PLATE)
        self.tip.show(lens - _TO_PLATE * pitch, "back tip", case.back)
        for patch, name, y in ((self.block, self.block_name, _BLOCK_PX), (self.lens, self.lens_name, lens)):
            patch.set_y(y - 4.5)
            name.set_position(self.window.px(_NAMES_PX, y))

    def stand(self, case: Joints, value: float, right: bool) -> Stand:
        """Return a level line through all bars, at a torque.

        case: the joints; value: torque [N m]; right: whether it is the right one.
        """
        x, most = value * self.px_per_nm, WIDE_PX - _ZERO_PX - RIM_PX
        shown = float(np.clip(x, -RIM_PX if x < 0.0 else 0.0, most))
        off = "right" if x > most else ("left" if x < 0.0 else "")
        y = _RIGHT_PX if right else _YOURS_PX
        line = [(shown, y), (shown, _AXIS_PX)]
        spots = spots_round(*self.window.px(shown, y), (1, 0), (-1, 0))
        return Stand(line=np.array(line), mark=(shown, y), spots=spots, off=off)
