"""The picture of an edge in its frame: lines all round, the cut across, the words, by what they hold."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.errors import LabError
from lablib.panels.bevel_panel import BevelPanel
from lablib.pictures.bevel import BevelPicture

PANEL = BevelPanel()
STATES = tuple(
    itertools.product((0, 90, 200, 360), ("bevel", "groove", "holes"), (0.0, 8.0, 10.0), (-8.0, -2.0, 2.0))
)
WAYS = PANEL.ranges["way"].options


@pytest.fixture(scope="module")
def picture() -> BevelPicture:
    return BevelPicture()


@pytest.mark.parametrize(("place", "mounting", "rim", "sphere"), STATES)
def test_no_words_overlap_and_all_stay_inside(picture, place, mounting, rim, sphere):
    for front, thickness in itertools.product((1.0, 9.0), (0.8, 6.0)):
        state = {"place_deg": place, "mounting": mounting, "rim_curve_d": rim, "sphere_d": sphere}
        try:
            shown = PANEL.at(**state, front_curve_d=front, thickness_mm=thickness)
        except LabError:
            assert sphere > 0.0
            continue
        picture.update(shown)
        require_apart_and_inside(picture, state)


def test_the_lines_are_the_edge_the_bevel_and_the_rim(picture):
    data = PANEL.at(rim_curve_d=8.0, way="following the front")
    picture.update(data)
    drawn = picture.round
    for line, values in ((drawn.back, data.edge_mm), (drawn.tip, data.line_mm), (drawn.rim, data.rim_mm)):
        angle, depth = line.get_data()
        assert depth == pytest.approx(np.interp(angle, data.round_deg, values))
    assert drawn.here.get_xdata() == [180, 180]


def test_the_front_is_at_the_top_and_everything_lies_between_the_ends(picture):
    for rim, sphere, way in itertools.product((0.0, 10.0), (-8.0, -1.0), WAYS):
        data = PANEL.at(rim_curve_d=rim, sphere_d=sphere, way=way)
        picture.update(data)
        deep, ahead = picture.round.axes.get_ylim()
        assert deep > 0.0 > ahead
        for values in (data.edge_mm, data.line_mm, data.rim_mm):
            assert ahead <= values.min() <= values.max() <= deep


def test_where_the_bevel_comes_too_near_a_face_it_is_drawn_over(picture):
    data = PANEL.at(rim_curve_d=8.0, sphere_d=-2.0, way="following the rim")
    picture.update(data)
    _, depth = picture.round.short.get_data()
    assert 0 < np.isfinite(depth).sum() < depth.size
    assert "least 0.46" in texts_of(picture)
    picture.update(PANEL.at())
    assert not np.isfinite(picture.round.short.get_ydata()).any()


def test_the_rim_stands_off_the_tip_by_what_is_written(picture):
    data = PANEL.at(rim_curve_d=8.0, way="following the front")
    picture.update(data)
    (tip,), (groove, *_) = picture.section.tip.get_xydata(), picture.section.rim.get_xy()
    assert tip == pytest.approx([0.0, -data.here(data.line_mm)])
    assert f"rim {abs(groove[1] - tip[1]):.2f} mm off the tip" in texts_of(picture)


def test_a_bevel_stands_out_at_its_tip_and_nowhere_else(picture):
    for way, sphere, place in itertools.product(WAYS, (-8.0, -2.0), (0, 90)):
        data = PANEL.at(rim_curve_d=8.0, way=way, sphere_d=sphere, place_deg=place)
        picture.update(data)
        tip = data.here(data.line_mm)
        across, up = picture.section.edge.get_data()
        assert (across == 0.0).sum() == 1
        assert up[across == 0.0] == pytest.approx([-tip])
        # Flanks of 45 degrees, down to the foot or out into a face.
        at = int(np.argmax(across))
        for beside, room in ((at - 1, tip), (at + 1, data.across.edge_mm - tip)):
            assert across[beside] == pytest.approx(-min(room, 0.8))


def test_only_what_holds_the_lens_is_drawn(picture):
    for mounting in ("bevel", "groove", "holes"):
        picture.update(PANEL.at(mounting=mounting))
        part = picture.section
        seen = [one.get_visible() for one in (part.rim, part.cord, part.hole)]
        assert seen == [mounting == name for name in ("bevel", "groove", "holes")]
    left, right = picture.section.hole.get_xy()[:2, 0]
    assert right - left == pytest.approx(1.4)
    assert "a hole needs 1.5 mm" in texts_of(picture)


def test_for_holes_the_lens_at_the_hole_counts_and_not_its_edge(picture):
    lens = {"sphere_d": 2.0, "front_curve_d": 6.0, "thickness_at": "thinnest edge"}
    data = PANEL.at(mounting="holes", **lens, thickness_mm=1.3)
    picture.update(data)
    assert data.edge_mm.min() < 1.5 < data.at_hole_mm.min()
    assert data.here(data.at_hole_mm) == pytest.approx(data.hole.thickness_mm, abs=1e-3)
    assert not np.isfinite(picture.round.short.get_ydata()).any()
    assert f"at the hole {data.hole.thickness_mm:.2f} mm" in texts_of(picture)
    picture.update(PANEL.at(mounting="holes", **lens, thickness_mm=1.0))
    assert 0 < np.isfinite(picture.round.short.get_ydata()).sum() < 181


def test_a_bevel_beside_the_edge_is_drawn_as_none(picture):
    lens = {"front_curve_d": 1.0, "sphere_d": -1.0, "place_deg": 0}
    data = PANEL.at(**lens, rim_curve_d=10.0, way="following the rim")
    assert data.here(data.beside_mm) < 0.0
    picture.update(data)
    assert picture.section.edge.get_xdata().max() == pytest.approx(-0.8)


def test_words_are_large_enough_and_moves_leave_the_still_parts_alone(picture):
    assert smallest_px(picture) >= 12.0
    picture.update(PANEL.at())
    first = picture.png()
    picture.update(PANEL.at(place_deg=90, way="middle of the edge"))
    assert not picture.figure.stale
    assert picture.png() != first
    picture.update(PANEL.at())
    assert picture.png() == first
