"""A finished lens: from the front, in two cuts, and its edge thickness all round."""

from matplotlib.lines import Line2D

from lablib.job.eye_sheet import EyeSheet
from lablib.job.report import where
from lablib.pictures.edge_round import EdgeRound
from lablib.pictures.kept import KeptPicture
from lablib.pictures.label import Label
from lablib.pictures.lens_front import FrontDrawing
from lablib.pictures.lens_section import HEADING_PT, WORDS_PT, Cut, SectionDrawing
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
from lablib.pictures.window import shown_px

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
        self._write_still(382, 588, "Cut along midline")
        self._write_still(382, 404, "Cut through thickest edge")
        self._write_still(10, 178, "Edge thickness all round [mm]")
        self.heading = self._words((10, 588), size=HEADING_PT, color=INK)
        self.direction = self._words((712, 404), ha="right", color=QUIET_INK)
        self.ends = self._words((712, 588), ha="right", color=QUIET_INK)
        self.left_side = self._words((10, 230), color=QUIET_INK)
        self.right_side = self._words((366, 230), ha="right", color=QUIET_INK)
        self.blank = self._words((382, 230), color=INK)
        self._add_scale()
        self._add_key()

    def _write_still(self, x_px: float, y_px: float, words: str) -> None:
        style = {"fontsize": HEADING_PT, "color": INK, "va": "center", "transform": shown_px(self)}
        self.figure.text(x_px, y_px, words, **style)

    def _words(self, at_px: tuple[float, float], *, size: float = WORDS_PT, **style: str) -> Label:
        axes = self.front.window.axes
        style = {"transform": shown_px(self), "va": "center", "clip_on": False, "zorder": 9} | style
        label = self.label(axes, fontsize=size, **style)
        label.set_position(at_px)
        return label

    def _add_scale(self) -> None:
        """Draw a bar of ten millimetres, in axes of the drawings so that it follows their scale."""
        axes = self.front.window.axes
        self.bar = self.moving(axes.plot([], [], color=INK, linewidth=1.2, marker="|", markersize=6)[0])
        self.bar.set_clip_on(False)
        self.figure.text(
            190, 230, "10 mm", fontsize=WORDS_PT, color=INK, va="center", transform=shown_px(self)
        )

    def _add_key(self) -> None:
        for x, look, words in _KEY:
            line = Line2D([x + 12] if look.mark else [x, x + 24], [206] if look.mark else [206, 206])
            line.set(**(look.point() if look.mark else look.line()), transform=shown_px(self))
            self.figure.add_artist(line)
            self.figure.text(
                x + 28, 206, words, fontsize=WORDS_PT, color=QUIET_INK, va="center", transform=shown_px(self)
            )

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
        scale = next((one for one in SCALES_PX_PER_MM if one <= fits), SCALES_PX_PER_MM[-1])
        for drawing in (self.front, self.midline, self.thickest):
            drawing.window.set_scale(scale)
        right, below = self.front.window.mm(184, 230)
        self.bar.set_data([right - 10.0, right], [below, below])

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
    (10, BLANK, "blank"),
    (100, OPTICAL_CENTRE, "optical centre"),
    (224, BOXED_CENTRE, "boxed centre"),
    (346, GREATEST, "thickest edge"),
    (468, LEAST, "thinnest edge"),
    (592, CYLINDER_AXIS, "cylinder axis"),
)
