"""A decision about a compensated lens: order, check value and reading, and what is done with it."""

from collections.abc import Set

from lablib.job.check_values import CheckedLens
from lablib.optics.terms import power_step
from lablib.questions.wearing.checked_case import columns, draw_checked, kind_of_lens
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term, Working

_USE, _BACK, _AGAIN, _ASK = "use-it", "send-back", "order-the-check-value", "ask-the-prescriber"
_READS_ORDER = "read-against-the-order"


class CheckValueVerdict(Maker[CheckedLens]):
    """Whether a compensated lens is used, and what is done where it is not."""

    name = "check-value-verdict"
    lesson = "09"
    skill = "inspecting-a-compensated-lens"
    slips = (
        Slip(
            name=_READS_ORDER,
            step="the column that decides",
            words="You read the lens against the powers ordered. A compensated lens is made to other powers "
            "on purpose; its check value decides.",
        ),
        Slip(
            name="limits-misread",
            step="the differences against the limits",
            words="You compared with the check value and decided the other way than the limits do. Take "
            "sphere, cylinder and axis one by one.",
        ),
        Slip(
            name="orders-the-check-value",
            step="what the check value is",
            words="You ordered the check value as a prescription. The maker would compensate it once more. "
            "The order keeps the prescription, frame and tilt.",
        ),
        Slip(
            name="asks-without-need",
            step="who knows why order and check value differ",
            words="You asked the prescriber why the check value differs from the order. It differs because "
            "the lens is compensated, and the maker's packet says so.",
        ),
    )

    def draw(self, draws: Draws) -> CheckedLens:
        """Return a lens near its check value, near its order, or near neither, none of them by a hair."""
        near = draws.one_of(("check value", "check value", "order", "nothing"))
        return draws.until("a compensated lens", lambda draws: draw_checked(draws, near=near), _is_clear)

    def kind(self, case: CheckedLens) -> ChoiceAnswer:
        """Return the kind: four things to do."""
        return ChoiceAnswer(
            options=(
                Option(key=_USE, words="Use it, and file the check value with the job."),
                Option(key=_BACK, words="Send it back to its maker."),
                Option(key=_AGAIN, words="Order it again, with the check value as the prescription."),
                Option(key=_ASK, words="Hold it, and ask the prescriber which of the two powers is meant."),
            )
        )

    def slips_in(self, case: CheckedLens) -> tuple[Slip, ...]:
        """Return one slip for each wrong option: the wrong column where it says something else."""
        never = "limits-misread" if case.passes != case.would_pass_the_order else _READS_ORDER
        return tuple(slip for slip in self.slips if slip.name != never)

    def answer(self, case: CheckedLens, slips: Set[str] = NONE) -> str:
        """Return the decision, or the one a slip leads to."""
        if "orders-the-check-value" in slips:
            return _AGAIN
        if "asks-without-need" in slips:
            return _ASK
        passes = case.would_pass_the_order if _READS_ORDER in slips else case.passes
        return _USE if passes != ("limits-misread" in slips) else _BACK

    def pairs(self, case: CheckedLens, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: CheckedLens) -> tuple[str, ...]:
        """Return the lens, its limits and what is asked."""
        sphere, cylinder, axis = case.against_check_value
        return (
            f"An invented compensated {kind_of_lens(case)} has come from its maker, with a check value on "
            "the packet. It was read on the focimeter, square to the stop.",
            f"Limits, ANSI Z80.1-2015: sphere {sphere.limit:.2f} D, cylinder {cylinder.limit:.2f} D, axis "
            f"{axis.limit:g} degrees.",
            "What do you do with it?",
        )

    def given(self, case: CheckedLens) -> tuple[Term, ...]:
        """Return the three columns."""
        return columns(case)

    def solution(self, case: CheckedLens) -> Solution:
        """Return the verdict, what decided it, and what the order would say."""
        worst = [line.quantity for line in case.against_check_value if not line.passes]
        verdict = (
            "All three lie within their limits of the check value, so it is used."
            if case.passes
            else f"Against the check value it is out in {' and '.join(worst)}, so it goes back."
        )
        also = "would pass" if case.would_pass_the_order else "would fail"
        return Solution(
            words=(
                verdict,
                f"Read against the powers ordered it {also}. That decides nothing: tilt and wrap will "
                "change the lens on the face, and the maker has made up for it.",
                "The check value is filed with the job, or the next reading will be taken for a fault.",
            ),
            workings=_workings(case),
        )

    def hints(self, case: CheckedLens) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Why are the powers in the first two columns not the same?",
            "Compare sphere, cylinder and axis of the reading with one other column. Which one?",
        )


def _workings(case: CheckedLens) -> tuple[Working, ...]:
    terms = {term.symbol: term for term in columns(case)}
    sphere, cylinder, axis = case.against_check_value
    return (
        power_step("how far the sphere is off", "e_S", "S_r - S_c", (terms["S_r"], terms["S_c"]), sphere.off),
        power_step(
            "how far the cylinder is off", "e_C", "C_r - C_c", (terms["C_r"], terms["C_c"]), cylinder.off
        ),
        Working(
            what="how far the axis is off",
            symbol="e_A",
            formula="A_r - A_c",
            terms=(terms["A_r"], terms["A_c"]),
            value=axis.off,
            unit="degrees",
            digits=0,
        ),
    )


def _is_clear(case: CheckedLens) -> bool:
    """Whether no line hangs on the last hundredth, in either column, and no axis goes past 180."""
    lines = (*case.against_check_value, *case.against_order)
    if any(line.limit is None or abs(case.reading.axis_deg - line.wanted) > 90.0 for line in lines[2::3]):
        return False
    powers = [line for line in lines if line.unit == "D"]
    axes = [line for line in lines if line.unit == "degrees"]
    return all(abs(abs(line.off) - line.limit) > 0.015 for line in powers) and all(
        abs(line.off) != line.limit for line in axes
    )
