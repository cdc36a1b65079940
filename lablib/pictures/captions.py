"""What stands beside drawings: headings, the key, the bar of ten millimetres."""

from collections.abc import Iterable, Sequence

from matplotlib.axes import Axes
from matplotlib.lines import Line2D

from lablib.pictures.kept import KeptPicture
from lablib.pictures.label import Label
from lablib.pictures.palette import INK, QUIET_INK, Look
from lablib.pictures.window import Window, shown_px

WORDS_PT, HEADING_PT = 9.0, 9.5
# From the left end of a key's sign to its words, and to the middle of the sign.
KEY_WORDS_PX, _KEY_MIDDLE_PX = 28.0, 12.0

# Where a key's sign begins and its line lies [shown px], the look it shows, and what that stands for.
KeyLine = tuple[float, float, Look, str]


def write_still(
    picture: KeptPicture, at_px: tuple[float, float], words: str, *, size: float = WORDS_PT, **style: object
) -> None:
    """Write a line that never changes, beginning at a place and level with it.

    picture: where; at_px: from its lower left corner [shown px].
    words: the line; size: of its letters [pt]; style: matplotlib's keywords for a text.
    """
    style = {"color": INK, "va": "center", "transform": shown_px(picture)} | style
    picture.figure.text(*at_px, words, fontsize=size, **style)


def moving_words(
    picture: KeptPicture, axes: Axes, at_px: tuple[float, float], *, size: float = WORDS_PT, **style: object
) -> Label:
    """Add a line that changes, beginning at a place and level with it, and return it.

    picture, axes: where; at_px: from the picture's lower left corner [shown px].
    size: of its letters [pt]; style: matplotlib's keywords for a text.
    """
    style = {"transform": shown_px(picture), "va": "center", "clip_on": False, "zorder": 9} | style
    label = picture.label(axes, fontsize=size, **style)
    label.set_position(at_px)
    return label


def add_key(picture: KeptPicture, lines: Iterable[KeyLine]) -> None:
    """Add signs with the words they stand for.

    picture: where; lines: what to show.
    """
    for x, y, look, words in lines:
        line = Line2D([x + _KEY_MIDDLE_PX] if look.mark else [x, x + 24], [y] if look.mark else [y, y])
        line.set(**(look.point() if look.mark else look.line()), transform=shown_px(picture))
        picture.figure.add_artist(line)
        write_still(picture, (x + KEY_WORDS_PX, y), words, color=QUIET_INK)


class KeyWhereDrawn:
    """A sign with the word it stands for, shown where that is drawn and nowhere else.

    picture, axes: where; line: what to show, a mark.
    """

    def __init__(self, picture: KeptPicture, axes: Axes, line: KeyLine) -> None:
        x, y, look, words = line
        place = {"transform": shown_px(picture), "clip_on": False, "zorder": 9}
        self.mark = picture.moving(axes.plot([x + _KEY_MIDDLE_PX], [y], **look.point(), **place)[0])
        self.words = moving_words(picture, axes, (x + KEY_WORDS_PX, y), color=QUIET_INK)
        self.words.set_text(words)

    def show(self, drawn: bool) -> None:
        """Show the sign, or hide it.

        drawn: whether what it stands for is drawn.
        """
        self.mark.set_visible(drawn)
        self.words.set_visible(drawn)


class ScaleBar:
    """A bar of ten millimetres below a window, which follows its scale.

    window: whose scale it shows.
    right_px, y_px: its right end and its height in the picture [shown px].
    """

    def __init__(self, window: Window, right_px: float, y_px: float) -> None:
        self.window, self._at = window, (right_px, y_px)
        style = {"color": INK, "linewidth": 1.2, "marker": "|", "markersize": 6, "clip_on": False}
        self.line = window.picture.moving(window.axes.plot([], [], **style)[0])
        write_still(window.picture, (right_px + 6.0, y_px), "10 mm")

    def update(self) -> None:
        """Draw ten millimetres at the window's scale."""
        right, below = self.window.mm(*self._at)
        self.line.set_data([right - 10.0, right], [below, below])


def step_up(tops: Sequence[float], least: float) -> float:
    """Return the smallest of several tops that is not below a value, or the largest where all are.

    tops: from the smallest to the largest; least: the value.
    """
    return next((top for top in tops if least <= top), tops[-1])


def step_down(scales: Sequence[float], fits: float) -> float:
    """Return the largest of several scales that still fits, or the smallest where none does.

    scales: from the largest to the smallest; fits: the largest that could be drawn.
    """
    return next((one for one in scales if one <= fits), scales[-1])
