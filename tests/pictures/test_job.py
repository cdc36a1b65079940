"""The job picture shows what the cut works out: in its lines, its bars, its marks and its words."""

from dataclasses import replace

import numpy as np
import pytest
from job_sheets import EXTREMES, job
from matplotlib.text import Text
from picture_words import require_apart_and_inside, smallest_px, texts_of, words

from lablib.bench.geometry import directions
from lablib.job.bench_order import Blocking
from lablib.job.eye_sheet import work_eye
from lablib.job.report import where
from lablib.pictures.job import SCALES_PX_PER_MM, JobPicture
from lablib.pictures.joint_stack import FULL_NMM
from lablib.pictures.label import Label
from lablib.pictures.margin_band import HIGH, LOW
from lablib.pictures.torque_round import TOPS_NM

# Line ends are read back from matplotlib; nothing is rounded on the way there.
EXACT = 1e-9


@pytest.fixture(scope="module")
def picture() -> JobPicture:
    return JobPicture()


@pytest.fixture(params=EXTREMES.values(), ids=EXTREMES.keys())
def drawn(request, picture):
    """A picture of a job, and the job."""
    sheet = job(**request.param)
    picture.update(sheet)
    return picture, sheet


def unrolled(sheet, torque_nmm: np.ndarray) -> dict[str, float]:
    """A torque at the nose, the top, the temple and the bottom [N m]."""
    at = {"nasal": sheet.nasal_deg, "top": 90.0, "temporal": 180.0 - sheet.nasal_deg, "bottom": 270.0}
    per_degree = torque_nmm.size / 360.0
    return {
        name: float(torque_nmm[round(deg * per_degree) % torque_nmm.size]) / 1000 for name, deg in at.items()
    }


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 50


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0


def test_the_curves_are_the_torques_of_the_worst_turn(drawn):
    picture, sheet = drawn
    cut = sheet.cut
    assert (
        sheet.cut.least.turn
        == 1
        + np.unravel_index(
            (cut.hold_nmm / np.maximum(cut.cutting.torque_nmm, EXACT)).argmin(), cut.hold_nmm.shape
        )[0]
    )
    for line, torque in (
        (picture.torque.turns, cut.worst_torque_nmm),
        (picture.torque.holds, cut.worst_hold_nmm),
    ):
        angle, drawn_nm = (np.asarray(part) for part in line.get_data())
        expected = unrolled(sheet, torque)
        for name, turned in (("nasal", 0.0), ("top", 90.0), ("temporal", 180.0), ("bottom", 270.0)):
            assert drawn_nm[np.flatnonzero(angle == turned)[0]] == pytest.approx(expected[name], abs=EXACT)
        assert (angle[0], angle[-1]) == (0.0, 360.0)
        assert drawn_nm[0] == drawn_nm[-1]
        # Every other point is drawn.
        assert drawn_nm.max() == pytest.approx(torque.max() / 1000, abs=0.05 * torque.max() / 1000)
    ticks = [label.get_text() for label in picture.torque.axes.get_xticklabels()]
    assert ticks[:5] == ["nasal", "top", "temporal", "bottom", "nasal"]


def test_where_turning_exceeds_holding_is_hatched_and_nowhere_else(drawn):
    picture, sheet = drawn
    patch, cut = picture.torque.too_much, sheet.cut
    more = cut.worst_torque_nmm - cut.worst_hold_nmm
    assert patch.get_visible() == bool((more > 0.0).any()) == (cut.margin < 1.0)
    assert patch.get_hatch()
    ring = patch.get_xy()
    half = sheet.from_nasal.size + 1
    upper, lower = ring[:half], ring[half : 2 * half][::-1]
    height = (upper - lower)[:-1, 1]

    assert np.array_equal(upper[:, 0], lower[:, 0])
    assert height == pytest.approx(np.maximum(more[sheet.from_nasal], 0.0) / 1000, abs=EXACT)


def test_greatest_torque_and_least_margin_are_marked_with_their_numbers(drawn):
    picture, sheet = drawn
    torque, cut = picture.torque, sheet.cut
    ((peak_deg, peak_nm),) = torque.peak.get_xydata()
    ((least_deg, _),) = torque.least.get_xydata()
    here = cut.worst_torque_nmm[sheet.from_nasal] / 1000

    assert torque.peak_words.get_text() == f"{here.max():.2f}"
    assert here[round(peak_deg * 2)] == here.max()
    assert peak_nm > here.max(), "the mark stands above the line"
    assert torque.least_words.get_text() == f"margin {cut.margin:.2f}"
    assert sheet.from_nasal[round(least_deg * 2)] == cut.least.point
    assert torque.peak.get_marker() != torque.least.get_marker()
    _, foot_nm = torque.least_line.get_xydata()[-1]
    at = cut.least.index
    assert foot_nm * 1000 == pytest.approx(min(cut.cutting.torque_nmm[at], cut.hold_nmm[at]), abs=1e-6)


