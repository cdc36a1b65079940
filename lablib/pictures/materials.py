"""One prescription in several materials: a section of each at one scale, and its figures beside it."""

import numpy as np
from matplotlib.collections import PolyCollection
from matplotlib.patches import Polygon

from lablib.optics.comparison import InMaterial
from lablib.optics.eye import Eye
from lablib.pictures.captions import (
    HEADING_PT,
    ScaleBar,
    add_key,
    moving_words,
    step_down,
    write_still,
)
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.materials_data import MaterialsShown
from lablib.pictures.palette import (
    BACK_SURFACE,
    BLUE_INK,
    CUTTING_LINE,
    FRONT_SURFACE,
    GLASS,
    OKABE_ITO,
    OPTICAL_CENTRE,
    OUTLINE,
    QUIET_INK,
    Look,
)
from lablib.pictures.window import Window, add_axes

ROWS = 7
# Few scales, so that a drawing hardly ever changes its size under a slider.
SCALES_PX_PER_MM = (5.0, 4.0, 3.0, 2.0, 1.5)
CHOSEN = Look(colour=BLUE_INK, mark=">")
CHOSEN_BACK = Look(colour=QUIET_INK, dashes=(0, (1.5, 2)), width_pt=1.4)
NOTICED = Look(colour=OKABE_ITO["vermilion"], mark="^")
POINT = Look(colour=BLUE_INK, mark="D", hollow=True)
BAR = Look(colour=OKABE_ITO["orange"], opacity=0.6)
_TOP_PX, _ROW_PX, _HEAD_PX, _FOOT_PX = 532.0, 70.0, 7.0, 6.0
_SECTIONS_PX = (144.0, 42.0, 450.0, _TOP_PX)
_FRONT_PX, _FRONT_SCALE = (6.0, 538.0, 136.0, 640.0), 2.0
# From a row's upper line down to its figure, and to the bar below it.
_FIGURE_PX, _BAR_PX, _BAR_THICK_PX, _BAR_LONG_PX = 26.0, 44.0, 6.0, 40.0
# Middle of each column, its two lines of heading, and how its figure is written.
COLUMNS = (
    (471.0, "centre", "mm", "{:.2f}"),
    (523.0, "thickest", "edge, mm", "{:.2f}"),
    (580.0, "weight", "g", "{:.1f}"),
    (633.0, "fringe", "prism D", "{:.3f}"),
    (690.0, "thrown", "back, %", "{:.1f}"),
)
FRINGE_COLUMN = 3


class MaterialsPicture(KeptPicture):
    """Seven lenses of one power, one below the other, and the lens from the front."""

    width_px = 720
    height_px = 640

    def build(self) -> None:
        """Add the view from the front, the rows, their figures and the key."""
        self.page = add_axes(self, (0, 0, self.width_px, self.height_px))
        self.page.set_axis_off()
        set_limits(self.page, x=(0, self.width_px), y=(0, self.height_px))
        for row in range(ROWS + 1):
            self.page.plot([8, 714], [_row_top_px(row)] * 2, color=QUIET_INK, linewidth=0.4)
        self.front = _FrontView(self)
        self.cuts = _Cuts(self)
        self._add_words()
        self._add_figures()

    def _add_words(self) -> None:
        write_still(self, (150, 626), "Right lens, cut level through its optical centre", size=HEADING_PT)
        self.power, self.looked, self.prism = (
            moving_words(self, self.page, (150, y)) for y in (607, 589, 571)
        )
        for x, first, second, _ in COLUMNS:
            for words, y in ((first, 556), (second, 541)):
                write_still(self, (x, y), words, ha="center", color=QUIET_INK)
        add_key(self, _KEY)

    def _add_figures(self) -> None:
        tops = [_row_top_px(row) for row in range(ROWS)]
        self.names = [moving_words(self, self.page, (22, top - _FIGURE_PX)) for top in tops]
        self.figures = [
            [moving_words(self, self.page, (x, top - _FIGURE_PX), ha="center") for x, *_ in COLUMNS]
            for top in tops
        ]
        self.bars = self.moving(self.page.add_collection(PolyCollection([], zorder=2, **BAR.fill())))
        self.chosen = self.moving(self.page.plot([], [], **(CHOSEN.point() | {"markersize": 6.5}))[0])
        self.noticed = self.moving(self.page.plot([], [], **(NOTICED.point() | {"markersize": 6}))[0])

    def update(self, data: MaterialsShown) -> None:
        """Draw the lenses.

        data: what to draw.
        """
        self.front.update(data)
        self.cuts.update(data)
        self.power.set_text(f"{data.rx}, one outline, one front curve")
        self.looked.set_text(f"Looked through {data.where}")
        self.prism.set_text(f"Prism there: {data.prism_words}")
        shown = [_figures(lens, back) for lens, back in zip(data.lenses, data.thrown_back, strict=True)]
        for name, lens in zip(self.names, data.lenses, strict=True):
            name.set_text(lens.material.words)
        for labels, values in zip(self.figures, shown, strict=True):
            for label, value, (*_, form) in zip(labels, values, COLUMNS, strict=True):
                label.set_text(form.format(value))
        self._mark(data, np.array(shown))

    def _mark(self, data: MaterialsShown, shown: np.ndarray) -> None:
        """Draw the bars, each as a share of the longest in its column, and the two marks."""
        most = shown.max(axis=0)
        share = np.divide(shown, most, out=np.zeros_like(shown), where=most > 0.0)
        self.bars.set_verts(
            [
                _bar(x, _row_top_px(row) - _BAR_PX, share[row, column] * _BAR_LONG_PX)
                for row in range(ROWS)
                for column, (x, *_) in enumerate(COLUMNS)
            ]
        )
        self.chosen.set_data([12.0], [_row_top_px(data.chosen) - _FIGURE_PX])
        rows = [row for row, lens in enumerate(data.lenses) if lens.fringe.is_noticed]
        x = COLUMNS[FRINGE_COLUMN][0]
        self.noticed.set_data([x] * len(rows), [_row_top_px(row) - 59.0 for row in rows])


