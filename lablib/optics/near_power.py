"""A lens for near alone, or for the middle distance, from distance power and addition."""

from dataclasses import replace

from lablib.errors import LabError
from lablib.optics.power import without_noise
from lablib.optics.practice import usual_or
from lablib.optics.prescription import Prescription


def near_lens(rx: Prescription) -> Prescription:
    """Return the single vision lens for near: the addition goes to the sphere, cylinder and axis stay.

    rx: the prescription for distance, with its addition.

    Raises LabError where there is no addition or the sum is out of range.
    Source: common practice.
    """
    return intermediate_lens(rx, share=1.0)


def intermediate_lens(rx: Prescription, *, share: float | None = None) -> Prescription:
    """Return the single vision lens for the middle distance: part of the addition goes to the sphere.

    rx: the prescription for distance, with its addition.
    share: the part of the addition, from 0 to 1; None for the usual half.

    Raises LabError where there is no addition, or for a share or a sum out of range.
    Source: common practice; the prescriber may order another part.
    """
    part = usual_or("intermediate_share", "share of the addition", share)
    if not rx.addition_d:
        raise LabError(
            f"prescription {rx} has no addition: a lens for near is made from distance power and addition; "
            "ask for the addition, or for the power for near"
        )
    return replace(rx, sphere_d=without_noise(rx.sphere_d + part * rx.addition_d), addition_d=0.0)
