"""A kept picture redraws only what moves, and still shows the same as drawing everything anew."""

import io

import numpy as np
import pytest
from PIL import Image

from lablib.errors import LabError
from lablib.pictures.kept import KeptPicture, encode_png, set_limits


class Wave(KeptPicture):
    """A line, a fill, a point, an arrowed note and a label that all move."""

    width_px, height_px = 320, 240
    still_drawn = 0

    def build(self):
        self.axes = self.figure.add_axes([0.15, 0.15, 0.8, 0.7])
        self.axes.set_title("still")
        set_limits(self.axes, x=(0.0, 10.0), y=(-2.0, 2.0))
        self.line = self.moving(self.axes.plot([], [], color="black", zorder=3)[0])
        self.fill = self.moving(self.axes.fill([0, 1, 1], [0, 0, 1], color="red", zorder=2)[0])
        self.point = self.moving(self.axes.plot([], [], "o", color="blue", zorder=4)[0])
        self.note = self.label(self.axes, fontsize=9, zorder=5)
        draw = self._canvas.draw
        self._canvas.draw = lambda: (setattr(self, "still_drawn", self.still_drawn + 1), draw())

    def update(self, data):
        x = np.linspace(0, 10, 50)
        self.line.set_data(x, np.sin(x + data))
        self.fill.set_xy([(data, -1), (data + 2, -1), (data + 2, 1), (data, 1)])
        self.point.set_data([data], [0])
        self.note.set(text=f"at {data:.1f}", position=(data, 1.5))


def drawn(picture):
    return np.asarray(Image.open(io.BytesIO(picture.png())))


def after(data, **given):
    picture = Wave(**given)
    picture.update(data)
    return picture


def test_png_has_the_fixed_size_and_the_same_dots_as_the_canvas():
    picture = after(2)
    image = Image.open(io.BytesIO(picture.png()))

    assert (image.format, image.mode, image.size) == ("PNG", "RGB", (320, 240))
    assert np.array_equal(np.asarray(image), np.asarray(picture._canvas.buffer_rgba())[..., :3])


@pytest.mark.parametrize("dots_per_pixel", [1, 1.5, 2])
def test_size_in_dots_follows_dots_per_pixel(dots_per_pixel):
    picture = after(2, dots_per_pixel=dots_per_pixel)

    assert picture.size_dots == (320 * dots_per_pixel, 240 * dots_per_pixel)
    assert Image.open(io.BytesIO(picture.png())).size == picture.size_dots


@pytest.mark.parametrize("dots_per_pixel", [0.5, 4, float("nan")])
def test_dots_per_pixel_out_of_range_is_said(dots_per_pixel):
    with pytest.raises(LabError, match=r"dots per pixel .* is out of range: give a number from 1 to 3"):
        Wave(dots_per_pixel=dots_per_pixel)


def test_moving_redraws_leave_the_still_parts_alone():
    picture = after(0)
    for data in (0, 1, 5, 8, 0):
        picture.update(data)
        picture.png()

    assert picture.still_drawn == 1


def test_nothing_of_the_last_redraw_is_left_behind():
    picture = after(0)
    first = picture.png()
    picture.update(6)
    assert picture.png() != first
    picture.update(0)

    assert picture.png() == first


CHANGES = {
    "limits": lambda axes: set_limits(axes, x=(0.0, 20.0), y=(-2.0, 2.0)),
    "upper limit alone": lambda axes: set_limits(axes, x=(0.0, 10.0), y=(-2.0, 3.0)),
    "title": lambda axes: axes.set_title("another"),
    "axis label": lambda axes: axes.set_xlabel("across"),
    "ticks": lambda axes: axes.set_xticks([0, 3, 6]),
    "grid": lambda axes: axes.grid(True),
}


@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES.keys())
def test_a_changed_still_part_shows_at_once(change):
    picture = after(2)
    before = picture.png()
    change(picture.axes)
    changed = picture.png()
    fresh = after(2)
    change(fresh.axes)

    assert changed != before
    assert changed == fresh.png()
    assert picture.still_drawn == 2


def test_equal_limits_do_not_cost_a_whole_drawing():
    picture = after(2)
    picture.png()
    set_limits(picture.axes, x=(0.0, 10.0), y=(-2.0, 2.0))
    picture.png()

    assert picture.still_drawn == 1


def test_zorder_counts_among_moving_parts():
    picture = after(2)
    picture.fill.set_zorder(9)
    column, row = picture.axes.transData.transform((2.0, 0.0))
    covered = drawn(picture)[240 - round(row), round(column) + 2]
    picture.fill.set_zorder(1)
    bare = drawn(picture)[240 - round(row), round(column) + 2]

    assert tuple(covered) == (255, 0, 0)
    assert tuple(bare) == (0, 0, 255)


def test_moving_parts_lie_above_a_spine_until_it_moves_too():
    picture = after(-1)
    column, row = picture.axes.transData.transform((0.0, 0.5))
    spot = (240 - round(row), round(column))
    picture.fill.set_clip_on(False)
    assert tuple(drawn(picture)[spot]) == (255, 0, 0)
    picture.moving(picture.axes.spines["left"]).set_zorder(9)

    assert max(drawn(picture)[spot]) < 200


def test_png_file_is_read_back_dot_for_dot():
    dots = np.random.default_rng(1).integers(0, 256, (7, 5, 4), np.uint8)
    dots[..., 3] = 255

    image = Image.open(io.BytesIO(encode_png(memoryview(dots), (5, 7))))
    image.verify()
    assert np.array_equal(
        np.asarray(Image.open(io.BytesIO(encode_png(memoryview(dots), (5, 7))))), dots[..., :3]
    )
