"""Lenses that questions about writing are asked of: in quarter dioptres, with nothing that coincides."""

from lablib.optics.optical_cross import OpticalCross
from lablib.optics.prescription import Prescription
from lablib.study.draws import Draws

_STEP_D = 0.25
_SPHERE_D, _LEAST_CYLINDER_D, _MOST_CYLINDER_D = 6.0, 0.5, 3.0
# Where two slips in the axis coincide, or go past nothing.
SPECIAL_AXES = (45, 90, 135, 180)


def toric_lens(draws: Draws) -> Prescription:
    """Return a lens in quarter dioptres with an oblique axis.

    draws: to draw its numbers from.

    None of its powers is plano, and sphere, sum and middle differ in size as well, so that an answer
    without its signs fits one of them alone.
    """
    return draws.until("a lens with an oblique axis", _draw_toric, _has_nothing_that_coincides)


def _draw_toric(draws: Draws) -> Prescription:
    sphere = draws.step(-_SPHERE_D, _SPHERE_D, _STEP_D)
    cylinder = draws.step(_LEAST_CYLINDER_D, _MOST_CYLINDER_D, _STEP_D) * draws.one_of((-1.0, 1.0))
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=draws.step(1.0, 179.0, 1.0))


def _has_nothing_that_coincides(lens: Prescription) -> bool:
    sizes = {0.0, *(abs(lens.sphere_d + share * lens.cylinder_d) for share in (0.0, 0.5, 1.0))}
    return len(sizes) == 4 and lens.axis_deg not in SPECIAL_AXES


def cross_of_a_lens(draws: Draws) -> OpticalCross:
    """Return the optical cross of such a lens, its meridians in either order.

    draws: to draw its numbers from.
    """
    lens = toric_lens(draws)
    return OpticalCross.of(draws.one_of((lens, lens.transposed())))
