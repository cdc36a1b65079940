"""The panel of a lens as it is worn: from the side, and with its power errors over the gaze."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from lablib.optics.chief_rays import WornLens
from lablib.optics.conic import conic_front, conic_lens_with_edge
from lablib.optics.lens import Lens, lens_for
from lablib.optics.material import material, materials
from lablib.optics.oblique import oblique_errors, power_straight_ahead
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.optics.tilt import ORIGINAL_SPHERE, Tilt, compensated, tilt_effect
from lablib.optics.tilt_place import centre_drop_by_rule_mm, centre_drop_mm
from lablib.optics.tscherning import ThinLens
from lablib.optics.worn_section import line_of_sight, worn_section
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.wearing import WearingPicture
from lablib.pictures.wearing_data import WornView

AS_ORDERED, COMPENSATED = "as prescribed", "compensated"
_LENS, _WORN = {"group": "Lens"}, {"group": "As worn"}
_GAZES_DEG = np.linspace(-30.0, 30.0, 61)
# The lens on the picture: a minus lens by its centre, a plus lens by its edge on a rim so high.
_CENTRE_MM, _EDGE_MM, _HALF_HEIGHT_MM = 2.0, 1.0, 24.0
# From the cornea into the eye; with the usual vertex distance it makes the usual 27 mm.
_INTO_EYE_MM, _BEFORE_MM = 15.0, 60.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WearingSheet(WornView):
    """A worn lens with what its tilt does, and what would make up for it.

    wanted: what was prescribed; made: the lens itself.
    by_new_sphere, by_original_sphere: what tilt makes of the prescription, in the two published forms.
    order: the compensated lens; ahead: what the eye gets straight ahead by traced rays, None where nothing.
    drop_mm, drop_by_rule_mm: where the centre belongs, exact and by rule [mm].
    best_fronts_d: front curves without oblique astigmatism for a thin lens [D].
    """

    wanted: Prescription
    made: Prescription
    by_new_sphere: Prescription
    by_original_sphere: Prescription
    order: Prescription
    ahead: Prescription
    drop_mm: float
    drop_by_rule_mm: float
    best_fronts_d: tuple[float, ...]


class WearingPanel(Panel):
    """One lens, how it sits, and an eye that looks up and down through it."""

    draws = WearingPicture
    note = (
        "Traced rays, in one upright plane. A minus lens is 2 mm thick in the middle, a plus lens 1 mm where "
        "its rim is thinnest. No power is changed without asking the prescriber."
    )
    controls = (
        Slider(name="power_d", label="Power", unit="D", low=-10, high=10, step=0.25, value=-6, **_LENS),
        Choice(
            name="material", label="Material", options=tuple(materials()), value="hard-resin-1.50", **_LENS
        ),
        Slider(name="front_d", label="Front curve", unit="D", low=0, high=16, step=0.25, value=3, **_LENS),
        Slider(
            name="p_value", label="p value of the front", unit="", low=-1, high=3, step=0.1, value=1, **_LENS
        ),
        Choice(name="made", label="Made", options=(AS_ORDERED, COMPENSATED), value=AS_ORDERED, **_LENS),
        Slider(name="tilt_deg", label="Tilt", unit="degrees", low=-5, high=20, step=1, value=10, **_WORN),
        Slider(name="drop_mm", label="Centre drop", unit="mm", low=0, high=8, step=0.5, value=0, **_WORN),
        Slider(
            name="vertex_mm", label="Vertex distance", unit="mm", low=8, high=20, step=0.5, value=12, **_WORN
        ),
        Slider(name="gaze_deg", label="Gaze", unit="degrees", low=-30, high=30, step=1, value=0, **_WORN),
    )

    def compute(self, values: Values) -> WearingSheet:
        """Return the lens as it is worn, with its errors.

        values: by the control's name.

        Raises LabError for a lens that cannot be.
        """
        wanted = Prescription(sphere_d=values["power_d"])
        index, tilt = material(values["material"]).index, Tilt(pantoscopic_deg=values["tilt_deg"])
        turned = {"tilt": tilt, "index": index}
        order = compensated(wanted, **turned)
        rotation = values["vertex_mm"] + _INTO_EYE_MM
        made = order if values["made"] == COMPENSATED else wanted
        worn = WornLens(
            lens=_lens(made, index, values),
            tilt=tilt,
            drop_mm=values["drop_mm"],
            centre_of_rotation_mm=rotation,
        )
        return WearingSheet(
            heading=_heading(values),
            section=worn_section(worn, half_height_mm=_HALF_HEIGHT_MM),
            **_errors(worn, values["gaze_deg"], wanted),
            vertex_distance_mm=values["vertex_mm"],
            into_eye_mm=_INTO_EYE_MM,
            wanted=wanted,
            made=made,
            by_new_sphere=tilt_effect(wanted, **turned),
            by_original_sphere=tilt_effect(wanted, **turned, form=ORIGINAL_SPHERE),
            order=order,
            ahead=power_straight_ahead(worn),
            drop_mm=centre_drop_mm(tilt.pantoscopic_deg, centre_of_rotation_mm=rotation),
            drop_by_rule_mm=centre_drop_by_rule_mm(tilt.pantoscopic_deg),
            best_fronts_d=_best_fronts(values["power_d"], index, rotation),
        )

    def numbers(self, data: WearingSheet) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table; those of a tilt are left out where there is none and none can come.

        data: from `compute`.
        """
        best = f"{data.best_fronts_d[0]:+.2f}" if data.best_fronts_d else NOT_KNOWN
        upright = self.handles["tilt_deg"].value == 0.0 and "tilt_deg" not in self.shown
        return [
            *([] if upright else _tilt_rows(data)),
            ("Tangential error", *_error(data.tangential_now_d)),
            ("Sagittal error", *_error(data.sagittal_now_d)),
            ("Best front, thin lens", best, "D" if data.best_fronts_d else "none is a sphere"),
        ]

    def sentence(self, data: WearingSheet) -> str:
        """Return what the eye meets at the chosen gaze.

        data: from `compute`.
        """
        looks = _looks(data.gaze_deg)
        if math.isnan(data.tangential_now_d):
            return f"{looks}, no light reaches the eye: the surfaces of this lens end before."
        along, across = (written_power(one) for one in (data.tangential_now_d, data.sagittal_now_d))
        return (
            f"{looks}, the eye meets an error of {along} D along the turn and {across} D across it; "
            f"between them {abs(data.tangential_now_d - data.sagittal_now_d):.2f} D of unwanted cylinder."
        )


