"""The drawings of questions show the case, the learner's value and the right one, whatever was answered."""

import itertools

import numpy as np
import pytest
from asked_cases import MAKE, SEEDS, Case, sag
from matplotlib.patches import Patch
from matplotlib.text import Text
from picture_words import require_apart_and_inside, smallest_px, texts_of, words

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.surface import sagitta_mm
from lablib.pictures.asked import DRAWINGS, Asked, picture_for
from lablib.pictures.asked_cap import arc_mm
from lablib.pictures.asked_joints import TICKS_NM
from lablib.pictures.kept import KeptPicture
from lablib.pictures.label import Label
from lablib.pictures.palette import OKABE_ITO
from lablib.study.question import Drawing

by_name = pytest.mark.parametrize("name", MAKE)


def unanswered(name: str, values: dict):
    """A picture of a case, nothing answered."""
    picture = picture_for(Drawing(name=name, values=values))
    picture.update(Asked(values=values))
    return picture


def shown(name: str, seed: int = 1) -> tuple:
    """A picture of a case, nothing answered, and the case."""
    case = MAKE[name](seed)
    return unanswered(name, case.values), case


def still(picture) -> dict[int, str]:
    """The scale of a picture, and where the artists of its case that are seen lie."""
    signs = {part for sign in (picture.yours, picture.right) for part in (sign.line, sign.mark, sign.label)}
    kept = {-1: repr((picture.window.px_per_mm, *picture.window.axes.viewLim.extents))}
    for number, artist in enumerate(picture._moving):
        if artist not in signs and artist.get_visible():
            kept[number] = repr(lies(artist))
    return kept


def lies(artist) -> list | tuple:
    if isinstance(artist, Text):
        return (artist.get_text(), *artist.get_position())
    return (artist.get_verts() if isinstance(artist, Patch) else artist.get_xydata()).tolist()


def is_seen(sign) -> bool:
    seen = {artist.get_visible() for artist in (sign.line, sign.mark, sign.label)}
    assert len(seen) == 1
    return seen.pop()


def test_every_drawing_has_a_case_to_be_tested_with():
    assert (
        # The ticket has no value to stand in it, and a test file of its own.
        set(MAKE) | {"ticket"}
        == set(DRAWINGS)
        == {
            "pair",
            "blank",
            "edge-place",
            "section",
            "cap",
            "joints",
            "level",
            "across",
            "prism-pair",
            "spoiled-lens",
            "ticket",
        }
    )


@by_name
def test_a_picture_is_a_new_one_of_one_size(name: str):
    case = MAKE[name](1)
    one, other = (picture_for(Drawing(name=name, values=case.values), dots_per_pixel=2) for _ in range(2))

    assert isinstance(one, KeptPicture)
    assert one is not other
    assert one.size_dots == (2 * 480, 2 * 300)


def test_an_unknown_drawing_is_said_with_those_there_are():
    with pytest.raises(LabError, match=r"drawing 'frame' is not known: give one of pair, blank, edge-place"):
        picture_for(Drawing(name="frame"))


@by_name
def test_missing_and_unknown_values_are_said(name: str):
    values = MAKE[name](1).values
    first = sorted(
        set(values)
        - {
            "show_eyes",
            "shade",
            "left_words",
            "right_words",
            "engraving_x_mm",
            "engraving_y_mm",
            "right_pupil_mm",
            "left_pupil_mm",
        }
    )[0]
    without = {key: value for key, value in values.items() if key != first}

    with pytest.raises(LabError, match=f"values of a drawing: '{first}' is missing: give "):
        unanswered(name, without)
    with pytest.raises(LabError, match="values of a drawing: 'colour' is unknown: give "):
        unanswered(name, values | {"colour": "red"})


@pytest.mark.parametrize("name", ["given", "right"])
@pytest.mark.parametrize("value", [float("nan"), float("inf"), "3", True])
def test_a_value_that_is_no_number_is_said(name: str, value: object):
    with pytest.raises(LabError, match=f"{name} value of a picture .* number: give a number"):
        Asked(values={}, **{name: value})


def test_the_values_cannot_be_changed_from_outside():
    values = {"radius_mm": 80.0}
    asked = Asked(values=values)
    values["radius_mm"] = 1.0

    assert asked.values["radius_mm"] == 80.0
    with pytest.raises(TypeError):
        asked.values["radius_mm"] = 2.0


