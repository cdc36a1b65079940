"""A lens from the front and a place on its edge: the answer is an angle round the boxed centre."""

from dataclasses import dataclass

import numpy as np
from matplotlib.lines import Line2D

from lablib.errors import require_between
from lablib.optics.eye import Eye
from lablib.pictures.asked_base import ASIDE_PX, BOX_PX, HEADING_Y_PX, HIGH_PX, KEY_Y_PX, Asked, AskedPicture
from lablib.pictures.asked_outline import FrontCase, FrontLens
from lablib.pictures.asked_sign import Stand, boxes_along, words_in
from lablib.pictures.captions import HEADING_PT, KEY_WORDS_PX, WORDS_PT, moving_words, step_down, write_still
from lablib.pictures.label import Label
from lablib.pictures.palette import CYLINDER_AXIS, INK, QUIET_INK
from lablib.pictures.window import Box, Spot, place, shown_px

SCALES_PX_PER_MM = (3.2, 2.9, 2.6, 2.3, 2.0, 1.6, 1.2)
# The lens lies inside a ring of degrees: its radius, the lens's farthest point, and the numbers on it.
_RING_PX, _FARTHEST_PX, _NUMBERS_PX = 97.0, 91.0, 110.0
_TICK_PX = 4.0
# Words stand beyond the ring or beyond its numbers, turned off by so much where there is no room.
_WORDS_PX = (106.0, 120.0)
_TURNS = np.exp(1j * np.radians([0, 6, -6, 12, -12, 18, -18, 25, -25, 35, -35, 50, -50])).tolist()
_FAR_MM = 200.0
_WHOLE, _KEY_PX = 360.0, 248.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EdgePlace(FrontCase):
    """One lens from the front, of which a place on the edge is asked.

    axis_deg: cylinder axis, above 0 and up to 180 [degrees]; 0 for none.
    eye: "right" or "left".

    Raises LabError as `FrontCase` does, and for an axis or an eye that cannot be.
    """

    axis_deg: float
    eye: str

    def __post_init__(self) -> None:
        # Zero-argument super() does not work in a dataclass with slots.
        FrontCase.__post_init__(self)
        require_between("axis_deg", self.axis_deg, low=0.0, high=180.0, unit="degrees")
        Eye.of(self.eye)


