"""The lever arms of a cut: lens and wheel from the front, both forces on their lines, the arms all round."""

import numpy as np
from matplotlib.patches import Circle, Polygon

from lablib.pictures.captions import HEADING_PT, WORDS_PT, ScaleBar, add_key, write_still
from lablib.pictures.cutting_arm_data import ArmView
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import BITE, CHUCK_AXIS, GLASS, INK, OKABE_ITO, OUTLINE, QUIET_INK, Look
from lablib.pictures.window import Window, add_axes, place

DISTANCE = Look(colour=QUIET_INK, dashes=(0, (1.5, 2)), width_pt=1.6)
TANGENTIAL = Look(colour=OKABE_ITO["vermilion"], dashes="solid", width_pt=2.2)
NORMAL = Look(colour=OKABE_ITO["blue"], dashes=(0, (4, 1.5)), width_pt=2.2)
RIM_OF_WHEEL = Look(colour=QUIET_INK, dashes="solid", width_pt=1.4)
_WINDOW = (8.0, 184.0, 712.0, 506.0)
_PX_PER_MM = 4.6
_ARROW_PX, _HEAD_PX = 52.0, 8.0
_PLOT = (44.0, 30.0, 700.0, 132.0)
# The tick marks, and where the arms of the largest lens and wheel still stand [mm].
_LOW_MM, _HIGH_MM, _TICK_MM = -20.0, 40.0, 20
_BESIDE_PX, _NO_ARM_MM = 5.0, 0.05