@by_name
def test_words_and_marks_stay_inside_and_words_apart_in_every_state(name: str):
    picture, _ = shown(name)
    for seed in range(SEEDS):
        for state, data in MAKE[name](seed).states().items():
            picture.update(data)
            require_apart_and_inside(picture, (seed, state))
            for sign in (picture.yours, picture.right):
                assert not sign.mark.get_visible() or lies_in_window(picture, sign.mark), (seed, state)


def lies_in_window(picture, mark) -> bool:
    x, y = picture.window.px(*mark.get_xydata()[0])
    left, low, right, high = picture.window.box_px
    return left < x < right and low < y < high


@by_name
def test_words_are_large_enough_to_read(name: str):
    picture, _ = shown(name)

    assert smallest_px(picture) >= 12.0


@by_name
def test_nothing_jumps_when_an_answer_comes(name: str):
    picture, _ = shown(name)
    for seed in range(0, SEEDS, 6):
        states = MAKE[name](seed).states()
        picture.update(states.pop("case alone"))
        alone = still(picture)
        for state, data in states.items():
            picture.update(data)
            assert alone.items() <= still(picture).items(), (seed, state)


@by_name
def test_each_value_is_shown_only_where_there_is_one(name: str):
    picture, case = shown(name)
    seen = {"case alone": (False, False), "given": (True, False), "wrong": (True, True)}
    seen |= {"right": (False, True), "told": (False, True)}
    for state, expected in seen.items():
        picture.update(case.states()[state])
        assert (is_seen(picture.yours), is_seen(picture.right)) == expected, state


@by_name
def test_words_say_whose_value_it_is(name: str):
    picture, case = shown(name)
    states = case.states()
    picture.update(states["wrong"])
    unit, space = picture.unit, "" if picture.unit == "°" else " "
    yours, right = (f"{value:.{picture.digits}f}{space}{unit}" for value in (case.wrong, case.right))
    assert picture.yours.label.get_text() == f"yours {yours}"
    assert picture.right.label.get_text() == f"right answer {right}"
    picture.update(states["right"])

    assert picture.right.label.get_text() == f"right, and yours {right}"


@by_name
def test_a_value_within_a_hair_of_the_right_one_is_drawn_with_it(name: str):
    picture, case = shown(name)
    hair = 0.5 * 10.0**-picture.digits
    for away, together in ((0.9, True), (-0.9, True), (1.1, False), (-1.1, False)):
        given = case.right + away * hair
        picture.update(Asked(values=case.values, given=given, right=case.right))
        assert is_seen(picture.yours) != together
        assert picture.right.label.get_text().startswith("right, and yours") == together


@by_name
def test_both_values_differ_in_more_than_colour(name: str):
    picture, case = shown(name)
    picture.update(case.states()["wrong"])
    yours, right = picture.yours, picture.right

    assert (yours.line.get_linestyle(), right.line.get_linestyle()) == ("--", "-")
    assert yours.mark.get_markerfacecolor() == "#ffffff"
    assert right.mark.get_markerfacecolor() == right.mark.get_color()
    assert yours.mark.get_marker() != right.mark.get_marker()
    assert yours.mark.get_markersize() > right.mark.get_markersize() + 2, "a ring round a filled mark"
    assert {yours.line.get_color(), right.line.get_color()} <= set(OKABE_ITO.values())
    assert yours.line.get_color() != right.line.get_color()


ARROWS = {"◀": "<", "▶": ">", "▲": "^", "▼": "v"}


@pytest.mark.parametrize("name", [name for name in MAKE if name not in ("edge-place", "spoiled-lens")])
@pytest.mark.parametrize("value", [4000.0, -4000.0, 1e15, -1e300])
def test_a_hopeless_value_becomes_an_arrow_at_the_rim(name: str, value: float):
    picture, case = shown(name)
    for right in (None, case.right):
        picture.update(Asked(values=case.values, given=value, right=right))
        said = picture.yours.label.get_text()
        (arrow,) = set(said) & set(ARROWS)
        assert said.replace(arrow, "").strip() == "yours, off the picture"
        assert picture.yours.mark.get_marker() == ARROWS[arrow]
        left, low, end, high = picture.window.box_px
        line = picture.yours.line.get_xydata()
        ends = np.array([picture.window.px(*point) for point in line[np.isfinite(line[:, 0])]])
        assert (ends >= (left, low)).all()
        assert (ends <= (end, high)).all()
        assert picture.png()


