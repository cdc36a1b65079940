"""The picture of a cut turn by turn shows what the cut works out: in its bars, its strips and its words."""

import numpy as np
import pytest
from cut_views import EXTREMES, view
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.pictures.cutting import CuttingPicture
from lablib.pictures.cutting_data import CRIBBING, FINISHING, ROUGHING
from lablib.pictures.cutting_strip import TOPS_MM
from lablib.pictures.torque_round import TOPS_NM

EXACT = 1e-9


@pytest.fixture(scope="module")
def picture() -> CuttingPicture:
    return CuttingPicture()


@pytest.fixture(params=EXTREMES.values(), ids=EXTREMES.keys())
def drawn(request, picture):
    """A picture of a cut, and the cut."""
    data = view(**request.param)
    picture.update(data)
    return picture, data


def boxes(collection) -> np.ndarray:
    """Left, right, low and high of every box of a collection, shape (boxes, 4)."""
    corners = np.array([path.vertices[:4] for path in collection.get_paths()]).reshape(-1, 4, 2)
    across, up = corners[..., 0], corners[..., 1]
    return np.column_stack([across.min(1), across.max(1), up.min(1), up.max(1)])


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    picture.png()
    assert require_apart_and_inside(picture) > 40


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0


def test_every_turn_is_a_bar_as_high_as_its_greatest_torque(drawn):
    picture, data = drawn
    found = np.concatenate([boxes(picture.bars.kinds[kind]) for kind in (CRIBBING, ROUGHING, FINISHING)])
    crib = () if data.cut.crib is None else data.cut.crib.cutting.torque_nmm.max(axis=1)
    expected = np.array([*crib, *data.cut.cutting.torque_nmm.max(axis=1)]) / 1000.0

    assert found[:, 3] == pytest.approx(expected)
    assert np.all(np.diff(found[:, 0]) > 0.0), "cribbing, then roughing, then finishing"
    assert np.all(found[1:, 0] > found[:-1, 1]), "bars keep apart"
    assert 0.0 <= found[0, 0] < found[-1, 1] <= 1.0


def test_bars_of_each_kind_look_different(picture):
    kinds = picture.bars.kinds.values()
    assert len({(bars.get_hatch(), tuple(bars.get_facecolor()[0])) for bars in kinds}) == 3


def test_what_is_over_the_hold_is_hatched_and_nothing_else(drawn):
    picture, data = drawn
    over = [bar for bar in data.bars if bar.turns_nm > bar.holds_nm]
    found = boxes(picture.bars.too_much)

    assert picture.bars.too_much.get_hatch()
    assert len(found) == len(over)
    assert found[:, 2] == pytest.approx([bar.holds_nm for bar in over])
    assert found[:, 3] == pytest.approx([bar.turns_nm for bar in over])


def test_the_hold_is_a_line_over_every_bar(drawn):
    picture, data = drawn
    segments = np.array(picture.bars.holds.get_segments())
    assert segments[:, 0, 1] == pytest.approx([bar.holds_nm for bar in data.bars])
    assert np.array_equal(segments[:, 0, 1], segments[:, 1, 1])


def test_the_shown_turn_is_framed_and_numbered(drawn):
    picture, data = drawn
    bars = picture.bars
    assert bars.shown.get_height() == pytest.approx(data.bars[data.at].turns_nm)
    assert bars.number.get_text() == f"turn {data.at + 1}"
    assert picture.turn.get_text() == f"Turn {data.at + 1} of {len(data.bars)}: torque all round [N m]"
    assert data.kind in picture.heading.get_text()


def test_the_greatest_of_all_turns_is_marked(drawn):
    picture, data = drawn
    ((x, y),) = picture.bars.peak.get_xydata()
    greatest = int(np.argmax([bar.turns_nm for bar in data.bars]))
    found = np.concatenate([boxes(picture.bars.kinds[kind]) for kind in (CRIBBING, ROUGHING, FINISHING)])
    assert found[greatest, 0] < x < found[greatest, 1]
    assert y > data.bars[greatest].turns_nm


def test_the_strips_show_the_turn_from_the_nose_round(drawn):
    picture, data = drawn
    order, row = data.sheet.from_nasal, data.shown.turn - 1
    cutting = data.shown.cut.cutting
    for line, values in (
        (picture.torque.turns, cutting.torque_nmm[row] / 1000.0),
        (picture.strip.thickness, cutting.thickness_mm[row]),
        (picture.strip.bite, cutting.plan.depth_mm[row]),
    ):
        _, shown = line.get_data()
        assert np.asarray(shown)[:-1] == pytest.approx(values[order][::2], abs=EXACT)
        assert shown[-1] == shown[0]


def test_both_scales_of_torque_are_one_and_do_not_follow_the_turn(drawn):
    picture, data = drawn
    ends = {picture.torque.axes.get_ylim(), picture.bars.axes.get_ylim()}
    for turn in (1, 4, 40):
        picture.update(view(**{**_values(data), "turn": turn}))
        ends |= {picture.torque.axes.get_ylim(), picture.bars.axes.get_ylim()}
    ((low, top),) = ends

    assert low == 0.0
    assert top in TOPS_NM
    assert picture.strip.axes.get_ylim()[1] in TOPS_MM


def _values(data) -> dict:
    """The extreme that a view was made of."""
    return next(values for values in EXTREMES.values() if view(**values).bars == data.bars)


def test_the_front_shows_the_rims_of_the_turn(drawn):
    picture, data = drawn
    plan, turn = data.shown.cut.cutting.plan, data.shown.turn
    front = picture.front
    chuck = front.chuck.get_xydata()[0]
    for patch, radius in ((front.before, plan.radius_mm[turn - 1]), (front.after, plan.radius_mm[turn])):
        assert np.hypot(*(patch.get_xy()[:-1] - chuck).T) == pytest.approx(radius[::3])
    assert front.words.get_text() == f"{data.shown.margin:.2f}"


def test_what_cribbing_took_is_hatched_only_after_cribbing(picture):
    for turn, hatched in ((1, False), (11, True)):
        picture.update(view(crib_mm=2.0, turn=turn))
        assert picture.front.uncut.get_visible() == hatched


def test_the_key_names_what_is_drawn(picture):
    assert {
        "cribbing",
        "roughing",
        "finishing",
        "turns",
        "holds",
        "more than holds",
        "depth of the bite",
        "thickness",
        "this turn's bite",
    } <= texts_of(picture)


def test_the_turn_slider_leaves_the_still_parts_alone(picture):
    picture.update(view())
    picture.png()
    for turn in (2, 5, 10):
        picture.update(view(turn=turn))
        assert not picture.figure.stale, turn


def test_a_picture_drawn_again_is_the_same_to_the_last_dot(drawn):
    picture, data = drawn
    first = picture.png()
    picture.update(view(crib_mm=7.0, eye="left", wheel="used", turn=3))
    assert picture.png() != first
    picture.update(data)
    assert picture.png() == first


def test_turns_that_are_to_be_guessed_are_not_drawn_and_keep_their_places(picture):
    picture.update(view(crib_mm=3.0, turn=3))
    whole = boxes(picture.bars.kinds[CRIBBING])
    picture.update(view(crib_mm=3.0, turn=3, bars="so far"))

    assert np.array_equal(boxes(picture.bars.kinds[CRIBBING]), whole[:3])
    assert not picture.bars.kinds[ROUGHING].get_visible()
    assert not picture.bars.kinds[FINISHING].get_visible()
    assert len(picture.bars.holds.get_segments()) == 3
    assert picture.bars.last.get_text() == f"{len(view(crib_mm=3.0).bars)}"