class EdgePlacePicture(AskedPicture):
    """A lens as an observer facing the wearer sees it, inside a ring of degrees."""

    case = EdgePlace
    unit, digits = "°", 0

    def add_case(self) -> None:
        """Add the lens, the ring and the words for both sides."""
        self.add_window(up_px=HIGH_PX / 2.0)
        self.lens = FrontLens(self.window)
        axes = self.window.axes
        self.axis = self.moving(axes.plot([], [], zorder=4, **CYLINDER_AXIS.line())[0])
        self.axis.set_clip_path(self.lens.glass)
        self.head = moving_words(self, axes, (ASIDE_PX, HEADING_Y_PX), size=HEADING_PT, color=INK)
        self.sides = [words_in(self.window, color=QUIET_INK) for _ in range(2)]
        self.key = self._add_axis_key()
        self._add_ring()

    def _add_axis_key(self) -> tuple[Line2D, Label]:
        """Add the sign of the cylinder axis with its words, for lenses that have one."""
        line = Line2D(
            [_KEY_PX, _KEY_PX + 24.0], [KEY_Y_PX] * 2, transform=shown_px(self), **CYLINDER_AXIS.line()
        )
        at_px = (_KEY_PX + KEY_WORDS_PX, KEY_Y_PX)
        words = moving_words(self, self.window.axes, at_px, color=QUIET_INK)
        words.set_text("cylinder axis")
        return self.moving(self.figure.add_artist(line)), words

    def _add_ring(self) -> None:
        """Add the ring, a tick every ten degrees, a number every thirty, and keep their boxes."""
        middle = complex(*self.window.px(0.0, 0.0))
        ring = _RING_PX * np.exp(1j * np.radians(np.arange(0, 361, 5)))
        ticks = np.exp(1j * np.radians(np.arange(0, 360, 10)))
        for line in (ring, *(np.array([_RING_PX - _TICK_PX, _RING_PX]) * tick for tick in ticks)):
            style = {"color": QUIET_INK, "linewidth": 0.6, "transform": shown_px(self)}
            self.figure.add_artist(Line2D((middle + line).real, (middle + line).imag, **style))
        self.numbers = [self._number(degrees, middle) for degrees in range(0, 360, 30)]
        self.ring = boxes_along(self.window, np.column_stack([ring.real, ring.imag]))

    def _number(self, degrees: int, middle: complex) -> Box:
        at = middle + _NUMBERS_PX * np.exp(1j * np.radians(degrees))
        write_still(self, (at.real, at.imag), f"{degrees}", size=WORDS_PT, color=QUIET_INK, ha="center")
        half = 4.0 + 4.0 * len(str(degrees))
        return (at.real - half, at.imag - 8.0, at.real + half, at.imag + 8.0)

    def show_case(self, case: EdgePlace, data: Asked) -> None:
        """Draw the lens about its boxed centre.

        case: the lens; data: nothing else counts.
        """
        self.window.set_scale(step_down(SCALES_PX_PER_MM, _FARTHEST_PX / float(np.abs(case.outline).max())))
        self.taken += self.lens.show(case, 0j) + self.numbers
        self.drawn += self.ring
        eye = Eye.of(case.eye)
        self.head.set_text(f"Lens of the {eye.value} eye, facing the wearer")
        sides = ("temporal", "nasal")[:: eye.nasal_sign]
        for label, words, spot in zip(self.sides, sides, _side_spots(), strict=True):
            place(label, words, [spot], **self.space)
        for artist in (self.axis, *self.key):
            artist.set_visible(case.axis_deg > 0.0)
        line = case.centre + np.array([-_FAR_MM, _FAR_MM]) * np.exp(1j * np.radians(case.axis_deg))
        self.axis.set_data(line.real, line.imag)

    def stand(self, case: EdgePlace, value: float, right: bool) -> Stand:
        """Return a hand from the boxed centre to the ring, with its mark on the outline.

        case: the lens; value: angle [degrees]; right: whether it is the right one.
        """
        way = np.exp(1j * np.radians(value % _WHOLE))
        mark, end = way * reach_mm(case.outline, way), way * _RING_PX / self.window.px_per_mm
        return Stand(
            line=np.array([(0.0, 0.0), (end.real, end.imag)]),
            mark=(mark.real, mark.imag),
            spots=[self._spot(way * turn, away) for turn in _TURNS for away in _WORDS_PX],
        )

    def _spot(self, way: complex, away_px: float) -> Spot:
        """Return the spot for words in a direction, so far from the boxed centre."""
        x, y = self.window.px(0.0, 0.0)
        side = 1 if way.real > 0.0 else -1
        return (x + away_px * way.real, y + away_px * way.imag, side, 0.5 * way.imag)

    def same(self, one: float, other: float) -> bool:
        """Return whether two angles are one place to the nearest degree.

        one, other: [degrees].
        """
        return abs((one - other + _WHOLE / 2.0) % _WHOLE - _WHOLE / 2.0) <= 0.5

    def words(self, name: str, value: float, stand: Stand) -> str:
        """Return whose angle it is, and the angle from 0 up to 359.

        name: whose it is; value: [degrees]; stand: where it stands.
        """
        return f"{name} {round(value) % int(_WHOLE)}°"


def _side_spots() -> list[Spot]:
    middle = (BOX_PX[1] + BOX_PX[3]) / 2.0
    return [(BOX_PX[0], middle, 1, 0), (BOX_PX[2], middle, -1, 0)]


def reach_mm(outline: np.ndarray, way: complex) -> float:
    """Return how far the outline lies from the boxed centre in a direction [mm].

    outline: points x + iy, shape (N,) [mm]; way: of length 1.
    """
    turned = outline * np.conj(way)
    after = np.roll(turned, -1)
    crosses = (turned.imag <= 0.0) != (after.imag <= 0.0)
    one, other = turned[crosses], after[crosses]
    return float((one.real - one.imag * (other.real - one.real) / (other.imag - one.imag)).max())
