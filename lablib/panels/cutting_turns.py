"""The turns of a cut, and of the cribbing before it, one after the other."""

from dataclasses import dataclass

from lablib.bench.margin import CutResult
from lablib.bench.turns import TurnSummary, turns_of
from lablib.pictures.cutting_data import CRIBBING, FINISHING, ROUGHING, TurnBar
from lablib.pictures.cutting_turn import ShownTurn


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OneTurn:
    """One turn among all that a lens goes through.

    cut: the cut it belongs to, cribbing or the job's own.
    summary: what the bench says of it.
    kind: cribbing, roughing or finishing.
    """

    cut: CutResult
    summary: TurnSummary
    kind: str

    @property
    def shown(self) -> ShownTurn:
        """The turn as pictures take it."""
        turn = self.summary
        return ShownTurn(cut=self.cut, turn=turn.turn, point=turn.least.point, margin=turn.margin)

    @property
    def bar(self) -> TurnBar:
        """The turn as a bar."""
        turn = self.summary
        return TurnBar(kind=self.kind, turns_nm=turn.torque_nmm / 1000.0, holds_nm=turn.hold_nmm / 1000.0)


def all_turns(cut: CutResult) -> tuple[OneTurn, ...]:
    """Return every turn in its order, those of cribbing first.

    cut: of `work_cut`.
    """
    parts = [(cut.crib, True), (cut, False)]
    return tuple(
        OneTurn(cut=part, summary=turn, kind=_kind(turn, is_crib))
        for part, is_crib in parts
        if part is not None
        for turn in turns_of(part)
    )


def _kind(turn: TurnSummary, is_crib: bool) -> str:
    if is_crib:
        return CRIBBING
    return FINISHING if turn.finishing else ROUGHING