def test_marks_of_the_torque_never_lie_over_each_other(drawn):
    torque = drawn[0].torque
    (x0, y0), (x1, y1) = (torque._px(*mark.get_xydata()[0]) for mark in (torque.peak, torque.least))

    assert abs(x0 - x1) > 10 or abs(y0 - y1) > 10


def test_the_torque_fits_under_one_of_few_tops(drawn):
    picture, sheet = drawn
    low, top = picture.torque.axes.get_ylim()

    assert low == 0.0
    assert top in TOPS_NM
    assert sheet.cut.worst_torque_nmm.max() / 1000 <= 0.7 * top
    assert sheet.cut.worst_hold_nmm.max() / 1000 <= 0.88 * top


def test_bars_are_as_long_as_the_torques_they_stand_for(drawn):
    picture, sheet = drawn
    stack, cut = picture.stack, sheet.cut
    at = cut.least.index
    shown = [(bar, bar.name.get_text()) for bar in stack.joints if bar.name.get_text() != "no film"]

    assert [name for _, name in shown] == [joint.name for joint in cut.holding.joints]
    lengths = [bar.bar.get_width() / stack.px_per_nmm for bar, _ in shown]
    assert lengths == pytest.approx([joint.torque_nmm for joint in cut.holding.joints])
    for bar, torque in (
        (stack.tip, cut.back_hold_nmm),
        (stack.hold, cut.hold_nmm[at]),
        (stack.turn, cut.cutting.torque_nmm[at]),
    ):
        assert bar.bar.get_width() / stack.px_per_nmm == pytest.approx(torque)
        assert bar.words.get_text().startswith(f"{torque / 1000:.2f}")
    assert stack.hold.bar.get_width() / stack.turn.bar.get_width() == pytest.approx(cut.margin)
    assert 150 / stack.px_per_nmm in FULL_NMM


def test_only_the_weakest_joint_is_marked_in_words_and_in_its_look(drawn):
    picture, sheet = drawn
    marked = [bar for bar in picture.stack.joints if "weakest joint" in bar.words.get_text()]
    others = [bar for bar in picture.stack.joints if bar not in marked]

    assert [bar.name.get_text() for bar in marked] == [sheet.cut.weakest_interface]
    assert all(bar.bar.get_facecolor() != marked[0].bar.get_facecolor() for bar in others)
    assert all(bar.bar.get_linewidth() < marked[0].bar.get_linewidth() for bar in others)


def test_the_stack_says_what_the_parts_add_up_to(drawn):
    picture, sheet = drawn
    cut = sheet.cut
    front, back, less = (
        picture.stack.less.get_text()
        .removesuffix(" for the sideways load")
        .replace(", less", " +")
        .split(" + ")
    )

    assert float(front) == pytest.approx(cut.front_hold_nmm / 1000, abs=0.005)
    assert float(back) == pytest.approx(cut.back_hold_nmm / 1000, abs=0.005)
    assert float(front) + float(back) - float(less.removeprefix("less ")) == pytest.approx(
        float(picture.stack.hold.words.get_text()), abs=0.02
    )
    assert picture.stack.place.get_text() == (
        f"where the margin is least: turn {cut.least.turn}, {where(cut.least.angle_deg, sheet.eye)}"
    )
    assert ("too much" in picture.stack.turn.words.get_text()) == (cut.margin < 1.0)


def test_a_lens_without_a_film_says_so_in_the_films_place(picture):
    picture.update(job())
    bare = [bar.name.get_text() for bar in picture.stack.joints]
    picture.update(job(film="yes"))

    assert bare == ["block to pad", "pad core", "no film", "pad to coat"]
    assert [bar.name.get_text() for bar in picture.stack.joints] == [
        "block to pad",
        "pad core",
        "pad to film",
        "film to coat",
    ]


