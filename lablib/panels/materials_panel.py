"""The panel of materials: one prescription in all of them, to scale, with weight, colour and reflections."""

import math
from collections.abc import Callable, Sequence

import numpy as np

from lablib.errors import LabError
from lablib.optics.comparison import InMaterial, compared
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.material import materials
from lablib.optics.prescription import Prescription
from lablib.optics.prism import in_words
from lablib.optics.reflection import reflectance
from lablib.optics.section import Section, section
from lablib.optics.thick_lens import vogel_front_curve_d
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.materials import MaterialsPicture
from lablib.pictures.materials_data import MaterialsShown

_RX, _LENS, _FRAME, _POINT = (
    {"group": words} for words in ("Prescription", "Lens", "Frame and wearer", "Point looked through")
)
USUAL = "as usual"
LEAST_MM = {USUAL: None, "1.0": 1.0, "1.5": 1.5, "2.0": 2.0}
_DBL_MM = 18.0
_NAMES = tuple(materials())


def _mm(name: str, label: str, low: float, high: float, value: float, **group: str) -> Slider:
    return Slider(name=name, label=label, unit="mm", low=low, high=high, step=1.0, value=value, **group)


def _d(name: str, label: str, low: float, high: float, value: float, **group: str) -> Slider:
    return Slider(name=name, label=label, unit="D", low=low, high=high, step=0.25, value=value, **group)