@by_name
def test_the_right_value_is_never_off_the_picture(name: str):
    picture, _ = shown(name)
    for seed in range(SEEDS):
        picture.update(MAKE[name](seed).states()["told"])
        assert "off the picture" not in picture.right.label.get_text(), seed
        line = picture.right.line.get_xydata()
        points = [picture.window.px(*point) for point in line[np.isfinite(line[:, 0])]]
        left, low, right, high = picture.window.box_px
        assert all(left <= x <= right and low <= y <= high for x, y in points), seed


@by_name
def test_a_mark_returns_from_an_arrow(name: str):
    picture, case = shown(name)
    states: dict[str, Asked] = case.states()
    picture.update(states["given"])
    before = picture.yours.mark.get_marker(), picture.yours.mark.get_markersize()
    picture.update(Asked(values=case.values, given=4000.0))
    picture.update(states["given"])

    assert (picture.yours.mark.get_marker(), picture.yours.mark.get_markersize()) == before


@by_name
def test_a_picture_drawn_again_is_the_same_to_the_last_dot(name: str):
    picture, case = shown(name)
    states = case.states()
    picture.update(states["wrong"])
    first = picture.png()
    other: Case = MAKE[name](2)
    picture.update(other.states()["given"])
    assert picture.png() != first
    picture.update(states["wrong"])

    assert picture.png() == first


@by_name
def test_only_the_quick_kind_of_words_moves(name: str):
    picture, _ = shown(name)
    moving = [artist for artist in picture._moving if isinstance(artist, Text)]

    assert len(moving) >= 2
    assert all(isinstance(artist, Label) for artist in moving)


def drawn(name: str, seed: int, state: str = "wrong") -> tuple:
    """A picture of a case in a state, and the case."""
    case = MAKE[name](seed)
    picture = unanswered(name, case.values)
    picture.update(case.states()[state])
    return picture, case


def values_in(picture, case: Case) -> list[tuple]:
    """Each sign with its value, those left out that lie off the picture."""
    both = [(picture.yours, case.wrong), (picture.right, case.right)]
    return [(sign, value) for sign, value in both if "off the picture" not in sign.label.get_text()]


def parts(line) -> list[np.ndarray]:
    """The pieces of a line between its breaks."""
    points = line.get_xydata()
    breaks = np.flatnonzero(np.isnan(points[:, 0]))
    return [piece[np.isfinite(piece[:, 0])] for piece in np.split(points, breaks)]


def pair_values(**replaced: object) -> dict:
    values = {"a_mm": 52.0, "b_mm": 36.0, "dbl_mm": 18.0, "right_pd_mm": 31.5, "left_pd_mm": 0.0}
    return values | {"eye": "right", "measured_from": "boxed centre"} | replaced


@pytest.mark.parametrize("seed", range(8))
def test_pair_shows_a_value_where_it_lies_for_an_observer_facing_the_wearer(seed: int):
    picture, case = drawn("pair", seed)
    values, towards_nose = case.values, 1 if case.values["eye"] == "right" else -1
    centre = -towards_nose * (values["a_mm"] + values["dbl_mm"]) / 2
    for sign, value in values_in(picture, case):
        level, upright = parts(sign.line)
        if values["measured_from"] == "bridge":
            start, end = 0.0, -towards_nose * value
        else:
            start, end = centre, centre + towards_nose * value
        assert level[:, 0] == pytest.approx([start, end])
        assert upright[:, 0] == pytest.approx([end, end])
        assert sign.mark.get_xydata()[0] == pytest.approx(level[1])
    assert picture.yours.mark.get_ydata()[0] < 0.0 < picture.right.mark.get_ydata()[0], "never on one line"


def test_pair_meets_the_distance_that_is_given_at_the_right_decentration():
    picture = unanswered("pair", pair_values())
    picture.update(Asked(values=pair_values(), right=(52.0 + 18.0) / 2.0 - 31.5))
    (start, _), (end, _) = picture.rims[Eye.RIGHT].pd.line.get_xydata()

    assert (start, end) == (0.0, -31.5)
    assert picture.right.mark.get_xdata()[0] == pytest.approx(end)
    assert picture.rims[Eye.RIGHT].pd.label.get_text() == "PD 31.5"
    assert not picture.rims[Eye.LEFT].pd.line.get_visible()
    assert not picture.rims[Eye.LEFT].pd.label.get_visible()


