"""Where a wrong axis came from, told by where the mark stands, as a question."""

from dataclasses import dataclass
from types import MappingProxyType

from lablib.inspection.wrong_axis import (
    BEFORE,
    MACHINE,
    RIM,
    SLIP,
    Readings,
    causes,
    level_deg,
    suspects,
)
from lablib.questions.slip.picking import PickMaker
from lablib.study.draws import Draws
from lablib.study.picked import Option
from lablib.study.question import Slip, Solution
from lablib.working import Term, plain

_STEP = "where the mark stands, and where the axis first goes wrong"
_CAUSES = (BEFORE, SLIP, RIM, MACHINE)
# Readings that ought to agree differ by no more than this [degrees]: they are read by different people.
_READ_SO = 0.5
_WORDS = MappingProxyType(
    {
        BEFORE: "Layout, dotting, or the lens as it was delivered.",
        SLIP: "The lens turned on its block.",
        RIM: "The lens turned in the rim, or the rim is twisted.",
        MACHINE: "Blocker, tracer or machine is out.",
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class WhereCase:
    """What was read of a lens with a wrong axis.

    readings: its mark, its axis loose and in the frame, and the other lens; keys: the options, as shown.
    """

    readings: Readings
    keys: tuple[str, ...]


class WrongAxisWhere(PickMaker[WhereCase]):
    """Tell where a wrong axis came from."""

    name = "wrong-axis-where"
    lesson = "12"
    skill = "causes-of-a-wrong-axis"
    by_option = MappingProxyType(
        {
            SLIP: Slip(
                name="every-wrong-axis-called-slip",
                step=_STEP,
                words="You called it slip. A lens that slipped has its mark turned against the block's line, "
                "as far as its axis is off, and its fellow is not off the same way by the same amount.",
            ),
            BEFORE: Slip(
                name="work-before-the-block-blamed",
                step=_STEP,
                words="You blamed what came before the block. Then the mark would stand level on the block "
                "and the axis be wrong all the same, on this lens alone.",
            ),
            RIM: Slip(
                name="rim-blamed",
                step=_STEP,
                words="You blamed the rim. Then the axis would be right with the lens loose on the bench.",
            ),
            MACHINE: Slip(
                name="machine-blamed",
                step=_STEP,
                words="You blamed the machine. A machine that is out puts both lenses off, the same way by "
                "the same amount.",
            ),
        }
    )
    slips = tuple(by_option.values())

    def draw(self, draws: Draws) -> WhereCase:
        """Return readings with one cause, and the options in any order."""
        off = draws.step(4.0, 18.0, 1.0) * draws.one_of((-1.0, 1.0))
        cause = draws.one_of(_CAUSES)
        near = [draws.step(-_READ_SO, _READ_SO, _READ_SO) for _ in range(4)]
        mark = off if cause == SLIP else 0.0
        loose = 0.0 if cause == RIM else off
        other = off if cause == MACHINE else 0.0
        read = (mark + near[0], loose + near[1], off + near[2], other + near[3])
        mark_deg, loose_deg, framed_deg, other_deg = read
        return WhereCase(
            readings=Readings(
                mark_deg=mark_deg, loose_deg=loose_deg, framed_deg=framed_deg, other_deg=other_deg
            ),
            keys=draws.shuffled(_CAUSES),
        )

    def options(self, case: WhereCase) -> tuple[Option, ...]:
        """Return the four causes."""
        return tuple(Option(key=key, words=_WORDS[key]) for key in case.keys)

    def right(self, case: WhereCase) -> str:
        """Return the cause that the readings point to."""
        return suspects(case.readings)[0].name

    def prompt(self, case: WhereCase) -> tuple[str, ...]:
        """Return what was read, and what is asked."""
        return (
            "An invented pair is out by its axis. Both lenses have a cylinder, and both were cut on the same "
            "machine. The table has what was read, each as degrees anticlockwise from where it ought to be, "
            "and minus for clockwise. "
            f"Readings are good to about {plain(level_deg(), 0)} degree.",
            "Where did this axis go wrong?",
        )

    def given(self, case: WhereCase) -> tuple[Term, ...]:
        """Return the four readings."""
        read = case.readings
        return (
            _angle("A_mark", read.mark_deg, "mark against the block's line, before the block came off"),
            _angle("A_loose", read.loose_deg, "axis, lens loose on the bench and held as in the frame"),
            _angle("A_frame", read.framed_deg, "axis in the frame"),
            _angle("A_other", read.other_deg, "axis of the pair's other lens, in the frame"),
        )

    def solution(self, case: WhereCase) -> Solution:
        """Return how the cause shows, how to make sure, and what is done."""
        cause = suspects(case.readings)[0]
        others = (f"{_WORDS[name]} {causes()[name].shows}" for name in _CAUSES if name != cause.name)
        return Solution(
            words=(
                f"{_WORDS[cause.name]} {cause.shows}",
                f"{cause.check} {cause.then}",
                "The others would show otherwise:",
                *others,
                "This is common practice. It works only when marks are read before the block comes off.",
            )
        )

    def hints(self, case: WhereCase) -> tuple[str, ...]:
        """Return in which order to look."""
        return (
            "Follow the lens through the room: block, bench, frame. At which station is it off for the "
            "first time?",
            "What does the other lens say?",
        )


def _angle(symbol: str, angle_deg: float, meaning: str) -> Term:
    return Term(symbol=symbol, value=angle_deg + 0.0, unit="degrees", digits=1, meaning=meaning)