def _lens(made: Prescription, index: float, values: Values) -> Lens:
    how = {"index": index, "front_curve_d": values["front_d"]}
    if values["power_d"] > 0.0:
        rim = _HALF_HEIGHT_MM + values["drop_mm"]
        return conic_lens_with_edge(made, **how, p_value=values["p_value"], edge_mm=_EDGE_MM, away_mm=rim)
    return conic_front(lens_for(made, **how, centre_thickness_mm=_CENTRE_MM), values["p_value"])


def _errors(worn: WornLens, gaze_deg: float, wanted: Prescription) -> dict[str, object]:
    """The errors over the gaze and at the chosen one, under the names of `WornView`."""
    over = oblique_errors(worn, _GAZES_DEG, wanted=wanted)
    now = oblique_errors(worn, gaze_deg, wanted=wanted)
    rotation = worn.centre_of_rotation_mm
    return {
        "gaze_deg": gaze_deg,
        "gazes_deg": _GAZES_DEG,
        "tangential_d": over.tangential_d,
        "sagittal_d": over.sagittal_d,
        "tangential_now_d": float(now.tangential_d[0]),
        "sagittal_now_d": float(now.sagittal_d[0]),
        "sight_mm": line_of_sight(now.rays, before_mm=_BEFORE_MM, centre_of_rotation_mm=rotation),
    }


def _best_fronts(power_d: float, index: float, rotation_mm: float) -> tuple[float, ...]:
    if not power_d:
        return ()
    return ThinLens(power_d=power_d, index=index, centre_of_rotation_mm=rotation_mm).front_curves_d()


def _heading(values: Values) -> str:
    how = "" if values["made"] == AS_ORDERED else ", compensated"
    return f"From the side: {written_power(values['power_d'])} D{how}, tilt {values['tilt_deg']:g} degrees"


def _tilt_rows(data: WearingSheet) -> list[tuple[str, str, str]]:
    """What the tilt does and asks for, each cylinder in the form whose axis is the line of the tilt."""
    form, other = ("plus", "minus") if data.wanted.sphere_d > 0.0 else ("minus", "plus")
    return [
        ("New sphere", data.by_new_sphere.written(form), ""),
        ("Original sphere", data.by_original_sphere.written(form), ""),
        ("Ahead, traced", data.ahead.written(form), ""),
        ("Compensated", data.order.written(other), ""),
        ("Drop", f"{data.drop_mm:.1f}", f"mm, by rule {data.drop_by_rule_mm:.1f}"),
    ]


def _error(error_d: float) -> tuple[str, str]:
    return (NOT_KNOWN, "") if math.isnan(error_d) else (written_power(error_d), "D")


def _looks(gaze_deg: float) -> str:
    if not gaze_deg:
        return "Looking straight ahead"
    return f"Looking {abs(gaze_deg):g} degrees {'up' if gaze_deg > 0.0 else 'down'}"