def test_pair_measures_the_frame():
    picture = unanswered("pair", pair_values())
    for measure, along, length, said in (
        (picture.a, 0, 52.0, "A 52"),
        (picture.b, 1, 36.0, "B 36"),
        (picture.dbl, 0, 18.0, "DBL 18"),
    ):
        assert np.ptp(measure.line.get_xydata()[:, along]) == pytest.approx(length)
        assert measure.label.get_text() == said
    for eye, rim in picture.rims.items():
        x, y = rim.box.get_data()
        assert (min(map(abs, x)), max(map(abs, x))) == (9.0, 61.0)
        assert (min(y), max(y)) == (-18.0, 18.0)
        assert np.sign(rim.centre.get_xdata()[0]) == -eye.nasal_sign


@pytest.mark.parametrize("eye", ["right", "left"])
def test_pair_shades_the_lens_asked_about_and_says_so(eye: str):
    picture = unanswered("pair", pair_values(eye=eye))
    colours = {rim.value: tuple(picture.rims[rim].lens.get_facecolor()) for rim in Eye}

    assert [name for name, colour in colours.items() if colour != (1.0, 1.0, 1.0, 1.0)] == [eye]
    assert {"shaded: the lens asked about", "Two rims, facing the wearer [mm]"} <= texts_of(picture)


def test_pair_names_the_wearers_right_eye_at_the_observers_left():
    picture = unanswered("pair", pair_values())
    middle = {text: (box[0] + box[2]) / 2 for text, box in words(picture)}

    assert middle["right eye"] < middle["middle of bridge"] < middle["left eye"]


def test_pair_names_no_eye_before_the_answer_where_that_is_asked():
    values = pair_values(show_eyes=False)
    picture = unanswered("pair", values)
    for given, right in ((None, None), (3.0, None), (3.0, 3.5), (3.0, None)):
        picture.update(Asked(values=values, given=given, right=right))
        assert {"right eye", "left eye"} & texts_of(picture) == (
            set() if right is None else {"right eye", "left eye"}
        )


def test_pair_shades_no_lens_before_the_answer_where_that_would_tell():
    for shade in (True, False):
        values = pair_values(shade=shade)
        picture = unanswered("pair", values)
        for given, right in ((None, None), (3.0, None), (3.0, 3.5), (3.0, None)):
            picture.update(Asked(values=values, given=given, right=right))
            is_shaded = shade or right is not None
            asked, other = (picture.rims[eye].lens.get_facecolor() for eye in (Eye.RIGHT, Eye.LEFT))
            assert (asked != other) == is_shaded
            assert ("shaded: the lens asked about" in texts_of(picture)) == is_shaded


@pytest.mark.parametrize("seed", range(8))
def test_blank_is_a_circle_about_the_optical_centre_that_touches_the_outline(seed: int):
    picture, case = drawn("blank", seed)
    ((x, y),) = picture.lens.optical_centre.get_xydata()
    outline = picture.lens.glass.get_xy()[:-1]
    for sign, value in values_in(picture, case):
        assert np.hypot(*(sign.line.get_xydata() - (x, y)).T) == pytest.approx(value / 2)
        assert np.hypot(*(sign.mark.get_xydata()[0] - (x, y))) == pytest.approx(value / 2)
    assert np.hypot(*(outline - (x, y)).T).max() == pytest.approx(case.right / 2)
    assert np.hypot(*(outline - picture.right.mark.get_xydata()[0]).T).min() == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("name", ["blank", "edge-place"])
@pytest.mark.parametrize("seed", range(4))
def test_a_lens_from_the_front_keeps_its_centres_and_its_size(name: str, seed: int):
    picture, case = drawn(name, seed)
    values, lens = case.values, picture.lens
    (boxed,), (optical,) = lens.boxed_centre.get_xydata(), lens.optical_centre.get_xydata()
    outline = np.column_stack([values["outline_x_mm"], values["outline_y_mm"]])

    assert optical - boxed == pytest.approx([values["centre_x_mm"], values["centre_y_mm"]])
    assert lens.glass.get_xy()[:-1] - boxed == pytest.approx(outline)
    assert lens.boxed_centre.get_marker() != lens.optical_centre.get_marker()
    assert any("facing the wearer" in text for text in texts_of(picture))


@pytest.mark.parametrize("seed", range(8))
def test_edge_place_marks_the_outline_at_the_angle(seed: int):
    picture, case = drawn("edge-place", seed)
    outline = picture.lens.glass.get_xy()
    for sign, value in values_in(picture, case):
        start, end = sign.line.get_xydata()
        (mark,) = sign.mark.get_xydata()
        way = np.array([np.cos(np.radians(value)), np.sin(np.radians(value))])
        assert start.tolist() == [0.0, 0.0]
        assert end / np.hypot(*end) == pytest.approx(way)
        assert mark / np.hypot(*mark) == pytest.approx(way)
        assert distance_to(outline, mark) == pytest.approx(0.0, abs=1e-9)
        assert np.hypot(*mark) < np.hypot(*end), "the hand goes on to the ring"


