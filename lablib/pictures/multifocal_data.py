"""What the picture of a multifocal pair shows: a layout of each eye, the blanks, which marks are there."""

from dataclasses import dataclass

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.multifocal_pair import TwoHeights
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.segment_blank import CutOut
from lablib.optics.segment_layout import SegmentLayout

Layout = SegmentLayout | ProgressiveLayout


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PairLaidOut:
    """A segment, or a progressive, laid out for both eyes of one frame.

    frame: the frame.
    right, left: the layouts, both of segments or both of progressives.
    heights: of both tops, or of both crosses.
    insets_mm: each eye's own inset, far distance less near distance, right and left [mm].
    jump_prism_d: image jump at the top of the segment [prism D]; 0 for a progressive, which has no top.
    cut_outs: the outline on a blank, right and left; empty where no blank is drawn.
    engravings_alone: whether only what stays in a finished progressive is shown.

    Raises LabError for engravings or blanks of a lens that has none.
    """

    frame: Frame
    right: Layout
    left: Layout
    heights: TwoHeights
    insets_mm: tuple[float, float]
    jump_prism_d: float
    cut_outs: tuple[CutOut, ...] = ()
    engravings_alone: bool = False

    def __post_init__(self) -> None:
        if self.engravings_alone and self.has_segments:
            raise LabError(
                f"{self.right.segment.words}: a segment has no engravings to show alone: show all marks, or "
                "choose a progressive"
            )
        if self.cut_outs and not self.has_segments:
            raise LabError(
                f"{self.right.design.words}: a progressive has no segment that fixes its place on the blank: "
                "draw no blank, or choose a segment"
            )

    @property
    def has_segments(self) -> bool:
        """Whether these are segments, not progressives."""
        return isinstance(self.right, SegmentLayout)

    def layout(self, eye: Eye) -> Layout:
        """Return the layout of an eye.

        eye: whose.
        """
        return self.right if eye is Eye.RIGHT else self.left

    def height_mm(self, eye: Eye) -> float:
        """Return the height of an eye's top or cross above the lowest tangent [mm].

        eye: whose.
        """
        return self.heights.right_mm if eye is Eye.RIGHT else self.heights.left_mm

    def cut_out(self, eye: Eye) -> CutOut | None:
        """Return an eye's outline on its blank; None where no blank is drawn.

        eye: whose.
        """
        return next((one for one in self.cut_outs if one.layout.eye is eye), None)

    def at(self, eye: Eye, in_mm: float, up_mm: float) -> complex:
        """Return where a point of a lens is drawn, from the middle of the bridge, x + iy [mm].

        eye: whose lens; in_mm, up_mm: inwards and upwards from its boxed centre [mm].
        """
        return complex(eye.nasal_sign * (in_mm - self.frame.bridge_to_boxed_centre_mm), up_mm)
