"""A question about near: how far an eye turns in to read, with the lens before it."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.wearer_distances import near_inset_mm, near_pd_mm
from lablib.optics.wearer_workings import near_inset_working
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

# Powers strong enough for the prism of the lens to be seen in the answer [D].
_POWERS_D = tuple(sign * power / 4.0 for power in range(14, 37) for sign in (1.0, -1.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class InsetCase:
    """An eye that reads through a lens.

    pd_mm: far monocular distance [mm]; power_d: of the lens in the horizontal meridian [D].
    working_mm: from the lens to the page [mm]; rotation_mm: back to the eye's centre of rotation [mm].
    """

    pd_mm: float
    power_d: float
    working_mm: float
    rotation_mm: float

    @property
    def how(self) -> dict[str, float]:
        """The distances in the words of `near_inset_mm`."""
        return {"working_distance_mm": self.working_mm, "centre_of_rotation_mm": self.rotation_mm}


class NearInset(Maker[InsetCase]):
    """How far one eye's line of sight moves in on the lens when it reads."""

    name = "near-inset"
    lesson = "05"
    skill = "near-distance"
    slips = (
        Slip(
            name="power-left-out",
            step="what the lens does to the line of sight",
            words="You left the power out. Away from its optical centre the lens is a prism, and turns the "
            "line.",
        ),
        Slip(
            name="power-turned-over",
            step="what the lens does to the line of sight",
            words="You put the power in with the wrong sign. Behind a plus lens the eye turns further in, "
            "behind a minus lens less.",
        ),
        Slip(
            name="only-to-the-lens",
            step="where the two triangles meet",
            words="You left the 1 out of the sum. The page is as far from the lens as you say, but the eye "
            "turns about a point that lies further back.",
        ),
        Slip(
            name="both-eyes-inset",
            step="how many eyes are asked about",
            words="You gave the inset of both eyes together. One eye was asked about.",
        ),
        Slip(
            name="distance-for-inset",
            step="what is asked: the move, or where it ends",
            words="You gave the near distance. The inset is how much smaller that is than the far one.",
        ),
    )

    def draw(self, draws: Draws) -> InsetCase:
        """Return an eye behind a lens of some strength."""
        return InsetCase(
            pd_mm=draws.step(29.0, 34.0, 0.5),
            power_d=draws.one_of(_POWERS_D),
            working_mm=draws.step(300.0, 450.0, 50.0),
            rotation_mm=draws.step(25.0, 29.0, 1.0),
        )

    def kind(self, case: InsetCase) -> NumberAnswer:
        """Return the kind: a short distance."""
        return NumberAnswer(unit="mm", tolerance=0.03, digits=2)

    def answer(self, case: InsetCase, slips: Set[str] = NONE) -> float:
        """Return the inset. Without the 1 in its sum, 1 / i grows less: 1 / (1 / i - 1 / P)."""
        power = -case.power_d if "power-turned-over" in slips else case.power_d
        power = 0.0 if "power-left-out" in slips else power
        inset = near_inset_mm(case.pd_mm, power_d=power, **case.how)
        if "only-to-the-lens" in slips:
            inset = 1.0 / (1.0 / inset - 1.0 / case.pd_mm)
        if "both-eyes-inset" in slips:
            inset *= 2.0
        if "distance-for-inset" not in slips:
            return inset
        if slips == {"distance-for-inset"}:
            return near_pd_mm(case.pd_mm, power_d=power, **case.how)
        return case.pd_mm - inset

    def prompt(self, case: InsetCase) -> tuple[str, ...]:
        """Return what is asked, with the formula: nobody carries it about."""
        return (
            "One eye reads through a single vision lens that is centred for far. On its way in, its line of "
            "sight meets the lens nearer to the nose by the inset i = P / (1 + w (1 / s - F / 1000)).",
            "How large is the inset of this one eye? Answer in mm, to 0.01 mm.",
        )

    def given(self, case: InsetCase) -> tuple[Term, ...]:
        """Return the four numbers of the formula."""
        return self._working(case).terms

    def _working(self, case: InsetCase) -> Working:
        return near_inset_working(case.pd_mm, power_d=case.power_d, **case.how)

    def solution(self, case: InsetCase) -> Solution:
        """Return the way, and what the power does to it."""
        plain_mm = near_inset_mm(case.pd_mm, **case.how)
        way = "further in" if case.power_d > 0.0 else "less far in"
        return Solution(
            words=(
                f"Without power the line would be straight, and the inset {plain_mm:.2f} mm. Away from its "
                f"optical centre this lens is a prism, so that the eye turns {way}.",
            ),
            workings=(self._working(case),),
        )

    def hints(self, case: InsetCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Begin inside: 1 / s, then F / 1000 with its sign, then one less the other.",
            "Multiply by w and add 1 before you divide P by it.",
        )
