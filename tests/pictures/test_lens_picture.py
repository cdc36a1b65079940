"""The lens picture shows what the lens measures: in its lines, its marks and its words."""

import numpy as np
import pytest
from lens_sheets import EXTREMES, lens
from matplotlib.text import Text
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.pictures.edge_round import TOPS_MM
from lablib.pictures.label import Label
from lablib.pictures.lens import SCALES_PX_PER_MM, LensPicture

# Line ends are read back from matplotlib; nothing is rounded on the way there.
EXACT = 1e-9


@pytest.fixture(scope="module")
def picture() -> LensPicture:
    return LensPicture()


@pytest.fixture(params=EXTREMES.values(), ids=EXTREMES.keys())
def drawn(request, picture):
    """A picture of a lens, and the lens."""
    sheet = lens(**request.param)
    picture.update(sheet)
    return picture, sheet


def windows(picture: LensPicture) -> list:
    return [drawing.window for drawing in (picture.front, picture.midline, picture.thickest)]


def test_all_three_drawings_have_one_scale_across_and_up(drawn):
    picture, _ = drawn
    steps = set()
    for window in windows(picture):
        place = window.axes.transData.transform
        steps |= {*np.round((place((1.0, 1.0)) - place((0.0, 0.0))), 6)}

    assert len(steps) == 1
    assert steps.pop() in SCALES_PX_PER_MM


def test_everything_drawn_lies_inside_its_window(drawn):
    picture, _ = drawn
    front, sections = picture.front, (picture.midline, picture.thickest)
    parts = [(front.window, part) for part in (front.glass, front.band, front.ghost, front.missing)]
    parts += [(one.window, part) for one in sections for part in (one.glass, one.blank)]
    for window, part in parts:
        xy = part.get_xy()
        (left, right), (low, high) = window.axes.get_xlim(), window.axes.get_ylim()
        assert left <= xy[:, 0].min() <= xy[:, 0].max() <= right
        assert low <= xy[:, 1].min() <= xy[:, 1].max() <= high


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 30


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0


def test_the_cut_along_the_midline_ends_with_the_edge_there(drawn):
    picture, sheet = drawn
    x, y = picture.midline.edges.get_data()
    left, right = sheet.horizontal_section.end_thickness_mm

    assert y[0] - y[1] == pytest.approx(left, abs=EXACT)
    assert y[3] - y[4] == pytest.approx(right, abs=EXACT)
    assert x[3] - x[0] == pytest.approx(np.ptp(sheet.horizontal_section.along_mm), abs=EXACT)
    # The outline ends at half A on both sides of the midline, and at a point of its 720 there.
    nasal_end = right if sheet.eye.nasal_sign > 0 else left
    assert nasal_end == pytest.approx(sheet.finished.edge_at_mm(sheet.nasal_deg), abs=0.01)
    assert picture.midline.start.get_text() == f"{left:.2f}"
    assert picture.midline.end.get_text() == f"{right:.2f}"


def test_the_cut_through_the_thickest_edge_ends_with_it(drawn):
    picture, sheet = drawn
    x, y = picture.thickest.edges.get_data()
    thickest = float(sheet.finished.edge_mm.max())

    assert y[3] - y[4] == pytest.approx(thickest, abs=0.005)
    assert picture.thickest.end.get_text() == f"▲ {y[3] - y[4]:.2f}"
    x_mm = sheet.outline.x_mm[sheet.greatest_at] - sheet.centre_x_mm
    if abs(x_mm) > 1.0:
        assert np.sign(x[3] - x[0]) == np.sign(x_mm), "the end lies where the observer sees it"


def test_the_centre_thickness_stands_over_the_optical_centre(drawn):
    picture, sheet = drawn
    centre_mm = sheet.finished.lens.centre_thickness_mm
    _, y = picture.thickest.gauge.get_data()

    # A section is drawn through 81 points; between two of them a line is straight.
    assert y[0] - y[1] == pytest.approx(centre_mm, abs=0.02)
    assert picture.thickest.at.get_text() == f"centre {centre_mm:.2f}"


@pytest.mark.parametrize(
    ("height_mm", "said"), [(18.0, "centre "), (22.0, "below centre "), (14.0, "above centre ")]
)
def test_the_midline_cut_calls_only_the_centre_itself_centre(picture, height_mm, said):
    sheet = lens(height_mm=height_mm)
    picture.update(sheet)

    assert picture.midline.at.get_text() == f"{said}{sheet.midline_thickness_mm:.2f}"
    assert (height_mm == 18.0) == (sheet.midline_thickness_mm == sheet.finished.lens.centre_thickness_mm)


