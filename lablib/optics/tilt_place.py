"""Where the optical centre of a tilted lens belongs, and the prism and distances that tilt and wrap bring.

A lens does what it was designed for when its axis passes through the eye's centre of rotation. So with
pantoscopic tilt the optical centre goes down.
"""

import math

from lablib.errors import LabError
from lablib.optics.limits import require_in_limits
from lablib.optics.practice import usual, usual_or


def centre_drop_mm(pantoscopic_deg: float, *, centre_of_rotation_mm: float | None = None) -> float:
    """Return how far below the pupil the optical centre belongs, along the lens [mm]; minus for above.

    pantoscopic_deg: tilt [degrees].
    centre_of_rotation_mm: from the optical centre along the lens's axis to the eye's centre of rotation [mm];
        None for the usual value.

    Measured along the line straight ahead, the same distance would ask for its sine in place of the tangent;
    at 10 degrees and 27 mm that is 0.07 mm less.

    Raises LabError for a value out of range.
    Source: derived; a right-angled triangle with the distance as one side and the drop as the other.
    """
    tilt = require_in_limits("pantoscopic tilt", pantoscopic_deg, "pantoscopic_tilt_deg")
    distance = usual_or("centre_of_rotation", "centre of rotation", centre_of_rotation_mm)
    return distance * math.tan(math.radians(tilt))


def centre_drop_by_rule_mm(pantoscopic_deg: float) -> float:
    """Return the same by the rule of the trade, 1 mm for every 2 degrees [mm].

    pantoscopic_deg: tilt [degrees].

    Raises LabError for a tilt out of range.
    Source: common practice (practice.toml).
    """
    tilt = require_in_limits("pantoscopic tilt", pantoscopic_deg, "pantoscopic_tilt_deg")
    return usual("centre_drop") * tilt


def tilt_prism_prism_d(
    tilt_deg: float, *, front_curve_d: float, centre_thickness_mm: float, index: float
) -> float:
    """Return the prism that a lens gives the line straight ahead only because it is tilted [prism D].

    tilt_deg: pantoscopic tilt or wrap [degrees].
    front_curve_d: front surface power [D].
    centre_thickness_mm: [mm].
    index: refractive index.

    Its base is out for wrap and down for pantoscopic tilt where the front is a plus surface; minus means the
    other way. Pantoscopic tilt gives both eyes the same, wrap gives each its own outwards.

    Raises LabError for a value out of range.
    Source: derived; inside, a ray to the back vertex slopes by tilt / n and meets the front t / n times that
        from its vertex, where Prentice's rule holds for the front. Checked against traced rays.
    """
    tilt = require_in_limits("tilt", tilt_deg, "wrap_deg")
    front = require_in_limits("front curve", front_curve_d, "front_curve_d")
    thickness = require_in_limits("centre thickness", centre_thickness_mm, "centre_thickness_mm")
    n = require_in_limits("index", index, "index")
    return 100.0 * math.tan(math.radians(tilt)) * thickness / 1000.0 / n * front


def wrapped_decentration_in_mm(
    *, a_mm: float, dbl_mm: float, monocular_pd_mm: float, wrap_deg: float
) -> float:
    """Return the decentration along a wrapped lens, inwards from its boxed centre [mm]; minus for outwards.

    a_mm: boxed width measured along the lens [mm]; dbl_mm: distance between lenses [mm].
    monocular_pd_mm: far distance of the eye, straight across [mm].
    wrap_deg: of the lens [degrees].

    A wrapped lens reaches less far sideways than it is wide, and a step on it is longer than it looks.

    Raises LabError for a value out of range.
    Source: derived; the lens as a flat plate, turned about its nasal edge.
    """
    width = require_in_limits("a_mm", a_mm, "a_mm")
    bridge = require_in_limits("dbl_mm", dbl_mm, "dbl_mm")
    distance = require_in_limits("monocular_pd_mm", monocular_pd_mm, "monocular_pd_mm")
    cosine = math.cos(math.radians(require_in_limits("wrap", wrap_deg, "wrap_deg")))
    return (bridge / 2.0 + width / 2.0 * cosine - distance) / cosine


def lens_height_mm(pupil_height_mm: float, *, drop_mm: float) -> float:
    """Return the height of the optical centre above the lowest tangent [mm].

    pupil_height_mm: height of the pupil, head straight [mm]; drop_mm: how far the centre goes below it [mm].

    Raises LabError where the centre would leave the rim below.
    """
    drop = require_in_limits("centre drop", drop_mm, "centre_drop_mm")
    left = pupil_height_mm - drop
    if left <= 0.0:
        raise LabError(
            f"pupil height {pupil_height_mm:g} mm less a drop of {drop:g} mm leaves the lens below its rim: "
            "give a greater height or a smaller tilt"
        )
    return left