def distance_to(outline: np.ndarray, point: np.ndarray) -> float:
    """How far a point lies from a closed line of straight pieces."""
    start, along = outline[:-1], np.diff(outline, axis=0)
    share = np.clip(((point - start) * along).sum(axis=1) / (along**2).sum(axis=1), 0.0, 1.0)
    return float(np.hypot(*(start + share[:, np.newaxis] * along - point).T).min())


def test_edge_place_hands_point_at_the_numbers_of_the_ring():
    picture, case = drawn("edge-place", 1)
    middle = np.array(picture.window.px(0.0, 0.0))
    for degrees in range(0, 360, 30):
        picture.update(Asked(values=case.values, given=float(degrees)))
        box = next(box for text, box in words(picture) if text == f"{degrees}")
        number = np.array([box[0] + box[2], box[1] + box[3]]) / 2 - middle
        end = np.array(picture.window.px(*picture.yours.line.get_xydata()[1])) - middle
        turned = np.degrees(np.arctan2(*number[::-1]) - np.arctan2(*end[::-1]))
        assert (turned + 180.0) % 360.0 - 180.0 == pytest.approx(0.0, abs=1.5)


@pytest.mark.parametrize(
    ("given", "said"), [(359.6, "0°"), (360.0, "0°"), (-30.0, "330°"), (4000.0, "40°"), (12.4, "12°")]
)
def test_edge_place_counts_any_angle_once_round(given: float, said: str):
    picture, case = drawn("edge-place", 1)
    picture.update(Asked(values=case.values, given=given))

    assert picture.yours.label.get_text() == f"yours {said}"


def test_edge_place_takes_both_ends_of_the_scale_for_one_place():
    picture, case = drawn("edge-place", 1)
    picture.update(Asked(values=case.values, given=359.9, right=0.2))

    assert picture.right.label.get_text() == "right, and yours 0°"


def test_edge_place_draws_the_cylinder_axis_only_where_there_is_one():
    for axis in (0.0, 30.0, 180.0):
        values = MAKE["edge-place"](1).values | {"axis_deg": axis}
        picture = unanswered("edge-place", values)
        said = texts_of(picture)
        assert picture.axis.get_visible() == ("cylinder axis" in said) == (axis > 0.0)
        if axis:
            (x0, y0), (x1, y1) = picture.axis.get_xydata()
            assert np.degrees(np.arctan2(y1 - y0, x1 - x0)) % 180.0 == pytest.approx(axis % 180.0)
            middle = [(x0 + x1) / 2, (y0 + y1) / 2]
            assert middle == pytest.approx([values["centre_x_mm"], values["centre_y_mm"]])
            assert picture.axis.get_linestyle() == "--"


@pytest.mark.parametrize(("eye", "nose"), [("right", 1), ("left", -1)])
def test_edge_place_says_which_eye_and_where_the_nose_is(eye: str, nose: int):
    values = MAKE["edge-place"](1).values | {"eye": eye}
    picture = unanswered("edge-place", values)
    boxes = dict(words(picture))

    assert f"Lens of the {eye} eye, facing the wearer" in boxes
    assert np.sign(boxes["nasal"][0] - boxes["temporal"][0]) == nose


@pytest.mark.parametrize("seed", range(12))
def test_section_brackets_are_as_long_as_the_thickness(seed: int):
    picture, case = drawn("section", seed)
    sides = {"left": [-1], "right": [1], "both": [-1, 1]}[case.values["side"]]
    for sign, value in values_in(picture, case):
        brackets = parts(sign.line)
        assert [np.sign(bracket[1, 0]) for bracket in brackets] == sides
        for bracket in brackets:
            assert np.ptp(bracket[:, 1]) == pytest.approx(value)
    for bracket, side in zip(parts(picture.right.line), sides, strict=True):
        edge = picture.edges[side].get_xydata()
        assert bracket[[1, 2], 1] == pytest.approx(edge[:, 1]), "from the front of the edge to its back"
        assert abs(edge[0, 0]) < abs(bracket[1, 0]) < abs(parts(picture.yours.line)[0][1, 0])


