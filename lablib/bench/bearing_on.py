"""How block and back tip of a setup bear on a lens: what that leaves of the hold, and how the lens bends."""

import math

from lablib.bench.bearing import EVEN, Bearing
from lablib.bench.contact import Ellipse, block_contact
from lablib.bench.curve_match import BlockMatch, block_match
from lablib.bench.faces import LensFaces
from lablib.bench.machine import Bench
from lablib.bench.parameter import default, table
from lablib.bench.setup import Setup
from lablib.bench.tip_fit import TipFit, tip_fit
from lablib.errors import LabError


def match_of(setup: Setup, contact: Ellipse, clamp_n: float, faces: LensFaces | None) -> BlockMatch | None:
    """Return how the block bears on the lens front; None where no block curve is named.

    setup: its block curve; contact: of the block; clamp_n: clamp force [N]; faces: of the lens.

    Raises LabError where a curve is named and there is no lens front to lay it on.
    """
    if setup.block_curve_d is None:
        return None
    _require_faces("block curve", f"{setup.block_curve_d:g} D", faces)
    return block_match(contact, faces, block_curve_d=setup.block_curve_d, clamp_n=clamp_n)


def block_bearing(setup: Setup, contact: Ellipse, clamp_n: float, faces: LensFaces | None) -> Bearing:
    """Return what of an even contact the block leaves; all of it where no block curve is named.

    setup, contact, clamp_n, faces: as in `match_of`.

    Raises LabError as `match_of` does.
    """
    match = match_of(setup, contact, clamp_n, faces)
    return EVEN if match is None else match.bearing


def fit_of(setup: Setup, bench: Bench, clamp_n: float, faces: LensFaces | None) -> TipFit | None:
    """Return how the back tip bears on the back; None where the tip's face is not named.

    setup: its tip; bench: its tip's size; clamp_n: clamp force [N]; faces: of the lens.

    Raises LabError where a face is named and there is no back to press it on.
    """
    if setup.tip_face_mm is None:
        return None
    _require_faces("tip face", f"{setup.tip_face_mm:g} mm", faces)
    return tip_fit(
        faces,
        tip_face_mm=setup.tip_face_mm,
        stiffness=setup.tip_stiffness,
        swivels=setup.tip_swivels,
        force_n=clamp_n,
        tip_radius_mm=bench.tip_radius_mm,
    )


def back_fit(
    setup: Setup, bench: Bench, *, clamp_n: float, faces: LensFaces | None = None
) -> tuple[float, float]:
    """Return q_T and q_F, the share of an even contact's torque and force that the back tip gives.

    setup: its tip face where it is named, else its tip fit and stiffness.
    bench: its share where the fit is not known; clamp_n: clamp force [N]; faces: of the lens.

    Raises LabError as `fit_of` does.
    """
    fit = fit_of(setup, bench, clamp_n, faces)
    if fit is not None:
        return fit.torque_share, fit.force_share
    if setup.tip_fit == "usual":
        return bench.usual_fit, bench.usual_fit
    row = table()["fit"][setup.tip_fit]
    return row["torque"][setup.tip_stiffness], row["force"][setup.tip_stiffness]


def uneven_bending_share(
    setup: Setup, bench: Bench, contact: Ellipse, clamp_n: float, faces: LensFaces | None
) -> float:
    """Return chi, bending of the clamped lens as a share of a simply supported plate's.

    setup, bench, contact, clamp_n, faces: as in `match_of` and `fit_of`.

    A plate between two loads is bent in the middle by the difference of their mean logarithms of the distance
    from the axis; between even discs that is ln of their radii. A block that bears on its rim bends the lens
    over the tip; the bench's own chi is scaled by it. Never below that: what bends a lens less presses on a
    spot instead, and no more clamp force is granted for it.

    Raises LabError as `match_of` and `fit_of` do.
    Source: thin plate under loads symmetric about its middle (derived).
    """
    match, fit = match_of(setup, contact, clamp_n, faces), fit_of(setup, bench, clamp_n, faces)
    block = 0.0 if match is None else match.clamped.farther_out
    tip = 0.0 if fit is None else fit.pressed_on.farther_out
    return bench.bending_share * max(1.0, 1.0 + (block - tip) / _even_discs())


def _even_discs() -> float:
    """The bench's chi is stated for the round block and the usual tip."""
    return math.log(block_contact("round").half_width_mm / default("tip_radius_mm"))


def _require_faces(thing: str, value: str, faces: LensFaces | None) -> None:
    if faces is None:
        raise LabError(f"{thing} {value} has no lens to lie on: hand over the lens's faces, or leave it out")