class MaterialsPanel(Panel):
    """A right lens in every material of the table, in one outline and with one front curve."""

    draws = MaterialsPicture
    note = (
        f"Distance between lenses {_DBL_MM:g} mm; optical centre on the horizontal midline; no coat. "
        "Thinnest place in mm, in all alike, or as usual for the material. "
        "Each bar is a share of the longest in its column. Usual thicknesses and the fringe that is noticed "
        "are common practice, from memory. A dress lens, not safety eyewear, however thick."
    )
    controls = (
        _d("sphere_d", "Sphere", -10.0, 8.0, -6.0, **_RX),
        _d("cylinder_d", "Cylinder", -4.0, 0.0, 0.0, **_RX),
        Slider(name="axis_deg", label="Axis", unit="degrees", low=1, high=180, step=1, value=180, **_RX),
        Choice(name="material", label="Material", options=_NAMES, value="hard-resin-1.50", **_LENS),
        _d("front_curve_d", "Front curve", 0.0, 10.0, 4.0, **_LENS),
        Choice(name="thinnest", label="Thinnest place", options=tuple(LEAST_MM), value=USUAL, **_LENS),
        _mm("a_mm", "A (boxed width)", 40.0, 60.0, 52.0, **_FRAME),
        _mm("b_mm", "B (boxed height)", 26.0, 46.0, 36.0, **_FRAME),
        _mm("monocular_pd_mm", "Monocular distance", 26.0, 38.0, 32.0, **_FRAME),
        _mm("in_mm", "Inwards of centre", -12.0, 12.0, 0.0, **_POINT),
        _mm("up_mm", "Above centre", -12.0, 12.0, -8.0, **_POINT),
    )

    def compute(self, values: Values) -> MaterialsShown:
        """Return the lens in every material.

        values: by the control's name.

        Raises LabError for a lens that cannot be, or a point that does not lie on it.
        """
        rx = _prescription(values)
        look = {"look_in_mm": values["in_mm"], "look_up_mm": values["up_mm"]}
        lenses = compared(
            rx,
            frame=Frame(a_mm=values["a_mm"], b_mm=values["b_mm"], dbl_mm=_DBL_MM),
            eye=Eye.RIGHT,
            monocular_pd_mm=values["monocular_pd_mm"],
            front_curve_d=values["front_curve_d"],
            least_mm=LEAST_MM[values["thinnest"]],
            **look,
        )
        fringe = lenses[0].fringe
        shown = MaterialsShown(
            rx=rx,
            lenses=lenses,
            sections=tuple(map(_level_cut, lenses)),
            thrown_back=tuple(reflectance(lens.material.index) for lens in lenses),
            chosen=_NAMES.index(values["material"]),
            in_mm=values["in_mm"],
            up_mm=values["up_mm"],
            prism_words=in_words(fringe.in_prism_d, fringe.up_prism_d),
            rule_front_d=vogel_front_curve_d(rx.spherical_equivalent_d),
        )
        _require_on_lens(shown)
        return shown

    def numbers(self, data: MaterialsShown) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table, for the material chosen.

        data: what is shown.
        """
        lens, back = data.lens, data.thrown_back[data.chosen]
        return [
            ("Index", f"{lens.material.index:.3f}", lens.index_class),
            ("Abbe number", f"{lens.material.abbe:.1f}", ""),
            ("Density", f"{lens.material.density:.2f}", "g/cm3"),
            ("Centre thickness", f"{lens.centre_mm:.2f}", "mm"),
            ("Thickest edge", f"{lens.greatest_edge_mm:.2f}", f"mm at {lens.greatest_edge_deg:.0f} degrees"),
            ("Thinnest edge", f"{lens.least_edge_mm:.2f}", "mm"),
            ("Weight, one lens", f"{lens.weight_g:.1f}", "g"),
            ("Prism looked through", f"{lens.fringe.prism_prism_d:.2f}", "prism D"),
            ("Colour fringe", f"{lens.fringe.amount_prism_d:.3f}", "prism D"),
            ("Light thrown back", f"{100.0 * back:.1f}", "%"),
            ("Light let through", f"{100.0 * lens.transmittance:.1f}", "%"),
            ("Curve variation factor", f"{lens.curve_variation_factor:.3f}", ""),
            ("Front by Vogel's rule", f"{data.rule_front_d:.2f}", "D"),
        ]

    def sentence(self, data: MaterialsShown) -> str:
        """Return which lens is thinnest, lightest, most coloured.

        data: what is shown.
        """
        thin, thick = _ends(data.lenses, _thickest_place)
        light, heavy = _ends(data.lenses, lambda lens: lens.weight_g)
        return (
            f"At its thickest place {_of(thin, f'{_thickest_place(thin):.2f} mm')} is thinnest and "
            f"{_of(thick, f'{_thickest_place(thick):.2f} mm')} thickest. "
            f"{_of(light, f'{light.weight_g:.1f} g').capitalize()} is lightest, "
            f"{_of(heavy, f'{heavy.weight_g:.1f} g')} heaviest. {_colour(data)}"
        )


def _prescription(values: Values) -> Prescription:
    cylinder = values["cylinder_d"]
    axis = values["axis_deg"] if cylinder else None
    return Prescription(sphere_d=values["sphere_d"], cylinder_d=cylinder, axis_deg=axis)


def _level_cut(lens: InMaterial) -> Section:
    """A level cut; the blank is not drawn, so it is taken as large as the outline."""
    finished = lens.finished
    x, y = finished.centre_x_mm, finished.centre_y_mm
    blank = finished.outline.effective_diameter_mm
    return section(finished, blank_diameter_mm=blank, x_mm=x, y_mm=y, direction_deg=0.0)


def _require_on_lens(data: MaterialsShown) -> None:
    finished = data.lens.finished
    x = finished.centre_x_mm + Eye.RIGHT.nasal_sign * data.in_mm
    y = finished.centre_y_mm + data.up_mm
    rim = np.hypot(finished.outline.x_mm, finished.outline.y_mm)
    towards = math.degrees(math.atan2(y, x))
    if math.hypot(x, y) > np.interp(towards, finished.outline.angle_deg, rim, period=360.0):
        raise LabError(
            f"the point looked through, {data.where}, lies outside the lens: bring it nearer to the optical "
            "centre, or take a larger frame"
        )


def _thickest_place(lens: InMaterial) -> float:
    return max(lens.centre_mm, lens.greatest_edge_mm)


def _ends(
    lenses: Sequence[InMaterial], value: Callable[[InMaterial], float]
) -> tuple[InMaterial, InMaterial]:
    return min(lenses, key=value), max(lenses, key=value)


def _of(lens: InMaterial, figure: str) -> str:
    return f"{lens.material.words} ({figure})"


def _colour(data: MaterialsShown) -> str:
    if not round(data.lens.fringe.prism_prism_d, 2):
        return "Without prism there is no colour in any."
    least, most = _ends(data.lenses, lambda lens: lens.fringe.amount_prism_d)
    noticed = sum(lens.fringe.is_noticed for lens in data.lenses)
    count = {0: "none of them", len(data.lenses): "all of them"}.get(noticed, f"{noticed} of them")
    return (
        f"The fringe is least in {_of(least, f'{least.fringe.amount_prism_d:.2f}')} and most in "
        f"{_of(most, f'{most.fringe.amount_prism_d:.2f}')}; above what is usually noticed in {count}."
    )