def test_the_band_reaches_from_a_third_of_the_margin_to_three_times_it(drawn):
    picture, sheet = drawn
    band, margin = picture.band, sheet.cut.margin
    left, width = band.doubt.get_x(), band.doubt.get_width()

    assert left == pytest.approx(margin / 3)
    assert left + width == pytest.approx(3 * margin)
    assert band.axes.get_xlim() == (LOW, HIGH) == (0.2, 10.0)
    assert band.axes.get_xscale() == "log"
    ((estimate, _),) = band.estimate.get_xydata()
    assert estimate == pytest.approx(min(max(margin, LOW), HIGH))
    assert [mark.get_visible() for mark in band.beyond] == [margin / 3 < LOW, 3 * margin > HIGH]
    arrow = "◀ " * (margin < LOW), " ▶" * (margin > HIGH)
    assert band.words.get_text() == f"{arrow[0]}{margin:.2f}{arrow[1]}"
    assert picture.margin.get_text() == f"Margin {margin:.2f}, doubt {margin / 3:.2g} to {3 * margin:.2g}"


def test_turns_and_holds_stand_on_their_sides_of_one(picture):
    boxes = dict(words(picture))
    one = picture.band.axes.transData.transform((1.0, 0.0))[0]

    assert boxes["◀ turns"][2] < one < boxes["holds ▶"][0]
    assert picture.band.x_px(1.0) == pytest.approx(one)


def test_cribbing_has_a_mark_of_its_own_only_where_the_lens_is_cribbed(drawn):
    picture, sheet = drawn
    band, crib = picture.band, sheet.cut.crib

    assert band.cribbing.get_visible() == band.crib_words.get_visible() == (crib is not None)
    assert band.cribbing.get_marker() != band.estimate.get_marker()
    if crib is not None:
        assert band.cribbing.get_xydata()[0][0] == pytest.approx(min(max(crib.margin, LOW), HIGH))
        assert f"cribbing {crib.margin:.2f}" in band.crib_words.get_text()


def test_the_chance_is_said_for_both_benches(picture):
    picture.update(job())

    # 0.81: Phi(-ln 0.81 / 0.645) and Phi(-ln 0.81 / 0.32), the scatters of the slip model.
    assert picture.chance.get_text() == "slip: 63 % now, 75 % once calibrated"


def test_the_front_shows_lens_blank_and_block_to_scale(drawn):
    picture, sheet = drawn
    front, cut = picture.front, sheet.cut
    half_a, half_b = sheet.frame.a_mm / 2, sheet.frame.b_mm / 2
    rim = np.column_stack(front.blank.get_data()) - [sheet.centre_x_mm, sheet.up_mm]
    block = np.abs(front.block.get_xy()).max(axis=0)

    assert front.window.px_per_mm in SCALES_PX_PER_MM
    assert np.abs(front.outline.get_xy()).max(axis=0) == pytest.approx([half_a, half_b], abs=0.1)
    assert np.hypot(*rim.T) == pytest.approx(sheet.order.lens.blank_diameter_mm / 2)
    assert block == pytest.approx(
        [12.0, 8.5 if sheet.ticket.blocking.block == "half-eye" else 12.0], abs=0.01
    )
    assert front.chuck.get_xydata()[0] == pytest.approx([0.0, 0.0], abs=EXACT)
    assert front.centre.get_xydata()[0] == pytest.approx([sheet.centre_x_mm, sheet.up_mm])
    assert cut.setup.block == sheet.ticket.blocking.block


def test_everything_drawn_in_front_lies_inside_its_window(drawn):
    front = drawn[0].front
    (left, right), (low, high) = front.window.axes.get_xlim(), front.window.axes.get_ylim()
    for xy in (
        front.blank.get_xydata(),
        front.start.get_xy(),
        front.block.get_xy(),
        front.worst.get_xydata(),
    ):
        assert left <= xy[:, 0].min() <= xy[:, 0].max() <= right
        assert low <= xy[:, 1].min() <= xy[:, 1].max() <= high


def test_the_front_shows_what_the_cut_starts_from_and_the_bite_of_the_worst_turn(drawn):
    picture, sheet = drawn
    plan, turn = sheet.cut.cutting.plan, sheet.cut.least.turn
    for patch, radius in (
        (picture.front.start, plan.radius_mm[0]),
        (picture.front.before, plan.radius_mm[turn - 1]),
        (picture.front.after, plan.radius_mm[turn]),
        (picture.front.outline, plan.radius_mm[-1]),
    ):
        assert np.hypot(*patch.get_xy()[:-1].T) == pytest.approx(radius[::3])


