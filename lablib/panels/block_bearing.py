"""Block and back tip on a real lens, as they are drawn: where each bears, and what is lifted off."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from lablib.bench.bearing_on import fit_of, match_of
from lablib.bench.curve_match import pad_stiffness_n_per_mm3, rim_gap_mm
from lablib.bench.faces import LensFaces, engraved_curvature_per_mm, engraved_curve_d, sphere_sag_mm
from lablib.bench.foundation import Pressed
from lablib.bench.parameter import default
from lablib.bench.tip_fit import TipFit, tip_stiffness_n_per_mm3
from lablib.job.eye_sheet import EyeSheet
from lablib.pictures.block_on_lens_data import BlockOnLens, SideView

# How far to either side of the chuck axis the side view reaches, and its places.
_HALF_VIEW_MM = 16.0
_PLACES = 129
# Gap at points about the chuck axis, both coordinates in mm [mm].
Gap = Callable[[np.ndarray, np.ndarray], np.ndarray]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Lying:
    """A face of which the gap to its surface is known everywhere, pressed on; not yet as drawn."""

    pressed: Pressed
    stiffness: float
    gap_mm: np.ndarray
    along_mm: np.ndarray
    gap_along_mm: np.ndarray

    @property
    def off_mm(self) -> np.ndarray:
        """How far the face stands off along the side view; below 0 where it is squeezed [mm].

        The face has sunk in, and set itself aslant if it swivels: where it touches, indentation and gap
        together lie on one plane.
        """
        face, pressure = self.pressed.face, self.pressed.pressure_mpa
        touching = pressure > 0.0
        ways = np.stack([np.ones_like(face.x_mm), face.x_mm, face.y_mm], axis=1)
        sunk = pressure / self.stiffness + self.gap_mm
        plane = np.linalg.lstsq(ways[touching], sunk[touching], rcond=None)[0]
        return self.gap_along_mm - plane[0] - plane[1] * self.along_mm


def block_on_lens(sheet: EyeSheet) -> BlockOnLens:
    """Return how block and back tip lie on a lens.

    sheet: the lens, worked; its blocking names a block curve and the face of a tip, and its cut is known.
    """
    cut, faces = sheet.cut, sheet.cut.lens.faces
    contact, clamp = cut.holding.contact, cut.holding.clamp_force_n
    match = match_of(cut.setup, contact, clamp, faces)
    tip = fit_of(cut.setup, cut.bench, clamp, faces)
    front = engraved_curve_d(faces.front_flat_per_mm)
    return BlockOnLens(
        sheet=sheet,
        block_curve_d=cut.setup.block_curve_d,
        front_curve_d=front,
        rim_gap_mm=rim_gap_mm(
            block_curve_d=cut.setup.block_curve_d, front_curve_d=front, away_mm=contact.half_width_mm
        ),
        block=match.pressed_on,
        tip=tip.pressed_on,
        bearing=match.bearing,
        tip_torque_share=tip.torque_share,
        view=_view(sheet, match.pressed_on, tip),
    )


def _view(sheet: EyeSheet, pad: Pressed, tip: TipFit) -> SideView:
    """The level cut through the chuck axis, the front there at 0; the block sits square on it."""
    faces, setup = sheet.cut.lens.faces, sheet.cut.setup
    x = np.linspace(-_HALF_VIEW_MM, _HALF_VIEW_MM, _PLACES)
    level = np.zeros_like(x)
    thickness = float(sheet.cut.lens.thickness_mm(np.array(0.0), np.array(0.0)))
    front, back = -faces.front_mm(x, level), -thickness - faces.back_mm(x, level)
    return SideView(
        along_mm=x,
        front_mm=front,
        back_mm=back,
        block_half_mm=pad.face.shape.half_width_mm,
        tip_half_mm=tip.pressed_on.face.shape.half_width_mm,
        pad_mm=default("pad_thickness_mm"),
        block_off_mm=_pad(faces, pad, setup.block_curve_d, x).off_mm,
        tip_off_mm=_rubber(faces, tip, setup.tip_face_mm, setup.tip_stiffness, x).off_mm,
    )


def _pad(faces: LensFaces, on: Pressed, block_curve_d: float, x: np.ndarray) -> _Lying:
    def gap(across: np.ndarray, up: np.ndarray) -> np.ndarray:
        block = sphere_sag_mm(engraved_curvature_per_mm(block_curve_d), np.hypot(across, up))
        return faces.front_mm(across, up) - block

    return _lying(on, pad_stiffness_n_per_mm3(), gap, x)


def _rubber(faces: LensFaces, on: TipFit, tip_face_mm: float, stiffness: str, x: np.ndarray) -> _Lying:
    def gap(across: np.ndarray, up: np.ndarray) -> np.ndarray:
        return sphere_sag_mm(1.0 / tip_face_mm, np.hypot(across, up)) - faces.back_mm(across, up)

    return _lying(on.pressed_on, tip_stiffness_n_per_mm3(stiffness), gap, x)


def _lying(on: Pressed, stiffness: float, gap: Gap, x: np.ndarray) -> _Lying:
    return _Lying(
        pressed=on,
        stiffness=stiffness,
        gap_mm=gap(on.face.x_mm, on.face.y_mm),
        along_mm=x,
        gap_along_mm=gap(x, np.zeros_like(x)),
    )
