"""Questions about one prism and two parts: putting together, and taking apart."""

import math
from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.prism import Prism
from lablib.optics.prism_workings import resolving_workings, resultant_workings
from lablib.questions.prism.kinds import OnePrism, PrismInParts
from lablib.questions.prism.pictures import prism_drawing
from lablib.questions.prism.terms import SIDEWAYS, UPRIGHT, along
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

_HALF_TURN_DEG, _TURN_DEG = 180.0, 360.0
_MOST_PRISM_D = 5.4
_EYES_EXCHANGED = Slip(
    name="eyes-exchanged",
    step="the side the nose lies on",
    words="You took the nose to lie on the other side. Seen facing the wearer, 0 degrees is in for the right "
    "eye and out for the left.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PartsCase:
    """Two parts of one prism.

    eye: the eye it is for.
    across, upright: their bases, "in" or "out" and "up" or "down".
    across_prism_d, upright_prism_d: their amounts [prism D].
    """

    eye: Eye
    across: str
    across_prism_d: float
    upright: str
    upright_prism_d: float

    @property
    def parts(self) -> tuple[float, float]:
        """Base in and base up [prism D]."""
        return along(self.across, self.across_prism_d)[0], along(self.upright, self.upright_prism_d)[1]


class Resultant(Maker[PartsCase]):
    """The one prism that two parts make."""

    name = "resultant"
    lesson = "06"
    skill = "resultant-prism"
    slips = (
        Slip(
            name="plain-sum",
            step="the amount",
            words="You added the two amounts. They stand at right angles, so the whole is the long side of a "
            "right-angled triangle.",
        ),
        Slip(
            name="angle-from-the-vertical",
            step="the angle",
            words="You took the angle from the vertical. Base directions are counted from the horizontal.",
        ),
        _EYES_EXCHANGED,
        Slip(
            name="down-read-as-up",
            step="the half of the circle, above or below",
            words="You gave the angle above the line. Base down lies in the lower half, between 180 and 360.",
        ),
    )

    def draw(self, draws: Draws) -> PartsCase:
        """Return two parts of unlike size."""
        across, upright = draws.some((0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0), 2)
        return PartsCase(
            eye=draws.one_of(EYES),
            across=draws.one_of(SIDEWAYS),
            across_prism_d=across,
            upright=draws.one_of(UPRIGHT),
            upright_prism_d=upright,
        )

    def kind(self, case: PartsCase) -> OnePrism:
        """Return the kind: an amount and a base to the nearest degree."""
        # One degree off, and the last figure of the amount.
        one_degree = math.radians(1.0) * abs(complex(*case.parts))
        return OnePrism(eye=case.eye, tolerance_prism_d=round(one_degree + 0.01, 3))

    def slips_in(self, case: PartsCase) -> tuple[Slip, ...]:
        """Return all; only a base below the line can be read as one above it."""
        return self.slips if case.upright == "down" else self.slips[:-1]

    def answer(self, case: PartsCase, slips: Set[str] = NONE) -> tuple[float, float]:
        """Return base in and base up of the one prism; the wrong steps are sums of their own."""
        inwards, upwards = case.parts
        if "angle-from-the-vertical" in slips:
            inwards, upwards = (
                along(case.across, case.upright_prism_d)[0],
                along(case.upright, case.across_prism_d)[1],
            )
        if "down-read-as-up" in slips:
            upwards = abs(upwards)
        if _EYES_EXCHANGED.name in slips:
            inwards = -inwards
        if "plain-sum" in slips:
            total, whole = case.across_prism_d + case.upright_prism_d, abs(complex(inwards, upwards))
            inwards, upwards = inwards * total / whole, upwards * total / whole
        return inwards, upwards

    def prompt(self, case: PartsCase) -> tuple[str, ...]:
        """Return both parts and what is asked."""
        return (
            f"An invented order for the {case.eye} eye: {case.across_prism_d:.2f} base {case.across} with "
            f"{case.upright_prism_d:.2f} base {case.upright}.",
            "Write it as one prism. Give the amount to 0.01 and the base to the nearest degree of the full "
            "circle, as in 1.00 @ 200.",
        )

    def drawing(self, case: PartsCase) -> Drawing:
        """Return the lens, with the nose on its side."""
        return prism_drawing(case.eye, most_prism_d=_MOST_PRISM_D)

    def solution(self, case: PartsCase) -> Solution:
        """Return the triangle, and the quarter it lies in."""
        inwards, upwards = case.parts
        return Solution(
            words=(
                "Draw both parts as arrows at right angles, facing the wearer. The whole runs from corner to "
                "corner: its length by Pythagoras, its angle from the horizontal by the tangent.",
                f"For the {case.eye} eye, in is to your {'right' if case.eye is Eye.RIGHT else 'left'}. "
                f"Count from the right, anticlockwise: {self.kind(case).written((inwards, upwards))}.",
            ),
            workings=resultant_workings(eye=case.eye, in_prism_d=inwards, up_prism_d=upwards),
        )

    def hints(self, case: PartsCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Make a sketch facing the wearer. On which side of it is the nose of this eye?",
            "The amount is the root of the sum of both squares. The angle from the horizontal has the "
            "tangent up or down / in or out.",
            "Count from your right, anticlockwise: up is 90, left is 180, down is 270.",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ObliqueCase:
    """One prism with an oblique base.

    eye: the eye it is for.
    amount_prism_d: how much [prism D]; base_deg: its base in the full circle [degrees].
    """

    eye: Eye
    amount_prism_d: float
    base_deg: float

    @property
    def prism(self) -> Prism:
        """The prism."""
        return Prism(amount_prism_d=self.amount_prism_d, base=self.base_deg)


class Resolving(Maker[ObliqueCase]):
    """The two parts of one prism."""

    name = "resolving"
    lesson = "06"
    skill = "resolving-prism"
    slips = (
        Slip(
            name="sine-for-cosine",
            step="which part has the sine",
            words="You exchanged the two parts. The angle is counted from the horizontal, so the part in or "
            "out has the cosine and the part up or down the sine.",
        ),
        _EYES_EXCHANGED,
        Slip(
            name="half-turn-lost",
            step="the half of the circle, above or below",
            words="You read the base as if it were an axis, half a turn off. Up to 180 the base is up, "
            "beyond 180 it is down.",
        ),
    )

    def draw(self, draws: Draws) -> ObliqueCase:
        """Return a prism whose two parts differ clearly."""
        quarter = draws.one_of((0.0, 90.0, 180.0, 270.0))
        return ObliqueCase(
            eye=draws.one_of(EYES),
            amount_prism_d=draws.step(1.5, 6.0, 0.5),
            base_deg=quarter + draws.one_of((15.0, 20.0, 25.0, 30.0, 60.0, 65.0, 70.0, 75.0)),
        )

    def kind(self, case: ObliqueCase) -> PrismInParts:
        """Return the kind: two parts with their bases."""
        return PrismInParts(eye=case.eye, tolerance_prism_d=0.04)

    def slips_in(self, case: ObliqueCase) -> tuple[Slip, ...]:
        """Return all; half a turn is lost only beyond 180."""
        return self.slips if case.base_deg > _HALF_TURN_DEG else self.slips[:-1]

    def answer(self, case: ObliqueCase, slips: Set[str] = NONE) -> tuple[float, float]:
        """Return base in and base up; each wrong step resolves the prism with its base somewhere else."""
        base = case.base_deg
        if "half-turn-lost" in slips:
            base -= _HALF_TURN_DEG
        if _EYES_EXCHANGED.name in slips:
            base = (_HALF_TURN_DEG - base) % _TURN_DEG
        inwards, upwards = Prism(amount_prism_d=case.amount_prism_d, base=base).resolved(eye=case.eye)
        if "sine-for-cosine" in slips:
            across, upright = ("in" if inwards > 0.0 else "out"), ("up" if upwards > 0.0 else "down")
            inwards, upwards = along(across, abs(upwards))[0], along(upright, abs(inwards))[1]
        return inwards, upwards

    def prompt(self, case: ObliqueCase) -> tuple[str, ...]:
        """Return the prism and what is asked."""
        return (
            f"An invented order for the {case.eye} eye: {case.amount_prism_d:.2f} prism dioptres with the "
            f"base at {case.base_deg:g} degrees of the full circle.",
            "What are its two parts? Give both to 0.01 with their bases, as in 1.50 base in, 0.50 base up.",
        )

    def given(self, case: ObliqueCase) -> tuple[Term, ...]:
        """Return nothing: the prism stands in the prompt."""
        return ()

    def solution(self, case: ObliqueCase) -> Solution:
        """Return cosine and sine, and what the signs mean for this eye."""
        return Solution(
            words=(
                "The angle is counted from the horizontal: cosine for the part in or out, sine for the part "
                "up or down.",
                "A plus cosine points to your right as you face the wearer. That is in for the right eye and "
                f"out for the left. Here: {self.kind(case).written(self.answer(case))}.",
            ),
            workings=resolving_workings(case.prism, eye=case.eye),
        )

    def hints(self, case: ObliqueCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Sketch the base on a lens, facing the wearer: 0 to your right, then anticlockwise. Which "
            "quarter is it in?",
            "Amount times cosine runs sideways, amount times sine up or down.",
        )