class _FrontView:
    """The outline from the front, with the optical centre, the cutting line and the point looked through."""

    def __init__(self, picture: KeptPicture) -> None:
        self.window = Window(picture, _FRONT_PX, px_per_mm=_FRONT_SCALE)
        axes, moving = self.window.axes, picture.moving
        self.outline = moving(axes.plot([], [], zorder=2, **OUTLINE.line())[0])
        self.line = moving(axes.plot([], [], zorder=1, **CUTTING_LINE.line())[0])
        self.centre = moving(axes.plot([], [], zorder=3, **OPTICAL_CENTRE.point())[0])
        self.point = moving(axes.plot([], [], zorder=4, **(POINT.point() | {"markersize": 7}))[0])

    def update(self, data: MaterialsShown) -> None:
        finished, section = data.lens.finished, data.sections[data.chosen]
        x, y = finished.outline.x_mm, finished.outline.y_mm
        self.outline.set_data(np.append(x, x[0]), np.append(y, y[0]))
        self.line.set_data(finished.centre_x_mm + section.along_mm[[0, -1]], [finished.centre_y_mm] * 2)
        self.centre.set_data([finished.centre_x_mm], [finished.centre_y_mm])
        inwards = Eye.RIGHT.nasal_sign * data.in_mm
        self.point.set_data([finished.centre_x_mm + inwards], [finished.centre_y_mm + data.up_mm])


class _Cuts:
    """The sections, all at one scale, each with the back of the chosen lens for comparison."""

    def __init__(self, picture: KeptPicture) -> None:
        self.window = Window(picture, _SECTIONS_PX, up_px=_SECTIONS_PX[3] - _SECTIONS_PX[1])
        axes, moving = self.window.axes, picture.moving
        none = np.zeros((1, 2))
        self.glass = [moving(axes.add_patch(Polygon(none, zorder=1, **GLASS.fill()))) for _ in range(ROWS)]
        lines = ((OUTLINE, 2), (BACK_SURFACE, 3), (FRONT_SURFACE, 3), (CHOSEN_BACK, 4))
        self.edges, self.back, self.front, self.chosen_back = (
            [moving(axes.plot([], [], zorder=zorder, **look.line())[0]) for _ in range(ROWS)]
            for look, zorder in lines
        )
        self.bar = ScaleBar(self.window, 662.0, 20.0)

    def update(self, data: MaterialsShown) -> None:
        self.window.set_scale(step_down(SCALES_PX_PER_MM, self._fits(data)))
        self.bar.update()
        compared = data.sections[data.chosen]
        for row, section in enumerate(data.sections):
            up = -(row * _ROW_PX + _HEAD_PX) / self.window.px_per_mm
            across = section.along_mm - (section.along_mm[0] + section.along_mm[-1]) / 2.0
            front, back = up - section.front_mm, up - section.back_mm
            ring = np.stack([np.r_[across, across[::-1]], np.r_[front, back[::-1]]], axis=1)
            self.glass[row].set_xy(ring)
            self.front[row].set_data(across, front)
            self.back[row].set_data(across, back)
            ends = across[[0, 0, 0, -1, -1]], [front[0], back[0], np.nan, front[-1], back[-1]]
            self.edges[row].set_data(*ends)
            self.chosen_back[row].set_data(across, up - compared.back_mm)
            self.chosen_back[row].set_visible(row != data.chosen)

    def _fits(self, data: MaterialsShown) -> float:
        """The largest scale at which every section stays in its row."""
        left, _, right, _ = _SECTIONS_PX
        wide = max(float(np.ptp(section.along_mm)) for section in data.sections)
        deep = max(float(section.back_mm.max()) for section in data.sections)
        return min((right - left) / wide, (_ROW_PX - _HEAD_PX - _FOOT_PX) / deep)


def _figures(lens: InMaterial, thrown_back: float) -> tuple[float, ...]:
    """What stands in the columns, in their order."""
    return (
        lens.centre_mm,
        lens.greatest_edge_mm,
        lens.weight_g,
        lens.fringe.amount_prism_d,
        100.0 * thrown_back,
    )


def _row_top_px(row: int) -> float:
    return _TOP_PX - row * _ROW_PX


def _bar(x: float, y: float, long_px: float) -> list[tuple[float, float]]:
    left, low = x - _BAR_LONG_PX / 2.0, y - _BAR_THICK_PX / 2.0
    return [
        (left, low),
        (left + long_px, low),
        (left + long_px, low + _BAR_THICK_PX),
        (left, low + _BAR_THICK_PX),
    ]


_KEY = (
    (8, 20, FRONT_SURFACE, "front"),
    (68, 20, BACK_SURFACE, "back"),
    (128, 20, CHOSEN, "looked at closely"),
    (270, 20, CHOSEN_BACK, "its back"),
    (352, 20, POINT, "looked through"),
    (482, 20, NOTICED, "colour noticed"),
)
