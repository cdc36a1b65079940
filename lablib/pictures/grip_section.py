"""The grip seen from the side: block, pad, film, coat, lens, tape and back tip, one above the other."""

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle

from lablib.pictures.captions import WORDS_PT
from lablib.pictures.grip_data import Grip, JointShares
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import BLOCK, GLASS, INK, OKABE_ITO, PAPER, QUIET_INK, TOO_SMALL, Look
from lablib.pictures.window import Box, add_axes

METAL = Look(colour=QUIET_INK, opacity=0.35)
PAD = Look(colour=OKABE_ITO["yellow"], opacity=0.55)
FILM = Look(colour=OKABE_ITO["bluish green"], opacity=0.55)
COAT = Look(colour=OKABE_ITO["blue"], opacity=0.75)
TAPE = Look(colour=OKABE_ITO["orange"], opacity=0.7)
TIP = Look(colour=INK, opacity=0.55)
GRIP_LAYER = Look(colour=OKABE_ITO["reddish purple"], dashes="solid", width_pt=3.4)
SOIL = Look(colour=INK, mark="o", hollow=True, width_pt=1.1)
SLIPS = Look(colour=TOO_SMALL.colour, dashes="solid", width_pt=4.0, mark="")

# Widths are drawn so [shown px/mm]; heights are not to scale.
_PX_PER_MM = 6.5
_MIDDLE, _LENS_HALF, _SHAFT_HALF = 158.0, 98.0, 30.0
# Heights of the layers' borders, from the picture's lower edge [shown px].
_TOP, _BLOCK, _PAD, _CORE, _FILM, _COAT, _LENS = 466.0, 432.0, 388.0, 368.0, 348.0, 332.0, 316.0
_BACK, _TAPE, _TIP, _SHAFT, _END = 258.0, 242.0, 228.0, 184.0, 158.0
_TIP_HALF_MM = 9.0
# How far the face of a tip that does not fit stands off, drawn larger than it is [shown px].
_STANDS_OFF = 9.0
_SOIL_MARKS = {"clean": 0, "fingerprint": 5, "oily": 15}
_ACROSS = np.linspace(-1.0, 1.0, 31)
_LEFT_WORDS_X = 6.0


