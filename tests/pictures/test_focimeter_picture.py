"""What is seen through the focimeter: where its points are smeared to, and what is said of it."""

import numpy as np
import pytest
from matplotlib.colors import to_rgba
from picture_words import require_apart_and_inside
from picture_words import words as words_of

from lablib.optics.focimeter import view
from lablib.optics.prescription import Prescription
from lablib.pictures.focimeter import (
    DRUM_D,
    POINT_PX,
    PX_PER_D,
    FocimeterPicture,
    Seen,
    drum_words,
    line_words,
)

UNBROKEN = "unbroken: no stroke leans"

LENS = Prescription(sphere_d=2.0, cylinder_d=-1.5, axis_deg=20.0)
SPHERE = Prescription(sphere_d=2.0)


def seen(drum: float, target: float, lens: Prescription = LENS) -> Seen:
    return Seen(view=view(lens, drum_d=drum, target_deg=target), drum_d=drum)


@pytest.fixture(scope="module")
def picture() -> FocimeterPicture:
    return FocimeterPicture()


def smears(group) -> np.ndarray:
    """The corners of every smear about its own middle, as complex numbers."""
    corners = np.array([path.vertices[:-1] for path in group.get_paths()])
    points = corners[..., 0] + 1j * corners[..., 1]
    return points - points.mean(axis=1, keepdims=True)


def middles(group) -> np.ndarray:
    corners = np.array([path.vertices[:-1] for path in group.get_paths()])
    return (corners[..., 0] + 1j * corners[..., 1]).mean(axis=1)


def width_px(group, line_deg: float) -> float:
    """How far a smear reaches to either side of a line."""
    return float(np.abs((smears(group)[0] * np.exp(-1j * np.radians(line_deg))).imag).max())


def test_three_lines_and_a_single_one_across_them(picture):
    picture.update(seen(0.0, 20.0))
    three, single = (middles(group) for group in picture.groups)

    assert len(three) == 3 * len(single)
    turned = three * np.exp(-1j * np.radians(20.0))
    assert sorted(set(np.round(turned.imag, 6))) == [-22.0, 0.0, 22.0]
    assert np.abs((single * np.exp(-1j * np.radians(110.0))).imag).max() == pytest.approx(0.0, abs=1e-9)


def test_at_the_sphere_the_single_line_is_as_thin_as_a_point(picture):
    picture.update(seen(2.0, 20.0))

    assert width_px(picture.groups[1], 110.0) == pytest.approx(POINT_PX)
    assert width_px(picture.groups[0], 20.0) == pytest.approx(POINT_PX + 1.5 * PX_PER_D)


def test_at_sphere_and_cylinder_the_three_lines_are_as_thin_as_a_point(picture):
    picture.update(seen(0.5, 20.0))

    assert width_px(picture.groups[0], 20.0) == pytest.approx(POINT_PX)
    assert width_px(picture.groups[1], 110.0) == pytest.approx(POINT_PX + 1.5 * PX_PER_D)


def test_smears_of_neighbours_close_a_sharp_line(picture):
    picture.update(seen(0.5, 20.0))
    (middle, other), smear = middles(picture.groups[0])[:2], smears(picture.groups[0])[0]

    along = (smear * np.exp(-1j * np.radians(20.0))).real
    assert along.max() > abs(other - middle)


def test_off_the_axis_the_smears_lean_across_their_line(picture):
    picture.update(seen(2.0, 25.0))
    smear = smears(picture.groups[1])[0]

    long_way = np.degrees(np.angle(smear[np.abs(smear).argmax()])) % 180.0
    assert long_way == pytest.approx(110.0, abs=1e-6)
    assert width_px(picture.groups[1], 115.0) > 2.0


def test_a_sphere_is_smeared_alike_whichever_way_the_target_stands(picture):
    for target in (20.0, 65.0, 180.0):
        picture.update(seen(2.5, target, SPHERE))
        for group in picture.groups:
            # Twenty corners stand for a circle.
            np.testing.assert_allclose(np.abs(smears(group)), POINT_PX + 0.5 * PX_PER_D, rtol=1e-9)


def test_the_same_light_on_more_area_is_fainter_and_never_gone(picture):
    strengths = []
    for drum in (2.0, 2.25, 3.0, 6.0, 12.0):
        picture.update(seen(drum, 20.0, SPHERE))
        strengths.append(picture.groups[0].get_alpha())
    assert strengths[0] == 1.0
    assert strengths == sorted(strengths, reverse=True)
    assert strengths[-1] > 1.0 / 255.0


def test_smears_stay_inside_the_field(picture):
    for group in picture.groups:
        assert group.get_clip_path() is not None
        assert to_rgba(group.get_facecolor()[0])[:3] == (0.0, 0.0, 0.0)


@pytest.mark.parametrize(
    ("drum", "target", "words"),
    [
        (2.0, 20.0, ("three lines along 20: smeared", "single line along 110: sharp", UNBROKEN)),
        (0.5, 20.0, ("three lines along 20: sharp", "single line along 110: smeared", UNBROKEN)),
        (
            2.0,
            180.0,
            (
                "three lines along 180: smeared",
                "single line along 90: smeared",
                "broken: strokes lean, off the axis",
            ),
        ),
    ],
)
def test_words_beside_the_field(picture, drum: float, target: float, words: tuple[str, ...]):
    picture.update(seen(drum, target))

    assert line_words(seen(drum, target).view) == words
    assert tuple(label.get_text() for label in picture.lines) == words


@pytest.mark.parametrize(
    ("drum", "words"),
    [(0.0, "0.00"), (2.0, "+2.00"), (-0.125, "-0.125"), (1.875, "+1.875"), (-12.0, "-12.00")],
)
def test_a_drum_reading_is_written_with_its_eighths(picture, drum: float, words: str):
    picture.update(seen(drum, 20.0))

    assert drum_words(drum) == picture.reading.get_text() == words
    assert picture.mark.get_xdata() == [drum]
    assert picture.drum.get_xlim() == (-DRUM_D, DRUM_D)


@pytest.mark.parametrize("drum", [-12.0, -4.0, 0.0, 2.0, 12.0])
@pytest.mark.parametrize("target", [1.0, 20.0, 135.0, 180.0])
def test_no_words_overlap_and_all_stay_inside(picture, drum: float, target: float):
    picture.update(seen(drum, target))
    assert require_apart_and_inside(picture) > 20


def test_no_number_stands_so_near_its_tick_that_it_reads_as_less_than_nothing(picture):
    ends = [complex(*line.get_xydata()[-1]) for line in picture.field.lines if len(line.get_xdata()) == 2]
    ticks = [complex(*picture.field.transData.transform((end.real, end.imag))) for end in ends]
    sides = [box for text, box in words_of(picture) if text == "180"]

    assert len(sides) == 2
    for left, low, right, high in sides:
        level = [tick.real for tick in ticks if low < tick.imag < high]
        assert min(min(abs(left - tick), abs(right - tick)) for tick in level) > 6.0
