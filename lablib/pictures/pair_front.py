"""One lens of a pair before its eye, from the front: optical centre, pupil, base, and both distances."""

from matplotlib.colors import to_rgba
from matplotlib.patches import Circle

from lablib.optics.eye import Eye
from lablib.optics.power import written_power
from lablib.optics.prism import in_words
from lablib.pictures.captions import WORDS_PT
from lablib.pictures.pair_data import PairSeen
from lablib.pictures.palette import BLUE_INK, GLASS, INK, OPTICAL_CENTRE, OUTLINE
from lablib.pictures.prism_field_arrows import BASE, PUPIL, arrows
from lablib.pictures.window import Window, place

# Lenses so small that they do not meet when they are slid together.
RADIUS_MM = 18.0
_HEAD_MM = 2.4
# Both distances are drawn beyond the lenses and the longest arrow, the pupil's below and the centre's above.
_ABOVE_MM, _BELOW_MM, _BESIDE_MM = 19.6, -28.4, 2.2
_PRISM_MM, _POWER_MM, _GAP_PX = 26.5, 10.5, 5.0


class LensBeforeEye:
    """A lens, its optical centre, and the eye that stays where it is.

    window: where it is drawn; eye: whose lens.
    """

    def __init__(self, window: Window, eye: Eye) -> None:
        axes, moving = window.axes, window.picture.moving
        self.window, self.eye = window, eye
        glass = {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "edgecolor": OUTLINE.colour}
        self.lens = moving(
            axes.add_patch(Circle((0.0, 0.0), RADIUS_MM, linewidth=OUTLINE.width_pt, zorder=2, **glass))
        )
        self.centre = moving(axes.plot([], [], zorder=4, **(OPTICAL_CENTRE.point() | {"markersize": 11}))[0])
        self.pupil = moving(
            axes.plot([], [], zorder=5, **(PUPIL.point() | {"markersize": 11, "markerfacecolor": "none"}))[0]
        )
        self.base = moving(axes.plot([], [], zorder=6, solid_capstyle="round", **BASE.line())[0])
        distance = {"linewidth": 0.9, "marker": "|", "markersize": 7, "zorder": 3}
        self.to_centre = moving(axes.plot([], [], color=INK, **distance)[0])
        self.to_pupil = moving(axes.plot([], [], color=INK, linestyle=(0, (3, 2)), **distance)[0])
        words = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "zorder": 9}
        self.power, self.prism, self.centre_words, self.pupil_words = (
            window.label(color=colour, **words) for colour in (INK, BLUE_INK, INK, INK)
        )

    def update(self, data: PairSeen, scale_prism_d_per_mm: float) -> None:
        """Draw the lens where it stands.

        data: the pair; scale_prism_d_per_mm: prism for each mm of an arrow [prism D/mm].
        """
        centre, pupil = data.centre_mm(self.eye), data.pupil_mm(self.eye)
        looks = complex(pupil, -data.drop_mm)
        self.lens.set_center((centre, 0.0))
        self.centre.set_data([centre], [0.0])
        self.pupil.set_data([looks.real], [looks.imag])
        reach = data.base_prism_d(self.eye) / scale_prism_d_per_mm
        self.base.set_data(*arrows(looks, reach, head=_HEAD_MM).T)
        self.to_centre.set_data([0.0, centre], [_ABOVE_MM, _ABOVE_MM])
        self.to_pupil.set_data([0.0, pupil], [_BELOW_MM, _BELOW_MM])
        self._write(data, centre, pupil)

    def _write(self, data: PairSeen, centre: float, pupil: float) -> None:
        # On its own side of the bridge, however near the lenses come to each other.
        left, low, right, high = self.window.box_px
        middle, _ = self.window.px(0.0, 0.0)
        side = (
            (left, low, middle - _GAP_PX, high)
            if self.eye is Eye.RIGHT
            else (middle + _GAP_PX, low, right, high)
        )
        prism = data.pair.right if self.eye is Eye.RIGHT else data.pair.left
        for label, words, x_mm, y_mm in (
            (self.prism, in_words(*prism), centre, _PRISM_MM),
            (self.centre_words, f"centre {abs(centre):.1f}", centre / 2.0, _ABOVE_MM + _BESIDE_MM),
            (self.pupil_words, f"pupil {abs(pupil):.1f}", pupil / 2.0, _BELOW_MM - _BESIDE_MM),
            (self.power, f"{self.eye} {written_power(data.power_d(self.eye))} D", centre, _POWER_MM),
        ):
            place(label, words, [(*self.window.px(x_mm, y_mm), 0, 0)], inside=side, taken=[])
