"""The colours can be told apart, and words in them can be read."""

import itertools
import string

import matplotlib
import pytest
from matplotlib.colors import to_hex, to_rgb
from matplotlib.figure import Figure

from lablib.pictures import palette

# Parts of a drawing need less contrast than words do: WCAG 2.2, criteria 1.4.3 and 1.4.11.
WORDS, PARTS = 4.5, 3.0


def contrast(first, second):
    """WCAG 2.2, definitions of "contrast ratio" and "relative luminance"."""

    def luminance(colour):
        linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in to_rgb(colour)]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    light, dark = sorted((luminance(first), luminance(second)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_contrast_agrees_with_published_pairs():
    # WCAG 2.2: black on white is 21:1; Understanding 1.4.3 names #767676 as the lightest grey that passes.
    assert contrast("#000000", "#ffffff") == pytest.approx(21, abs=0.05)
    assert contrast("#767676", "#ffffff") >= WORDS > contrast("#777777", "#ffffff")


@pytest.mark.parametrize("ink", [palette.INK, palette.BLUE_INK, palette.QUIET_INK])
def test_words_can_be_read_on_white(ink):
    assert contrast(ink, palette.PAPER) >= WORDS


def test_no_other_colour_of_the_set_may_carry_words():
    readable = {name for name, colour in palette.OKABE_ITO.items() if contrast(colour, "#ffffff") >= WORDS}

    assert readable == {"black", "blue"}


@pytest.mark.parametrize("name", [name for name, look in palette.LOOKS.items() if look.dashes or look.mark])
def test_lines_and_marks_stand_out_from_white(name):
    assert contrast(palette.LOOKS[name].colour, palette.PAPER) >= PARTS


def test_colours_are_the_published_set():
    # matplotlib 3.11 carries Okabe and Ito's set on its own account.
    if "okabe_ito" not in matplotlib.color_sequences:
        pytest.skip("this matplotlib does not carry the Okabe-Ito set")
    theirs = {to_hex(colour) for colour in matplotlib.color_sequences["okabe_ito"]}

    assert set(palette.OKABE_ITO.values()) == theirs


def test_every_line_has_its_own_dashes_or_width_and_every_point_its_own_mark():
    lines = [look for look in palette.LOOKS.values() if look.dashes]
    points = [look for look in palette.LOOKS.values() if look.mark]

    assert len(lines) >= 4
    assert len(points) >= 4
    for one, other in itertools.combinations(lines, 2):
        assert one.dashes != other.dashes or one.width_pt != other.width_pt
    assert len({look.mark for look in points}) == len(points)


@pytest.mark.parametrize("look", palette.LOOKS.values(), ids=palette.LOOKS.keys())
def test_matplotlib_takes_every_look(look):
    axes = Figure().add_subplot()

    assert set(look.colour[1:]) <= set(string.hexdigits)
    if look.dashes:
        assert axes.plot([0, 1], [0, 1], **look.line())[0].get_linewidth() == look.width_pt
    elif look.mark:
        assert axes.plot([0], [0], **look.point())[0].get_marker() == look.mark
    else:
        assert axes.fill([0, 1, 1], [0, 0, 1], **look.fill())[0].get_alpha() == look.opacity < 1
