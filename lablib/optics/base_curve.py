"""Rules of thumb for the front curve, side by side.

They disagree, and where a lens maker gives a chart of curves, the chart goes before any of them.
"""

from dataclasses import dataclass

from lablib.optics.practice import usual
from lablib.optics.prescription import Prescription
from lablib.optics.thick_lens import vogel_front_curve_d


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontCurves:
    """The front curves two rules give for one prescription.

    vogel_d: by Vogel's rule [D].
    bhootra_d: by the rule inferred from Bhootra's two examples [D].
    """

    vogel_d: float
    bhootra_d: float

    @property
    def difference_d(self) -> float:
        """Vogel's less Bhootra's [D]."""
        return self.vogel_d - self.bhootra_d


def stronger_meridian_d(rx: Prescription) -> float:
    """Return the power of the stronger principal meridian, plus where both are equally strong [D].

    rx: the prescription.
    """
    return max(rx.sphere_d, rx.sphere_d + rx.cylinder_d, key=lambda power: (round(abs(power), 9), power))


def bhootra_front_curve_d(rx: Prescription) -> float:
    """Return the front curve by half the power of the stronger meridian + 6 [D].

    rx: the prescription.

    The rule is inferred, not read. A. Bhootra, Ophthalmic Lenses, p. 25, prints +8.50 for +4.00 +1.00 x 090
    and +3.50 for -4.00 -1.00 x 090, and this is the simplest rule found that gives both: one formula for
    plus and minus. Two values do not fix a rule: spherical equivalent + 4 for plus and + 8 for minus
    gives the same two. Only the two printed values are the book's.
    """
    return usual("bhootra_plano_curve") + usual("bhootra_share") * stronger_meridian_d(rx)


def front_curves(rx: Prescription) -> FrontCurves:
    """Return the front curves of both rules for a prescription.

    rx: the prescription.

    Source: Vogel's rule from memory; the other as in `bhootra_front_curve_d`.
    """
    return FrontCurves(
        vogel_d=vogel_front_curve_d(rx.spherical_equivalent_d), bhootra_d=bhootra_front_curve_d(rx)
    )
