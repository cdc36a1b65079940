"""A decision about a progressive: whether its cross stands high enough in the frame."""

from collections.abc import Set

from lablib.optics.progressive import ProgressiveDesign
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.progressive_workings import near_room_working
from lablib.questions.multifocals.case import draw_framed_eye, millimetres
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_MAKE, _HOLD, _MOVE, _SHORT = "make", "hold", "move-the-cross", "shorter-design"


class FittingHeight(Maker[ProgressiveLayout]):
    """Whether a progressive is high enough in its frame, and what is done where it is not."""

    name = "fitting-height"
    lesson = "08"
    skill = "least-fitting-height"
    slips = (
        Slip(
            name="moves-the-cross",
            step="where the cross belongs",
            words="You moved the cross to suit the lens. It belongs before the pupil; moved, the wearer "
            "looks through the wrong part of it.",
        ),
        Slip(
            name="cuts-the-near-part-off",
            step="what the rim leaves of the near part",
            words="You had it made. Below the least fitting height the rim cuts part of the near circle off, "
            "and the wearer pays for a reading part that is not there.",
        ),
        Slip(
            name="cuts-the-far-part-off",
            step="what the rim leaves above the cross",
            words="You had it made. Above the cross less room is left than the chart asks for.",
        ),
        Slip(
            name="holds-a-good-order",
            step="the height against the chart",
            words="You held it although the height and the room above it are what the chart asks for.",
        ),
        Slip(
            name="shorter-design-unasked",
            step="who chooses the design",
            words="You took another design without asking. Who dispensed the lens chooses the design, and a "
            "shorter one asks for more from the wearer.",
        ),
    )

    def draw(self, draws: Draws) -> ProgressiveLayout:
        """Return a progressive that is high enough, too low, or too high, none of them by a hair."""
        wanted = draws.one_of((_MAKE, _MAKE, "low", "low", "high"))
        return draws.until("a fitting height", _draw_height, lambda layout: _trouble(layout) == wanted)

    def kind(self, case: ProgressiveLayout) -> ChoiceAnswer:
        """Return the kind: four things to do."""
        return ChoiceAnswer(
            options=(
                Option(key=_MAKE, words="Make it as ordered."),
                Option(key=_MOVE, words="Make it, with the cross moved until everything fits."),
                Option(key=_SHORT, words="Make it with a shorter design, chosen by us."),
                Option(key=_HOLD, words="Hold it, and ask for another design or another frame."),
            )
        )

    def slips_in(self, case: ProgressiveLayout) -> tuple[Slip, ...]:
        """Return one slip for each wrong option."""
        trouble = _trouble(case)
        names = {"moves-the-cross", "shorter-design-unasked"}
        names.add(
            {_MAKE: "holds-a-good-order", "low": "cuts-the-near-part-off", "high": "cuts-the-far-part-off"}[
                trouble
            ]
        )
        return tuple(slip for slip in self.slips if slip.name in names)

    def answer(self, case: ProgressiveLayout, slips: Set[str] = NONE) -> str:
        """Return the decision, or the one a slip leads to."""
        if "moves-the-cross" in slips:
            return _MOVE
        if "shorter-design-unasked" in slips:
            return _SHORT
        is_good = _trouble(case) == _MAKE
        if slips & {"cuts-the-near-part-off", "cuts-the-far-part-off", "holds-a-good-order"}:
            is_good = not is_good
        return _MAKE if is_good else _HOLD

    def pairs(
        self, case: ProgressiveLayout, kind: ChoiceAnswer, known: tuple[object, ...]
    ) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: ProgressiveLayout) -> tuple[str, ...]:
        """Return the order and what is asked."""
        return (
            f"An invented order for a progressive, {case.eye} eye. The frame was adjusted before the height "
            "was taken, and the height was measured twice.",
            "What do you do?",
        )

    def given(self, case: ProgressiveLayout) -> tuple[Term, ...]:
        """Return B, the height, and what the chart asks for."""
        design = case.design
        return (
            millimetres("B", case.frame.b_mm, "boxed height"),
            millimetres("h", case.height_mm, "height of the fitting cross"),
            millimetres("h_least", design.least_fitting_height_mm, "least fitting height, by the chart"),
            millimetres("a_least", design.least_above_cross_mm, "least room above the cross, by the chart"),
            millimetres("n", design.near_circle_below_cross_mm, "middle of the near circle below the cross"),
        )

    def solution(self, case: ProgressiveLayout) -> Solution:
        """Return what is missing and what follows."""
        why = {
            _MAKE: "The height is the chart's least or more, and so is the room above the cross. It is made.",
            "low": f"The height is {case.height_short_mm:g} mm under the least. The rim leaves "
            f"{100.0 * case.near_circle_left:.0f} % of the near circle.",
            "high": f"Above the cross {case.frame.b_mm - case.height_mm:g} mm are left, "
            f"{case.room_above_short_mm:g} mm under what the chart asks for. The part for far is cut short.",
        }[_trouble(case)]
        ask = (
            ()
            if self.answer(case) == _MAKE
            else (
                "The cross stays before the pupil, and the design is not ours to choose: ask for a design "
                "that fits, or for another frame.",
            )
        )
        return Solution(words=(why, *ask), workings=(near_room_working(case),))

    def hints(self, case: ProgressiveLayout) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Compare the height with the least fitting height. Then compare what is left above the cross.",
            "What decides where the cross lies: the lens, the frame, or the eye?",
        )


def _draw_height(draws: Draws) -> ProgressiveLayout:
    place = draw_framed_eye(draws, deep=draws.whole(2) == 0)
    least = draws.one_of((14.0, 16.0, 17.0, 18.0))
    design = ProgressiveDesign(near_circle_below_cross_mm=least - 4.0, least_fitting_height_mm=least)
    return ProgressiveLayout(
        frame=place.frame,
        eye=place.eye,
        design=design,
        monocular_pd_mm=draws.step(30.0, 33.0, 0.5),
        height_mm=place.frame.b_mm / 2.0 + draws.step(-1.0, 6.0, 0.5),
    )


def _trouble(layout: ProgressiveLayout) -> str:
    """What is missing by 1 mm or more: "low", "high", nothing at all, or a mixture that is not asked."""
    low, high = layout.height_short_mm, layout.room_above_short_mm
    if not low and not high:
        return _MAKE
    if low >= 1.0 and not high:
        return "low"
    return "high" if high >= 1.0 and not low else "both"