@pytest.mark.parametrize("seed", range(12))
def test_section_is_drawn_to_scale_with_its_measures(seed: int):
    picture, case = drawn("section", seed)
    values, halves = case.values, [measure.line.get_xydata() for measure in picture.halves]
    front, back = (line.get_xydata() for line in (picture.front, picture.back))

    assert picture.radii.get_visible()
    assert [np.ptp(half[:, 0]) for half in halves] == [values["half_left_mm"], values["half_right_mm"]]
    assert np.ptp(front[:, 0]) == pytest.approx(values["half_left_mm"] + values["half_right_mm"])
    axis = halves[0][0, 0]
    depth = np.interp(axis, *front.T) - np.interp(axis, *back.T)
    # Between two of the points a surface is drawn straight.
    assert depth == pytest.approx(values["centre_mm"], abs=0.05)
    assert f"centre {values['centre_mm']:g} mm" in texts_of(picture)
    for line, radius in ((front, values["front_radius_mm"]), (back, values["back_radius_mm"])):
        top, half = np.interp(axis, *line.T), values["half_left_mm"]
        assert top - line[0, 1] == pytest.approx(sag(radius, half), abs=0.05)
    (x0, y0), (x1, y1) = picture.scale.line.get_xydata()
    assert (x1 - x0, y1 - y0) == (pytest.approx(10.0), 0.0)


@pytest.mark.parametrize("seed", range(4))
def test_section_keeps_what_has_to_be_worked_out_until_it_is_answered(seed: int):
    for state in ("case alone", "given"):
        picture, case = drawn("section", seed, state)
        said = texts_of(picture)
        assert not any("radius" in text or "flat" in text for text in said)
        assert not {f"{case.values[half]:g} mm" for half in ("half_left_mm", "half_right_mm")} & said
        assert not any(part.get_visible() for half in picture.halves for part in (half.line, half.label))


def test_section_names_both_sides_once_it_is_answered():
    names = {"left_words": "nasal", "right_words": "temporal"}
    values = MAKE["section"](1).values | names
    picture = unanswered("section", values)
    assert not any("nasal" in text or "temporal" in text for text in texts_of(picture))
    picture.update(Asked(values=values, right=5.0))
    left, right = (measure.label.get_text() for measure in picture.halves)

    assert (left, right) == (
        f"nasal {values['half_left_mm']:g} mm",
        f"temporal {values['half_right_mm']:g} mm",
    )


def test_section_draws_a_negative_thickness_upwards():
    picture, case = drawn("section", 1)
    picture.update(Asked(values=case.values, given=-1.5, right=case.right))
    (bracket, *_) = parts(picture.yours.line)

    assert bracket[2, 1] - bracket[1, 1] == pytest.approx(1.5)
    assert picture.yours.label.get_text() == "yours -1.50 mm"


@pytest.mark.parametrize("side", ["left", "right", "both"])
def test_section_draws_the_edges_asked_about_heavy(side: str):
    values = MAKE["section"](1).values | {"half_left_mm": 20.0, "half_right_mm": 20.0, "side": side}
    picture = unanswered("section", values)
    heavy = [name for name, at in (("left", -1), ("right", 1)) if picture.edges[at].get_linewidth() > 3.0]

    assert heavy == ([side] if side != "both" else ["left", "right"])
    assert "heavy edge: asked about" in texts_of(picture)


@pytest.mark.parametrize(
    ("radius", "said"), [(132.5, "radius 132.5 mm"), (0.0, "flat"), (-90.0, "radius -90 mm")]
)
def test_section_says_its_radii(radius: float, said: str):
    values = MAKE["section"](1).values | {
        "front_radius_mm": radius,
        "back_radius_mm": 200.0,
        "centre_mm": 9.0,
    }
    picture = unanswered("section", values)

    assert picture.radii.get_text() == f"front {said},  back radius 200 mm"