class ArmPicture(KeptPicture):
    """A lens under the wheel, drawn to scale, with the arms of both forces there and all round."""

    width_px = 720
    height_px = 560

    def build(self) -> None:
        """Add both drawings, their headings and the key."""
        write_still(self, (10, 546), "From the front: the wheel against the lens", size=HEADING_PT)
        write_still(self, (10, 148), "Arms all round [mm], by the direction of the normal", size=HEADING_PT)
        self.window = Window(self, _WINDOW, px_per_mm=_PX_PER_MM)
        self._add_lens()
        self._add_forces()
        self._add_plot()
        self.scale = ScaleBar(self.window, 660, 546)
        self.scale.update()
        add_key(self, _KEY)

    def _add_lens(self) -> None:
        axes, moving = self.window.axes, self.moving
        self.before = moving(axes.add_patch(Polygon(NOWHERE, zorder=1, **BITE.fill())))
        lens = {"facecolor": _light(GLASS), "edgecolor": OUTLINE.colour, "linewidth": OUTLINE.width_pt}
        self.lens = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **lens)))
        wheel = {"facecolor": "#eeeeee", "edgecolor": RIM_OF_WHEEL.colour, "linewidth": RIM_OF_WHEEL.width_pt}
        self.wheel = moving(axes.add_patch(Circle((0.0, 0.0), 1.0, zorder=3, **wheel)))
        self.distance = moving(axes.plot([], [], zorder=4, **DISTANCE.line())[0])
        chuck = moving(axes.plot([0.0], [0.0], zorder=8, **CHUCK_AXIS.point())[0])
        chuck.set_markersize(9)

    def _add_forces(self) -> None:
        """Each force has an arrow, its line drawn on thinly, and the arm on it from the chuck axis."""
        axes, moving = self.window.axes, self.moving
        thin = {"linewidth": 0.9, "zorder": 5}
        self.lines = [
            moving(axes.plot([], [], color=look.colour, linestyle=look.dashes, **thin)[0])
            for look in (TANGENTIAL, NORMAL)
        ]
        self.arms = [moving(axes.plot([], [], zorder=6, **look.line())[0]) for look in (TANGENTIAL, NORMAL)]
        self.arrows = [
            moving(axes.plot([], [], color=look.colour, linewidth=2.6, zorder=7)[0])
            for look in (TANGENTIAL, NORMAL)
        ]
        style = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "color": INK, "zorder": 9}
        self.words = [self.window.label(**style) for _ in range(3)]

    def _add_plot(self) -> None:
        self.plot = axes = add_axes(self, _PLOT)
        axes.set_axisbelow(True)
        axes.grid(axis="y", color="#dddddd", linewidth=0.8)
        axes.tick_params(labelsize=WORDS_PT, color=QUIET_INK, labelcolor=INK)
        axes.spines[["top", "right"]].set_visible(False)
        set_limits(axes, x=(0.0, 360.0), y=(_LOW_MM, _HIGH_MM))
        axes.set_xticks(range(0, 361, 45))
        axes.set_yticks(range(int(_LOW_MM), int(_HIGH_MM) + 1, _TICK_MM))
        looks = (DISTANCE, TANGENTIAL, NORMAL)
        self.curves = [self.moving(axes.plot([], [], zorder=3, **look.line())[0]) for look in looks]
        self.here = self.moving(axes.plot([], [], color=INK, linewidth=1.2, zorder=4)[0])

    def update(self, data: ArmView) -> None:
        """Draw a lens under the wheel.

        data: what to draw.
        """
        for patch, line in ((self.before, data.before), (self.lens, data.rim)):
            patch.set_xy(_xy(line))
        self.wheel.set_center((data.wheel.real, data.wheel.imag))
        self.wheel.set_radius(data.wheel_radius_mm)
        self.distance.set_data(*_xy(np.array([0j, data.contact])).T)
        forces = ((data.tangential, data.foot_tangential), (data.normal, data.foot_normal))
        for at, (way, foot) in enumerate(forces):
            self.lines[at].set_data(*_xy(np.array([foot, data.bears])).T)
            self.arms[at].set_data(*_xy(np.array([0j, foot])).T)
            self.arrows[at].set_data(*_xy(self._arrow(data.bears, way)).T)
        around = (data.around_distance_mm, data.around_tangential_mm, data.around_normal_mm)
        for curve, values in zip(self.curves, around, strict=True):
            curve.set_data(data.around_deg, values)
        self.here.set_data([data.direction_deg] * 2, [_LOW_MM, _HIGH_MM])
        self._write(data)

    def _arrow(self, tail: complex, way: complex) -> np.ndarray:
        """An arrow of one length on the screen, with its head."""
        px = self.window.px_per_mm
        tip = tail + way * _ARROW_PX / px
        barbs = [tip - way * np.exp(side * 0.45j) * _HEAD_PX / px for side in (1, -1)]
        return np.array([tail, tip, barbs[0], tip, barbs[1]])

    def _write(self, data: ArmView) -> None:
        """Write each length beside the middle of its line."""
        # Each length stands on the side of its line where the line next to it is not.
        lengths = (
            (data.distance_mm, data.contact, data.foot_tangential),
            (data.arm_tangential_mm, data.foot_tangential, data.contact),
            (abs(data.arm_normal_mm), data.foot_normal, data.bears),
        )
        chuck = self.window.px(0.0, 0.0)
        taken = [(chuck[0] - 7, chuck[1] - 7, chuck[0] + 7, chuck[1] + 7)]
        for label, (length, end, other) in zip(self.words, lengths, strict=True):
            spots = [spot for share in (0.6, 0.8, 0.4) for spot in self._beside(share * end, end, other)]
            place(label, f"{length:.1f}" if length >= _NO_ARM_MM else "", spots, inside=_WINDOW, taken=taken)

    def _beside(self, at: complex, end: complex, other: complex) -> list[tuple[float, float, float, float]]:
        """Either side of a point of a line from the chuck axis, first the one away from another point."""
        x, y = self.window.px(at.real, at.imag)
        aside = 1j * end / abs(end) if abs(end) > 0.0 else 1j
        first = -aside if (other * aside.conjugate()).real > 0.0 else aside
        turned = (first, -first)
        return [(x + _BESIDE_PX * one.real, y + _BESIDE_PX * one.imag, one.real, one.imag) for one in turned]


def _xy(points: np.ndarray) -> np.ndarray:
    return np.column_stack([points.real, points.imag])


def _light(look: Look) -> tuple[float, float, float, float]:
    """The colour of a fill that hides what lies under it."""
    parts = [int(look.colour[at : at + 2], 16) / 255.0 for at in (1, 3, 5)]
    return (*(look.opacity * part + 1.0 - look.opacity for part in parts), 1.0)


_KEY = (
    (10, 526, DISTANCE, "chuck axis to the contact"),
    (236, 526, TANGENTIAL, "tangential force, and its arm"),
    (466, 526, NORMAL, "normal force, and its arm"),
)
