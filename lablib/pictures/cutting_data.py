"""What the picture of a cut turn by turn is handed, and how its kinds of turns look."""

from dataclasses import dataclass

import numpy as np
from matplotlib.colors import to_rgba

from lablib.job.eye_sheet import EyeSheet
from lablib.pictures.cutting_turn import ShownTurn
from lablib.pictures.palette import BITE, BLANK, GLASS, PAPER, QUIET_INK

CRIBBING, ROUGHING, FINISHING = "cribbing", "roughing", "finishing"


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnBar:
    """One turn as a bar.

    kind: cribbing, roughing or finishing.
    turns_nm: greatest cutting torque of the turn; holds_nm: what holds where that is [N m].
    """

    kind: str
    turns_nm: float
    holds_nm: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CutView:
    """A whole cut and one turn of it, as it is drawn.

    sheet: the lens, worked.
    shown: the turn that is drawn large.
    at: which of `bars` that is, from 0.
    bars: every turn in its order, cribbing first.
    drawn: how many of them are drawn, from the first.
    top_nm: where the scales of torque end, the same for every turn [N m].
    """

    sheet: EyeSheet
    shown: ShownTurn
    at: int
    bars: tuple[TurnBar, ...]
    drawn: int
    top_nm: float

    @property
    def kind(self) -> str:
        """What kind of turn is shown."""
        return self.bars[self.at].kind

    @property
    def bite_mm(self) -> np.ndarray:
        """Shape (N,), depth of the bite round the turn [mm]."""
        return self.shown.cut.cutting.plan.depth_mm[self.shown.turn - 1]

    @property
    def thickness_mm(self) -> np.ndarray:
        """Shape (N,), thickness of the lens where the wheel leaves it in this turn [mm]."""
        return self.shown.cut.cutting.thickness_mm[self.shown.turn - 1]


def bar_style(kind: str) -> dict[str, object]:
    """Return matplotlib's keywords for the area of one kind of turn.

    kind: cribbing, roughing or finishing.
    """
    return {
        CRIBBING: {"facecolor": PAPER, "edgecolor": BLANK.colour, "hatch": "...", "linewidth": 0.8},
        ROUGHING: {"facecolor": to_rgba(BITE.colour, BITE.opacity), "edgecolor": QUIET_INK, "linewidth": 0.8},
        FINISHING: {
            "facecolor": to_rgba(GLASS.colour, GLASS.opacity),
            "edgecolor": QUIET_INK,
            "hatch": "\\\\\\\\",
            "linewidth": 0.8,
        },
    }[kind]