@pytest.mark.parametrize("seed", range(8))
def test_cap_arcs_stand_on_the_chord_and_have_their_heights(seed: int):
    picture, case = drawn("cap", seed)
    half, radius = case.values["chord_mm"] / 2, case.values["radius_mm"]
    for sign, value in values_in(picture, case):
        arc, height = parts(sign.line)
        assert arc[[0, -1]] == pytest.approx(np.array([(-half, 0.0), (half, 0.0)]), abs=1e-9)
        assert arc[len(arc) // 2] == pytest.approx([0.0, value], abs=1e-9)
        assert height == pytest.approx(np.array([(0.0, 0.0), (0.0, value)]))
    surface = picture.surface.get_xydata()
    assert np.hypot(surface[:, 0], surface[:, 1] - case.right + radius) == pytest.approx(radius, rel=1e-6)


@pytest.mark.parametrize("height", [-3.0, 0.0, 10.0, 25.0, 40.0])
def test_cap_arcs_are_parts_of_one_circle(height: float):
    x, y = arc_mm(25.0, height).T
    if height == 0.0:
        assert not y.any()
        return
    radius = (25.0**2 + height**2) / (2.0 * height)

    assert np.hypot(x, y - height + radius) == pytest.approx(abs(radius))
    assert (np.diff(np.unwrap(np.arctan2(x, y - height + radius))) * np.sign(height) > 0.0).all()


@pytest.mark.parametrize(
    ("radius", "chord"), [(68.0, 52.0), (88.3, 50.0), (132.5, 66.0), (530.0, 60.0), (60.0, 30.0)]
)
def test_cap_has_room_for_the_height_over_twice_the_chord(radius: float, chord: float):
    values = {"radius_mm": radius, "chord_mm": chord}
    picture = unanswered("cap", values)
    picture.update(Asked(values=values, given=sag(radius, chord)))

    assert "off the picture" not in picture.yours.label.get_text()


def test_cap_says_chord_and_radius_and_draws_the_radius_towards_the_centre():
    picture = unanswered("cap", {"radius_mm": 88.3, "chord_mm": 50.0})
    (x0, y0), (x1, y1) = picture.radius.get_xydata()
    centre = sagitta_mm(88.3, 25.0) - 88.3

    assert {"chord 50 mm", "radius 88.3 mm"} <= texts_of(picture)
    assert (x1, y1) == (25.0, 0.0)
    assert (y1 - y0) / (x1 - x0) == pytest.approx(-centre / 25.0)


@pytest.mark.parametrize("seed", range(8))
def test_joints_have_bars_as_long_as_their_torques(seed: int):
    picture, case = drawn("joints", seed)
    values, rows = case.values, [row for row in picture.joints if row.bar.get_visible()]

    assert [row.name.get_text() for row in rows] == list(values["names"])
    assert [row.words.get_text() for row in rows] == [f"{value:.2f}" for value in values["values"]]
    for row, value in (*zip(rows, values["values"], strict=True), (picture.tip, values["back"])):
        assert row.bar.get_width() == pytest.approx(value * picture.px_per_nm)
        assert row.bar.get_x() == 0.0
    for sign, value in values_in(picture, case):
        places = np.concatenate(parts(sign.line))
        assert places[:, 0] == pytest.approx(value * picture.px_per_nm)
    assert picture.right.mark.get_ydata()[0] < picture.yours.mark.get_ydata()[0], "never in one line"


@pytest.mark.parametrize("seed", range(8))
def test_joints_hang_like_a_chain_between_block_and_lens_and_the_tip_is_no_link_of_it(seed: int):
    picture, _ = drawn("joints", seed)
    rows = [row for row in picture.joints if row.bar.get_visible()]
    ends = [(row.link.get_center()[1], row.link.get_height() / 2.0) for row in rows]
    block, lens = (
        (patch.get_y(), patch.get_y() + patch.get_height()) for patch in (picture.block, picture.lens)
    )

    for (upper, half), (lower, other) in itertools.pairwise(ends):
        assert upper > lower
        assert upper - half < lower + other, "each link passes through the next"
    assert ends[0][0] < block[0] < ends[0][0] + ends[0][1]
    assert ends[-1][0] - ends[-1][1] < lens[1] < ends[-1][0]
    post = picture.post.get_xy()
    assert post[:, 1].max() == pytest.approx(lens[0]), "it stands against the other side of the lens"
    assert post[:, 1].min() < picture.tip.number[2] < lens[0]
    assert not hasattr(picture.tip, "link")


@pytest.mark.parametrize("seed", range(SEEDS))
def test_joints_keep_the_line_of_an_answer_off_their_numbers(seed: int):
    picture, case = drawn("joints", seed)
    numbers = [row.words for row in (*picture.joints, picture.tip) if row.bar.get_visible()]
    renderer = picture.figure.canvas.get_renderer()
    for sign, _ in values_in(picture, case):
        for piece in parts(sign.line):
            (x, top), (_, low) = (picture.window.px(*end) for end in (piece[0], piece[-1]))
            for number in numbers:
                left, under, right, over = number.get_window_extent(renderer).extents
                assert not (left < x < right and under < top and low < over), (number.get_text(), x)
    assert parts(picture.right.line)[0][0, 1] > parts(picture.right.line)[-1][-1, 1]


@pytest.mark.parametrize("seed", range(8))
def test_joints_have_a_scale_with_few_tops(seed: int):
    picture, case = drawn("joints", seed)
    shown = [tick for tick in picture.ticks if tick.get_visible()]
    ticks = {float(tick.get_text()): tick.get_position()[0] for tick in shown}
    zero = picture.window.px(0.0, 0.0)[0]

    assert TICKS_NM[max(ticks)] == ticks_apart(ticks)
    strongest = max(case.values["values"]) + case.values["back"]
    assert strongest <= max(ticks) <= 2.0 * strongest, "no longer than it must be"
    picture.update(Asked(values=case.values, given=strongest))
    assert picture.yours.label.get_text() == f"yours {strongest:.2f} N m", "a usual mistake is seen"
    for torque, x in ticks.items():
        assert x - zero == pytest.approx(torque * picture.px_per_nm)
    assert picture.marks.get_xdata() == pytest.approx(
        [torque * picture.px_per_nm for torque in sorted(ticks)]
    )


def ticks_apart(ticks: dict) -> float:
    (apart,) = {round(upper - lower, 9) for lower, upper in itertools.pairwise(sorted(ticks))}
    return apart


def test_joints_lead_to_a_value_beyond_the_scale_with_an_arrow_from_its_end():
    picture, case = drawn("joints", 1)
    top = max(float(tick.get_text()) for tick in picture.ticks if tick.get_visible())
    picture.update(Asked(values=case.values, given=top * 1.01))
    (start, level), (end, other) = picture.yours.line.get_xydata()

    assert (start, level) == (pytest.approx(top * picture.px_per_nm), other)
    assert end > start
    assert "off the picture" in picture.yours.label.get_text()


FAULTS = {
    "no frame": ("pair", {"a_mm": 5.0}, "a_mm 5 is out of range"),
    "no distance": ("pair", {"left_pd_mm": -2.0}, "left_pd_mm -2 is out of range: give from 0 to 60 mm"),
    "no eye": ("pair", {"eye": "both"}, "eye 'both' is not an eye"),
    "from where": (
        "pair",
        {"measured_from": "nose"},
        "measured_from 'nose' is not known: give one of bridge",
    ),
    "uneven rows": (
        "blank",
        {"outline_x_mm": (1.0,) * 9},
        r"rows of shape \(9,\) and \(72,\): give two rows",
    ),
    "no point": ("blank", {"outline_x_mm": (float("nan"),) * 72}, "a number that is not finite: give"),
    "no centre": ("blank", {"centre_x_mm": None}, "centre_x_mm None is not a number"),
    "no axis": ("edge-place", {"axis_deg": 181.0}, "axis_deg 181 is out of range: give from 0 to 180"),
    "no lens": ("section", {"centre_mm": 0.0}, "centre_mm 0 is out of range: give above 0 and up to 60 mm"),
    "no side": ("section", {"side": "top"}, "side 'top' is not known: give one of left, right, both"),
    "no radius": ("section", {"back_radius_mm": "flat"}, "back_radius_mm 'flat' is not a number"),
    "too steep": ("section", {"back_radius_mm": 10.0}, "surface radius 10.0 mm does not reach"),
    "long side": (
        "section",
        {"left_words": "towards the nose"},
        "side 'towards the nose' is too long a name: give 10 letters at most",
    ),
    "no chord": ("cap", {"chord_mm": 0.0}, "chord_mm 0 is out of range"),
    "chord too long": ("cap", {"radius_mm": 9.0}, "surface radius 9.0 mm does not reach"),
    "too few values": ("joints", {"values": ()}, "and 0 values: give as many of both, 1 to 5"),
    "long name": (
        "joints",
        {"names": ("from the block to the pad",), "values": (1.0,)},
        "joint 'from the block to the pad' is too long a name: give 18 letters at most",
    ),
    "no torque": ("joints", {"back": -1.0}, "torque of back -1 is out of range: give from 0 to 10 N m"),
}


@pytest.mark.parametrize(("name", "replaced", "said"), FAULTS.values(), ids=FAULTS.keys())
def test_values_that_cannot_be_are_said(name: str, replaced: dict, said: str):
    values = MAKE[name](1).values | replaced
    picture = picture_for(Drawing(name=name, values=values))
    with pytest.raises(LabError, match=said):
        picture.update(Asked(values=values))
