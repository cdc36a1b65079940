"""A finished lens: from the front, in two cuts, and its edge thickness all round."""

from matplotlib.lines import Line2D

from lablib.job.eye_sheet import EyeSheet
from lablib.job.report import where
from lablib.pictures.edge_round import EdgeRound
from lablib.pictures.kept import KeptPicture
from lablib.pictures.lens_front import AXIS_LINE, FrontDrawing
from lablib.pictures.lens_section import HEADING_PT, WORDS_PT, Cut, SectionDrawing
from lablib.pictures.palette import BLANK, BOXED_CENTRE, GREATEST, INK, LEAST, OPTICAL_CENTRE, QUIET_INK
from lablib.pictures.window import shown_px

# Few scales, so that a drawing hardly ever changes its size under a slider.
SCALES_PX_PER_MM = (4.4, 3.3, 2.3)
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
        self.front = FrontDrawing(self, (6, 222, 370, 578))
        self.midline = SectionDrawing(self, (382, 408, 714, 578))
        self.thickest = SectionDrawing(self, (382, 202, 714, 378))
        self.edge = EdgeRound(self, (34, 30, 706, 132))
        heading = {"fontsize": HEADING_PT, "color": INK, "va": "center", "transform": shown_px(self)}
        self.figure.text(10, 588, "As an observer facing the wearer sees it", **heading)
        self.figure.text(386, 588, "Cut along the horizontal midline", **heading)
        self.figure.text(10, 146, "Edge thickness all round [mm]", **heading)
        axes = self.front.window.axes
        self.thickest_heading = self.label(axes, clip_on=False, zorder=9, **heading)
        self.thickest_heading.set_position((386, 388))
        self._add_key()

    def _add_key(self) -> None:
        for x, look, words in _KEY:
            line = Line2D([x, x + 22] if not look.mark else [x + 11], [176] * (1 if look.mark else 2))
            line.set(**(look.point() if look.mark else look.line()), transform=shown_px(self))
            self.figure.add_artist(line)
            self.figure.text(
                x + 27, 176, words, fontsize=WORDS_PT, color=QUIET_INK, va="center", transform=shown_px(self)
            )

    def update(self, data: EyeSheet) -> None:
        """Draw a lens.

        data: the lens, worked.
        """
        midline, thickest = midline_cut(data), thickest_cut(data)
        fits = min(self.front.fits(data), self.midline.fits(midline), self.thickest.fits(thickest))
        scale = next((one for one in SCALES_PX_PER_MM if one <= fits), SCALES_PX_PER_MM[-1])
        for drawing in (self.front, self.midline, self.thickest):
            drawing.window.set_scale(scale)
        self.front.update(data)
        self.midline.update(midline)
        self.thickest.update(thickest)
        self.edge.update(data)
        direction_deg = data.thickest_meridian_deg
        self.thickest_heading.set_text(
            f"Cut through the thickest edge ({where(direction_deg, data.eye)}, {direction_deg:.0f}°)"
        )


def midline_cut(sheet: EyeSheet) -> Cut:
    """Return the cut along the horizontal midline, the observer's left at the left.

    sheet: the lens.
    """
    start, end = sheet.horizontal_section.end_thickness_mm
    words = ["temporal {:.2f}", "nasal {:.2f}"][:: sheet.eye.nasal_sign]
    above = f"centre {sheet.midline_thickness_mm:.2f}"
    if abs(sheet.up_mm) >= _LEVEL_MM:
        above = f"{sheet.midline_thickness_mm:.2f} {'below' if sheet.up_mm > 0 else 'above'} the centre"
    return Cut(
        section=sheet.horizontal_section,
        flipped=False,
        at_mm=sheet.centre_x_mm,
        at_words=above,
        start_words=words[0].format(start),
        end_words=words[1].format(end),
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
    (90, OPTICAL_CENTRE, "optical centre"),
    (210, BOXED_CENTRE, "boxed centre"),
    (330, GREATEST, "thickest edge"),
    (450, LEAST, "thinnest edge"),
    (570, AXIS_LINE, "cylinder axis"),
)
