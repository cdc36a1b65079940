"""One turn of one cut, as the pictures of the bench show it."""

from dataclasses import dataclass

import numpy as np

from lablib.bench.margin import CutResult


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ShownTurn:
    """One turn of a cut and where in it the lens is nearest to turning.

    cut: the whole cut; turn: counted from 1.
    point: which point round the outline has the turn's least margin; margin: that margin.
    """

    cut: CutResult
    turn: int
    point: int
    margin: float

    @property
    def torque_nmm(self) -> np.ndarray:
        """Shape (N,), what turns the lens round this turn [N mm]."""
        return self.cut.cutting.torque_nmm[self.turn - 1]

    @property
    def hold_nmm(self) -> np.ndarray:
        """Shape (N,), what holds it there [N mm]."""
        return self.cut.hold_nmm[self.turn - 1]


def worst_turn(cut: CutResult) -> ShownTurn:
    """Return the turn with the least margin of all.

    cut: of `work_cut`.
    """
    return ShownTurn(cut=cut, turn=cut.least.turn, point=cut.least.point, margin=cut.margin)