def test_the_front_shows_outline_box_blank_and_centres_to_scale(drawn):
    picture, sheet = drawn
    front = picture.front
    half_a, half_b = sheet.frame.a_mm / 2, sheet.frame.b_mm / 2
    box_x, box_y = (np.asarray(part) for part in front.box.get_data())
    rim_x, rim_y = (np.asarray(part) for part in front.rim.get_data())

    assert (box_x.min(), box_x.max(), box_y.min(), box_y.max()) == (-half_a, half_a, -half_b, half_b)
    assert np.abs(front.glass.get_xy()).max(axis=0) == pytest.approx([half_a, half_b], abs=0.1)
    assert np.hypot(rim_x - sheet.centre_x_mm, rim_y - sheet.up_mm) == pytest.approx(
        sheet.order.lens.blank_diameter_mm / 2
    )
    assert front.optical_centre.get_xydata().tolist() == [[sheet.centre_x_mm, sheet.up_mm]]
    assert front.boxed_centre.get_xydata().tolist() == [[0.0, 0.0]]
    assert front.optical_centre.get_marker() != front.boxed_centre.get_marker()


def test_the_band_round_the_outline_is_as_wide_as_the_edge_is_thick(drawn):
    picture, sheet = drawn
    ring = picture.front.band.get_xy()
    # Outline and its closing point, then the outer line the other way round.
    half = (len(ring) - 1) // 2
    inner, outer = ring[:half], ring[half : 2 * half][::-1]
    edge = sheet.finished.edge_mm[::3]

    assert np.hypot(*(outer - inner).T)[:-1] == pytest.approx(edge)


def test_marks_of_thickest_and_thinnest_differ_in_shape_and_carry_their_numbers(drawn):
    picture, sheet = drawn
    for drawing in (picture.front, picture.edge):
        assert drawing.greatest.get_marker() != drawing.least.get_marker()
        assert drawing.greatest_words.get_text() == f"{sheet.finished.edge_mm.max():.2f}"
        assert drawing.least_words.get_text() == f"{sheet.finished.edge_mm.min():.2f}"


def test_the_edge_unrolled_begins_at_the_nose_and_goes_over_the_top(drawn):
    picture, sheet = drawn
    angle, edge = (np.asarray(part) for part in picture.edge.line.get_data())
    at = {turned: edge[np.flatnonzero(angle == turned)[0]] for turned in (0.0, 90.0, 180.0, 270.0, 360.0)}
    finished, nasal = sheet.finished, sheet.nasal_deg

    assert at[0.0] == at[360.0] == finished.edge_at_mm(nasal)
    assert at[90.0] == finished.edge_at_mm(90.0)
    assert at[180.0] == finished.edge_at_mm(nasal + 180.0)
    assert at[270.0] == finished.edge_at_mm(270.0)
    ticks = [label.get_text() for label in picture.edge.axes.get_xticklabels()]
    assert ticks[:5] == ["nasal", "top", "temporal", "bottom", "nasal"]


def test_the_marks_lie_on_the_unrolled_edge(drawn):
    picture, sheet = drawn
    angle, edge = (np.asarray(part) for part in picture.edge.line.get_data())
    for mark, thickness in (
        (picture.edge.greatest, sheet.finished.edge_mm.max()),
        (picture.edge.least, sheet.finished.edge_mm.min()),
    ):
        ((turned, marked),) = mark.get_xydata()
        assert marked == pytest.approx(thickness, abs=1e-6)
        assert np.interp(turned, angle, edge) == pytest.approx(marked, abs=0.01)


def test_the_unrolled_edge_fits_under_one_of_few_tops(drawn):
    picture, sheet = drawn

    assert picture.edge.axes.get_xlim() == (0.0, 360.0)
    assert picture.edge.axes.get_ylim() in [(0.0, top[0]) for top in TOPS_MM]
    assert sheet.finished.edge_mm.max() < picture.edge.axes.get_ylim()[1]


@pytest.mark.parametrize(
    ("eye", "sides"), [("right", ("temporal", "nasal")), ("left", ("nasal", "temporal"))]
)
def test_the_nose_lies_where_an_observer_facing_the_wearer_sees_it(picture, eye, sides):
    sheet = lens(eye=eye)
    picture.update(sheet)

    assert (picture.left_side.get_text(), picture.right_side.get_text()) == sides
    assert picture.ends.get_text() == f"{sides[0]} left, {sides[1]} right"
    assert picture.heading.get_text() == f"{eye.capitalize()} lens, facing the wearer"
    assert np.sign(sheet.centre_x_mm) == (1 if sides[1] == "nasal" else -1), "decentred towards the nose"


