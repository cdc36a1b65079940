"""A label is drawn where matplotlib would draw the same text."""

import numpy as np
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.text import Text

from lablib.pictures.label import Label


def dark(kind, **style):
    """The rows and columns that hold ink when one text is drawn on white."""
    figure = Figure(figsize=(3, 2), dpi=100)
    canvas = FigureCanvasAgg(figure)
    axes = figure.add_axes([0, 0, 1, 1])
    axes.set_axis_off()
    axes.add_artist(kind(**style))
    canvas.draw()
    ink = np.asarray(canvas.buffer_rgba())[..., :3].min(axis=2) < 128
    rows, columns = np.nonzero(ink)
    return (rows.min(), rows.max(), columns.min(), columns.max()) if rows.size else None


@pytest.mark.parametrize("across", ["left", "center", "right"])
@pytest.mark.parametrize("up", ["baseline", "bottom", "center", "top"])
def test_label_stands_where_the_same_text_would(across, up):
    style = {"x": 0.5, "y": 0.5, "text": "5.43 mm gy", "fontsize": 10, "ha": across, "va": up}

    # 3 dots: matplotlib rounds each glyph on its own and measures height by another letter pair.
    assert dark(Label, **style) == pytest.approx(dark(Text, **style), abs=3)


@pytest.mark.parametrize("style", [{"text": ""}, {"text": "out of sight", "visible": False}])
def test_an_empty_or_hidden_label_leaves_no_ink(style):
    assert dark(Label, x=0.5, y=0.5, **style) is None


def test_label_is_a_text_that_can_be_asked():
    label = Label(x=1, y=2, text="axis 180°")

    assert (label.get_text(), label.get_position()) == ("axis 180°", (1, 2))


def test_colour_is_the_one_asked_for():
    figure = Figure(figsize=(3, 2), dpi=100)
    canvas = FigureCanvasAgg(figure)
    figure.add_artist(Label(x=0.1, y=0.3, text="■", fontsize=60, color="#0072b2"))
    canvas.draw()
    colours, counts = np.unique(
        np.asarray(canvas.buffer_rgba())[..., :3].reshape(-1, 3), axis=0, return_counts=True
    )
    inked = [tuple(colour) for colour in colours[np.argsort(counts)] if colour.min() < 255]

    assert inked[-1] == (0x00, 0x72, 0xB2)
