"""One lens of a pair as worn: outline and box, the blank about the optical centre, and what sticks out."""

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.optics.blank_fit import BlankFit
from lablib.optics.eye import Eye
from lablib.pictures.blank_fit_data import PairOfBlanks
from lablib.pictures.captions import WORDS_PT
from lablib.pictures.label import Label
from lablib.pictures.lens_section import HATCHED, NOWHERE
from lablib.pictures.palette import (
    BLANK,
    BOXED_CENTRE,
    CUT_AWAY,
    CUTTING_LINE,
    GLASS,
    INK,
    OPTICAL_CENTRE,
    OUTLINE,
    QUIET_INK,
    TOO_SMALL,
    Look,
)
from lablib.pictures.prism_field_arrows import PUPIL
from lablib.pictures.window import Box, Spot, Window, place

FARTHEST = Look(colour=INK, dashes="solid", width_pt=1.0)
DIAMETER = CUTTING_LINE
# Every third of 720 points is as smooth to the eye and three times as fast.
_EVERY = 3
_CIRCLE = np.exp(2j * np.pi * np.arange(181) / 180)
_BESIDE_PX, _HALF_MARK_PX = 7.0, 6.0
# Points that differ by less lie equally far: a symmetrical outline has two or four such points [mm].
_TIE_MM = 1e-6
# Where along the line to the farthest point its length may stand, best first.
_SHARES = (0.6, 0.75, 0.45, 0.9, 1.05)


