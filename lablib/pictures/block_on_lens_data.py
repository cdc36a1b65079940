"""What the picture of a block on a lens shows: where it stands, and where block and tip bear."""

from dataclasses import dataclass

import numpy as np

from lablib.bench.bearing import Bearing
from lablib.bench.foundation import Pressed
from lablib.job.eye_sheet import EyeSheet


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SideView:
    """The level cut through the chuck axis; heights from the front at that axis, upwards [mm].

    along_mm: shape (N,), to the observer's right of the chuck axis [mm].
    front_mm, back_mm: shape (N,), both surfaces [mm].
    block_half_mm, tip_half_mm: how far block and tip reach [mm].
    pad_mm: thickness of the pad [mm].
    block_off_mm, tip_off_mm: shape (N,), how far pad and tip stand off the lens; below 0 where they are
        squeezed [mm].
    """

    along_mm: np.ndarray
    front_mm: np.ndarray
    back_mm: np.ndarray
    block_half_mm: float
    tip_half_mm: float
    pad_mm: float
    block_off_mm: np.ndarray
    tip_off_mm: np.ndarray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BlockOnLens:
    """A lens on its block.

    sheet: the lens, worked, with its cut.
    block_curve_d, front_curve_d: of block and lens front, for index 1.530 [D].
    rim_gap_mm: by which the two part between axis and rim; positive where the block is the steeper [mm].
    block, tip: how the two faces bear, place by place.
    bearing: what is left of the front joints' even contact.
    tip_torque_share: of the friction torque of an even contact, what the tip carries.
    view: the cut that is drawn.
    """

    sheet: EyeSheet
    block_curve_d: float
    front_curve_d: float
    rim_gap_mm: float
    block: Pressed
    tip: Pressed
    bearing: Bearing
    tip_torque_share: float
    view: SideView
