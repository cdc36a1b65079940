"""Vogel's rule used for the wrong sign, as more than one topic has it for a slip."""

from lablib.optics.thick_lens import vogel_front_curve_d


def vogel_for_the_other_sign_d(equivalent_d: float) -> float:
    """Return the front curve by the half of Vogel's rule that belongs to the other sign [D].

    equivalent_d: spherical equivalent, or what was taken for it [D].

    The rule rises on both sides of a plano lens, so the wrong half is the right one for a lens as strong of
    the other sign, mirrored at the curve of a plano lens.
    """
    return 2.0 * vogel_front_curve_d(0.0) - vogel_front_curve_d(-equivalent_d)
