"""The power of a lens with thickness from its two surfaces, as workings to follow by hand.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.limits import require_in_limits
from lablib.optics.terms import distance_term, in_full, power_step, power_term
from lablib.optics.thick_lens import back_vertex_power_d, shape_power_d
from lablib.working import Working

_JALIE = "M. Jalie, The Principles of Ophthalmic Lenses (from memory)"


def back_vertex_power_workings(
    front_d: float, back_d: float, *, thickness_mm: float, index: float
) -> tuple[Working, Working]:
    """Return the back vertex power, worked: what the front surface has become at the back, then the sum.

    front_d, back_d: surface powers [D]; thickness_mm: centre thickness [mm]; index: of the lens.

    Raises LabError for a surface, a thickness or an index out of range.
    """
    front = require_in_limits("front surface power", front_d, "front_curve_d")
    back = require_in_limits("back surface power", back_d, "front_curve_d")
    thickness = require_in_limits("centre thickness", thickness_mm, "centre_thickness_mm")
    n = require_in_limits("index", index, "index")
    brought = power_step(
        "what the front surface has become at the back vertex",
        "F_b",
        "F_1 / (1 - t / 1000 * F_1 / n)",
        (
            power_term("F_1", front, "front surface power"),
            distance_term("t", thickness, "centre thickness"),
            in_full("n", n, "", least_digits=3, meaning="index"),
        ),
        shape_power_d(front, thickness, n),
        digits=3,
        source=_JALIE,
    )
    power = power_step(
        "back vertex power",
        "F",
        "F_b + F_2",
        (brought.as_term(), power_term("F_2", back, "back surface power")),
        back_vertex_power_d(front, back, thickness, n),
    )
    return brought, power
