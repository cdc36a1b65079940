"""What a focimeter shows for an addition, read from the front or from the back of the lens.

The addition is a difference of vertex powers. Read on the side whose surface carries it, the difference is
the addition itself; read on the other side, the thickness comes in.
"""

from lablib.errors import require_between, require_one_of
from lablib.optics.limits import require_in_limits
from lablib.optics.power import ADDITION_LIMIT_D
from lablib.optics.progressive import ADDITION_SIDES
from lablib.optics.thick_lens import back_vertex_power_d, front_vertex_power_d

_VERTEX_POWER = {"front": front_vertex_power_d, "back": back_vertex_power_d}


def addition_read_d(
    addition_d: float,
    *,
    front_d: float,
    back_d: float,
    thickness_mm: float,
    index: float,
    addition_on: str = "front",
    read_from: str = "front",
) -> float:
    """Return the addition as a focimeter shows it, power through the near part less power for distance [D].

    addition_d: what the surface of the near part has more than that of the distance part [D].
    front_d, back_d: surface powers of the distance part [D].
    thickness_mm: taken alike in both parts [mm]; index: of the lens.
    addition_on: the surface that carries it, "front" or "back".
    read_from: the side that lies on the focimeter's stop, "front" or "back".

    Raises LabError for a value out of range.
    Source: the vertex powers of `lablib.optics.thick_lens`; that a front addition is read from the front is
    common practice.
    """
    require_one_of("addition_on", addition_on, ADDITION_SIDES)
    require_one_of("read_from", read_from, ADDITION_SIDES)
    added = require_between("addition", addition_d, low=0.0, high=ADDITION_LIMIT_D, unit="D")
    far = {
        "front_d": require_in_limits("front surface power", front_d, "front_curve_d"),
        "back_d": require_in_limits("back surface power", back_d, "front_curve_d"),
    }
    rest = {
        "thickness_mm": require_in_limits("centre thickness", thickness_mm, "centre_thickness_mm"),
        "index": require_in_limits("index", index, "index"),
    }
    near = far | {f"{addition_on}_d": far[f"{addition_on}_d"] + added}
    power = _VERTEX_POWER[read_from]
    return power(**near, **rest) - power(**far, **rest)
