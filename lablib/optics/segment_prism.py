"""Prism through a segment: the jump at its top, and what lens and segment give together.

Components are base in and base up, out and down being minus.
"""

from lablib.errors import require_between
from lablib.optics.eye import Eye
from lablib.optics.limits import require_in_limits
from lablib.optics.power import ADDITION_LIMIT_D
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at


def image_jump_prism_d(addition_d: float, *, centre_below_top_mm: float) -> float:
    """Return the image jump, the prism that begins at the top of a segment [prism D]; its base is down.

    addition_d: addition [D].
    centre_below_top_mm: optical centre of the segment below its top [mm].

    Raises LabError for an addition or a distance out of range.
    Source: addition times the distance in centimetres; checked against Bhootra, Ophthalmic Lenses, p. 114.
    """
    below = require_in_limits(
        "segment centre below its top", centre_below_top_mm, "segment_centre_below_top_mm"
    )
    return _addition(addition_d) * below / 10.0


def segment_prism_at(addition_d: float, *, eye: Eye | str, in_mm: float, up_mm: float) -> tuple[float, float]:
    """Return what the segment alone gives at a point, base in and base up [prism D].

    addition_d: addition [D]; eye: which eye.
    in_mm, up_mm: the point, inwards and upwards from the segment's optical centre [mm].

    Raises LabError for an addition out of range or a point that is not a number.
    Source: Prentice's rule for the power of the addition about the segment's own centre.
    """
    added = Prescription(sphere_d=_addition(addition_d))
    return prism_at(added, eye=eye, in_mm=in_mm, up_mm=up_mm)


def prism_through_segment(
    rx: Prescription,
    *,
    eye: Eye | str,
    point_mm: tuple[float, float],
    distance_centre_mm: tuple[float, float],
    segment_centre_mm: tuple[float, float],
) -> tuple[float, float]:
    """Return the prism at a point of the segment, lens and segment together, base in and base up [prism D].

    rx: power for distance, with its addition; eye: which eye.
    point_mm, distance_centre_mm, segment_centre_mm: inwards and upwards from one and the same point [mm].

    Raises LabError for an addition out of range or a point that is not a number.
    Source: both lie on top of one another, so that their prisms add.
    """
    main = prism_at(rx, eye=eye, **_from(point_mm, distance_centre_mm))
    added = segment_prism_at(rx.addition_d, eye=eye, **_from(point_mm, segment_centre_mm))
    return main[0] + added[0], main[1] + added[1]


def unlike_segments_prism_d(
    addition_d: float, *, right_below_top_mm: float, left_below_top_mm: float
) -> float:
    """Return what unlike segments put between the eyes, base up of the right over the left [prism D].

    addition_d: addition, alike in both eyes [D].
    right_below_top_mm, left_below_top_mm: optical centre below the top, tops at one level [mm].

    Raises LabError for an addition or a distance out of range.
    Source: common practice: the difference of the two image jumps.
    """
    right, left = (
        image_jump_prism_d(addition_d, centre_below_top_mm=below)
        for below in (right_below_top_mm, left_below_top_mm)
    )
    return left - right + 0.0


def _addition(addition_d: float) -> float:
    return require_between("addition", addition_d, low=0.0, high=ADDITION_LIMIT_D, unit="D")


def _from(point: tuple[float, float], centre: tuple[float, float]) -> dict[str, float]:
    return {"in_mm": point[0] - centre[0], "up_mm": point[1] - centre[1]}
