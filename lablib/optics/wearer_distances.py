"""The wearer's distances: near from far, what a ruler shows of them, and the height in the adjusted frame."""

from lablib.errors import LabError, require_between, require_finite
from lablib.optics.limits import require_in_limits
from lablib.optics.practice import usual_or


def near_inset_mm(
    monocular_pd_mm: float,
    *,
    power_d: float = 0.0,
    working_distance_mm: float | None = None,
    centre_of_rotation_mm: float | None = None,
) -> float:
    """Return how far the line of sight meets the lens nearer to the nose when one eye reads [mm].

    monocular_pd_mm: far distance of the eye, from the middle of the bridge [mm].
    power_d: of the lens in the horizontal meridian [D]; behind a plus lens the eye turns further in.
    working_distance_mm: from the lens to what is read [mm]; None for the usual one.
    centre_of_rotation_mm: from the lens back to the eye's centre of rotation [mm]; None for the usual one.

    Raises LabError for a distance no wearer has, and for a power so strong that no line leads to the page.
    Source: inset = P / (1 + w (1/s - F/1000)); Ellerbrock, from memory.
    """
    far = require_in_limits("monocular_pd_mm", monocular_pd_mm, "monocular_pd_mm")
    distance = usual_or("reading_distance", "working distance", working_distance_mm)
    rotation = usual_or("centre_of_rotation", "centre of rotation", centre_of_rotation_mm)
    power = require_finite("power in the horizontal meridian", power_d, unit="D")
    if power >= 1000.0 / rotation:
        raise LabError(
            f"power {power:+g} D in the horizontal meridian images the eye's centre of rotation behind the "
            f"eye: give less than {1000.0 / rotation:.1f} D"
        )
    return far / (1.0 + distance * (1.0 / rotation - power / 1000.0))


def near_pd_mm(monocular_pd_mm: float, **how: float | None) -> float:
    """Return the near distance of one eye at the lens, from the middle of the bridge [mm].

    monocular_pd_mm, how: as in `near_inset_mm`, which also says what it raises.
    """
    return monocular_pd_mm - near_inset_mm(monocular_pd_mm, **how)


def ruler_reading_mm(
    pupil_mm: float,
    *,
    observer_mm: float,
    working_distance_mm: float | None = None,
    pupil_behind_mm: float | None = None,
) -> float:
    """Return what a ruler shows at a pupil, held where the lens will sit, to an observer's one open eye [mm].

    pupil_mm: from the middle of the bridge to the pupil, on its own side [mm].
    observer_mm: from the same middle to the observer's open eye, on the same side [mm]; minus on the other.
    working_distance_mm: from the ruler to the observer's eye [mm]; None for the usual one.
    pupil_behind_mm: from the ruler back to the pupil [mm]; None for the usual one.

    Straight opposite the pupil the ruler shows it as it is; from anywhere else the reading moves towards the
    observer's eye by v / (d + v) of the way between them. That the wearer's eye turns is left out.

    Raises LabError for a distance no wearer or observer has.
    Source: similar triangles from the observer's eye through the ruler to the pupil.
    """
    pupil = require_in_limits("pupil_mm", pupil_mm, "monocular_pd_mm")
    observer = require_between("observer_mm", observer_mm, low=-200.0, high=200.0, unit="mm")
    distance = usual_or("reading_distance", "distance to the observer", working_distance_mm)
    behind = usual_or("pupil_behind_ruler", "pupil behind the ruler", pupil_behind_mm)
    return pupil + (observer - pupil) * behind / (distance + behind)


def both_by_one_eye_mm(right_mm: float, left_mm: float, *, observer_mm: float = 0.0, **held: float) -> float:
    """Return the distance of both pupils as an observer reads it who keeps one eye open for both [mm].

    right_mm, left_mm: monocular distances [mm].
    observer_mm: the open eye, from the wearer's middle towards the wearer's right [mm].
    held: working_distance_mm, pupil_behind_mm, as in `ruler_reading_mm`, which also says what it raises.

    Where the open eye stands does not count: what one side gains the other loses. The reading is short by
    v / (d + v), as a near distance is.
    """
    right = ruler_reading_mm(right_mm, observer_mm=observer_mm, **held)
    return right + ruler_reading_mm(left_mm, observer_mm=-observer_mm, **held)


def height_after_adjusting_mm(height_mm: float, *, raised_mm: float) -> float:
    """Return the height of a pupil above the lowest tangent once the frame has been moved on the face [mm].

    height_mm: as it was measured before [mm].
    raised_mm: how far up the face the frame was moved [mm]; minus for down.

    A frame that goes up leaves the pupil lower in it. That the frame may lean otherwise too is left out:
    heights are measured after the frame is adjusted, and this only says what a height taken before is worth.

    Raises LabError for a move that no adjustment makes, or where the pupil leaves the rim below.
    Source: common practice.
    """
    raised = require_in_limits("frame moved on the face by", raised_mm, "raised_mm")
    left = require_in_limits("height_mm", height_mm, "height_mm") - raised
    if left <= 0.0:
        raise LabError(
            f"height {height_mm:g} mm in a frame raised {raised:g} mm leaves {left:g} mm: measure it again "
            "on the adjusted frame"
        )
    return left
