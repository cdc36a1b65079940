"""A lens on its block: from the front, in a cut through the chuck axis, and where block and tip bear."""

from matplotlib.patches import Rectangle

from lablib.pictures.block_on_lens_data import BlockOnLens
from lablib.pictures.block_on_lens_front import BlockFront
from lablib.pictures.block_on_lens_maps import BEARS, HARD, LIFTED, BearingMap
from lablib.pictures.block_on_lens_side import LIFTED as AIR
from lablib.pictures.block_on_lens_side import BlockSide
from lablib.pictures.captions import HEADING_PT, KEY_WORDS_PX, ScaleBar, add_key, moving_words, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import (
    BACK_SURFACE,
    BLOCK,
    BOXED_CENTRE,
    CHUCK_AXIS,
    FRONT_SURFACE,
    INK,
    OPTICAL_CENTRE,
    OUTLINE,
    QUIET_INK,
)
from lablib.pictures.window import shown_px


class BlockOnLensPicture(KeptPicture):
    """Block on outline, block and tip on the lens from the side, and the places where they bear."""

    width_px = 720
    height_px = 640

    def build(self) -> None:
        """Add the drawings, their headings and the key."""
        self.front = BlockFront(self, (4, 378, 336, 600), room_px=(10, 611))
        self.pad_map = BearingMap(self, (346, 412, 526, 580), "pad")
        self.tip_map = BearingMap(self, (532, 412, 712, 580), "tip")
        self.side = BlockSide(self, (4, 64, 716, 338))
        axes = self.front.window.axes
        write_still(self, (352, 628), "Where they bear, seen from the front", size=HEADING_PT)
        self.heading, self.gap = (
            moving_words(self, axes, (10, y), size=HEADING_PT, color=INK) for y in (628, 350)
        )
        self.left_side = moving_words(self, axes, (10, 368), color=QUIET_INK)
        self.right_side = moving_words(self, axes, (330, 368), ha="right", color=QUIET_INK)
        ScaleBar(self.front.window, 166, 368).update()
        add_key(self, _KEY)
        self.figure.add_artist(Rectangle((618, 12), 24, 12, transform=shown_px(self), **AIR))
        write_still(self, (618 + KEY_WORDS_PX, 18), "air", color=QUIET_INK)

    def update(self, data: BlockOnLens) -> None:
        """Draw a lens on its block.

        data: what to draw.
        """
        self.front.update(data)
        self.side.update(data)
        self.pad_map.update(data.block)
        self.tip_map.update(data.tip)
        sheet = data.sheet
        blocking = sheet.ticket.blocking
        self.heading.set_text(f"{blocking.block} block at the {blocking.blocking_point}")
        self.gap.set_text(f"Level cut through the chuck axis: {gap_words(data)}")
        sides = ("temporal", "nasal")[:: sheet.eye.nasal_sign]
        self.left_side.set_text(sides[0])
        self.right_side.set_text(sides[1])


def gap_words(data: BlockOnLens) -> str:
    """Return how block and front lie on each other.

    data: what is shown.
    """
    curves = f"block {data.block_curve_d:.2f}, front {data.front_curve_d:.2f} D"
    gap = f"{abs(data.rim_gap_mm):.2f}"
    if gap == "0.00":
        return f"{curves}: no gap"
    return f"{curves}: {gap} mm open {'in the middle' if data.rim_gap_mm > 0.0 else 'at the rim'}"


_KEY = (
    (10, 42, OUTLINE, "outline"),
    (96, 42, BLOCK, "block"),
    (166, 42, CHUCK_AXIS, "chuck axis"),
    (278, 42, BOXED_CENTRE, "boxed centre"),
    (402, 42, OPTICAL_CENTRE, "optical centre, or fitting cross"),
    (10, 18, FRONT_SURFACE, "front"),
    (96, 18, BACK_SURFACE, "back"),
    (166, 18, LIFTED, "lifted off"),
    (278, 18, BEARS, "bears"),
    (402, 18, HARD, "twice the mean and more"),
)
