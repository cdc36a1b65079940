"""By how much the size setting goes down for a touch-up, as a question."""

import math
from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.edges import RIMS, edge_default
from lablib.bench.edges_workings import width_working
from lablib.bench.size import SizeFit, width_change_mm
from lablib.optics.terms import in_full
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_FACTOR_STEP = "from round the edge to across the lens"
_AIM_STEP = "the size that is aimed at"
_SAME = Slip(
    name="circumference-as-width",
    step=_FACTOR_STEP,
    words="You set the width down by what the lens is too long round its edge. That takes off three times "
    "too much, and nothing puts it on again.",
)
_RADIUS = Slip(
    name="half-of-the-width",
    step=_FACTOR_STEP,
    words="You divided by 2 pi. That is what comes off one side; the setting counts the width.",
)
_NOT_FULL = Slip(
    name="plastic-on-size",
    step=_AIM_STEP,
    words="You cut for a plastic rim to the bottom of its groove. A plastic rim takes a lens slightly full, "
    "or it drops out.",
)
_FULL = Slip(
    name="metal-full",
    step=_AIM_STEP,
    words="You left a lens for a metal rim as full as one for plastic. Metal gives nothing: the screw closes "
    "with force, and the lens is strained.",
)
_UP = Slip(
    name="rounded-up",
    step="which way the step is rounded",
    words="You rounded to the next larger step. It takes off more than is over. Take the smaller one and "
    "measure again.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TouchUpCase:
    """A lens that is too large for its rim.

    groove_mm: circumference at the bottom of the rim's groove [mm].
    over_groove_mm: how much longer the lens is [mm].
    rim: "plastic" or "metal".
    """

    groove_mm: float
    over_groove_mm: float
    rim: str

    def fit(self, *, more_mm: float = 0.0) -> SizeFit:
        """Return lens and rim.

        more_mm: how much longer the lens is taken to be [mm].
        """
        lens = round(self.groove_mm + self.over_groove_mm + more_mm, 6)
        return SizeFit(lens_mm=lens, groove_mm=self.groove_mm, rim=self.rim)


class TouchUp(Maker[TouchUpCase]):
    """Say by how much the size goes down, so that one touch-up is enough and none too much."""

    name = "touch-up"
    lesson = "13"
    skill = "touch-up"
    slips = (_SAME, _RADIUS, _NOT_FULL, _FULL, _UP)

    def draw(self, draws: Draws) -> TouchUpCase:
        """Return a lens that is clearly too large."""
        return TouchUpCase(
            groove_mm=draws.step(128.0, 162.0, 0.2),
            over_groove_mm=draws.step(0.8, 2.6, 0.1),
            rim=draws.one_of(RIMS),
        )

    def kind(self, case: TouchUpCase) -> NumberAnswer:
        """Return a width on the steps of the setting."""
        return NumberAnswer(unit="mm", tolerance=0.01, digits=2)

    def slips_in(self, case: TouchUpCase) -> tuple[Slip, ...]:
        """Return the slips about this rim."""
        return tuple(
            slip for slip in self.slips if slip is not (_FULL if case.rim == "plastic" else _NOT_FULL)
        )

    def answer(self, case: TouchUpCase, slips: Set[str] = NONE) -> float:
        """Return what is taken off, in whole steps."""
        full = edge_default("full_plastic_mm")
        more = full if _NOT_FULL.name in slips else -full if _FULL.name in slips else 0.0
        fit = case.fit(more_mm=more)
        if not {_SAME.name, _RADIUS.name, _UP.name} & set(slips):
            return fit.take_off_mm
        # A setting taken wrongly is still set in whole steps.
        width = width_change_mm(fit.over_mm) * (0.5 if _RADIUS.name in slips else 1.0)
        width = fit.over_mm if _SAME.name in slips else width
        step = edge_default("size_step_mm")
        steps = math.ceil(width / step) if _UP.name in slips else math.floor(width / step + 1e-6)
        return round(steps * step, 6)

    def prompt(self, case: TouchUpCase) -> tuple[str, ...]:
        """Return the rules of this lens room and what is asked."""
        return (
            f"In an invented lens room a lens for a {case.rim} rim was cut too large. Round the tip of its "
            f"bevel it measures {case.fit().lens_mm:.1f} mm, the bottom of the rim's groove "
            f"{case.groove_mm:.1f} mm.",
            f"Here a plastic rim takes a lens {edge_default('full_plastic_mm'):g} mm longer round than its "
            "groove, and a metal rim one on size. The size setting counts the width of the lens, in steps of "
            f"{edge_default('size_step_mm'):g} mm, and no more is taken off than is over.",
            "By how much is the size set down? Give it in mm, to 0.01 mm.",
        )

    def given(self, case: TouchUpCase) -> tuple[Term, ...]:
        """Return both circumferences and the step."""
        return (
            in_full("C_l", case.fit().lens_mm, "mm", least_digits=1, meaning="circumference of the lens"),
            in_full("C_g", case.groove_mm, "mm", least_digits=1, meaning="circumference of the groove"),
            in_full("s", edge_default("size_step_mm"), "mm", meaning="step of the setting"),
        )

    def solution(self, case: TouchUpCase) -> Solution:
        """Return what is over, its width, and the whole steps in it."""
        fit = case.fit()
        lens, groove, step = self.given(case)
        over = Working(
            what="what the lens is over the size aimed at, round its edge",
            symbol="dC",
            formula="C_l - C_g - f",
            terms=(
                lens,
                groove,
                Term(symbol="f", value=fit.wanted_full_mm, unit="mm", meaning=f"how full {case.rim} is cut"),
            ),
            value=fit.over_mm,
            unit="mm",
        )
        steps = round(fit.take_off_mm / step.value)
        taken = Working(
            what="what the size is set down by",
            symbol="q",
            formula="n * s",
            terms=(Term(symbol="n", value=steps, digits=0, meaning="whole steps of s that go into dA"), step),
            value=fit.take_off_mm,
            unit="mm",
        )
        left = fit.after(fit.take_off_mm).over_mm
        return Solution(
            words=(
                f"After this touch-up {abs(left):.2f} mm is left over round the edge: close enough. "
                "Measure again before anything more comes off; nothing puts it on again.",
            ),
            workings=(over, width_working(fit.over_mm), taken),
        )

    def hints(self, case: TouchUpCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "First: how long should this lens be, round the tip of its bevel?",
            "What is over is counted round the edge. What is it across?",
            "How many whole steps go into that?",
        )
