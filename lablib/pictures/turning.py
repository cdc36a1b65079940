"""A lens that turns on its block, turn by turn: the lens from the front, and how far each turn turned it."""

import numpy as np
from matplotlib.patches import Rectangle

from lablib.bench.signs import NONE
from lablib.pictures.captions import (
    HEADING_PT,
    KEY_WORDS_PX,
    ScaleBar,
    add_key,
    moving_words,
    step_down,
    write_still,
)
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import BLOCK, CHUCK_AXIS, INK, OUTLINE, QUIET_INK
from lablib.pictures.turned_lens import (
    BLOCK_LINE,
    LENS_LINE,
    ORDERED,
    TurnedLens,
    bite_style,
    missing_style,
    patch_style,
)
from lablib.pictures.turned_lens_data import written_turn
from lablib.pictures.turning_bars import BEGINS, LagBars, LagRound, turned_style
from lablib.pictures.turning_data import TurningView
from lablib.pictures.window import Box, Window, shown_px

# Few scales, so that the drawing hardly ever changes its size under a slider [shown px/mm].
SCALES_PX_PER_MM = (6.6, 5.8, 5.2, 4.7, 4.2)
_FRONT_PX: Box = (4.0, 196.0, 440.0, 614.0)
_BARS_PX: Box = (500.0, 226.0, 706.0, 366.0)
_ROUND_PX: Box = (44.0, 40.0, 700.0, 140.0)
_KEY_PX, _ROW_PX, _MARGIN_PX = 456.0, 18, 6.0


class TurningPicture(KeptPicture):
    """One lens on its block after one turn of its cut, and how it came to stand so."""

    width_px = 720
    height_px = 640

    def build(self) -> None:
        """Add the drawings, their headings and the key."""
        self.front = Window(self, _FRONT_PX)
        self.lens = TurnedLens(self.front)
        axes = self.front.axes
        self.begins = self.moving(axes.plot([], [], zorder=14, **BEGINS.point())[0])
        self.bars, self.round = LagBars(self, _BARS_PX), LagRound(self, _ROUND_PX)
        self.heading = moving_words(self, axes, (10, 628), size=HEADING_PT, color=INK)
        self.result = moving_words(self, axes, (712, 628), size=HEADING_PT, color=INK, ha="right")
        self.turn = moving_words(self, axes, (10, 160), size=HEADING_PT, color=INK)
        write_still(self, (_KEY_PX, 384), "Turned after each turn, in all [degrees]", size=HEADING_PT)
        write_still(self, (10, 186), "temporal", color=QUIET_INK)
        write_still(self, (436, 186), "nasal", color=QUIET_INK, ha="right")
        self.scale = ScaleBar(self.front, 240, 186)
        add_key(self, _KEY)
        for x, y, style, words in _PATCHES:
            self.figure.add_artist(Rectangle((x, y - 6), 24, 12, transform=shown_px(self), **style))
            write_still(self, (x + KEY_WORDS_PX, y), words, color=QUIET_INK)

    def update(self, data: TurningView) -> None:
        """Draw a lens after one turn.

        data: what to draw.
        """
        self.front.set_scale(step_down(SCALES_PX_PER_MM, _fits(data)))
        self.lens.update(data.lens)
        self._mark(data)
        self.bars.update(data)
        self.round.update(data)
        self.scale.update()
        self.heading.set_text(_heading(data))
        self.result.set_text(_result(data))
        self.turn.set_text(
            f"In turn {data.at}: how far the lens turned while the wheel went round it [degrees]"
            if data.at
            else "No turn yet: the wheel has not touched the lens"
        )

    def _mark(self, data: TurningView) -> None:
        """Mark where on the rim sliding first starts, in the turn in which it does."""
        if data.begins_deg is None:
            self.begins.set_data([], [])
            return
        start = data.lens.before
        turned = data.begins_deg - data.turned_deg + data.in_turn_deg
        way = np.exp(1j * np.radians(data.begins_deg))
        radius = float(np.abs(start[round(turned / 360.0 * start.size) % start.size]))
        self.begins.set_data([(radius * way).real], [(radius * way).imag])


def _fits(data: TurningView) -> float:
    """The largest scale at which the lens can be drawn whole before its cut [shown px/mm]."""
    left, bottom, right, top = _FRONT_PX
    room = min(right - left, top - bottom) / 2.0 - _MARGIN_PX
    return room / float(data.ran.rim_mm[0].max())


def _heading(data: TurningView) -> str:
    if not data.at:
        return f"Right lens, {data.kind} of {data.ran.planned_turns} turns"
    return f"Right lens after turn {data.at} of {data.ran.turns_run}: {data.kind}"


def _result(data: TurningView) -> str:
    turned = f"turned {written_turn(data.turned_deg)}"
    if not data.is_over:
        return f"{turned} so far"
    return f"{turned} in all: {data.ran.sign if data.ran.sign != NONE else 'no sign'}"


_KEY = tuple(
    (_KEY_PX, 600 - _ROW_PX * row, look, words)
    for row, (look, words) in enumerate(
        (
            (OUTLINE, "rim as cut so far"),
            (ORDERED, "ordered outline"),
            (BLOCK, "block"),
            (BLOCK_LINE, "the block's line, level"),
            (LENS_LINE, "the lens's own line"),
            (CHUCK_AXIS, "chuck axis"),
            (BEGINS, "sliding begins here"),
        )
    )
)
_PATCHES = tuple(
    (_KEY_PX, 600 - _ROW_PX * row, style, words)
    for row, (style, words) in enumerate(
        (
            (bite_style(), "cut off in this turn"),
            (missing_style(), "short of the outline"),
            (patch_style(), "burnt patch"),
            (turned_style(), "turned in that turn"),
        ),
        start=len(_KEY),
    )
)