class LensInFrame:
    """A rim with its box, the blank that is to fill it, and the part that it leaves uncovered.

    window: where it is drawn; eye: whose lens.
    """

    def __init__(self, window: Window, eye: Eye) -> None:
        self.window, self.eye = window, eye
        self._add_areas()
        self._add_lines()
        words = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "color": INK, "zorder": 12}
        self.far_words, self.short_words, self.centre_words, self.diameter_words = (
            window.label(**words) for _ in range(4)
        )

    def _add_areas(self) -> None:
        axes, moving = self.window.axes, self.window.picture.moving
        self.waste = moving(axes.add_patch(Polygon(NOWHERE, zorder=1, **CUT_AWAY.fill())))
        glass = {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "edgecolor": OUTLINE.colour}
        self.glass = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, linewidth=OUTLINE.width_pt, **glass)))
        self.missing = moving(axes.add_patch(Polygon(NOWHERE, zorder=3, hatch="////", **HATCHED)))

    def _add_lines(self) -> None:
        self.box = self._line(4, {"color": QUIET_INK, "linewidth": 0.7})
        self.usable = self._line(4, {"color": QUIET_INK, "linewidth": 0.6})
        self.diameter = self._line(5, DIAMETER.line())
        self.blank = self._line(6, BLANK.line())
        self.outside = self._line(7, {"color": TOO_SMALL.colour, "linewidth": 3.2})
        self.far = self._line(8, FARTHEST.line())
        self.boxed_centre = self._line(9, BOXED_CENTRE.point())
        self.pupil = self._line(10, PUPIL.point() | {"markersize": 12, "markerfacecolor": "none"})
        self.centre = self._line(11, OPTICAL_CENTRE.point() | {"markersize": 11})

    def _line(self, depth: int, style: dict[str, object]):
        return self.window.picture.moving(self.window.axes.plot([], [], zorder=depth, **style)[0])

    def marks(self, data: PairOfBlanks) -> list[Box]:
        """Return boxes round the boxed centre and the optical centre, for words to keep clear of [shown px].

        data: the pair.
        """
        boxed = complex(data.boxed_centre_mm(self.eye))
        return [self._round(at) for at in (boxed, boxed + data.fit(self.eye).centre_mm)]

    def update(self, data: PairOfBlanks, taken: list[Box]) -> None:
        """Draw the lens where it is worn.

        data: the pair; taken: boxes of words and marks to keep clear of, to which these are added [shown px].
        """
        fit, boxed = data.fit(self.eye), data.boxed_centre_mm(self.eye)
        rim = boxed + (fit.outline.x_mm + 1j * fit.outline.y_mm)
        centre = boxed + fit.centre_mm
        self._update_blank(fit, rim, centre)
        half = complex(data.frame.a_mm, data.frame.b_mm) / 2.0
        corners = boxed + np.array([-half, half.conjugate(), half, -half.conjugate(), -half])
        self.box.set_data(corners.real, corners.imag)
        for mark, at in ((self.boxed_centre, boxed), (self.pupil, centre), (self.centre, centre)):
            mark.set_data([at.real], [np.imag(at)])
        self._draw_diameter(fit, rim, boxed)
        self._draw_farthest(fit, rim, centre)
        self._write(fit, rim, boxed, centre, taken)

    def _update_blank(self, fit: BlankFit, rim: np.ndarray, centre: complex) -> None:
        blank, usable = (centre + radius * _CIRCLE for radius in (fit.blank_mm / 2.0, fit.usable_mm))
        self.waste.set_xy(_xy(blank))
        self.glass.set_xy(_xy(rim[::_EVERY]))
        self.blank.set_data(blank.real, blank.imag)
        self.blank.set(**(BLANK if fit.blank_covers else TOO_SMALL).line())
        self.usable.set_data(usable.real, usable.imag)
        beyond = np.maximum(fit.beyond_mm, 0.0)
        out = rim - centre
        pulled_in = rim - out / np.abs(out) * beyond
        self.missing.set_visible(not fit.blank_covers)
        self.missing.set_xy(_xy(np.concatenate([_closed(rim), _closed(pulled_in)[::-1]])))
        shown = _closed(np.where(beyond > 0.0, rim, complex(np.nan, np.nan)))
        self.outside.set_data(shown.real, shown.imag)

    def _draw_diameter(self, fit: BlankFit, rim: np.ndarray, boxed: float) -> None:
        across = self._farthest(fit.outline.radius_mm, rim, nasal=True) - boxed
        self.diameter.set_data([(boxed - across).real, (boxed + across).real], [-across.imag, across.imag])

    def _draw_farthest(self, fit: BlankFit, rim: np.ndarray, centre: complex) -> None:
        far = self._farthest(fit.beyond_mm, rim)
        self.far.set_data([centre.real, far.real], [centre.imag, far.imag])

    def _farthest(self, away_mm: np.ndarray, rim: np.ndarray, *, nasal: bool = False) -> complex:
        """The farthest point of the rim; of several as far, one above and temporal, or nasal if so wished."""
        ties = rim[away_mm >= away_mm.max() - _TIE_MM]
        side = self.eye.nasal_sign * (1.0 if nasal else -1.0)
        return complex(max(ties, key=lambda at: (round(side * at.real, 3), at.imag)))

    def _write(self, fit: BlankFit, rim: np.ndarray, boxed: float, centre: complex, taken: list[Box]) -> None:
        far = self._farthest(fit.beyond_mm, rim)
        aside = 1j * (far - centre) / abs(far - centre)
        across = self._farthest(fit.outline.radius_mm, rim, nasal=True) - boxed
        round_about = (1j, -1j, 1, -1)
        middle = (centre + boxed) / 2.0
        self._place(self.centre_words, decentred(fit), [(middle, round_about)], taken)
        away, way = abs(far - centre), (aside, -aside)
        along = [(centre + share * (far - centre), way) for share in _SHARES]
        self._place(self.far_words, f"{away:.1f}", along, taken)
        words = f"ED {fit.outline.effective_diameter_mm:.1f}"
        along = [(boxed + share * across, round_about) for share in (-0.6, 0.6, -0.9, 0.9)]
        self._place(self.diameter_words, words, along, taken)
        words = "" if fit.blank_covers else f"{fit.beyond_mm.max():.1f} not covered"
        corner = complex(boxed - self.eye.nasal_sign * np.ptp(rim.real) / 2.0, rim.imag.min())
        self._place(self.short_words, words, [(corner, (-1j, -1j - self.eye.nasal_sign))], taken)

    def _place(
        self, label: Label, words: str, tries: list[tuple[complex, tuple[complex, ...]]], taken: list[Box]
    ) -> None:
        """Write a label near one of several points, to one of several sides of it."""
        spots = [
            _spot(*self.window.px(at.real, at.imag), complex(way), reach)
            for reach in (_BESIDE_PX, 3.0 * _BESIDE_PX)
            for at, ways in tries
            for way in ways
        ]
        place(label, words, spots, inside=self._side, taken=taken)

    @property
    def _side(self) -> Box:
        """The half of the window on this lens's side of the bridge."""
        left, low, right, high = self.window.box_px
        middle, _ = self.window.px(0.0, 0.0)
        gap = _BESIDE_PX / 2.0
        return (left, low, middle - gap, high) if self.eye is Eye.RIGHT else (middle + gap, low, right, high)

    def _round(self, at: complex) -> Box:
        x, y = self.window.px(np.real(at), np.imag(at))
        return (x - _HALF_MARK_PX, y - _HALF_MARK_PX, x + _HALF_MARK_PX, y + _HALF_MARK_PX)


def decentred(fit: BlankFit) -> str:
    """Return where an optical centre lies from its boxed centre, in the trade's words.

    fit: of the lens.
    """
    parts = [
        f"{abs(away):.1f} {plus if away > 0.0 else minus}"
        for away, plus, minus in ((fit.in_mm, "in", "out"), (fit.up_mm, "up", "down"))
        if f"{abs(away):.1f}" != "0.0"
    ]
    return ", ".join(parts) or "at the boxed centre"


def _spot(x: float, y: float, way: complex, reach: float) -> Spot:
    beside, above = (float(np.sign(round(part, 1))) for part in (way.real, way.imag))
    return (x + reach * way.real, y + reach * way.imag, beside, above)


def _xy(line: np.ndarray) -> np.ndarray:
    return np.column_stack([line.real, line.imag])


def _closed(line: np.ndarray) -> np.ndarray:
    return np.append(line, line[0])
