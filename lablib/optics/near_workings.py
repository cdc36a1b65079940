"""Lenses for near and for the middle distance as workings to follow by hand.

Cylinder and axis stay as they are, so there is one step alone: the sphere.
"""

from lablib.optics.near_power import intermediate_lens, near_lens
from lablib.optics.practice import usual_or
from lablib.optics.prescription import Prescription
from lablib.optics.terms import in_full, power_step, power_term, sphere_and_cylinder
from lablib.working import Term, Working

_PRACTICE = "common practice"


def near_lens_working(rx: Prescription) -> Working:
    """Return the sphere of the lens for near, worked.

    rx: as in `near_lens`, which also says what it raises.
    """
    near = near_lens(rx)
    sphere, _ = sphere_and_cylinder(rx)
    return power_step(
        "sphere of the lens for near",
        "S_n",
        "S + Add",
        (sphere, _addition(rx)),
        near.sphere_d,
        source=_PRACTICE,
    )


def intermediate_lens_working(rx: Prescription, *, share: float | None = None) -> Working:
    """Return the sphere of the lens for the middle distance, worked.

    rx, share: as in `intermediate_lens`, which also says what it raises.
    """
    middle = intermediate_lens(rx, share=share)
    sphere, _ = sphere_and_cylinder(rx)
    part = in_full(
        "p",
        usual_or("intermediate_share", "share of the addition", share),
        "",
        meaning="share of the addition",
    )
    return power_step(
        "sphere of the lens for the middle distance",
        "S_m",
        "S + p * Add",
        (sphere, part, _addition(rx)),
        middle.sphere_d,
        digits=3,
        source=_PRACTICE,
    )


def _addition(rx: Prescription) -> Term:
    return power_term("Add", rx.addition_d, "addition")
