"""The words of a picture, for tests: what they say, where they lie, how large they are."""

import itertools
from collections.abc import Iterator

from matplotlib.text import Text

from lablib.pictures.kept import DOTS_PER_INCH, KeptPicture
from lablib.pictures.label import POINTS_PER_INCH
from lablib.pictures.window import Box, overlap


def words(picture: KeptPicture) -> Iterator[tuple[str, Box]]:
    """Every text that can be seen, with the box it takes [dots]."""
    renderer = picture.figure.canvas.get_renderer()
    for text in picture.figure.findobj(Text):
        if text.get_visible() and text.get_text():
            yield text.get_text(), tuple(text.get_window_extent(renderer).extents)


def texts_of(picture: KeptPicture) -> set[str]:
    """What the texts say that can be seen."""
    return {text for text, _ in words(picture)}


def require_apart_and_inside(picture: KeptPicture, state: object = "") -> int:
    """Fail where words lie over others or leave the picture; return how many texts there are."""
    found = list(words(picture))
    for (one, box), (other, other_box) in itertools.combinations(found, 2):
        assert not overlap(box, other_box), f"{state} {one!r} lies over {other!r}"
    for text, (left, low, right, high) in found:
        assert left >= 0 <= low, f"{state} {text!r} begins outside"
        assert right <= picture.width_px, f"{state} {text!r} ends outside"
        assert high <= picture.height_px, f"{state} {text!r} reaches beyond the top"
    return len(found)


def smallest_px(picture: KeptPicture) -> float:
    """Height of the smallest letters, of texts that are empty now too [shown px]."""
    sizes = [text.get_fontsize() for text in picture.figure.findobj(Text)]
    return min(sizes) * DOTS_PER_INCH / POINTS_PER_INCH
