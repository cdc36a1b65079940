"""The panel of four lenses side by side: the signs of slip, and what one change does to each."""

from collections.abc import Sequence

from lablib.job.spoiled import AS_IT_WAS, changes, does_something, side_by_side, spoiled, spoiled_job
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice
from lablib.pictures.signs import SignsPicture
from lablib.pictures.signs_data import SignedLens, SignsView
from lablib.pictures.turned_lens_data import marks_of, seen_lens, written_turn

# Before the cut nothing is given away: what they will show is to be foretold.
NOT_CUT, NOTHING = "not cut yet", "nothing"
# The list offers, as words, the names of the changes that make a difference to any of the four.
_CHANGES = {NOT_CUT: AS_IT_WAS, NOTHING: AS_IT_WAS} | {
    change.replace("-", " "): change
    for change in changes()
    if any(does_something(name, change) for name in side_by_side())
}


class SignsPanel(Panel):
    """Four practice lenses after their cut, and the same with one thing done otherwise."""

    draws = SignsPicture
    note = (
        "Invented lenses, simulated. Which lens turns, and what it then shows, can be learned from them; how "
        "many degrees it turns cannot be foretold. Whole turns leave no mark: the line shows only where a "
        "lens came to rest. A crib is done on another hold."
    )
    controls = (Choice(name="change", label="Change one thing", options=tuple(_CHANGES), value=NOT_CUT),)

    def compute(self, values: Values) -> SignsView:
        """Return the four lenses, each cut with the change.

        values: by the control's name.
        """
        change, is_cut = _CHANGES[values["change"]], values["change"] != NOT_CUT
        after_turn = None if is_cut else 0
        return SignsView(
            lenses=tuple(
                _signed(number, name, change, after_turn) for number, name in enumerate(side_by_side(), 1)
            ),
            change="" if change == AS_IT_WAS else changes()[change].words,
            is_cut=is_cut,
        )

    def numbers(self, data: SignsView) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: from `compute`.
        """
        rows = [row for lens in data.lenses for row in _rows(lens)]
        return rows if data.is_cut else [(label, NOT_KNOWN, "") for label, _, _ in rows]

    def sentence(self, data: SignsView) -> str:
        """Return what each of the four shows.

        data: from `compute`.
        """
        if not data.is_cut:
            jobs = "; ".join(f"lens {lens.number} {lens.words}" for lens in data.lenses)
            return f"Four lenses on their blocks, each line level: {jobs}."
        start = f"With {data.change}" if data.change else "As they were cut"
        told = (_told(lens, as_it_was=bool(data.change) and not lens.is_changed) for lens in data.lenses)
        return f"{start}: {'; '.join(told)}."


def _signed(number: int, name: str, change: str, after_turn: int | None) -> SignedLens:
    sheet = spoiled(name, change)
    ran = sheet.simulation
    return SignedLens(
        number=number,
        words=spoiled_job(name).words,
        is_changed=change != AS_IT_WAS and does_something(name, change),
        margin=ran.result.margin,
        sign=ran.sign,
        signs=ran.signs,
        seen=seen_lens(ran, marks_of(sheet), turn=after_turn),
        turned_deg=ran.slip_deg,
        rise_k=ran.rise_k,
    )


def _rows(lens: SignedLens) -> list[tuple[str, str, str]]:
    start = f"Lens {lens.number},"
    return [
        (f"{start} margin", f"{lens.margin:.2f}", "holds" if lens.margin > 1.0 else "turns"),
        (f"{start} turned by", written_turn(lens.turned_deg), ""),
        (f"{start} short by", f"{lens.seen.short_mm:.2f}", "mm"),
        (f"{start} warmed by", f"{lens.rise_k:.1f}", "K"),
    ]


def _told(lens: SignedLens, *, as_it_was: bool) -> str:
    """The margin of a lens and all that it shows, or that the change makes no difference to it."""
    shown = "as it was" if as_it_was else " and ".join(lens.signs) or "no sign"
    return f"lens {lens.number} {shown}, margin {lens.margin:.2f}"
