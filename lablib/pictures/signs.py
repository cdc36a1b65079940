"""Four lenses side by side as they stand on their blocks after the cut: which sign each shows, if any."""

from textwrap import wrap

from matplotlib.patches import Rectangle

from lablib.bench.signs import NONE
from lablib.pictures.captions import HEADING_PT, KEY_WORDS_PX, ScaleBar, add_key, moving_words, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import BLOCK, INK, QUIET_INK
from lablib.pictures.signs_data import SignedLens, SignsView
from lablib.pictures.turned_lens import (
    BLOCK_LINE,
    LENS_LINE,
    ORDERED,
    TurnedLens,
    missing_style,
    patch_style,
)
from lablib.pictures.turned_lens_data import written_turn
from lablib.pictures.window import Box, Window, add_axes

_ACROSS_PX, _UP_PX, _KEY_PX, _GAP_PX = 360.0, 291.0, 58.0, 8.0
_HEAD_PX, _LINE_PX, _WORDS_LINES, _WORDS_WIDE = 12.0, 16.0, 2, 54
# A finished lens, and a blank before its cut, which is drawn whole [shown px/mm].
PX_PER_MM, UNCUT_PX_PER_MM = 5.2, 2.9
_KEY_ROWS_PX = (36.0, 14.0)


class SignsPicture(KeptPicture):
    """Two rows of two lenses, all at one scale: before the cut at a smaller one."""

    width_px = 720
    height_px = 640

    def build(self) -> None:
        """Add four lenses and the key."""
        self.lenses = [_Place(self, number) for number in range(4)]
        add_key(self, _KEY)
        for (x, y), style, words in _AREAS:
            axes = add_axes(self, (x, y - 7.0, x + 24.0, y + 7.0))
            axes.set_axis_off()
            axes.add_patch(Rectangle((0, 0), 1, 1, **style))
            write_still(self, (x + KEY_WORDS_PX, y), words, color=QUIET_INK)
        self.scale = ScaleBar(self.lenses[0].window, 664.0, _KEY_ROWS_PX[1])

    def update(self, data: SignsView) -> None:
        """Draw four lenses.

        data: what to draw.
        """
        for shown, lens in zip(self.lenses, data.lenses, strict=True):
            shown.update(lens, is_cut=data.is_cut)
        self.scale.update()


def _box(number: int) -> Box:
    """The rectangle of a lens with its words, in reading order."""
    down, across = divmod(number, 2)
    left, bottom = across * _ACROSS_PX, _KEY_PX + (1 - down) * _UP_PX
    return (left + _GAP_PX, bottom, left + _ACROSS_PX - _GAP_PX, bottom + _UP_PX)


class _Place:
    """One lens with its words above and below."""

    def __init__(self, picture: KeptPicture, number: int) -> None:
        left, bottom, right, top = _box(number)
        inner = (left, bottom + _LINE_PX + 6.0, right, top - (1 + _WORDS_LINES) * _LINE_PX - 2.0)
        self.window = Window(picture, inner, px_per_mm=PX_PER_MM)
        self.lens = TurnedLens(self.window)
        axes, head = self.window.axes, top - _HEAD_PX
        self.sign = moving_words(picture, axes, (left, head), size=HEADING_PT, color=INK)
        self.margin = moving_words(picture, axes, (right, head), size=HEADING_PT, color=INK, ha="right")
        self.words = [
            moving_words(picture, axes, (left, head - _LINE_PX * line), color=QUIET_INK)
            for line in range(1, 1 + _WORDS_LINES)
        ]
        self.figures = moving_words(picture, axes, (left, bottom + _HEAD_PX), color=INK)

    def update(self, lens: SignedLens, *, is_cut: bool) -> None:
        self.window.set_scale(PX_PER_MM if is_cut else UNCUT_PX_PER_MM)
        self.lens.update(lens.seen)
        written = wrap(lens.words, _WORDS_WIDE) + [""] * _WORDS_LINES
        for label, words in zip(self.words, written, strict=False):
            label.set_text(words)
        shown = _after(lens) if is_cut else (f"{lens.number}  not cut yet", "", "")
        for label, words in zip((self.sign, self.margin, self.figures), shown, strict=True):
            label.set_text(words)


def _after(lens: SignedLens) -> tuple[str, str, str]:
    """Sign, margin and figures of a lens that was cut."""
    turned, short = written_turn(lens.turned_deg), lens.seen.short_mm
    return (
        f"{lens.number}  {'no sign' if lens.sign == NONE else lens.sign}",
        f"margin {lens.margin:.2f}, {'holds' if lens.margin > 1.0 else 'turns'}",
        f"turned {turned},  short {short:.2f} mm,  warmed {lens.rise_k:.0f} K",
    )


_FIRST_PX, _SECOND_PX, _THIRD_PX = 10.0, 216.0, 446.0
_KEY = (
    (_FIRST_PX, _KEY_ROWS_PX[0], ORDERED, "outline as ordered"),
    (_SECOND_PX, _KEY_ROWS_PX[0], LENS_LINE, "line marked on the lens"),
    (_SECOND_PX, _KEY_ROWS_PX[1], BLOCK_LINE, "line of the block"),
)
_AREAS = (
    ((_FIRST_PX, _KEY_ROWS_PX[1]), missing_style(), "missing of it"),
    ((_THIRD_PX, _KEY_ROWS_PX[0]), {"facecolor": BLOCK.colour, "alpha": BLOCK.opacity}, "block"),
    ((_THIRD_PX, _KEY_ROWS_PX[1]), patch_style(), "burnt patch"),
)
