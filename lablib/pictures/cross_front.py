"""The lens of an optical cross from the front: its two meridians, and one that turns."""

import cmath
import math

from matplotlib.colors import to_rgba
from matplotlib.lines import Line2D
from matplotlib.patches import Circle

from lablib.pictures.captions import WORDS_PT, write_still
from lablib.pictures.cross_data import CrossThere, on
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import GLASS, INK, OKABE_ITO, OUTLINE, QUIET_INK, Look
from lablib.pictures.window import Box, Spot, Window, place, shown_px, size_px

MINUS_AXIS = Look(colour=OKABE_ITO["blue"], dashes="solid", width_pt=2.4)
# Two dashes are to be seen in the 24 pixels of a key.
PLUS_AXIS = Look(colour=OKABE_ITO["vermilion"], dashes=(0, (3, 1.2)), width_pt=2.4)
TURNING = Look(colour=INK, dashes=(0, (1.5, 1.2)), width_pt=1.8)
READ_OFF = Look(colour=INK, mark="o")
# The lens is drawn with this radius [shown px]; numbers stand beyond its upper half, words beyond its ends.
RADIUS_PX = 98.0
_NUMBERS_PX, _TICK_PX, _WORDS_PX, _APART_PX = 114.0, 5.0, 9.0, 8.0
# Numbers are wider than they are high, so those at the sides stand farther out.
_WIDER_PX = 6.0
_NUMBERS_DEG = tuple(range(0, 181, 30))
# Words stand beyond the lower end of their meridian, below the numbers at the sides. Where others stand there
# already they move aside, in steps so small that they slide rather than jump [degrees].
_LOWER_DEG = (189.0, 351.0)
_ASIDE_DEG = (0.0, *(side * step for step in range(3, 67, 3) for side in (1.0, -1.0)))


class CrossFront:
    """A lens with its cross, as an observer facing the wearer sees it.

    picture: the picture it is part of.
    box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.window = Window(picture, box_px)
        self._middle = complex(*self.window.px(0.0, 0.0))
        self._add_lens(picture)
        axes, style = self.window.axes, {"solid_capstyle": "butt"}
        self.minus, self.plus = (
            picture.moving(axes.plot([], [], zorder=3, **style, **look.line())[0])
            for look in (MINUS_AXIS, PLUS_AXIS)
        )
        ends = {"marker": READ_OFF.mark, "markersize": 6}
        self.turning = picture.moving(axes.plot([], [], zorder=5, **ends, **TURNING.line())[0])
        style = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "color": INK, "zorder": 9}
        self.minus_words, self.plus_words, self.turning_words = (self.window.label(**style) for _ in range(3))

    def _add_lens(self, picture: KeptPicture) -> None:
        """Add the lens, a tick every ten degrees of its upper half, and a number every thirty."""
        glass = {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "edgecolor": OUTLINE.colour}
        self.window.axes.add_patch(Circle((0.0, 0.0), RADIUS_PX, linewidth=1.2, zorder=1, **glass))
        style = {"color": QUIET_INK, "linewidth": 0.7, "transform": shown_px(picture)}
        for degrees in range(0, 181, 10):
            way = cmath.rect(1.0, math.radians(degrees))
            line = [self._middle + far * way for far in (RADIUS_PX, RADIUS_PX + _TICK_PX)]
            picture.figure.add_artist(Line2D([at.real for at in line], [at.imag for at in line], **style))
        self._numbers: list[Box] = []
        for degrees in _NUMBERS_DEG:
            way = cmath.rect(1.0, math.radians(degrees))
            at = self._middle + (_NUMBERS_PX + _WIDER_PX * abs(way.real)) * way
            write_still(picture, (at.real, at.imag), f"{degrees}", color=QUIET_INK, ha="center")
            self._numbers.append((at.real - 14.0, at.imag - 8.0, at.real + 14.0, at.imag + 8.0))

    def update(self, data: CrossThere) -> None:
        """Draw a lens and the meridian to read.

        data: what to draw.
        """
        taken, cross = list(self._numbers), data.cross
        parts = (
            (self.minus, self.minus_words, cross.first_d, cross.first_meridian_deg),
            (self.plus, self.plus_words, cross.second_d, cross.second_meridian_deg),
        )
        for line, label, power, meridian in parts:
            line.set_visible(data.shows_cross)
            label.set_visible(data.shows_cross)
            if data.shows_cross:
                line.set_data(*_ends(meridian))
                self._write(label, on(power, meridian), meridian, taken)
        self.turning.set_data(*_ends(data.meridian_deg))
        # On one of the two meridians the words of that one say it already.
        is_said = data.shows_cross and data.meridian_deg in (
            cross.first_meridian_deg,
            cross.second_meridian_deg,
        )
        self.turning_words.set_visible(not is_said)
        if not is_said:
            self._write(self.turning_words, data.read_off, data.meridian_deg, taken)

    def _write(self, label, words: str, meridian_deg: float, taken: list[Box]) -> None:
        """Write words beyond the lower end of a meridian, which has no numbers."""
        label.set_text(words)
        half = tuple(side / 2.0 for side in size_px(label))
        low, high = _LOWER_DEG
        ends = [min(max(meridian_deg + 180.0 + aside, low), high) for aside in _ASIDE_DEG]
        spots = [self._spot(math.radians(end), *half) for end in ends]
        place(label, words, spots, inside=self.window.box_px, taken=taken)
        # Two powers side by side must not be read as one line.
        left, bottom, right, top = taken.pop()
        taken.append((left - _APART_PX, bottom, right + _APART_PX, top))

    def _spot(self, end: float, half_width: float, half_height: float) -> Spot:
        """Where the middle of words stands so that they just clear the lens in a direction [radians]."""
        way = cmath.rect(1.0, end)
        at = self._middle + way * _clear_of(RADIUS_PX + _WORDS_PX, way, half_width, half_height)
        return at.real, at.imag, 0.0, 0.0


def _clear_of(radius: float, way: complex, half_width: float, half_height: float) -> float:
    """How far along a way the middle of a rectangle stands when it touches a circle from outside."""
    across, up = abs(way.real), abs(way.imag)
    # It touches with its upper or lower side, with its left or right side, or with a corner.
    if (radius + half_height) * across <= half_width * up:
        return (radius + half_height) / up
    if (radius + half_width) * up <= half_height * across:
        return (radius + half_width) / across
    along = across * half_width + up * half_height
    return along + math.sqrt(along**2 + radius**2 - half_width**2 - half_height**2)


def _ends(meridian_deg: float) -> tuple[list[float], list[float]]:
    """Both ends of a meridian on the rim of the lens [shown px from its middle]."""
    end = cmath.rect(RADIUS_PX, math.radians(meridian_deg))
    return [-end.real, end.real], [-end.imag, end.imag]
