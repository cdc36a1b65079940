"""A finished lens: from the front, in two cuts, and its edge thickness all round."""

from lablib.job.eye_sheet import EyeSheet
from lablib.job.report import where
from lablib.pictures.captions import HEADING_PT, ScaleBar, add_key, moving_words, step_down, write_still
from lablib.pictures.edge_round import EdgeRound
from lablib.pictures.kept import KeptPicture
from lablib.pictures.lens_front import FrontDrawing
from lablib.pictures.lens_section import Cut, SectionDrawing
from lablib.pictures.palette import (
    BLANK,
    BOXED_CENTRE,
    CYLINDER_AXIS,
    GREATEST,
    INK,
    LEAST,
    OPTICAL_CENTRE,
    QUIET_INK,
)

# Few scales, so that a drawing hardly ever changes its size under a slider.
SCALES_PX_PER_MM = (4.0, 2.9, 2.1)
# A centre nearer to the midline than this lies on it, as far as anyone can draw or measure.
_LEVEL_MM = 0.05


class LensPicture(KeptPicture):
    """A lens as an observer facing the wearer sees it, cut along the midline and through its thickest edge.

    All three drawings have one scale, in millimetres; below them is the edge thickness all round.
    """

    width_px = 720
    height_px = 600

    def build(self) -> None:
        """Add the drawings, their headings and the key."""
        self.front = FrontDrawing(self, (6, 242, 370, 578))
        self.midline = SectionDrawing(self, (382, 412, 714, 578))
        self.thickest = SectionDrawing(self, (382, 242, 714, 394))
        self.edge = EdgeRound(self, (34, 30, 692, 164))
        write_still(self, (382, 588), "Cut along midline", size=HEADING_PT)
        write_still(self, (382, 404), "Cut through thickest edge", size=HEADING_PT)
        write_still(self, (10, 178), "Edge thickness all round [mm]", size=HEADING_PT)
        axes = self.front.window.axes
        self.heading = moving_words(self, axes, (10, 588), size=HEADING_PT, color=INK)
        self.direction, self.ends, self.right_side = (
            moving_words(self, axes, at, ha="right", color=QUIET_INK)
            for at in ((712, 404), (712, 588), (366, 230))
        )
        self.left_side = moving_words(self, axes, (10, 230), color=QUIET_INK)
        self.blank = moving_words(self, axes, (382, 230), color=INK)
        self.scale = ScaleBar(self.front.window, 184, 230)
        self.bar = self.scale.line
        add_key(self, _KEY)

    def update(self, data: EyeSheet) -> None:
        """Draw a lens.

        data: the lens, worked.
        """
        midline, thickest = midline_cut(data), thickest_cut(data)
        self._set_scale(min(self.front.fits(data), self.midline.fits(midline), self.thickest.fits(thickest)))
        self.front.update(data)
        self.midline.update(midline)
        self.thickest.update(thickest)
        self.edge.update(data)
        self._write(data)

    def _set_scale(self, fits: float) -> None:
        for drawing in (self.front, self.midline, self.thickest):
            drawing.window.set_scale(step_down(SCALES_PX_PER_MM, fits))
        self.scale.update()

    def _write(self, sheet: EyeSheet) -> None:
        self.heading.set_text(f"{sheet.eye.value.capitalize()} lens, facing the wearer")
        direction_deg = sheet.thickest_meridian_deg
        self.direction.set_text(f"{where(direction_deg, sheet.eye)}, {direction_deg:.0f}°")
        sides = ("temporal", "nasal")[:: sheet.eye.nasal_sign]
        self.left_side.set_text(sides[0])
        self.right_side.set_text(sides[1])
        self.ends.set_text(f"{sides[0]} left, {sides[1]} right")
        blank, needed = sheet.order.lens.blank_diameter_mm, sheet.minimum_blank_mm
        covers = "covers" if sheet.blank_covers else "is too small"
        self.blank.set_text(f"{blank:g} mm blank {covers}: {needed:.1f} mm needed")


def midline_cut(sheet: EyeSheet) -> Cut:
    """Return the cut along the horizontal midline, the observer's left at the left.

    sheet: the lens.
    """
    start, end = sheet.horizontal_section.end_thickness_mm
    above = f"centre {sheet.midline_thickness_mm:.2f}"
    if abs(sheet.up_mm) >= _LEVEL_MM:
        above = f"{'below' if sheet.up_mm > 0 else 'above'} {above}"
    return Cut(
        section=sheet.horizontal_section,
        flipped=False,
        at_mm=sheet.centre_x_mm,
        at_words=above,
        start_words=f"{start:.2f}",
        end_words=f"{end:.2f}",
    )


def thickest_cut(sheet: EyeSheet) -> Cut:
    """Return the cut through the optical centre and the thickest edge, the observer's left at the left.

    sheet: the lens.
    """
    start, end = sheet.thickest_section.end_thickness_mm
    return Cut(
        section=sheet.thickest_section,
        flipped=90.0 < sheet.thickest_meridian_deg < 270.0,
        at_mm=0.0,
        at_words=f"centre {sheet.finished.lens.centre_thickness_mm:.2f}",
        start_words=f"{start:.2f}",
        end_words=f"▲ {end:.2f}",
    )


_KEY = (
    (10, 206, BLANK, "blank"),
    (100, 206, OPTICAL_CENTRE, "optical centre"),
    (224, 206, BOXED_CENTRE, "boxed centre"),
    (346, 206, GREATEST, "thickest edge"),
    (468, 206, LEAST, "thinnest edge"),
    (592, 206, CYLINDER_AXIS, "cylinder axis"),
)
