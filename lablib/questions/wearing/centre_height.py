"""A question about the optical centre behind a tilted frame: how high it is set."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.practice import usual
from lablib.optics.terms import direction_term
from lablib.optics.tilt_place import centre_drop_by_rule_mm, centre_drop_mm, lens_height_mm
from lablib.optics.tilt_place_workings import centre_drop_by_rule_workings
from lablib.questions.multifocals.case import millimetres
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_WAY = "which way the optical centre goes"


@dataclass(frozen=True, slots=True, kw_only=True)
class CentreCase:
    """A pupil behind a tilted frame.

    pupil_height_mm: above the lowest tangent [mm]; tilt_deg: pantoscopic tilt [degrees].
    """

    pupil_height_mm: float
    tilt_deg: float


class CentreHeight(Maker[CentreCase]):
    """The height of the optical centre in a tilted frame, by the rule."""

    name = "centre-height"
    lesson = "09"
    skill = "centre-drop"
    slips = (
        Slip(
            name="millimetre-for-each-degree",
            step="the millimetres for each degree",
            words="You took 1 mm for each degree. The rule is 1 mm for every 2 degrees.",
        ),
        Slip(
            name="raised",
            step=_WAY,
            words="You raised the optical centre. The lower rim leans to the cheek, so the lens's axis meets "
            "the eye's centre of rotation from a centre that lies lower.",
        ),
        Slip(
            name="left-at-the-pupil",
            step=_WAY,
            words="You left the optical centre at the pupil. Then the wearer looks straight ahead slantwise "
            "through it and gets the cylinder of the tilt.",
        ),
    )

    def draw(self, draws: Draws) -> CentreCase:
        """Return a height and a tilt in whole degrees."""
        return CentreCase(pupil_height_mm=draws.step(19.0, 28.0, 0.5), tilt_deg=draws.step(4.0, 14.0, 1.0))

    def kind(self, case: CentreCase) -> NumberAnswer:
        """Return the kind: a height, to half a millimetre."""
        return NumberAnswer(unit="mm", tolerance=0.25, digits=1)

    def answer(self, case: CentreCase, slips: Set[str] = NONE) -> float:
        """Return the height of the optical centre; a raised one is lowered by a minus."""
        drop = centre_drop_by_rule_mm(case.tilt_deg)
        if "millimetre-for-each-degree" in slips:
            drop = case.tilt_deg
        if "raised" in slips:
            drop = -drop
        if "left-at-the-pupil" in slips:
            drop = 0.0
        return lens_height_mm(case.pupil_height_mm, drop_mm=drop)

    def prompt(self, case: CentreCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented single vision order. The adjusted frame has {case.tilt_deg:g} degrees of "
            f"pantoscopic tilt, and the pupil stands {case.pupil_height_mm:g} mm above the lowest tangent, "
            "head straight.",
            "How high above the lowest tangent is the optical centre set, by the rule of the trade? Give it "
            "in mm, to 0.5 mm.",
        )

    def given(self, case: CentreCase) -> tuple[Term, ...]:
        """Return height and tilt."""
        return (
            millimetres("h", case.pupil_height_mm, "height of the pupil"),
            direction_term("p", case.tilt_deg, "pantoscopic tilt"),
        )

    def solution(self, case: CentreCase) -> Solution:
        """Return the rule, why it goes down, and what the triangle gives."""
        exact = centre_drop_mm(case.tilt_deg)
        return Solution(
            words=(
                "A lens does what it was designed for when its axis passes through the eye's centre of "
                "rotation. Tilt points the axis of a lens upwards behind it, so the optical centre goes "
                "down.",
                f"The centre of rotation lies about {usual('centre_of_rotation'):g} mm behind the lens "
                f"(common value, from memory). That distance times the tangent of the tilt is {exact:.1f} "
                "mm; the rule is easier and near enough.",
            ),
            workings=centre_drop_by_rule_workings(case.tilt_deg, case.pupil_height_mm),
        )

    def hints(self, case: CentreCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw the lens from the side, the lower rim nearer to the cheek. Where does a line square to "
            "the lens leave it, if it is to meet the middle of the eye?",
            "How many degrees go to one millimetre?",
        )
