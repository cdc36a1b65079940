"""Whether a block clears the finished outline, so that the wheel never reaches it."""

from dataclasses import dataclass

import numpy as np

from lablib.bench.contact import Ellipse, block_contact
from lablib.bench.geometry import angles_rad
from lablib.errors import require_between, require_finite

_LARGEST_MM = 90.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """Room between a block and the box round the finished outline, negative where the block stands out.

    up_mm, down_mm: to its upper and its lower side [mm].
    right_mm, left_mm: to the sides at +x and at -x [mm].
    """

    up_mm: float
    down_mm: float
    right_mm: float
    left_mm: float

    @property
    def least_mm(self) -> float:
        """The least of the four [mm]."""
        return min(self.up_mm, self.down_mm, self.right_mm, self.left_mm)


def clearance_mm(outline_mm: np.ndarray, contact: Ellipse) -> float:
    """Return the least distance from a block to the finished outline, negative where it stands out [mm].

    outline_mm: shape (N,), outline about the blocking point [mm]; measured along rays from there.
    contact: the block's face.
    """
    return float((outline_mm - contact.reach_mm(angles_rad(outline_mm.size))).min())


def box_room_mm(*, a_mm: float, b_mm: float, block: str, right_mm: float = 0.0, up_mm: float = 0.0) -> Room:
    """Return the room between a block and the box round the finished outline.

    a_mm, b_mm: the box [mm].
    block: a name of the table of blocks.
    right_mm, up_mm: blocking point from the boxed centre [mm], up is plus.

    An outline that runs along its box where the block is nearest leaves just so much; one that curves away
    there leaves less, and `clearance_mm` says how much.

    Raises LabError for a box that is none, or a block that is not known.
    """
    for name, side in (("box A", a_mm), ("box B", b_mm)):
        require_between(name, side, low=0.0, high=_LARGEST_MM, unit="mm", open_low=True)
    right, up = (require_finite("blocking point", value, unit="mm") for value in (right_mm, up_mm))
    face = block_contact(block)
    return Room(
        up_mm=b_mm / 2.0 - up - face.half_height_mm,
        down_mm=b_mm / 2.0 + up - face.half_height_mm,
        right_mm=a_mm / 2.0 - right - face.half_width_mm,
        left_mm=a_mm / 2.0 + right - face.half_width_mm,
    )
