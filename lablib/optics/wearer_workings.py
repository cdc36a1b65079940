"""The wearer's distances as workings to follow by hand: near, by a ruler, and in an adjusted frame."""

from lablib.optics.practice import usual_or
from lablib.optics.terms import distance_term, power_term
from lablib.optics.wearer_distances import (
    height_after_adjusting_mm,
    near_inset_mm,
    near_pd_mm,
    ruler_reading_mm,
)
from lablib.working import Term, Working

_PRACTICE = "common practice"


def near_inset_working(
    monocular_pd_mm: float,
    *,
    power_d: float = 0.0,
    working_distance_mm: float | None = None,
    centre_of_rotation_mm: float | None = None,
) -> Working:
    """Return the near inset of one eye, worked.

    Arguments are those of `near_inset_mm`, which also says what it raises.
    """
    return Working(
        what="near inset of one eye",
        symbol="i",
        formula="P / (1 + w * (1 / s - F / 1000))",
        terms=(
            distance_term("P", monocular_pd_mm, "monocular distance, far"),
            distance_term(
                "w",
                usual_or("reading_distance", "working distance", working_distance_mm),
                "working distance, from the lens",
            ),
            distance_term(
                "s",
                usual_or("centre_of_rotation", "centre of rotation", centre_of_rotation_mm),
                "from the lens to the eye's centre of rotation",
            ),
            power_term("F", power_d, "power in the horizontal meridian"),
        ),
        value=near_inset_mm(
            monocular_pd_mm,
            power_d=power_d,
            working_distance_mm=working_distance_mm,
            centre_of_rotation_mm=centre_of_rotation_mm,
        ),
        unit="mm",
        source="Ellerbrock, from memory",
    )


def near_pd_workings(monocular_pd_mm: float, **how: float | None) -> tuple[Working, Working]:
    """Return the near distance of one eye, worked: first the inset, then what is left.

    monocular_pd_mm, how: as in `near_inset_mm`, which also says what it raises.
    """
    inset = near_inset_working(monocular_pd_mm, **how)
    left = Working(
        what="near distance of one eye, at the lens",
        symbol="P_n",
        formula="P - i",
        terms=(inset.terms[0], inset.as_term()),
        value=near_pd_mm(monocular_pd_mm, **how),
        unit="mm",
    )
    return inset, left


def ruler_reading_working(
    pupil_mm: float,
    *,
    observer_mm: float,
    working_distance_mm: float | None = None,
    pupil_behind_mm: float | None = None,
) -> Working:
    """Return what a ruler shows at one pupil, worked.

    Arguments are those of `ruler_reading_mm`, which also says what it raises.
    """
    return Working(
        what="reading of the ruler at one pupil",
        symbol="m",
        formula="P + (e - P) * v / (d + v)",
        terms=(
            distance_term("P", pupil_mm, "pupil, from the middle of the bridge"),
            distance_term("e", observer_mm, "the observer's open eye, from the same middle to the same side"),
            distance_term(
                "v",
                usual_or("pupil_behind_ruler", "pupil behind the ruler", pupil_behind_mm),
                "pupil behind the ruler",
            ),
            distance_term(
                "d",
                usual_or("reading_distance", "distance to the observer", working_distance_mm),
                "from the ruler to the observer's eye",
            ),
        ),
        value=ruler_reading_mm(
            pupil_mm,
            observer_mm=observer_mm,
            working_distance_mm=working_distance_mm,
            pupil_behind_mm=pupil_behind_mm,
        ),
        unit="mm",
        source="similar triangles",
    )


def height_after_adjusting_working(height_mm: float, *, raised_mm: float) -> Working:
    """Return the height in the adjusted frame, worked.

    Arguments are those of `height_after_adjusting_mm`, which also says what it raises.
    """
    return Working(
        what="height in the adjusted frame",
        symbol="h_a",
        formula="h - r",
        terms=(
            distance_term("h", height_mm, "height above the lowest tangent, before"),
            Term(
                symbol="r",
                value=raised_mm,
                unit="mm",
                digits=1,
                meaning="how far up the face the frame was moved (minus: down)",
            ),
        ),
        value=height_after_adjusting_mm(height_mm, raised_mm=raised_mm),
        unit="mm",
        digits=1,
        source=_PRACTICE,
    )
