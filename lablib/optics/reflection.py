"""Light that a lens throws back and lets through, uncoated, square on.

All shares are of the light that falls on the lens, from 0 to 1. Nothing is taken up inside: a clear lens.
"""

from lablib.optics.limits import require_in_limits


def surface_reflectance(index: float) -> float:
    """Return the share one surface throws back, ((n - 1) / (n + 1))^2.

    index: refractive index.

    Raises LabError for an index no lens material has.
    Source: Fresnel's formula for light square on a surface (from memory).
    """
    n = require_in_limits("index", index, "index")
    return ((n - 1.0) / (n + 1.0)) ** 2


def transmittance(index: float) -> float:
    """Return the share two uncoated surfaces let through, with all light thrown back and forth between them.

    index: refractive index.

    The light that passes at once is (1 - R)^2; what is thrown back inside and forth again adds R^2 of it
    each time, and the sum is (1 - R) / (1 + R). Raises LabError for an index no lens material has.
    Source: sum of a geometric series over Fresnel's formula; derived.
    """
    share = surface_reflectance(index)
    return (1.0 - share) / (1.0 + share)


def transmittance_at_once(index: float) -> float:
    """Return the share two uncoated surfaces let through without any throw back and forth, (1 - R)^2.

    index: refractive index.

    It comes out a little low, over the materials of the table by 0.15 to 0.45 of a hundredth.
    Raises LabError for an index no lens material has.
    """
    return (1.0 - surface_reflectance(index)) ** 2


def reflectance(index: float) -> float:
    """Return the share the whole uncoated lens throws back, 1 less what it lets through.

    index: refractive index.

    Raises LabError for an index no lens material has.
    """
    return 1.0 - transmittance(index)