def test_left_and_right_are_mirror_images(picture):
    picture.update(lens(eye="right", cylinder_d=-2.0, axis_deg=30))
    right = np.asarray(picture.edge.line.get_ydata())
    picture.update(lens(eye="left", cylinder_d=-2.0, axis_deg=150))

    assert np.asarray(picture.edge.line.get_ydata()) == pytest.approx(right, abs=1e-6)


def test_a_blank_too_small_is_hatched_where_it_does_not_reach(picture):
    covered, short = lens(), lens(blank_diameter_mm=50.0)
    picture.update(covered)
    assert not picture.front.missing.get_visible()
    assert picture.blank.get_text() == f"70 mm blank covers: {covered.minimum_blank_mm:.1f} mm needed"
    rim = picture.front.rim.get_linestyle(), picture.front.rim.get_color()
    picture.update(short)

    assert picture.front.missing.get_visible()
    assert picture.front.missing.get_hatch()
    assert picture.front.rim.get_linestyle() != rim[0]
    assert picture.front.rim.get_color() != rim[1]
    assert picture.blank.get_text() == f"50 mm blank is too small: {short.minimum_blank_mm:.1f} mm needed"
    reached = np.hypot(*(picture.front.missing.get_xy() - [short.centre_x_mm, short.up_mm]).T)
    assert reached.max() == pytest.approx(short.minimum_blank_mm / 2 - 1.0, abs=0.05)


def test_the_hatched_part_of_a_cut_lies_beyond_the_blank(picture):
    picture.update(lens())
    assert not any(patch.get_visible() for patch in picture.midline.missing)
    short = lens(blank_diameter_mm=50.0, monocular_pd_mm=28.0)
    picture.update(short)
    temporal, nasal = picture.midline.missing
    rim_mm = short.horizontal_section.blank_along_mm[0]

    assert temporal.get_visible()
    assert not nasal.get_visible()
    assert temporal.get_xy()[:, 0].max() <= rim_mm
    assert picture.midline.blank.get_xy()[:, 0].min() == pytest.approx(rim_mm, abs=EXACT)


def test_the_cylinder_axis_runs_through_the_optical_centre_at_its_angle(picture):
    picture.update(lens())
    assert not picture.front.axis.get_visible()
    sheet = lens(cylinder_d=-2.0, axis_deg=30, height_mm=20.0)
    picture.update(sheet)
    (x0, y0), (x1, y1) = picture.front.axis.get_xydata()

    assert picture.front.axis.get_visible()
    assert np.degrees(np.arctan2(y1 - y0, x1 - x0)) == pytest.approx(30.0)
    assert [(x0 + x1) / 2, (y0 + y1) / 2] == pytest.approx([sheet.centre_x_mm, sheet.up_mm])


def test_the_line_of_the_cut_ends_at_the_thickest_edge(drawn):
    picture, sheet = drawn
    end = picture.front.cut.get_xydata()[-1]
    at = sheet.greatest_at

    assert end == pytest.approx([sheet.outline.x_mm[at], sheet.outline.y_mm[at]], abs=0.05)


def test_the_bar_is_ten_millimetres_long(drawn):
    picture, _ = drawn
    (x0, y0), (x1, y1) = picture.bar.get_xydata()

    assert x1 - x0 == pytest.approx(10.0)
    assert y1 == y0


def test_the_key_names_every_mark(picture):
    shown = texts_of(picture)

    assert {
        "blank",
        "optical centre",
        "boxed centre",
        "thickest edge",
        "thinnest edge",
        "cylinder axis",
    } <= shown


def test_ordinary_moves_leave_the_scale_alone(picture):
    ordinary = [
        {"sphere_d": -6.0},
        {"sphere_d": 4.0, "thickness_mm": 5.0},
        {"monocular_pd_mm": 30.0},
        {"height_mm": 22.0},
        {"blank_diameter_mm": 65.0},
        {"cylinder_d": -2.0, "axis_deg": 90},
    ]
    picture.update(lens())
    start = picture.front.window.px_per_mm
    for values in ordinary:
        picture.update(lens(**values))
        assert picture.front.window.px_per_mm == start, values


def test_a_picture_drawn_again_is_the_same_to_the_last_dot(drawn):
    picture, sheet = drawn
    first = picture.png()
    picture.update(lens(blank_diameter_mm=50.0, eye="left"))
    assert picture.png() != first
    picture.update(sheet)

    assert picture.png() == first


def test_moving_words_are_of_the_quick_kind(picture):
    moving = [artist for artist in picture._moving if isinstance(artist, Text)]

    assert len(moving) > 10
    assert all(isinstance(artist, Label) for artist in moving)
