"""One prescription in several materials: how thick, how heavy, how much colour."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from lablib.optics.care import care
from lablib.optics.chromatic import Fringe, fringe_at
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, Outline
from lablib.optics.index_effect import curve_variation_factor, index_class
from lablib.optics.layout import decentration_mm
from lablib.optics.lens import Lens, lens_for, lens_with_least_thickness
from lablib.optics.limits import require_in_limits
from lablib.optics.material import Material, material, materials
from lablib.optics.prescription import Prescription
from lablib.optics.reflection import transmittance
from lablib.optics.solid import FinishedLens


@dataclass(frozen=True, kw_only=True, eq=False)
class InMaterial:
    """A lens in one of the materials.

    material: it.
    finished: the lens in its outline.
    fringe: at the point looked through.
    """

    material: Material
    finished: FinishedLens
    fringe: Fringe

    @property
    def centre_mm(self) -> float:
        """Thickness at the optical centre [mm]."""
        return self.finished.lens.centre_thickness_mm

    @property
    def least_edge_mm(self) -> float:
        """The thinnest place of its edge [mm]."""
        return float(self.finished.edge_mm.min())

    @property
    def greatest_edge_mm(self) -> float:
        """The thickest place of its edge [mm]."""
        return float(self.finished.edge_mm.max())

    @property
    def greatest_edge_deg(self) -> float:
        """Where that is, from the boxed centre, anticlockwise from the observer's right [degrees]."""
        return float(self.finished.outline.angle_deg[int(np.argmax(np.round(self.finished.edge_mm, 6)))])

    @property
    def weight_g(self) -> float:
        """Weight of the one lens [g]."""
        return self.finished.weight_g(self.material.density)

    @property
    def transmittance(self) -> float:
        """Share of light it lets through, uncoated and clear, from 0 to 1."""
        return transmittance(self.material.index)

    @property
    def curve_variation_factor(self) -> float:
        """How strongly curved against crown glass."""
        return curve_variation_factor(self.material.index)

    @property
    def index_class(self) -> str:
        """Class of its index in words."""
        return index_class(self.material.index)


def compared(
    rx: Prescription,
    *,
    frame: Frame,
    eye: Eye | str,
    monocular_pd_mm: float,
    front_curve_d: float,
    look_in_mm: float,
    look_up_mm: float,
    height_mm: float | None = None,
    least_mm: float | None = None,
    names: Iterable[str] | None = None,
) -> tuple[InMaterial, ...]:
    """Return one lens in several materials, from the lowest index to the highest as the table has them.

    rx: the power for distance.
    frame: whose outline it is cut to; eye: the eye it is for.
    monocular_pd_mm, height_mm: where its optical centre lies, as in `decentration_mm` [mm].
    front_curve_d: front surface power, the same in every material [D].
    look_in_mm, look_up_mm: the point looked through, inwards and upwards from the optical centre [mm].
    least_mm: thickness of centre and edge at their thinnest [mm]; None takes what is usual for each material.
    names: of the materials; None for all of them.

    Raises LabError for a value out of range, or a lens that cannot be.
    """
    eye = Eye.of(eye)
    inward, up = decentration_mm(frame, monocular_pd_mm=monocular_pd_mm, height_mm=height_mm)
    outline, x = frame.outline(eye), eye.nasal_sign * inward
    if least_mm is not None:
        require_in_limits("least thickness", least_mm, "least_edge_mm")
    found = []
    for name in materials() if names is None else names:
        made_of = material(name)
        lens = thinnest_lens(
            rx,
            outline,
            index=made_of.index,
            front_curve_d=front_curve_d,
            least_centre_mm=care(name).least_centre_mm if least_mm is None else least_mm,
            least_edge_mm=care(name).least_edge_mm if least_mm is None else least_mm,
            x_mm=x,
            y_mm=up,
        )
        found.append(
            InMaterial(
                material=made_of,
                finished=FinishedLens(lens=lens, outline=outline, centre_x_mm=x, centre_y_mm=up),
                fringe=fringe_at(rx, eye=eye, in_mm=look_in_mm, up_mm=look_up_mm, abbe=made_of.abbe),
            )
        )
    return tuple(found)


def thinnest_lens(
    rx: Prescription,
    outline: Outline,
    *,
    index: float,
    front_curve_d: float,
    least_centre_mm: float,
    least_edge_mm: float,
    x_mm: float,
    y_mm: float,
) -> Lens:
    """Return the thinnest lens whose centre and edge are nowhere thinner than asked for.

    rx, index, front_curve_d: as in `lens_for`.
    outline: it is cut to, about the boxed centre.
    least_centre_mm, least_edge_mm: the least thickness at the centre and all round the edge [mm].
    x_mm, y_mm: optical centre from the boxed centre, to the observer's right and up [mm].

    Raises LabError for a lens that cannot be.
    """
    rim_x, rim_y = outline.x_mm - x_mm, outline.y_mm - y_mm
    lens = lens_for(rx, index=index, front_curve_d=front_curve_d, centre_thickness_mm=least_centre_mm)
    if float(lens.thickness_mm(rim_x, rim_y).min()) >= least_edge_mm:
        return lens
    return lens_with_least_thickness(
        rx, index=index, front_curve_d=front_curve_d, least_mm=least_edge_mm, x_mm=rim_x, y_mm=rim_y
    )
