"""Remedies ranked: each change alone by its margin, the bound as a line, and the cheapest sufficient set."""

import numpy as np

from lablib.pictures.captions import HEADING_PT, add_key, moving_words, write_still
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import INK, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.remedies_data import RemediesView, RemedyRow
from lablib.pictures.window import add_axes

LOW, HIGH = 0.2, 20.0
MOST_ROWS = 12
ALONE = Look(colour=OKABE_ITO["blue"], mark="o", hollow=True)
IN_THE_SET = Look(colour=OKABE_ITO["vermilion"], mark="D")
AS_IT_IS = Look(colour=INK, mark="s", hollow=True)
THE_SET = Look(colour=OKABE_ITO["vermilion"], mark="P")
BOUND = Look(colour=OKABE_ITO["bluish green"], dashes=(0, (5, 2)), width_pt=2.0)
_TICKS = (0.2, 0.5, 1, 2, 5, 10, 20)
_ROW_PX, _LEFT_PX, _RIGHT_PX, _LOW_PX, _TOP_PX = 24.0, 148.0, 524.0, 66.0, 402.0
_WORDS_PX, _CHANCE_PX, _COST_PX = 10.0, 620.0, 704.0
_KEY = (
    (10.0, 14.0, AS_IT_IS, "as it is"),
    (116.0, 14.0, ALONE, "one change"),
    (236.0, 14.0, IN_THE_SET, "one change, in the set"),
    (420.0, 14.0, THE_SET, "the set"),
    (512.0, 14.0, BOUND, "bound"),
)


class RemediesPicture(KeptPicture):
    """One lens, and what each change would do for it."""

    width_px = 720
    height_px = 442

    def build(self) -> None:
        """Add the scale, the headings, the rows and the key."""
        self.axes = axes = add_axes(self, (_LEFT_PX, _LOW_PX, _RIGHT_PX, _TOP_PX))
        axes.set_xscale("log")
        # A row lies half a step in from each end.
        set_limits(axes, x=(LOW, HIGH), y=(-0.5, (_TOP_PX - _LOW_PX) / _ROW_PX - 0.5))
        axes.set_xticks(_TICKS, [f"{tick:g}" for tick in _TICKS])
        axes.set_xticks([], minor=True)
        axes.set_yticks([])
        axes.tick_params(labelsize=9.0, color=QUIET_INK, labelcolor=INK)
        axes.spines[["top", "right", "left"]].set_visible(False)
        axes.axvline(1.0, color=INK, linewidth=1.4)
        for x, words, side in (
            (_WORDS_PX, "Change", "left"),
            (_LEFT_PX, "Margin: below 1 it turns, above it holds", "left"),
            (_CHANCE_PX, "Slip", "right"),
            (_COST_PX, "Cost", "right"),
        ):
            write_still(self, (x, _TOP_PX + 14.0), words, ha=side, size=HEADING_PT)
        add_key(self, _KEY)
        self._add_moving()

    def _add_moving(self) -> None:
        axes, moving = self.axes, self.moving
        self.bound = moving(axes.plot([], [], zorder=3, **BOUND.line())[0])
        looks = {"alone": ALONE, "in the set": IN_THE_SET, "now": AS_IT_IS, "set": THE_SET}
        self.marks = {
            name: moving(axes.plot([], [], zorder=6, clip_on=False, **look.point())[0])
            for name, look in looks.items()
        }
        self.bars = [moving(axes.plot([], [], color=QUIET_INK, linewidth=1.2)[0]) for _ in range(MOST_ROWS)]
        self.rows = [
            tuple(
                moving_words(self, axes, (x, self._y_px(row)), ha=side)
                for x, side in ((_WORDS_PX, "left"), (_CHANCE_PX, "right"), (_COST_PX, "right"))
            )
            for row in range(MOST_ROWS + 2)
        ]

    def _y_px(self, row: int) -> float:
        return _TOP_PX - (row + 0.5) * _ROW_PX

    def _y(self, row: int) -> float:
        """Height of a row in the axes' own steps, the first at the top."""
        return (_TOP_PX - _LOW_PX) / _ROW_PX - 1.0 - row

    def update(self, data: RemediesView) -> None:
        """Draw the lens as it is, each change alone, and the set.

        data: what to draw; of very many changes, the last are left out.
        """
        singles = data.singles[:MOST_ROWS]
        shown = [data.now, *singles, *([data.chosen] if data.chosen else [])]
        for at, labels in enumerate(self.rows):
            for label, text in zip(labels, _texts(shown[at]) if at < len(shown) else ("",) * 3, strict=True):
                label.set_text(text)
        for at, bar in enumerate(self.bars):
            there = at < len(singles)
            ends = [_on_scale(data.now.margin), _on_scale(singles[at].margin)] if there else []
            bar.set_data(ends, [self._y(at + 1)] * len(ends))
        self._mark("now", [(0, data.now)])
        self._mark("alone", [(at, row) for at, row in enumerate(singles, 1) if not row.is_chosen])
        self._mark("in the set", [(at, row) for at, row in enumerate(singles, 1) if row.is_chosen])
        self._mark("set", [(len(singles) + 1, data.chosen)] if data.chosen else [])
        needed = _on_scale(data.needed)
        self.bound.set_data([needed, needed], [self._y(0) + 0.5, self._y(len(shown) - 1) - 0.5])

    def _mark(self, name: str, rows: list[tuple[int, RemedyRow]]) -> None:
        margins = np.array([_on_scale(row.margin) for _, row in rows])
        self.marks[name].set_data(margins, [self._y(at) for at, _ in rows])


def _on_scale(margin: float) -> float:
    return min(max(margin, LOW), HIGH)


def _texts(row: RemedyRow) -> tuple[str, str, str]:
    beyond = " ▶" if row.margin > HIGH else " ◀" if row.margin < LOW else ""
    asked = " *" if row.is_asked else ""
    return f"{row.words}{asked}{beyond}", row.chance, row.cost