class GripSection:
    """A column of a picture that shows the parts of the grip.

    picture: the picture it is part of; box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.picture = picture
        self.axes = add_axes(picture, box_px)
        self.axes.set_axis_off()
        left, bottom, right, top = box_px
        set_limits(self.axes, x=(left, right), y=(bottom, top))
        self._add_layers()
        self._add_marks()
        self.names = [self._name() for _ in range(7)]

    def _add_layers(self) -> None:
        self.upper, self.lower = (self._layer(METAL, 1) for _ in range(2))
        self.block = self._layer(BLOCK, 2)
        self.pad = self._layer(PAD, 2)
        self.film = self._layer(FILM, 2, hatch="....")
        self.front_coat, self.back_coat = (self._layer(COAT, 3) for _ in range(2))
        self.lens = self._layer(GLASS, 2)
        self.tape = self._layer(TAPE, 3)
        dark = {"facecolor": to_rgba(TIP.colour, TIP.opacity), "edgecolor": INK, "linewidth": 0.8}
        self.tip = self.picture.moving(self.axes.add_patch(Polygon(NOWHERE, zorder=2, **dark)))
        self.air = self.picture.moving(
            self.axes.add_patch(Polygon(NOWHERE, zorder=5, facecolor=PAPER, edgecolor=INK, linewidth=0.8))
        )
        self.notch = self._layer(Look(colour=PAPER), 4)

    def _layer(self, look: Look, depth: int, hatch: str | None = None) -> Rectangle:
        style = {"facecolor": to_rgba(look.colour, look.opacity), "edgecolor": INK, "linewidth": 0.8}
        patch = Rectangle((0.0, 0.0), 0.0, 0.0, zorder=depth, hatch=hatch, **style)
        return self.picture.moving(self.axes.add_patch(patch))

    def _add_marks(self) -> None:
        self.grip_layer, self.slips, self.core = (
            self._line(depth, look.line()) for depth, look in ((6, GRIP_LAYER), (8, SLIPS), (4, _CORE_LINE))
        )
        self.soil = self._line(9, SOIL.point() | {"markersize": 5})
        self.axis = self._line(9, {"color": INK, "linewidth": 0.7, "linestyle": (0, (8, 3, 1.5, 3))})
        self.axis.set_data([_MIDDLE, _MIDDLE], [_END - 10.0, _TOP + 6.0])

    def _line(self, depth: int, style: dict[str, object]) -> Line2D:
        return self.picture.moving(self.axes.plot([], [], zorder=depth, **style)[0])

    def _name(self):
        return self.picture.label(self.axes, fontsize=WORDS_PT, color=INK, va="center", zorder=10)

    def update(self, grip: Grip) -> None:
        """Draw the parts of a grip.

        grip: what to draw.
        """
        setup = grip.setup
        self.half = grip.held.contact.half_height_mm * _PX_PER_MM
        self._draw_front(grip)
        self._draw_back(grip)
        _set(self.notch, 6.0 * setup.key_play_mm, _BLOCK, _BLOCK + 10.0, at=_MIDDLE + _SHAFT_HALF)
        self._mark(grip)
        named = (
            ("block", (_BLOCK + _PAD) / 2.0),
            ("pad", (_PAD + (_FILM if grip.film else _COAT)) / 2.0),
            ("film", (_FILM + _COAT) / 2.0 if grip.film else None),
            ("coat", (_COAT + _LENS) / 2.0 if setup.coat != "uncoated" else None),
            ("lens", (_LENS + _BACK) / 2.0),
            ("tape", (_TAPE + _TIP) / 2.0 if setup.back_tape else None),
            ("back tip", (_SHAFT + _TIP) / 2.0),
        )
        for label, (words, y) in zip(self.names, named, strict=True):
            label.set_text("" if y is None else words)
            label.set_position((_LEFT_WORDS_X, _LENS if y is None else y))

    def _draw_front(self, grip: Grip) -> None:
        _set(self.upper, _SHAFT_HALF, _BLOCK, _TOP)
        _set(self.block, self.half, _PAD, _BLOCK)
        _set(self.pad, self.half, _FILM if grip.film else _COAT, _PAD)
        # A film lies over all of the front, the pad on a part of it.
        _set(self.film, _LENS_HALF if grip.film else 0.0, _COAT, _FILM)
        coated = grip.setup.coat != "uncoated"
        _set(self.front_coat, _LENS_HALF if coated else 0.0, _LENS, _COAT)
        _set(self.lens, _LENS_HALF, _BACK if coated else _TAPE, _LENS if coated else _COAT)
        share = grip.setup.film_wrinkle if grip.film else 0.0
        wide = share * self.half
        arch = np.append(_COAT + 12.0 * (1.0 - _ACROSS**2), _COAT)
        across = np.append(_MIDDLE + wide * _ACROSS, _MIDDLE - wide)
        self.air.set_xy(np.column_stack([across, arch]))
        self.air.set_visible(wide > 0.0)

    def _draw_back(self, grip: Grip) -> None:
        coated, taped = grip.setup.coat != "uncoated", grip.setup.back_tape
        _set(self.back_coat, _LENS_HALF if coated else 0.0, _TAPE, _BACK)
        _set(self.tape, 0.8 * _LENS_HALF if taped else 0.0, _TIP, _TAPE)
        _set(self.lower, _SHAFT_HALF, _END, _SHAFT)
        half = _TIP_HALF_MM * _PX_PER_MM
        face = self.back_y(grip) - _STANDS_OFF * _face(grip.setup.tip_fit)
        across = np.concatenate([[-half], half * _ACROSS, [half]])
        self.tip.set_xy(np.column_stack([_MIDDLE + across, np.concatenate([[_SHAFT], face, [_SHAFT]])]))

    def _mark(self, grip: Grip) -> None:
        setup = grip.setup
        layered = setup.coat == "slick" and setup.grip_layer == "present"
        self.grip_layer.set_data(*_level(_LENS_HALF, _COAT - 5.0))
        self.grip_layer.set_visible(layered)
        marks = _SOIL_MARKS[setup.skin]
        self.soil.set_data(_MIDDLE + 0.9 * self.half * np.linspace(-1.0, 1.0, marks), np.full(marks, _COAT))
        self.core.set_data(*_level(self.half, _CORE))
        self.slips.set_data(*_level(self.half, self.joint_y(grip, grip.weakest)))

    def joint_y(self, grip: Grip, joint: JointShares) -> float:
        """Return how high a joint of the front stack is drawn [shown px].

        grip: which has it; joint: one of its joints.
        """
        at = {id(grip.block): _PAD, id(grip.core): _CORE, id(grip.film): _FILM, id(grip.lens): _COAT}
        return at[id(joint)]

    def back_y(self, grip: Grip) -> float:
        """Return how high the joint of the back tip is drawn [shown px].

        grip: which has it.
        """
        return _TIP if grip.setup.back_tape else _TAPE

    @property
    def right_x(self) -> float:
        """Where the lens ends at the right [shown px]."""
        return _MIDDLE + _LENS_HALF

    @property
    def tip_right_x(self) -> float:
        """Where the back tip ends at the right [shown px]."""
        return _MIDDLE + _TIP_HALF_MM * _PX_PER_MM

    @property
    def block_right_x(self) -> float:
        """Where block and pad end at the right [shown px]."""
        return _MIDDLE + self.half


def _set(patch: Rectangle, half: float, low: float, high: float, at: float = _MIDDLE) -> None:
    patch.set_bounds(at - half, low, 2.0 * half, high - low)
    patch.set_visible(half > 0.0)


def _level(half: float, y: float) -> tuple[list[float], list[float]]:
    return [_MIDDLE - half, _MIDDLE + half], [y, y]


def _face(fit: str) -> np.ndarray:
    """How far a tip's face stands off the back from rim to rim, the farthest place at 1."""
    return {
        "flat-tip": 1.0 - _ACROSS**2,
        "steep-tip": _ACROSS**2,
        "toric": _ACROSS**2,
        "tilted": (1.0 + _ACROSS) / 2.0,
    }.get(fit, np.zeros_like(_ACROSS))


_CORE_LINE = Look(colour=INK, dashes=(0, (2, 2)), width_pt=0.8)
