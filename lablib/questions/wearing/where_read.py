"""A question about the focimeter and a compensated lens: where, how held, and against what it is read."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_RIGHT = "square-at-its-point-against-the-check-value"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadCase:
    """A compensated lens to be read.

    progressive: whether it is a progressive, else single vision.
    tilt_deg: pantoscopic tilt; wrap_deg: wrap of its frame [degrees].
    order: the options, in the order shown.
    """

    progressive: bool
    tilt_deg: float
    wrap_deg: float
    order: tuple[str, ...]


class WhereItIsRead(Maker[ReadCase]):
    """How a compensated lens is held and where it is read."""

    name = "where-it-is-read"
    lesson = "09"
    skill = "reading-a-compensated-lens"
    slips = (
        Slip(
            name="held-as-worn",
            step="how the lens is held",
            words="You held it tilted as it is worn. A focimeter cannot set an angle, and the check value "
            "is worked out for a lens that lies square to the stop.",
        ),
        Slip(
            name="against-the-order",
            step="what the reading is compared with",
            words="You compared it with the order. A compensated lens is not made to the powers ordered.",
        ),
        Slip(
            name="at-another-point",
            step="where the lens is read",
            words="You read it at another point than the one its powers hold at.",
        ),
    )

    def draw(self, draws: Draws) -> ReadCase:
        """Return a lens for a frame that is tilted and wrapped."""
        return ReadCase(
            progressive=draws.whole(2) == 0,
            tilt_deg=draws.step(6.0, 14.0, 1.0),
            wrap_deg=draws.step(8.0, 22.0, 1.0),
            order=draws.shuffled((_RIGHT, *(slip.name for slip in self.slips))),
        )

    def kind(self, case: ReadCase) -> ChoiceAnswer:
        """Return the kind: four ways to read it."""
        point = "the distance circle" if case.progressive else "the optical centre"
        other = "the fitting cross" if case.progressive else "the boxed centre"
        square = "back to the stop, square to it"
        words = {
            _RIGHT: f"At {point}, {square}, against the check value.",
            "held-as-worn": f"At {point}, tilted and wrapped as in the frame, against the order.",
            "against-the-order": f"At {point}, {square}, against the order.",
            "at-another-point": f"At {other}, {square}, against the check value.",
        }
        return ChoiceAnswer(options=tuple(Option(key=key, words=words[key]) for key in case.order))

    def answer(self, case: ReadCase, slips: Set[str] = NONE) -> str:
        """Return the way to read it, or the one a slip leads to."""
        return next((slip.name for slip in self.slips if slip.name in slips), _RIGHT)

    def pairs(self, case: ReadCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: ReadCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        lens = "progressive" if case.progressive else "single vision lens"
        return (
            f"A compensated {lens} was made for an invented frame with {case.tilt_deg:g} degrees of "
            f"pantoscopic tilt and {case.wrap_deg:g} degrees of wrap. Its packet carries the order and a "
            "check value.",
            "How is its power read for distance, and what is the reading compared with?",
        )

    def solution(self, case: ReadCase) -> Solution:
        """Return why."""
        point = (
            "A progressive is read for distance in its distance circle; below that its power already changes."
            if case.progressive
            else "A single vision lens is read where it has no prism, at its optical centre."
        )
        return Solution(
            words=(
                "The check value says what a focimeter shows, and a focimeter looks square through a lens "
                "that lies with its back on the stop. Tilt and wrap are already in the number.",
                point,
                "That is common practice; where a maker's packet names another point, the packet goes "
                "before it.",
            )
        )

    def hints(self, case: ReadCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Can a focimeter be set to an angle?",
            "For which way of holding the lens was the check value worked out?",
        )
