"""Where a block goes and which one, as a question: the largest that clears at the point of the lens."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.clearance import box_room_mm
from lablib.bench.contact import block_words
from lablib.optics.terms import distance_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term, plain

_SIZE_STEP = "which block clears the rim at its point"
_POINT_STEP = "the point of this kind of lens"
_ROUND = Slip(
    name="round-block-too-large",
    step=_SIZE_STEP,
    words="You took the round block. At this point it comes nearer to the rim than this room allows.",
)
_NARROW = Slip(
    name="narrow-block-too-large",
    step=_SIZE_STEP,
    words="You took the half-eye block. Even that comes nearer to the rim than this room allows.",
)
_NEEDLESS = Slip(
    name="narrow-block-without-need",
    step=_SIZE_STEP,
    words="You took the half-eye block although the round one clears. The smaller block holds less torque.",
)
_POINT = Slip(
    name="another-point",
    step=_POINT_STEP,
    words="You took another point than this room blocks this kind of lens at.",
)
_GIVEN_UP = Slip(
    name="given-up-too-soon",
    step=_SIZE_STEP,
    words="You stopped the job although a block clears.",
)
# Room left between block and rim, told in the question [mm].
_LEAST_MM = 1.0
# The room is clear by so much either way [mm].
_CLEAR_MM = 0.4
_NONE = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class WhereCase:
    """A lens in a shallow frame.

    a_mm, b_mm: the box [mm]; cross_mm: fitting cross or optical centre above the boxed centre [mm].
    progressive: whether the lens is one; shown: keys of the options.
    """

    a_mm: float
    b_mm: float
    cross_mm: float
    progressive: bool
    shown: tuple[str, ...] = ()

    @property
    def point(self) -> str:
        """Where this lens room blocks it: "cross" or "box"."""
        return "cross" if self.progressive else "box"

    def room_mm(self, block: str) -> float:
        """Return the least room between a block at the lens's point and its box [mm].

        block: a name of the table of blocks.
        """
        up = self.cross_mm if self.progressive else 0.0
        return box_room_mm(a_mm=self.a_mm, b_mm=self.b_mm, block=block, up_mm=up).least_mm

    @property
    def block(self) -> str:
        """The largest block that clears, or "none"."""
        fits = (name for name in ("round", "half-eye") if round(self.room_mm(name), 6) >= _LEAST_MM)
        return next(fits, _NONE)

    @property
    def keys(self) -> dict[str, Slip | None]:
        """Options by key, each with the slip it belongs to; None for the right one."""
        here, there = self.point, "box" if self.progressive else "cross"
        found = {f"round at {here}": _ROUND, f"half-eye at {here}": _NARROW, _NONE: _GIVEN_UP}
        if self.block == "round":
            found[f"half-eye at {here}"] = _NEEDLESS
        found[f"round at {there}"] = _POINT
        found[_NONE if self.block == _NONE else f"{self.block} at {here}"] = None
        return found


class WhereToBlock(Maker[WhereCase]):
    """Choose blocking point and block."""

    name = "where-to-block"
    lesson = "10"
    skill = "where-the-block-goes"
    slips = (_ROUND, _NARROW, _NEEDLESS, _POINT, _GIVEN_UP)

    def draw(self, draws: Draws) -> WhereCase:
        """Return a lens whose blocks clear or do not by a clear margin."""
        wanted = draws.one_of(("round", "half-eye", "half-eye", _NONE))
        case = draws.until(
            "a lens for a block", _drawn, lambda case: case.block == wanted and _is_clear(case)
        )
        return replace(case, shown=draws.shuffled(tuple(case.keys)))

    def kind(self, case: WhereCase) -> ChoiceAnswer:
        """Return point and block in words."""
        return ChoiceAnswer(options=tuple(Option(key=key, words=_words(key, case)) for key in case.shown))

    def answer(self, case: WhereCase, slips: Set[str] = NONE) -> str:
        """Return the right option, or the one a slip leads to."""
        if not slips:
            return next(key for key, slip in case.keys.items() if slip is None)
        return next(key for key, slip in case.keys.items() if slip is not None and slip.name in slips)

    def slips_in(self, case: WhereCase) -> tuple[Slip, ...]:
        """Return the slips of the options that are offered."""
        return tuple(slip for slip in case.keys.values() if slip is not None)

    def pairs(self, case: WhereCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: WhereCase) -> tuple[str, ...]:
        """Return the room's rule, the lens, and what is asked."""
        blocks = block_words()
        lens = "progressive" if case.progressive else "single vision"
        what = "fitting cross" if case.progressive else "optical centre"
        side = "above" if case.cross_mm > 0.0 else "below"
        return (
            "An invented lens room blocks single vision lenses at the boxed centre and progressives at the "
            f"fitting cross. It has a {blocks['round']}, and a {blocks['half-eye']}, and leaves at least "
            f"{_LEAST_MM:g} mm between block and rim.",
            f"A {lens} lens has its {what} {abs(case.cross_mm):g} mm {side} the boxed centre. The rim runs "
            "along its box above and below.",
            "Where do you block it, and with which block?",
        )

    def given(self, case: WhereCase) -> tuple[Term, ...]:
        """Return the box, and how far the lens's own point stands from its middle."""
        return (
            distance_term("A", case.a_mm, "width of the box"),
            distance_term("B", case.b_mm, "height of the box"),
            distance_term("v", abs(case.cross_mm), "point of the lens from the boxed centre"),
        )

    def solution(self, case: WhereCase) -> Solution:
        """Return the room each block leaves at the lens's point."""
        right = _words(self.answer(case), case)
        point = "fitting cross" if case.progressive else "boxed centre"
        rooms = " ".join(_room_words(name, case.room_mm(name)) for name in _BLOCKS)
        return Solution(
            words=(
                f"This lens is blocked at the {point}. {rooms}",
                f"So: {right[0].lower()}{right[1:]}. Of the blocks that clear, the largest holds most "
                "torque.",
            )
        )

    def hints(self, case: WhereCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which point does this room take for this kind of lens? What does that leave above and below?",
            "Take half of each block's height off the nearer side.",
        )


_BLOCKS = ("round", "half-eye")
_POINTS = {"box": "boxed centre"}


def _words(key: str, case: WhereCase) -> str:
    if key == _NONE:
        return "Nowhere: stop the job and ask for another frame or a smaller block"
    block, point = key.split(" at ")
    own = "fitting cross" if case.progressive else "optical centre"
    return f"{block.capitalize()} block at the {_POINTS.get(point, own)}"


def _room_words(block: str, room_mm: float) -> str:
    if room_mm < 0.0:
        return f"The {block} block stands {plain(-room_mm, 1)} mm out on the nearest side."
    return f"The {block} block leaves {plain(room_mm, 1)} mm on the nearest side."


def _drawn(draws: Draws) -> WhereCase:
    return WhereCase(
        a_mm=draws.step(46.0, 56.0, 1.0),
        b_mm=draws.step(22.0, 34.0, 0.5),
        cross_mm=draws.step(1.5, 4.5, 0.5) * draws.one_of((1.0, 1.0, -1.0)),
        progressive=draws.one_of((False, True)),
    )


def _is_clear(case: WhereCase) -> bool:
    return all(abs(case.room_mm(name) - _LEAST_MM) >= _CLEAR_MM for name in _BLOCKS)