def test_the_mark_of_the_least_margin_lies_on_the_rim_where_the_wheel_is(drawn):
    picture, sheet = drawn
    least, plan = sheet.cut.least, sheet.cut.cutting.plan
    cosine, sine = directions(plan.radius_mm.shape[1])
    radius = plan.radius_mm[least.turn, least.point]

    assert picture.front.worst.get_xydata()[0] == pytest.approx(
        [radius * cosine[least.point], radius * sine[least.point]]
    )
    assert picture.front.words.get_text() == f"{sheet.cut.margin:.2f}"


def test_what_cribbing_took_is_hatched_and_only_where_there_was_a_lens(picture):
    sheet = job(crib_mm=4.0)
    picture.update(sheet)
    assert picture.front.uncut.get_visible()
    assert picture.front.uncut.get_hatch()
    assert np.hypot(*picture.front.start.get_xy()[:-1].T) == pytest.approx(
        sheet.cut.lens.outline_mm[::3] + 4.0
    )
    assert picture.heading.get_text() == "Right lens, 72 mm blank, crib +4 mm"
    picture.update(job())

    assert not picture.front.uncut.get_visible()
    assert picture.heading.get_text() == "Right lens, 72 mm blank, not cribbed"


def test_a_blank_that_covers_too_little_is_drawn_and_said_otherwise(picture):
    picture.update(job())
    usual = picture.front.blank.get_linestyle(), picture.front.blank.get_color()
    picture.update(job(blank_diameter_mm=55.0))

    assert picture.front.blank.get_linestyle() != usual[0]
    assert picture.front.blank.get_color() != usual[1]
    assert picture.heading.get_text() == "Right lens, 55 mm blank too small, not cribbed"


@pytest.mark.parametrize(
    ("eye", "sides"), [("right", ("temporal", "nasal")), ("left", ("nasal", "temporal"))]
)
def test_the_nose_lies_where_an_observer_facing_the_wearer_sees_it(picture, eye, sides):
    sheet = job(eye=eye)
    picture.update(sheet)

    assert (picture.left_side.get_text(), picture.right_side.get_text()) == sides
    assert np.sign(sheet.centre_x_mm) == (1 if sides[1] == "nasal" else -1), "decentred towards the nose"


def test_a_blocking_point_off_the_boxed_centre_moves_chuck_and_block(picture):
    """The panel has no control for it, but the picture is drawn for any job."""
    ticket = replace(job(height_mm=21.0).ticket, blocking=Blocking(blocking_point="optical centre"))
    sheet = work_eye(ticket, ticket.eyes[0])
    picture.update(sheet)

    assert picture.front.chuck.get_xydata()[0] == pytest.approx([2.0, 3.0])
    assert picture.front.block.get_xy()[:-1].mean(axis=0) == pytest.approx([2.0, 3.0], abs=0.01)
    assert np.abs(picture.front.outline.get_xy()).max(axis=0) == pytest.approx([25.0, 18.0], abs=0.1)


def test_the_bar_is_ten_millimetres_long(drawn):
    (x0, y0), (x1, y1) = drawn[0].scale.line.get_xydata()

    assert x1 - x0 == pytest.approx(10.0)
    assert y1 == y0


def test_the_key_names_every_line_area_and_mark(picture):
    shown = texts_of(picture)

    assert {
        "finished outline",
        "cut starts here",
        "blank",
        "block",
        "worst turn's bite",
        "cribbed",
        "least margin",
        "chuck axis",
        "optical centre",
        "greatest torque of the turn",
        "turns",
        "holds",
        "more than holds",
    } <= shown


def test_ordinary_moves_leave_the_still_parts_alone(picture):
    picture.update(job())
    picture.png()
    for values in (
        {"sphere_d": -7.0},
        {"monocular_pd_mm": 30.0},
        {"blank_diameter_mm": 68.0},
        {"cylinder_d": -1.0, "axis_deg": 90},
        {"film": "yes"},
    ):
        picture.update(job(**values))
        assert not picture.figure.stale, values


def test_a_picture_drawn_again_is_the_same_to_the_last_dot(drawn):
    picture, sheet = drawn
    first = picture.png()
    picture.update(job(crib_mm=7.0, eye="left", wheel="used"))
    assert picture.png() != first
    picture.update(sheet)

    assert picture.png() == first


def test_moving_words_are_of_the_quick_kind(picture):
    moving = [artist for artist in picture._moving if isinstance(artist, Text)]

    assert len(moving) > 20
    assert all(isinstance(artist, Label) for artist in moving)
