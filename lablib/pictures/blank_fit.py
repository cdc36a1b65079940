"""A blank and an outline that may refuse to fit, in the pair as worn."""

from matplotlib.patches import Rectangle

from lablib.optics.blank_fit import BlankFit
from lablib.optics.eye import Eye
from lablib.pictures.blank_fit_data import PairOfBlanks
from lablib.pictures.blank_fit_distances import Distances
from lablib.pictures.blank_fit_front import DIAMETER, FARTHEST, LensInFrame
from lablib.pictures.captions import (
    HEADING_PT,
    KEY_WORDS_PX,
    ScaleBar,
    add_key,
    moving_words,
    write_still,
)
from lablib.pictures.kept import KeptPicture
from lablib.pictures.lens_section import HATCHED
from lablib.pictures.palette import BLANK, BOXED_CENTRE, INK, MIDLINE, OPTICAL_CENTRE, OUTLINE, QUIET_INK
from lablib.pictures.prism_field_arrows import PUPIL
from lablib.pictures.window import Box, Window, shown_px

# Every frame and every blank is drawn at one scale, so that a larger one looks larger.
_PX_PER_MM = 4.0
_WINDOW_PX = (0.0, 88.0, 720.0, 598.0)
_VERDICT_Y_PX = 74.0
_PATCH_PX = (22.0, 12.0)


class BlankFitPicture(KeptPicture):
    """Both rims facing an observer, with boxes, distances, optical centres, and a round blank about each."""

    width_px = 720
    height_px = 620

    def build(self) -> None:
        """Add the midlines, both lenses, the distances, what is found of each lens, and the key."""
        self.window = Window(self, _WINDOW_PX, px_per_mm=_PX_PER_MM)
        axes = self.window.axes
        for x, y in (([0.0, 0.0], [-64.0, 62.0]), ([-90.0, 90.0], [0.0, 0.0])):
            axes.plot(x, y, zorder=0, **MIDLINE.line())
        self.lenses = {eye: LensInFrame(self.window, eye) for eye in Eye}
        self.distances = Distances(self.window)
        write_still(self, (10, 608), "Facing the wearer: the right lens is on your left", size=HEADING_PT)
        ScaleBar(self.window, 660.0, 608.0).update()
        self.verdicts = {
            eye: moving_words(self, axes, (x, _VERDICT_Y_PX), ha=align, color=INK)
            for eye, x, align in ((Eye.RIGHT, 10, "left"), (Eye.LEFT, 710, "right"))
        }
        add_key(self, _KEY)
        self._add_patch(*_NOT_COVERED)

    def _add_patch(self, x: float, y: float, words: str) -> None:
        width, height = _PATCH_PX
        patch = Rectangle(
            (x, y - height / 2.0), width, height, transform=shown_px(self), hatch="////", **HATCHED
        )
        self.figure.add_artist(patch)
        write_still(self, (x + KEY_WORDS_PX, y), words, color=QUIET_INK)

    def update(self, data: PairOfBlanks) -> None:
        """Draw a frame, a wearer and two blanks.

        data: what to draw.
        """
        taken: list[Box] = [box for lens in self.lenses.values() for box in lens.marks(data)]
        self.distances.update(data, taken)
        for eye, lens in self.lenses.items():
            lens.update(data, taken)
            self.verdicts[eye].set_text(f"{eye.value.capitalize()}: {verdict(data.fit(eye))}")


def verdict(fit: BlankFit) -> str:
    """Return whether a blank covers, and by how much.

    fit: of the lens.
    """
    needs = f"needs {fit.least.exact_mm:.1f} mm, has {fit.blank_mm:g}"
    if fit.blank_covers:
        return f"{needs}: covers, {fit.spare_mm:.1f} to spare"
    return f"{needs}: {-fit.spare_mm:.1f} too small"


_KEY = (
    (10, 46, OUTLINE, "outline"),
    (94, 46, BLANK, "blank; thin line: usable part"),
    (318, 46, DIAMETER, "effective diameter"),
    (476, 46, FARTHEST, "to the farthest point"),
    (136, 20, OPTICAL_CENTRE, "optical centre"),
    (262, 20, PUPIL, "pupil"),
    (342, 20, BOXED_CENTRE, "boxed centre"),
    (462, 20, MIDLINE, "midline, middle of the bridge"),
)
_NOT_COVERED = (10.0, 20.0, "not covered")
