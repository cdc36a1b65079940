"""A lens from the front and a round blank about its optical centre: the answer is the blank's diameter."""

import numpy as np

from lablib.pictures.asked_base import HIGH_PX, RIM_PX, WIDE_PX, Asked, AskedPicture
from lablib.pictures.asked_outline import FrontCase, FrontLens
from lablib.pictures.asked_sign import Stand, spots_round
from lablib.pictures.captions import step_down

# Few scales, so that the size of the right blank cannot be told from how it is drawn [shown px/mm].
SCALES_PX_PER_MM = (3.2, 2.7, 2.3, 1.9, 1.5, 1.2)
_MOST_PX = 117.0
# The lens stands left of the middle, so that words find a place at its right.
_ACROSS_PX = 146.0
# So much larger than the effective diameter and both decentrations are wrong answers that are to be seen.
_ROOM = 1.18
_CIRCLE = np.exp(2j * np.pi * np.arange(73) / 72)
_BESIDE_DEG = 25.0


class BlankPicture(AskedPicture):
    """A lens as an observer facing the wearer sees it, its optical centre in the middle of the picture."""

    case = FrontCase
    unit, digits = "mm", 1

    def add_case(self) -> None:
        """Add the lens."""
        self.add_window(up_px=HIGH_PX / 2.0, across_px=_ACROSS_PX)
        self.lens = FrontLens(self.window)
        self.heading("One lens, facing the wearer")

    def show_case(self, case: FrontCase, data: Asked) -> None:
        """Draw the lens about its optical centre.

        case: the lens; data: nothing else counts.
        """
        largest = _ROOM * float(np.abs(case.outline).max() + abs(case.centre))
        self.window.set_scale(step_down(SCALES_PX_PER_MM, _MOST_PX / largest))
        self.taken += self.lens.show(case, case.centre)

    def stand(self, case: FrontCase, value: float, right: bool) -> Stand:
        """Return a blank as a circle: the right one marked where the outline reaches farthest.

        case: the lens; value: diameter [mm]; right: whether it is the right one.
        """
        radius = value / 2.0
        if not 0.0 <= radius <= _MOST_PX / self.window.px_per_mm:
            return self._off(radius)
        outline = case.outline - case.centre
        farthest = outline[np.abs(outline).argmax()]
        # Both have their words at the right, the learner's above the other.
        beside = radius * np.exp(1j * np.radians(-_BESIDE_DEG if right else _BESIDE_DEG))
        circle, mark = radius * _CIRCLE, radius * farthest / abs(farthest) if right else beside
        x, y = self.window.px(beside.real, beside.imag)
        spots = [(x + away, y + up, 1, 0) for away in (12.0, 26.0, 42.0, 60.0) for up in (0.0, 16.0, -16.0)]
        return Stand(
            line=np.column_stack([circle.real, circle.imag]), mark=(mark.real, mark.imag), spots=spots
        )

    def _off(self, radius: float) -> Stand:
        """Return an arrow at the right rim for a blank too large to draw, at the left for none at all."""
        off, away = ("right", 1) if radius > 0.0 else ("left", -1)
        end = WIDE_PX - _ACROSS_PX - RIM_PX if away > 0 else RIM_PX - _ACROSS_PX
        x = end / self.window.px_per_mm
        spots = spots_round(*self.window.px(x, 0.0), (-away, 1), (-away, -1), (-away, 0))
        return Stand(line=np.array([(0.0, 0.0), (x, 0.0)]), mark=(x, 0.0), spots=spots, off=off)
