"""One lens in the drawing of a question on prism: its optical centre, the point looked through, its base."""

from typing import TYPE_CHECKING

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Circle

from lablib.optics.eye import Eye
from lablib.optics.prism import in_words
from lablib.pictures.asked_base import short
from lablib.pictures.asked_prism_pair_data import TOGETHER, PrismCase
from lablib.pictures.asked_sign import RIGHT, Measure, spots_round, words_in
from lablib.pictures.palette import CYLINDER_AXIS, GLASS, OPTICAL_CENTRE, OUTLINE
from lablib.pictures.prism_field_arrows import PUPIL
from lablib.pictures.window import place

if TYPE_CHECKING:
    from lablib.pictures.asked_prism_pair import PrismPairPicture

RADIUS_MM = 18.0
# Words stand so far from a lens's middle, above and below it.
_NAME_MM = RADIUS_MM + 4.2


class LensAsked:
    """One lens of the pair: asked about or not, with its point and the way to it.

    picture: the picture it is part of; eye: whose lens.
    """

    def __init__(self, picture: "PrismPairPicture", eye: Eye) -> None:
        axes, moving = picture.window.axes, picture.moving
        self.picture, self.eye = picture, eye
        glass = {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "edgecolor": OUTLINE.colour}
        self.lens = moving(
            axes.add_patch(Circle((0.0, 0.0), RADIUS_MM, linewidth=OUTLINE.width_pt, zorder=2, **glass))
        )
        self.axis = moving(axes.plot([], [], zorder=3, **CYLINDER_AXIS.line())[0])
        self.centre = moving(axes.plot([], [], zorder=6, **(OPTICAL_CENTRE.point() | {"markersize": 11}))[0])
        ring = PUPIL.point() | {"markersize": 9, "markerfacecolor": "none"}
        self.point = moving(axes.plot([], [], zorder=7, **ring)[0])
        self.across, self.upright = Measure(picture.window), Measure(picture.window, upright=True)
        self.base = moving(axes.plot([], [], zorder=8, **RIGHT.line())[0])
        self.name, self.prism = words_in(picture.window), words_in(picture.window)

    def show(self, case: PrismCase, *, told: bool) -> None:
        """Draw a lens.

        case: the pair; told: whether the right answer is shown.
        """
        centre, point, asked = case.centre_mm(self.eye), case.point_mm(self.eye), self.eye in case.eyes
        self.lens.set_visible(asked)
        self.lens.set_center((centre.real, centre.imag))
        self.centre.set_visible(asked and case.has_centre)
        self.centre.set_data([centre.real], [centre.imag])
        self.point.set_visible(asked)
        self.point.set_data([point.real], [point.imag])
        self.axis.set_visible(asked and case.axis_deg > 0.0)
        half = RADIUS_MM * np.exp(1j * np.radians(case.axis_deg))
        self.axis.set_data([(centre - half).real, (centre + half).real], [-half.imag, half.imag])
        for spot in (centre, point) if asked else ():
            self.picture.mark(spot)
        self.name.set_visible(asked)
        if asked:
            self._write_name(centre)
        self._measure(case, centre, point, asked)
        self._show_base(case, point, told=told)

    def _write_name(self, centre: complex) -> None:
        x, y = self.picture.window.px(centre.real, _NAME_MM)
        place(self.name, f"{self.eye.value} eye", [(x, y, 0, 0)], **self.picture.space)

    def _measure(self, case: PrismCase, centre: complex, point: complex, asked: bool) -> None:
        """Write how far the point lies from the optical centre, first across and then up or down."""
        alone = asked and case.asked != TOGETHER
        corner = complex(point.real, centre.imag)
        ends = ((centre, corner), (corner, point))
        for measure, away, (start, end) in zip(
            (self.across, self.upright), (case.in_mm, case.up_mm), ends, strict=True
        ):
            if not (alone and away):
                measure.hide()
                continue
            line = ((start.real, start.imag), (end.real, end.imag))
            side = -1 if case.up_mm > 0.0 else 1
            if measure.upright:
                side = 1 if point.real >= centre.real else -1
            measure.show(line, short(abs(away)), side=side, **self.picture.space)

    def _show_base(self, case: PrismCase, point: complex, *, told: bool) -> None:
        prism = case.upright_prism_d(self.eye)
        shown = told and prism != 0.0
        self.base.set_visible(shown)
        self.prism.set_visible(shown)
        if not shown:
            return
        line = self.picture.arrow(point, complex(0.0, prism))
        self.base.set_data(*line.T)
        self.picture.fence(line)
        x, y = self.picture.window.px(point.real, -_NAME_MM)
        place(self.prism, in_words(0.0, prism), spots_round(x, y, (0, 0)), **self.picture.space)
