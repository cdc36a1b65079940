"""Two rules of thumb for the front curve as workings to follow by hand.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.base_curve import bhootra_front_curve_d, front_curves, stronger_meridian_d
from lablib.optics.form_workings import vogel_front_curve_workings
from lablib.optics.practice import source_of, usual
from lablib.optics.prescription import Prescription
from lablib.optics.terms import in_full, power_step, power_term, sphere_and_cylinder
from lablib.working import Working


def bhootra_front_curve_workings(rx: Prescription) -> tuple[Working, ...]:
    """Return the front curve by the rule of `bhootra_front_curve_d`: the stronger meridian, then the curve.

    rx: the prescription.
    """
    stronger = stronger_meridian_d(rx)
    sphere, cylinder = sphere_and_cylinder(rx)
    is_sphere = stronger == rx.sphere_d
    meridian = power_step(
        "power of the stronger meridian",
        "F_m",
        "S" if is_sphere else "S + C",
        (sphere,) if is_sphere else (sphere, cylinder),
        stronger,
        digits=3,
    )
    curve = power_step(
        "front curve by a rule inferred from two examples",
        "F_1b",
        "K + p * F_m",
        (
            power_term("K", usual("bhootra_plano_curve"), "front curve where that meridian is plano"),
            in_full("p", usual("bhootra_share"), "", meaning="share of that meridian"),
            meridian.as_term(),
        ),
        bhootra_front_curve_d(rx),
        source=source_of("bhootra_share"),
    )
    return meridian, curve


def front_curves_workings(rx: Prescription) -> tuple[Working, ...]:
    """Return the front curves of both rules and, as the last step, their difference.

    rx: the prescription.
    """
    vogel, bhootra = vogel_front_curve_workings(rx), bhootra_front_curve_workings(rx)
    difference = power_step(
        "difference of the two rules",
        "D_F",
        f"{vogel[-1].symbol} - {bhootra[-1].symbol}",
        (vogel[-1].as_term(), bhootra[-1].as_term()),
        front_curves(rx).difference_d,
    )
    return (*vogel, *bhootra, difference)
