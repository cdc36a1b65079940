"""The back tip on the real back of a lens: where it bears, and what is left of an even contact's hold."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from lablib.bench.contact import Ellipse
from lablib.bench.faces import LensFaces, sphere_sag_mm
from lablib.bench.foundation import Pressed, face_of, pressed
from lablib.bench.parameter import default, require_clamp_force, require_parameter
from lablib.errors import require_one_of

STIFFNESSES = ("soft", "stiff")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TipFit:
    """A tip pressed on a back.

    pressed_on: its pressure.
    torque_share, force_share: q_T and q_F, of an even contact's friction torque and force.
    """

    pressed_on: Pressed
    torque_share: float
    force_share: float

    @property
    def peak_mpa(self) -> float:
        """Greatest pressure [MPa]."""
        return self.pressed_on.peak_mpa

    @property
    def contact_share(self) -> float:
        """Share of the tip's area that touches."""
        return self.pressed_on.contact_share


def tip_stiffness_n_per_mm3(stiffness: str) -> float:
    """Return the pressure that a tip's indentation takes [N/mm3].

    stiffness: "soft" or "stiff".

    Raises LabError for another word.
    """
    return default(f"tip_{require_one_of('tip_stiffness', stiffness, STIFFNESSES)}_n_per_mm3")


@lru_cache(maxsize=256)
def tip_fit(
    faces: LensFaces,
    *,
    tip_face_mm: float,
    stiffness: str = "soft",
    swivels: bool = True,
    force_n: float = 300.0,
    tip_radius_mm: float | None = None,
) -> TipFit:
    """Return how a tip bears on a back.

    faces: of the lens, at the chuck axis.
    tip_face_mm: radius of curvature of the tip's face [mm].
    stiffness: "soft" or "stiff".
    swivels: whether it sets itself square to the back; a rigid one stays square to the chuck axis.
    force_n: clamp force [N].
    tip_radius_mm: from the tip's axis to its rim [mm]; None: the usual one.

    Raises LabError for a word or number out of range, or where the back curls up under the tip.
    Source: foundation of springs; rubber's friction falls with the cube root of pressure (elastic contact of
    a rough rubber, from memory), so that shear stress grows with its power 2/3.
    """
    require_parameter("tip_face_mm", tip_face_mm)
    require_clamp_force(force_n)
    size = default("tip_radius_mm") if tip_radius_mm is None else tip_radius_mm
    require_parameter("tip_radius_mm", size)
    face = face_of(Ellipse(half_width_mm=size, half_height_mm=size))
    gap = sphere_sag_mm(1.0 / tip_face_mm, face.away_mm) - faces.back_mm(face.x_mm, face.y_mm)
    springs = tip_stiffness_n_per_mm3(stiffness)
    on = pressed(face, gap, stiffness_n_per_mm3=springs, force_n=force_n, swivels=swivels)
    torque, force = _friction_shares(on)
    return TipFit(pressed_on=on, torque_share=torque, force_share=force)


def _friction_shares(on: Pressed) -> tuple[float, float]:
    away, power = on.face.away_mm, 1.0 - default("rubber_friction_exponent")
    shear, even = on.pressure_mpa**power, on.mean_mpa**power
    return float((shear * away).sum() / (even * away.sum())), float(np.mean(shear) / even)
