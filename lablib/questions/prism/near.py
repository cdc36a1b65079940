"""A question about what two unlike lenses do to eyes that look down to read."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.optics.eye import Eye
from lablib.optics.near_imbalance import prism_at_reading_point, slab_off
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.optics.prism_pair_workings import near_imbalance_workings
from lablib.questions.answers.units import PRISM_DIOPTRE
from lablib.questions.prism.pictures import near_drawing
from lablib.questions.prism.terms import CENTIMETRES, MM_PER_CM, draw_sphere
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working

# Not 10 mm, where the prism has the size of the power.
_DROPS_MM = (6.0, 7.0, 8.0, 9.0, 11.0, 12.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class NearCase:
    """Two spherical lenses and how far below their centres the eyes read.

    right_d, left_d: powers for distance [D].
    drop_mm: below the optical centres [mm].
    """

    right_d: float
    left_d: float
    drop_mm: float

    @property
    def is_one_sign(self) -> bool:
        """Whether both lenses have the same sign, and so the same base."""
        return self.right_d * self.left_d > 0.0

    @property
    def amount_prism_d(self) -> float:
        """The vertical imbalance [prism D]."""
        lenses = (Prescription(sphere_d=power) for power in (self.right_d, self.left_d))
        return slab_off(*lenses, drop_mm=self.drop_mm).amount_prism_d

    @property
    def workings(self) -> tuple[Working, ...]:
        """The steps; what lies sideways does not matter here and is left out."""
        lenses = (Prescription(sphere_d=power) for power in (self.right_d, self.left_d))
        steps = near_imbalance_workings(*lenses, drop_mm=self.drop_mm)
        return tuple(step for step in steps if not step.symbol.startswith("P_in"))


class NearImbalance(Maker[NearCase]):
    """The vertical imbalance of two unlike lenses at the reading point."""

    name = "near-imbalance"
    lesson = "06"
    skill = "vertical-imbalance"
    slips = (
        Slip(
            name="same-bases-added",
            step="adding or taking away",
            words="You added two bases that point the same way. What both eyes have alike disturbs neither: "
            "take the smaller from the larger.",
        ),
        Slip(
            name="opposite-bases-subtracted",
            step="adding or taking away",
            words="You subtracted, but a plus and a minus lens have opposite bases here. One eye is sent up "
            "and the other down: add them.",
        ),
        Slip(
            name="one-lens-alone",
            step="the part of each eye",
            words="You gave the prism of the stronger lens. What disturbs is the difference between the "
            "eyes.",
        ),
        CENTIMETRES,
    )

    def draw(self, draws: Draws) -> NearCase:
        """Return two lenses that differ, more often of one sign."""
        right = draw_sphere(draws, 1.0, 6.0)
        left = draws.step(1.0, 6.0, 0.25) * draws.one_of((1.0, 1.0, -1.0))
        return NearCase(
            right_d=right,
            left_d=left if right > 0.0 else -left,
            drop_mm=draws.one_of(_DROPS_MM),
        )

    def kind(self, case: NearCase) -> NumberAnswer:
        """Return the kind: an amount of prism."""
        return NumberAnswer(unit="prism dioptres", also=PRISM_DIOPTRE, tolerance=0.05, digits=2)

    def slips_in(self, case: NearCase) -> tuple[Slip, ...]:
        """Return the slips that can be made with these signs."""
        never = "opposite-bases-subtracted" if case.is_one_sign else "same-bases-added"
        return tuple(slip for slip in self.slips if slip.name != never)

    def answer(self, case: NearCase, slips: Set[str] = NONE) -> float:
        """Return the imbalance; whoever adds for subtracts reads one lens with the other sign."""
        if slips & {"same-bases-added", "opposite-bases-subtracted"}:
            case = replace(case, left_d=-case.left_d)
        if "one-lens-alone" in slips:
            case = replace(case, right_d=max(abs(case.right_d), abs(case.left_d)), left_d=0.0)
        return case.amount_prism_d * (MM_PER_CM if CENTIMETRES.name in slips else 1.0)

    def prompt(self, case: NearCase) -> tuple[str, ...]:
        """Return both lenses, the reading point and what is asked."""
        return (
            f"An invented pair, single vision: right {written_power(case.right_d)} D, left "
            f"{written_power(case.left_d)} D. The wearer reads through points {case.drop_mm:g} mm below both "
            "optical centres.",
            "How large is the vertical imbalance between the eyes? Answer in prism dioptres, to 0.01.",
        )

    def given(self, case: NearCase) -> tuple[Term, ...]:
        """Return both powers; the drop stands in the prompt, its sign is part of the question."""
        return tuple(
            Term(symbol=f"S_{eye.name[0]}", value=power, unit="D", meaning=f"sphere, {eye} eye")
            for eye, power in ((Eye.RIGHT, case.right_d), (Eye.LEFT, case.left_d))
        )

    def drawing(self, case: NearCase) -> Drawing:
        """Return the pair and the points the eyes read through."""
        lenses = [Prescription(sphere_d=power) for power in (case.right_d, case.left_d)]
        met = prism_at_reading_point(*lenses, drop_mm=case.drop_mm)
        return near_drawing(
            *lenses,
            drop_mm=case.drop_mm,
            up_prism_d={Eye.RIGHT: met.right_up_prism_d, Eye.LEFT: met.left_up_prism_d},
            most_drop_mm=_DROPS_MM[-1],
        )

    def solution(self, case: NearCase) -> Solution:
        """Return each lens by itself, then the two together."""
        how = (
            "Both have the same sign, so both bases point the same way and the amounts are subtracted."
            if case.is_one_sign
            else "One is plus and one is minus, so the bases point opposite ways and the amounts are added."
        )
        return Solution(
            words=(
                "Prentice's rule for each lens, below its optical centre. Below the centre of a minus lens "
                "the base is down, below that of a plus lens it is up.",
                how,
                "Whether anything is done about it, the prescriber decides.",
            ),
            workings=case.workings,
        )

    def hints(self, case: NearCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Work out each lens by itself first, amount and base.",
            "Do both bases point the same way? If they do, both images move the same way.",
        )
