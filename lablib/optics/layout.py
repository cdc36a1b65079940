"""Layout: where the centration point lies in the frame, and the least blank that covers the outline."""

from dataclasses import dataclass

import numpy as np

from lablib.datafile import read_table
from lablib.errors import LabError, require_between
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, Outline
from lablib.optics.limits import require_in_limits


def decentration_mm(
    frame: Frame, *, monocular_pd_mm: float, height_mm: float | None = None
) -> tuple[float, float]:
    """Return how far the centration point lies in (nasally) and up from the boxed centre [mm].

    frame: the frame.
    monocular_pd_mm: from the middle of the bridge to the pupil [mm].
    height_mm: of the centration point above the lowest tangent of the outline [mm]; None puts it on
        the horizontal midline.

    Raises LabError for a distance no wearer has, or a point above or below the frame's box.
    Source: (A + DBL) / 2 less the monocular distance; C. Brooks, Essentials of Ophthalmic Lens Finishing.
    """
    require_in_limits("monocular_pd_mm", monocular_pd_mm, "monocular_pd_mm")
    inward = frame.bridge_to_boxed_centre_mm - monocular_pd_mm
    if abs(inward) >= frame.a_mm / 2.0:
        raise LabError(
            f"monocular_pd_mm {monocular_pd_mm:g} puts the optical centre {abs(inward):g} mm from the boxed "
            f"centre, outside a lens {frame.a_mm:g} mm wide: check A, DBL and the distance"
        )
    if height_mm is None:
        return inward, 0.0
    require_between(
        "height_mm", height_mm, low=0.0, high=frame.b_mm, unit="mm above the lowest tangent, inside B"
    )
    return inward, height_mm - frame.b_mm / 2.0


def sides_of_box_mm(frame: Frame, *, in_mm: float) -> tuple[float, float]:
    """Return how far the temporal and the nasal side of the box lie from an optical centre [mm].

    frame: the frame; in_mm: the optical centre from the boxed centre, inwards [mm].
    """
    return frame.a_mm / 2.0 + in_mm, frame.a_mm / 2.0 - in_mm


def blank_allowance_mm() -> float:
    """Return what is added to a least blank for its rim [mm]."""
    return read_table("lablib.optics", "layout.toml")["blank_allowance"]["value"]


def minimum_blank_mm(outline: Outline, *, x_mm: float, y_mm: float) -> float:
    """Return the diameter of the least blank that covers the outline, with the allowance [mm].

    outline: of the lens.
    x_mm, y_mm: of the blank's centre, the optical centre, from the boxed centre [mm].
    """
    farthest = np.hypot(outline.x_mm - x_mm, outline.y_mm - y_mm).argmax()
    return blank_reaching_mm(outline.x_mm[farthest] - x_mm, outline.y_mm[farthest] - y_mm)


def blank_reaching_mm(x_mm: float, y_mm: float) -> float:
    """Return the diameter of the blank that reaches a point, with the allowance [mm].

    x_mm, y_mm: the point, from the blank's centre [mm].
    """
    return 2.0 * float(np.hypot(x_mm, y_mm)) + blank_allowance_mm()


def minimum_blank_rule_mm(effective_diameter_mm: float, in_mm: float) -> float:
    """Return the least blank by the rule of thumb, ED + twice the decentration + the allowance [mm].

    effective_diameter_mm: [mm]; in_mm: horizontal decentration, in or out [mm]. The rule leaves a raised
    or lowered centre out, and takes the longest radius to lie on the far side: it can miss either way.
    Source: trade practice, as in C. Brooks, Essentials of Ophthalmic Lens Finishing.
    """
    return effective_diameter_mm + 2.0 * abs(in_mm) + blank_allowance_mm()


@dataclass(frozen=True, slots=True, kw_only=True)
class LeastBlank:
    """The least blank of one lens, exactly and by the rule of thumb, both with the allowance.

    exact_mm: measured on the outline [mm]; rule_mm: ED + twice the decentration [mm].
    farthest_deg: where the outline lies farthest from the optical centre [degrees about the boxed centre].
    raised_mm: the optical centre above the midline, minus for below [mm].
    """

    exact_mm: float
    rule_mm: float
    farthest_deg: float
    raised_mm: float

    @property
    def rule_more_mm(self) -> float:
        """How much more the rule asks for [mm]; minus where it asks for too little."""
        return self.rule_mm - self.exact_mm

    @property
    def words(self) -> str:
        """Why the two differ, for the bench."""
        more = round(self.rule_more_mm, 1)
        if more == 0.0:
            return "the rule and the outline agree here"
        if more > 0.0:
            return (
                f"the rule asks for {more:.1f} mm more than is needed: the longest radius does not lie on "
                "the far side of the centre"
            )
        side = "raised" if self.raised_mm > 0.0 else "lowered"
        return (
            f"the rule asks for {-more:.1f} mm too little: the centre is {side} by {abs(self.raised_mm):.1f} "
            "mm, and the rule knows no height"
        )


def least_blank(outline: Outline, *, eye: Eye, in_mm: float, up_mm: float = 0.0) -> LeastBlank:
    """Return the least blank of one lens, exactly and by the rule of thumb.

    outline: of the lens; eye: which lens.
    in_mm, up_mm: the optical centre from the boxed centre, nasally and up [mm].
    """
    x = eye.nasal_sign * in_mm
    away = np.hypot(outline.x_mm - x, outline.y_mm - up_mm)
    return LeastBlank(
        exact_mm=minimum_blank_mm(outline, x_mm=x, y_mm=up_mm),
        rule_mm=minimum_blank_rule_mm(outline.effective_diameter_mm, in_mm),
        farthest_deg=float(outline.angle_deg[away.argmax()]),
        raised_mm=up_mm,
    )
