"""How far the axis of a cylinder may be off, and what a turn does to a lens that has none."""

from lablib.datafile import read_table
from lablib.errors import require_finite

STANDARD = "ansi-z80.1-2015"


def axis_limit_deg(cylinder_d: float, *, standard: str = STANDARD) -> float | None:
    """Return how far the axis may be off either way [degrees], None where the standard sets no limit.

    cylinder_d: power of the cylinder, of either sign [D]; rounded to 0.01 D before it is compared.
    standard: name of the tolerance table.

    Raises LabError for a cylinder that is not a number, or a table that is not there.
    Source: ANSI Z80.1-2015, as restated in the Virginia Administrative Code 18VAC80-30-120.
    """
    axis = read_table("lablib.inspection", f"{standard}.toml")["axis"]
    power = round(abs(require_finite("cylinder", cylinder_d, unit="D")), 2)
    if power < axis["from_cylinder_d"]:
        return None
    return next(band["limit_deg"] for band in axis["bands"] if power <= band.get("up_to_d", power))


def standard_name(standard: str = STANDARD) -> str:
    """Return the name and edition of a tolerance table as it is written.

    standard: name of the tolerance table.
    """
    return read_table("lablib.inspection", f"{standard}.toml")["standard"]["name"]
