"""Whether a block clears a shallow frame, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.clearance import box_room_mm
from lablib.bench.contact import block_contact
from lablib.optics.terms import distance_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_SIZE_STEP = "how far the block reaches from its middle"
_PLACE_STEP = "where the middle of the block stands"
_WHOLE = Slip(
    name="whole-block-taken-off",
    step=_SIZE_STEP,
    words="You took off the whole height of the block. It reaches only half of it to either side of its "
    "middle.",
)
_MIDDLE = Slip(
    name="blocked-at-the-boxed-centre",
    step=_PLACE_STEP,
    words="You put the block on the boxed centre. It sits on the fitting cross, and there one side is "
    "nearer.",
)
_FAR_SIDE = Slip(
    name="far-side-taken",
    step=_PLACE_STEP,
    words="You gave the room on the far side. The wheel meets the block where it is nearest to the rim.",
)
# Width of a frame in which no block reaches the sides.
_WIDE_MM = 52.0


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomCase:
    """A block on the fitting cross of a shallow frame.

    b_mm: box height [mm]; height_mm: of the fitting cross above the lowest tangent [mm].
    block: a name of the table of blocks.
    """

    b_mm: float
    height_mm: float
    block: str

    @property
    def up_mm(self) -> float:
        """The cross above the boxed centre [mm]."""
        return self.height_mm - self.b_mm / 2.0


class BlockClearsTheFrame(Maker[RoomCase]):
    """Say how much room is left between a block and the finished outline."""

    name = "block-clears-the-frame"
    lesson = "10"
    skill = "where-the-block-goes"
    slips = (_WHOLE, _MIDDLE, _FAR_SIDE)

    def draw(self, draws: Draws) -> RoomCase:
        """Return a shallow frame with its cross above or below the middle."""
        b = draws.step(24.0, 34.0, 0.5)
        # Heights are given to half a millimetre.
        away = draws.step(1.5, 4.5, 0.5) * draws.one_of((1.0, 1.0, -1.0))
        height = round(2.0 * (b / 2.0 + away)) / 2.0
        return RoomCase(b_mm=b, height_mm=height, block=draws.one_of(("round", "half-eye")))

    def kind(self, case: RoomCase) -> NumberAnswer:
        """Return a length to 0.1 mm; minus where the block stands out."""
        return NumberAnswer(unit="mm", tolerance=0.1, digits=2)

    def answer(self, case: RoomCase, slips: Set[str] = NONE) -> float:
        """Return the room on the nearer side, or what comes out of a slip."""
        up = 0.0 if _MIDDLE.name in slips else case.up_mm
        room = box_room_mm(a_mm=_WIDE_MM, b_mm=case.b_mm, block=case.block, up_mm=up)
        left = max(room.up_mm, room.down_mm) if _FAR_SIDE.name in slips else min(room.up_mm, room.down_mm)
        return left - block_contact(case.block).half_height_mm if _WHOLE.name in slips else left

    def prompt(self, case: RoomCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A progressive lens for an invented frame is blocked at its fitting cross with a "
            f"{_block_words(case)}. Sideways there is room enough. The rim runs along its box above and "
            "below.",
            "How much room is left between the block and the finished outline on the nearer side, upwards or "
            "downwards? Give it in mm, to 0.1 mm, with a minus where the block stands out.",
        )

    def given(self, case: RoomCase) -> tuple[Term, ...]:
        """Return the box height, the cross and the block's height."""
        return (
            distance_term("B", case.b_mm, "height of the box"),
            distance_term("h", case.height_mm, "fitting cross above the lowest tangent"),
            distance_term("H", 2.0 * block_contact(case.block).half_height_mm, "height of the block"),
        )

    def solution(self, case: RoomCase) -> Solution:
        """Return the nearer side and what the block takes of it."""
        box, height, block = self.given(case)
        near = Working(
            what="distance from the cross to the nearer side",
            symbol="d",
            formula="min(h, B - h)",
            terms=(height, box),
            value=min(case.height_mm, case.b_mm - case.height_mm),
            unit="mm",
        )
        room = Working(
            what="room between block and outline",
            symbol="R",
            formula="d - H / 2",
            terms=(near.as_term(), block),
            value=self.answer(case),
            unit="mm",
        )
        clears = (
            "The block stands out of the finished lens: the wheel would cut into it. Take a smaller block, "
            "or another blocking point."
            if room.value < 0.0
            else "The block lies inside the finished lens. Of the blocks that do, take the largest."
        )
        return Solution(words=(clears,), workings=(near, room))

    def hints(self, case: RoomCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Sketch the box and put the cross into it. Which side of the box is nearer to it?",
            "How far does the block reach from its own middle?",
        )


def _block_words(case: RoomCase) -> str:
    face = block_contact(case.block)
    height = 2.0 * face.half_height_mm
    return (
        f"round block, {height:g} mm across"
        if case.block == "round"
        else (f"half-eye block, {2.0 * face.half_width_mm:g} mm wide and {height:g} mm high")
    )
