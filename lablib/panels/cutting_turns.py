"""The turns of a cut, and of the cribbing before it, one after the other."""

import numpy as np

from lablib.bench.margin import CutResult
from lablib.pictures.cutting_data import CRIBBING, FINISHING, ROUGHING, TurnBar
from lablib.pictures.cutting_turn import ShownTurn


def shown_turns(cut: CutResult) -> tuple[ShownTurn, ...]:
    """Return every turn in its order, those of cribbing first.

    cut: of `work_cut`.
    """
    before = () if cut.crib is None else shown_turns(cut.crib)
    load = cut.bench.dynamic_factor * cut.cutting.force_n / cut.capacity_n
    return (*before, *(_shown(cut, row, load[row]) for row in range(len(load))))


def _shown(cut: CutResult, row: int, load: np.ndarray) -> ShownTurn:
    point = int(load.argmax())
    return ShownTurn(cut=cut, turn=row + 1, point=point, margin=1.0 / float(load[point]))


def bar_of(shown: ShownTurn, cut: CutResult) -> TurnBar:
    """Return a turn as a bar.

    shown: one turn; cut: the job's own, so that cribbing is told from it.
    """
    at = peak_of(shown)
    return TurnBar(
        kind=_kind(shown, cut),
        turns_nm=float(shown.torque_nmm[at]) / 1000.0,
        holds_nm=float(shown.hold_nmm[at]) / 1000.0,
    )


def peak_of(shown: ShownTurn) -> int:
    """Return which point round the outline has the greatest torque of a turn.

    shown: the turn.
    """
    return int(shown.torque_nmm.argmax())


def _kind(shown: ShownTurn, cut: CutResult) -> str:
    if shown.cut is not cut:
        return CRIBBING
    return FINISHING if cut.cutting.plan.finishing[shown.turn - 1] else ROUGHING
