"""Vergence and focal length: where light meets behind a thin lens, and from where it seems to come.

A vergence is 1000 times the index over the distance in mm to the point the light runs to: plus where it
runs together towards a point ahead, minus where it comes apart from a point behind, nothing where it is
parallel. Distances in front of the lens and behind it are both given as plus numbers and named as such.
"""

import math

from lablib.errors import LabError, require_between, require_finite
from lablib.optics.power import POWER_LIMIT_D, require_power

# Below this a power is written 0.00.
NO_POWER_D = 0.005
_GREATEST_INDEX = 2.0


def focal_length_mm(power_d: float, *, index: float = 1.0) -> float:
    """Return the focal length of a power, minus for a minus lens, 1000 n / F [mm].

    power_d: power [D].
    index: refractive index of what lies behind; 1 for air.

    Raises LabError for a value out of range, and for a power that is written 0.00, which has no focus.
    Source: definition of the dioptre.
    """
    power = require_power("power", power_d, POWER_LIMIT_D)
    if abs(power) < NO_POWER_D:
        raise LabError(
            f"power {power:.2f} D has no focal length: it leaves parallel light parallel; give a power of "
            f"at least {NO_POWER_D:g} D, plus or minus"
        )
    return 1000.0 * _index(index) / power


def power_of_focal_length_d(focal_length_mm: float, *, index: float = 1.0) -> float:
    """Return the power that has a focal length, 1000 n / f [D].

    focal_length_mm: focal length [mm], minus for a minus lens.
    index: as in `focal_length_mm`.

    Raises LabError for a length of 0, or one whose power is out of range.
    Source: definition of the dioptre.
    """
    length = require_finite("focal length", focal_length_mm, unit="mm")
    if not length:
        raise LabError("focal length 0 mm belongs to no lens: give the distance to the focus, not 0")
    return require_power("power of that focal length", 1000.0 * _index(index) / length, POWER_LIMIT_D)


def vergence_d(ahead_mm: float, *, index: float = 1.0) -> float:
    """Return the vergence of light that runs to a point, 1000 n / l [D].

    ahead_mm: distance to the point [mm], minus where it comes from a point so far behind; infinite for
        parallel light.
    index: refractive index of what the light runs in; 1 for air.

    Raises LabError for a distance of 0 or an index out of range.
    Source: definition of vergence.
    """
    medium = _index(index)
    if ahead_mm in (math.inf, -math.inf):
        return 0.0
    distance = require_finite("distance", ahead_mm, unit="mm, or infinity")
    if not distance:
        raise LabError(
            "distance 0 mm has no vergence: at the point itself the light meets; give another place"
        )
    return 1000.0 * medium / distance


def ahead_of_vergence_mm(vergence: float, *, index: float = 1.0) -> float:
    """Return how far ahead light of a vergence meets, infinite where the vergence is written 0.00 [mm].

    vergence: [D]; below 0 the light comes from a point behind, and the distance is minus.
    index: as in `vergence_d`.

    Raises LabError for a vergence that is not a number or an index out of range.
    Source: definition of vergence.
    """
    number = require_finite("vergence", vergence, unit="D")
    medium = _index(index)
    return math.inf if abs(number) < NO_POWER_D else 1000.0 * medium / number


def object_vergence_d(in_front_mm: float, *, index: float = 1.0) -> float:
    """Return the vergence at the lens of light from an object [D]: minus, or 0 from far off.

    in_front_mm: how far in front of the lens the object lies [mm], above 0; infinite for far off.
    index: of what lies in front; 1 for air.

    Raises LabError for an object that is not in front of the lens.
    Source: definition of vergence.
    """
    distance = in_front_mm if in_front_mm == math.inf else require_finite("object", in_front_mm, unit="mm")
    if distance <= 0.0:
        raise LabError(
            f"object {distance:g} mm in front of the lens is not in front of it: give a distance above 0 mm, "
            "or infinity for far off"
        )
    return vergence_d(-distance, index=index)


def image_vergence_d(power_d: float, *, in_front_mm: float = math.inf, index: float = 1.0) -> float:
    """Return the vergence behind a thin lens, what comes in and the power together, L' = L + F [D].

    power_d: power [D].
    in_front_mm, index: as in `object_vergence_d`.

    Raises LabError for a power out of range or an object that is not in front of the lens.
    Source: M. Jalie, The Principles of Ophthalmic Lenses (memory).
    """
    power = require_power("power", power_d, POWER_LIMIT_D)
    return object_vergence_d(in_front_mm, index=index) + power


def focus_in_words(vergence: float) -> str:
    """Return where light of a vergence meets in air, as a sentence.

    vergence: behind the lens [D].

    Raises LabError for a vergence that is not a number.
    """
    ahead = ahead_of_vergence_mm(vergence)
    if ahead == math.inf:
        return "The light leaves the lens parallel: it meets nowhere."
    if ahead > 0.0:
        return f"The light meets {_length(ahead)} behind the lens."
    return f"The light spreads as if it came from a point {_length(-ahead)} in front of the lens."


def _length(distance_mm: float) -> str:
    return f"{distance_mm / 1000.0:.2f} m" if distance_mm >= 1000.0 else f"{distance_mm / 10.0:.1f} cm"


def _index(value: float) -> float:
    return require_between("index", value, low=1.0, high=_GREATEST_INDEX)
