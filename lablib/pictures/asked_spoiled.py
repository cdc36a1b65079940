"""A lens on its block after its cut, as a question shows it: the answer is picked, or is its turn."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.patches import Rectangle

from lablib.bench.contact import block_contact
from lablib.bench.geometry import angles_rad
from lablib.bench.parameter import default
from lablib.errors import LabError, require_between, require_one_of
from lablib.pictures.asked_base import BAR_PX, HEADING_Y_PX, HIGH_PX, KEY_Y_PX, Asked, AskedPicture
from lablib.pictures.asked_sign import Stand, spots_round
from lablib.pictures.captions import KEY_WORDS_PX, ScaleBar, add_key, step_down, write_still
from lablib.pictures.palette import BLOCK, QUIET_INK
from lablib.pictures.turned_lens import BLOCK_LINE, LENS_LINE, ORDERED, TurnedLens, patch_style
from lablib.pictures.turned_lens_data import DESIGNS, SeenLens, usual_marks
from lablib.pictures.window import shown_px

# Few scales, so that one lens looks larger than another [shown px/mm].
SCALES_PX_PER_MM = (5.4, 4.8, 4.2, 3.6, 3.0, 2.4, 1.8, 1.2)
_MARGIN_PX, _FEWEST, _WHOLE = 6.0, 8, 360.0
# A hand from the chuck axis ends so far out.
_HAND_MM, _NO, _YES = 19.0, 0, 1
_PATCH_PX = 370.0
_KEY = (
    (298.0, HEADING_Y_PX, BLOCK, "block"),
    (6.0, KEY_Y_PX, BLOCK_LINE, "block's line"),
    (122.0, KEY_Y_PX, LENS_LINE, "lens's line"),
    (234.0, KEY_Y_PX, ORDERED, "as ordered"),
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SpoiledLens:
    """One lens on its block after its cut, the block level, seen from the front.

    finished_x_mm, finished_y_mm: points round its rim, from the chuck axis, shape (N,) [mm].
    ordered_x_mm, ordered_y_mm: points of the ordered outline in the same directions, shape (N,) [mm].
    line_deg: how far the lens's line is turned against the block's, anticlockwise, -180 to 180 [degrees].
    design: which marks the lens has, one of `lablib.pictures.turned_lens_data.DESIGNS`.
    burnt: 1 where a burnt patch is on the coat, else 0.
    block: "round" or "half-eye".

    Raises LabError for rows that do not go together, or a number or a word that cannot be.
    """

    finished_x_mm: np.ndarray
    finished_y_mm: np.ndarray
    ordered_x_mm: np.ndarray
    ordered_y_mm: np.ndarray
    line_deg: float
    design: str
    burnt: int
    block: str
    seen: SeenLens = field(init=False)

    def __post_init__(self) -> None:
        rim, ordered = self._ring("finished"), self._ring("ordered")
        if rim.shape != ordered.shape:
            raise LabError(
                f"rim of a drawing has {rim.size} points, its ordered outline {ordered.size}: "
                "give as many of both"
            )
        require_between("line_deg", self.line_deg, low=-180.0, high=180.0, unit="degrees")
        require_one_of("design", self.design, DESIGNS)
        if self.burnt not in (_NO, _YES):
            raise LabError(f"burnt {self.burnt!r} is neither 0 nor 1: give 1 for a lens with a burnt patch")
        object.__setattr__(self, "seen", self._seen(rim, ordered))

    def _ring(self, name: str) -> np.ndarray:
        x, y = (np.asarray(getattr(self, f"{name}_{way}_mm"), dtype=float) for way in "xy")
        if x.ndim != 1 or x.shape != y.shape or x.size < _FEWEST or not np.all(np.isfinite([x, y])):
            raise LabError(
                f"{name} outline of a drawing has rows of shape {x.shape} and {y.shape}: give two rows of "
                f"one length, {_FEWEST} finite numbers or more"
            )
        return x + 1j * y

    def _seen(self, rim: np.ndarray, ordered: np.ndarray) -> SeenLens:
        short = np.abs(ordered) - np.abs(rim)
        worst, angle = int(short.argmax()), angles_rad(rim.size)
        return SeenLens(
            rim=rim,
            ordered=ordered,
            block=block_contact(self.block).reach_mm(angle) * np.exp(1j * angle),
            marks=usual_marks(self.design),
            line_deg=float(self.line_deg),
            short_mm=max(0.0, float(short[worst])),
            short_at=complex(ordered[worst]),
            patch_mm=default("tip_radius_mm") if self.burnt else 0.0,
        )


class SpoiledLensPicture(AskedPicture):
    """A lens as it comes off the machine; how far it turned and what is missing is told once it is over."""

    case = SpoiledLens
    unit, digits = "°", 0

    def add_case(self) -> None:
        """Add the lens, its key and the scale."""
        self.add_window(up_px=HIGH_PX / 2.0)
        self.lens = TurnedLens(self.window)
        self.scale = ScaleBar(self.window, *BAR_PX)
        self.heading("A lens on its block after the cut, facing you")
        style = {"transform": shown_px(self), **patch_style()}
        self.figure.add_artist(Rectangle((_PATCH_PX, HEADING_Y_PX - 6.0), 24.0, 12.0, **style))
        write_still(self, (_PATCH_PX + KEY_WORDS_PX, HEADING_Y_PX), "burnt patch", color=QUIET_INK)
        add_key(self, _KEY)

    def show_case(self, case: SpoiledLens, data: Asked) -> None:
        """Draw the lens about the chuck axis.

        case: the lens; data: whether it is over.
        """
        left, bottom, right, top = self.window.box_px
        farthest = np.concatenate([case.seen.rim, case.seen.ordered])
        room_px = np.array([right - left, top - bottom]) / 2.0 - _MARGIN_PX
        reach = np.array([np.abs(farthest.real).max(), np.abs(farthest.imag).max()])
        self.window.set_scale(step_down(SCALES_PX_PER_MM, float((room_px / reach).min())))
        # Where the answer is an angle, its own sign tells the turn.
        self.lens.update(case.seen, self.taken, told=data.is_over and data.right is None)
        self.scale.update()

    def stand(self, case: SpoiledLens, value: float, right: bool) -> Stand:
        """Return a hand from the chuck axis, turned from the block's line.

        case: the lens; value: how far it turned, anticlockwise [degrees]; right: whether it is the right one.
        """
        end = _HAND_MM * np.exp(1j * np.radians(value % _WHOLE))
        spots = spots_round(*self.window.px(end.real, end.imag), (1, 0), (-1, 0), (0, 1), (0, -1))
        return Stand(
            line=np.array([(0.0, 0.0), (end.real, end.imag)]), mark=(end.real, end.imag), spots=spots
        )

    def same(self, one: float, other: float) -> bool:
        """Return whether two turns leave a lens in one place to the nearest degree.

        one, other: [degrees].
        """
        return abs((one - other + _WHOLE / 2.0) % _WHOLE - _WHOLE / 2.0) <= 0.5

    def words(self, name: str, value: float, stand: Stand) -> str:
        """Return whose angle it is, and the angle.

        name: whose it is; value: [degrees]; stand: where it stands.
        """
        return f"{name} {value:.0f}°"
