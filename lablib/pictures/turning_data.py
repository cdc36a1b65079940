"""What the picture of a lens that turns on its block shows: the lens after one turn, and the turn of each."""

from dataclasses import dataclass

import numpy as np

from lablib.bench.slipping import Simulation
from lablib.pictures.turned_lens_data import Marks, SeenLens, seen_lens

BEFORE, ROUGHING, FINISHING, AGAIN = "before the cut", "roughing", "finishing", "finishing again"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TurningView:
    """A cut with the lens free to turn on its block, as far as one turn.

    ran: the whole of it; lens: as it stands after the turn.
    at: the turn, from 1; 0 before the first.
    """

    ran: Simulation
    lens: SeenLens
    at: int

    @property
    def is_over(self) -> bool:
        """Whether nothing comes after the turn that is shown."""
        return self.at == self.ran.turns_run

    @property
    def kind(self) -> str:
        """What kind of turn it is."""
        if not self.at:
            return BEFORE
        if self.at > self.ran.planned_turns:
            return AGAIN
        return FINISHING if self.ran.result.cutting.plan.finishing[self.at - 1] else ROUGHING

    @property
    def turned_deg(self) -> float:
        """How far the lens has turned so far, whole turns among it [degrees]."""
        return float(self.after_deg[self.at - 1]) if self.at else 0.0

    @property
    def in_turn_deg(self) -> float:
        """How much of that it turned in the turn that is shown [degrees]."""
        return float(self.ran.slip_by_turn_deg[self.at - 1]) if self.at else 0.0

    @property
    def after_deg(self) -> np.ndarray:
        """Shape (turns run,), how far it has turned after each turn [degrees]."""
        return self.ran.lag_deg[:, -1]

    @property
    def round_deg(self) -> np.ndarray:
        """Shape (N,), how far it turned since the turn began, in the block's directions [degrees]."""
        if not self.at:
            return np.zeros(self.ran.lag_deg.shape[1])
        return self.ran.lag_deg[self.at - 1] - (self.turned_deg - self.in_turn_deg)

    @property
    def begins_deg(self) -> float | None:
        """Direction from the block in which sliding first starts [degrees]; None in any other turn."""
        begins = self.ran.begins
        return begins.angle_deg if begins is not None and begins.turn == self.at else None


def turning_view(ran: Simulation, marks: Marks, *, turn: int) -> TurningView:
    """Return a cut as far as one turn: the last one where there are fewer.

    ran: the cut with the lens free to turn; marks: of the lens; turn: from 1, 0 before the first.
    """
    at = min(turn, ran.turns_run)
    return TurningView(ran=ran, lens=seen_lens(ran, marks, turn=at), at=at)
