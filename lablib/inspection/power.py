"""How far sphere and cylinder of a lens may be off."""

from lablib.datafile import read_table
from lablib.errors import require_finite
from lablib.inspection.axis import STANDARD


def sphere_limit_d(sphere_d: float, *, progressive: bool = False, standard: str = STANDARD) -> float:
    """Return how far the sphere may be off either way [D].

    sphere_d: sphere of the minus-cylinder form [D]; rounded to 0.01 D before it is compared.
    progressive: whether the lens is a progressive; else single vision or multifocal.
    standard: name of the tolerance table.

    Raises LabError for a sphere that is not a number, or a table that is not there.
    Source: ANSI Z80.1-2015, as restated in the Virginia Administrative Code 18VAC80-30-120.
    """
    return _limit_d("sphere", sphere_d, progressive, standard)


def cylinder_limit_d(cylinder_d: float, *, progressive: bool = False, standard: str = STANDARD) -> float:
    """Return how far the cylinder may be off either way [D].

    cylinder_d: power of the cylinder, of either sign [D]; rounded to 0.01 D before it is compared.
    progressive, standard: as in `sphere_limit_d`, which also says what it raises.

    Source: ANSI Z80.1-2015, as restated in the Virginia Administrative Code 18VAC80-30-120.
    """
    return _limit_d("cylinder", cylinder_d, progressive, standard)


def _limit_d(quantity: str, power_d: float, progressive: bool, standard: str) -> float:
    bands = read_table("lablib.inspection", f"{standard}.toml")[quantity]
    power = round(abs(require_finite(quantity, power_d, unit="D")), 2)
    rows = bands["progressive" if progressive else "single_vision"]
    row = next(row for row in rows if power <= row.get("up_to_d", power))
    return row["limit_d"] if "limit_d" in row else row["share"] * power
