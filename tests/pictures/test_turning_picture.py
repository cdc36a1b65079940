"""The picture of a lens that turns on its block shows what the simulation works out, turn by turn."""

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of
from turned_lenses import BUMPED, BURNT, HOLDS, LINE_OFF, line_of, points_of

from lablib.job.spoiled import spoiled
from lablib.pictures.turned_lens_data import DESIGNS, usual_marks, written_turn
from lablib.pictures.turning import SCALES_PX_PER_MM, TurningPicture
from lablib.pictures.turning_bars import TOPS_DEG
from lablib.pictures.turning_data import AGAIN, BEFORE, FINISHING, ROUGHING, TurningView, turning_view

# A lens and a turn, each straining the picture in its own way; the last one stands for 99.
VIEWS = {
    "before": (LINE_OFF, 0),
    "sliding begins": (LINE_OFF, 1),
    "half cut": (LINE_OFF, 5),
    "finished": (LINE_OFF, 99),
    "bumped": (BUMPED, 2),
    "bumped, over": (BUMPED, 99),
    "turning round": (BURNT, 3),
    "burnt": (BURNT, 99),
    "holds": (HOLDS, 99),
}


def view(name: str, turn: int, design: str = DESIGNS[0]) -> TurningView:
    ran = spoiled(name).simulation
    return turning_view(ran, usual_marks(design, centre=2.0 + 0j), turn=turn)


@pytest.fixture(scope="module")
def picture() -> TurningPicture:
    return TurningPicture()


@pytest.fixture(params=VIEWS.values(), ids=VIEWS.keys())
def drawn(request, picture):
    """A picture of a turn, and the turn."""
    data = view(*request.param)
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
    assert require_apart_and_inside(picture) > 25


@pytest.mark.parametrize("design", DESIGNS)
def test_words_keep_apart_with_every_kind_of_marks(design, picture):
    for name, turn in VIEWS.values():
        picture.update(view(name, turn, design))
        picture.png()
        require_apart_and_inside(picture, (name, turn))


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0


def test_the_lens_lies_inside_its_window_at_one_of_few_scales(drawn):
    picture, data = drawn
    left, low, right, high = picture.front.box_px
    places = [picture.front.px(point.real, point.imag) for point in points_of(picture.lens.rim)]

    assert picture.front.px_per_mm in SCALES_PX_PER_MM
    assert all(left < x < right and low < y < high for x, y in places)
    assert data.ran.rim_mm[0].max() * SCALES_PX_PER_MM[-1] < (high - low) / 2.0


def test_the_scale_does_not_change_from_turn_to_turn(picture):
    scales = set()
    for turn in range(12):
        picture.update(view(LINE_OFF, turn))
        scales.add((picture.front.px_per_mm, picture.bars.axes.get_ylim(), picture.round.axes.get_ylim()))
    assert len(scales) == 1


def test_every_turn_so_far_is_a_bar_up_to_what_the_lens_has_turned(drawn):
    picture, data = drawn
    earlier, turned = boxes(picture.bars.earlier), boxes(picture.bars.turned)
    after = data.ran.lag_deg[: data.at, -1]

    assert len(earlier) == len(turned) == data.at
    assert turned[:, 3] == pytest.approx(after)
    assert turned[:, 2] == pytest.approx(earlier[:, 3])
    assert turned[:, 3] - turned[:, 2] == pytest.approx(data.ran.slip_by_turn_deg[: data.at], abs=1e-9)
    assert np.all(turned[1:, 0] > turned[:-1, 1]), "bars keep apart"
    assert picture.bars.axes.get_ylim()[1] in TOPS_DEG
    assert picture.bars.axes.get_ylim()[1] >= data.ran.slip_deg


def test_bars_differ_in_more_than_colour(picture):
    assert picture.bars.turned.get_hatch()
    assert not picture.bars.earlier.get_hatch()


def test_the_turn_that_is_shown_is_framed_and_numbered(drawn):
    picture, data = drawn
    bars = picture.bars
    assert bars.shown.get_visible() == bars.number.get_visible() == (data.at > 0)
    if data.at:
        assert bars.number.get_text() == f"turn {data.at}"
        assert bars.shown.get_height() == pytest.approx(data.ran.lag_deg[data.at - 1, -1])


def test_one_turn_is_drawn_all_round_from_nothing_to_what_it_turned(drawn):
    picture, data = drawn
    x, y = picture.round.line.get_xydata().T
    assert (x[0], x[-1]) == (0.0, 360.0)
    assert y[0] == 0.0
    assert y[-1] == pytest.approx(data.in_turn_deg, abs=1e-9)
    assert np.all(np.diff(y) >= -1e-9)


def test_where_sliding_begins_is_marked_in_that_turn_on_the_rim_it_met_and_nowhere_else(drawn):
    picture, data = drawn
    begins = data.ran.begins
    here = begins is not None and begins.turn == data.at
    assert (len(picture.begins.get_xdata()), len(picture.round.begins.get_xdata())) == (here, here)
    if here:
        (place,) = line_of(picture.begins)
        assert np.degrees(np.angle(place)) % 360.0 == pytest.approx(begins.angle_deg)
        assert abs(place) == pytest.approx(data.ran.rim_mm[begins.turn - 1][begins.point], abs=0.05)
        assert picture.round.begins.get_xdata() == pytest.approx([begins.angle_deg])


def test_headings_tell_the_turn_and_the_sign_only_once_the_cut_is_over(drawn):
    picture, data = drawn
    runs = data.ran.turns_run
    heading, result = picture.heading.get_text(), picture.result.get_text()

    assert data.kind in heading
    assert (f"turn {data.at} of {runs}" in heading) == (data.at > 0)
    assert f"turned {written_turn(data.turned_deg)}" in result
    sign = "no sign" if data.ran.sign == "none" else data.ran.sign
    assert (sign in result) == (data.at == runs)
    assert ("so far" in result) == (data.at < runs)


def test_turns_are_named_by_their_kind():
    ran = spoiled(LINE_OFF).simulation
    kinds = [view(LINE_OFF, turn).kind for turn in range(ran.turns_run + 1)]

    assert kinds[0] == BEFORE
    assert kinds[1] == ROUGHING
    assert kinds[ran.planned_turns] == FINISHING
    assert kinds[-1] == AGAIN
    assert kinds == sorted(kinds, key=(BEFORE, ROUGHING, FINISHING, AGAIN).index)


def test_turns_add_up_to_what_the_lens_has_turned():
    ran = spoiled(BURNT).simulation
    views = [view(BURNT, turn) for turn in range(ran.turns_run + 1)]

    assert np.cumsum([one.in_turn_deg for one in views]) == pytest.approx([one.turned_deg for one in views])
    assert views[-1].turned_deg == pytest.approx(ran.slip_deg)
    assert [one.is_over for one in views] == [False] * ran.turns_run + [True]


def test_a_turn_beyond_the_last_shows_the_last():
    assert view(LINE_OFF, 60).at == spoiled(LINE_OFF).simulation.turns_run


def test_the_key_explains_every_sign_of_the_drawing(picture):
    assert {
        "rim as cut so far",
        "ordered outline",
        "block",
        "the block's line, level",
        "the lens's own line",
        "chuck axis",
        "sliding begins here",
        "cut off in this turn",
        "short of the outline",
        "burnt patch",
        "turned in that turn",
    } <= texts_of(picture)
