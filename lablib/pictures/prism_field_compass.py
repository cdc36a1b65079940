"""One prism taken apart: both parts and the whole as arrows in a ring of degrees."""

import numpy as np
from matplotlib.lines import Line2D

from lablib.pictures.captions import WORDS_PT, moving_words, step_up, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import INK, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.prism_field_arrows import BASE, arrows, prism_dioptres
from lablib.pictures.prism_field_data import PrismThere
from lablib.pictures.window import Box, Spot, Window, place, shown_px

# Few rings, so that the arrows hardly ever change their scale [prism D].
TOPS_PRISM_D = (0.5, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 16.0, 24.0)
ACROSS = Look(colour=OKABE_ITO["blue"], dashes=(0, (3.4, 1.2)), width_pt=2.2)
UPRIGHT = Look(colour=OKABE_ITO["bluish green"], dashes=(0, (2, 1.2)), width_pt=2.2)
_RING_PX, _NUMBERS_PX, _TICK_PX, _HEAD_PX = 124.0, 141.0, 4.0, 12.0
# The words of the sides stand under the numbers 0 and 180, and beyond 90 and 270.
_WORDS_PX, _UNDER_PX, _BESIDE_PX = 157.0, 15.0, 9.0
# The ring stands higher than the middle, so that there is room for a line below it.
_RAISED_PX = 8.0
_NUMBERS_DEG = tuple(range(0, 360, 30))


class Compass:
    """A ring whose radius is an amount of prism; the base lies where an arrow points.

    picture: the picture it is part of.
    box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        _, bottom, _, top = box_px
        self.window = Window(picture, box_px, up_px=(top - bottom) / 2.0 + _RAISED_PX)
        self._middle = complex(*self.window.px(0.0, 0.0))
        self._add_ring(picture)
        self._add_arrows(picture)
        axes = self.window.axes
        style = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "color": INK, "zorder": 9}
        self.across_words, self.upright_words, self.whole_words = (
            self.window.label(**style) for _ in range(3)
        )
        x, y = self._middle.real, self._middle.imag
        self.sides = [
            moving_words(picture, axes, (x + side * _NUMBERS_PX, y - _UNDER_PX), color=INK, ha="center")
            for side in (1.0, -1.0)
        ]
        for side, words in ((1.0, "up"), (-1.0, "down")):
            write_still(picture, (x, y + side * _WORDS_PX), words, ha="center")
        self.base_words = moving_words(picture, axes, (x, bottom + 6.0), color=INK, ha="center")
        self.top = moving_words(picture, axes, (x, bottom - 20.0), color=QUIET_INK, ha="center")

    def _add_ring(self, picture: KeptPicture) -> None:
        """Add the ring, a tick every ten degrees, a number every thirty, and both lines through it."""
        ring = _RING_PX * np.exp(1j * np.radians(np.arange(0, 361, 3)))
        ticks = np.exp(1j * np.radians(np.arange(0, 360, 10)))
        cross = [np.array([-_RING_PX, _RING_PX]) * way for way in (1.0, 1j)]
        for line in (ring, *cross, *(np.array([_RING_PX - _TICK_PX, _RING_PX]) * tick for tick in ticks)):
            at = self._middle + line
            style = {"color": QUIET_INK, "linewidth": 0.7, "transform": shown_px(picture)}
            picture.figure.add_artist(Line2D(at.real, at.imag, **style))
        self._numbers: list[Box] = []
        for degrees in _NUMBERS_DEG:
            at = self._middle + _NUMBERS_PX * np.exp(1j * np.radians(degrees))
            write_still(picture, (at.real, at.imag), f"{degrees}", color=QUIET_INK, ha="center")
            self._numbers.append((at.real - 14.0, at.imag - 8.0, at.real + 14.0, at.imag + 8.0))

    def _add_arrows(self, picture: KeptPicture) -> None:
        axes = self.window.axes
        dotted = {"color": QUIET_INK, "linestyle": (0, (1, 2)), "linewidth": 1.0}
        self.frame = picture.moving(axes.plot([], [], zorder=3, **dotted)[0])
        self.across, self.upright, self.whole = (
            picture.moving(axes.plot([], [], zorder=depth, **look.line())[0])
            for depth, look in ((4, ACROSS), (5, UPRIGHT), (6, BASE))
        )

    def update(self, data: PrismThere) -> None:
        """Draw the prism at the point.

        data: what to draw.
        """
        top = step_up(TOPS_PRISM_D, data.reach_prism_d)
        self.window.set_scale(_RING_PX / top)
        base = data.base
        head = _HEAD_PX / self.window.px_per_mm
        for line, reach in (
            (self.across, complex(base.real, 0.0)),
            (self.upright, complex(0.0, base.imag)),
            (self.whole, base),
        ):
            line.set_data(*arrows(0j, reach, head=head).T)
        self.frame.set_data([base.real, base.real, 0.0], [0.0, base.imag, base.imag])
        for label, words in zip(self.sides, ("in", "out")[:: data.eye.nasal_sign], strict=True):
            label.set_text(words)
        self.top.set_text(f"from middle to ring: {prism_dioptres(top)}")
        self.base_words.set_text(data.notations.full_circle)
        self._write(data)

    def _write(self, data: PrismThere) -> None:
        """Write each part beyond its arrow, and the whole beyond its own where there are two parts."""
        taken = list(self._numbers)
        space = {"inside": self.window.box_px, "taken": taken, "drawn": self._drawn(data.base)}
        parts = (
            (self.across_words, data.in_prism_d, ("in", "out"), complex(data.base.real, 0.0)),
            (self.upright_words, data.up_prism_d, ("up", "down"), complex(0.0, data.base.imag)),
        )
        shown = [part for part in parts if f"{abs(part[1]):.2f}" != "0.00"]
        for label, _, _, _ in parts:
            label.set_visible(False)
        for label, value, words, end in shown:
            label.set_visible(True)
            place(label, f"{abs(value):.2f} {words[value < 0.0]}", self._spots(end, data.base), **space)
        self.whole_words.set_visible(len(shown) > 1)
        if len(shown) > 1:
            place(self.whole_words, f"{abs(data.base):.2f}", self._spots(data.base, data.base), **space)

    def _spots(self, end: complex, base: complex) -> list[Spot]:
        """Where words may stand about the point of an arrow: beyond it first, then beside it."""
        x, y = self.window.px(end.real, end.imag)
        way = end / abs(end)
        # Beside a part, the words stand first on the side where the whole is not.
        aside = -1j if (base * (way * 1j).conjugate()).real > 0.0 else 1j
        slant = np.exp(0.8 * aside)
        turned = [way, way * aside, -way * aside, way * slant, way / slant, -way]
        return [
            (x + _BESIDE_PX * one.real, y + _BESIDE_PX * one.imag, round(one.real, 2), round(one.imag, 2))
            for one in turned
        ]

    def _drawn(self, base: complex) -> list[Box]:
        """Boxes along the three arrows, for words to keep off."""
        found = []
        for end in (complex(base.real, 0.0), complex(0.0, base.imag), base):
            for share in np.linspace(0.1, 1.0, 10):
                x, y = self.window.px(share * end.real, share * end.imag)
                found.append((x - 3.0, y - 3.0, x + 3.0, y + 3.0))
        return found
