"""Makers of power in place: the trade's own examples, to the printed digits, and what is drawn."""

from functools import cache

import pytest
from made_questions import SEEDS, questions

from lablib.optics.focimeter_reading import SharpLine
from lablib.optics.prescription import Prescription
from lablib.questions import power
from lablib.questions.answers.prescription import OTHER_FORM
from lablib.questions.power.focimeter import ReadingCase
from lablib.questions.power.magnified import MagnifiedCase
from lablib.questions.power.meridian import MeridianCase
from lablib.questions.power.tasks import FORMULAS, TASKS
from lablib.questions.power.vertex import VertexCase
from lablib.study.draws import Draws
from lablib.study.marking import State, mark

MAKERS = {maker.name: maker for maker in power.MAKERS}
# Half of the last printed digit.
D, CM = 0.005, 0.05


@cache
def cases(name: str) -> tuple[object, ...]:
    """Return the first case drawn for every seed."""
    return tuple(MAKERS[name].draw(Draws(seed)) for seed in SEEDS)


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


# --- Focal length ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("power_d", "slips", "length_cm"),
    [
        (4.0, set(), 25.0),
        (4.0, {"metres-for-centimetres"}, 0.25),
        (4.0, {"power-for-its-reciprocal"}, 4.0),
        (-4.0, set(), -25.0),
        (-4.0, {"minus-focus-put-behind"}, 25.0),
        (-4.0, {"power-for-its-reciprocal", "minus-focus-put-behind"}, 4.0),
    ],
)
def test_focal_length_of_the_trades_example(power_d: float, slips: set[str], length_cm: float):
    """Definition of the dioptre: 100 / 4 = 25 cm."""
    assert MAKERS["focal-length"].answer(power_d, slips) == pytest.approx(length_cm)


def test_a_plus_lens_has_no_sign_to_lose_and_both_signs_are_asked():
    for case, question in zip(cases("focal-length"), questions("focal-length"), strict=True):
        names = [mistake.slips[0].name for mistake in question.mistakes]
        assert ("minus-focus-put-behind" in names) == (question.right < 0.0)
        assert 1.0 <= abs(case) <= 12.0
    assert {case > 0.0 for case in cases("focal-length")} == {True, False}


def test_a_length_in_metres_is_taken_with_its_unit():
    question = next(one for one in questions("focal-length") if one.right == 40.0)
    assert mark(question, "+0.40 m").state is State.RIGHT
    assert mark(question, "0.40").state is State.WRONG


# --- Power in a meridian --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "power_d"),
    [
        (set(), -2.75),
        ({"cosine-for-sine"}, -4.25),
        ({"straight-line-share"}, -3.00),
        ({"whole-cylinder"}, -5.00),
    ],
)
def test_power_in_a_meridian_of_the_trades_example(slips: set[str], power_d: float):
    """Computed: -2.00 -3.00 x 030 in 180, S + C sin2."""
    case = MeridianCase(rx=rx(-2.0, -3.0, 30.0), meridian_deg=180.0)
    assert MAKERS["power-in-meridian"].answer(case, slips) == pytest.approx(power_d, abs=D)


@pytest.mark.parametrize(
    ("axis", "meridian", "turn"), [(30, 180, 30), (150, 180, 30), (20, 90, 70), (5, 120, 65)]
)
def test_the_angle_is_counted_the_short_way(axis: float, meridian: float, turn: float):
    assert MeridianCase(rx=rx(1.0, -1.0, axis), meridian_deg=meridian).turn_deg == turn


def test_a_meridian_is_never_one_of_the_lens_itself_and_the_power_has_a_clear_sign():
    for case, question in zip(cases("power-in-meridian"), questions("power-in-meridian"), strict=True):
        assert 15.0 <= case.turn_deg <= 75.0
        assert abs(question.right) > 0.25 - 1e-4
    assert {case.rx.cylinder_d > 0.0 for case in cases("power-in-meridian")} == {True, False}


# --- Vertex distance ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("power_d", "slips", "worn_d"),
    [
        (-10.0, set(), -8.93),
        (-10.0, {"wrong-way"}, -11.36),
        (-10.0, {"millimetres-for-metres"}, -0.08),
        (-10.0, {"rule-for-exact"}, -8.80),
        (-10.0, {"rule-for-exact", "wrong-way"}, -11.20),
        (-10.0, {"rule-for-exact", "millimetres-for-metres"}, 1190.0),
        (10.0, set(), 11.36),
        (10.0, {"wrong-way"}, 8.93),
    ],
)
def test_vertex_distance_of_the_trades_example(power_d: float, slips: set[str], worn_d: float):
    """C. W. Brooks, Understanding Lens Surfacing: F / (1 - d F), 12 mm to the cornea; rule: d F2."""
    case = VertexCase(rx=rx(power_d), from_mm=12.0, to_mm=0.0)
    assert MAKERS["vertex-sphere"].answer(case, slips) == pytest.approx(worn_d, abs=D)


def test_the_rule_of_thumb_is_a_slip_only_where_it_parts_from_the_exact_power():
    maker = MAKERS["vertex-sphere"]
    near = VertexCase(rx=rx(-6.0), from_mm=14.0, to_mm=10.0)
    far = VertexCase(rx=rx(-14.0), from_mm=14.0, to_mm=0.0)
    assert "rule-for-exact" not in [slip.name for slip in maker.slips_in(near)]
    assert "rule-for-exact" in [slip.name for slip in maker.slips_in(far)]


def test_lenses_go_nearer_farther_and_to_the_cornea():
    ways = {(case.to_mm == 0.0, case.to_mm > case.from_mm) for case in cases("vertex-sphere")}
    assert ways == {(True, False), (False, False), (False, True)}


@pytest.mark.parametrize(
    ("slips", "written"),
    [
        (set(), "-5.60 -2.53 x 180"),
        ({"sphere-moved-alone"}, "-5.60 -3.00 x 180"),
        ({"cylinder-moved-by-itself"}, "-5.60 -2.90 x 180"),
        ({"wrong-way"}, "-6.47 -3.62 x 180"),
        ({"wrong-way", "sphere-moved-alone"}, "-6.47 -3.00 x 180"),
    ],
)
def test_a_toric_lens_of_the_trades_example(slips: set[str], written: str):
    """C. W. Brooks, Understanding Lens Surfacing, both meridians: -6.00 -3.00 x 180, 12 mm to the cornea."""
    case = VertexCase(rx=rx(-6.0, -3.0, 180.0), from_mm=12.0, to_mm=0.0)
    assert str(MAKERS["vertex-toric"].answer(case, slips)) == written


def test_a_toric_lens_may_be_written_in_either_form():
    for question in questions("vertex-toric")[:50]:
        assert mark(question, str(question.right.transposed())).state is State.RIGHT


# --- Magnification --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "factor"),
    [
        (set(), 1.08705),
        ({"shape-factor-left-out"}, 1.06383),
        ({"power-factor-left-out"}, 1.02183),
        ({"way-to-the-pupil-left-out"}, 1.02183 * 1.05042),
        ({"shape-factor-left-out", "way-to-the-pupil-left-out"}, 1.05042),
    ],
)
def test_magnification_of_the_trades_example(slips: set[str], factor: float):
    """Computed: F1 +8.00, t 4, n 1.498, back vertex +4.00, 12 mm and 3 mm more to the entrance pupil."""
    case = MagnifiedCase(power_d=4.0, front_d=8.0, thickness_mm=4.0, index=1.498, vertex_mm=12.0)
    assert MAKERS["spectacle-magnification"].answer(case, slips) == pytest.approx(factor, abs=6e-6)


def test_larger_and_smaller_images_are_asked():
    assert {question.right > 1.0 for question in questions("spectacle-magnification")} == {True, False}


# --- The focimeter --------------------------------------------------------------------------------------

READINGS = ReadingCase(
    first=SharpLine(drum_d=2.0, line_deg=110.0), second=SharpLine(drum_d=0.5, line_deg=20.0)
)


@pytest.mark.parametrize(
    ("slips", "written"),
    [
        (set(), "+2.00 -1.50 x 020"),
        ({"second-reading-as-cylinder"}, "+2.00 +0.50 x 020"),
        ({"axis-off-the-sphere-line"}, "+2.00 -1.50 x 110"),
        ({"cylinder-backwards"}, "+2.00 +1.50 x 020"),
        ({OTHER_FORM.name}, "+0.50 +1.50 x 110"),
        ({"second-reading-as-cylinder", "axis-off-the-sphere-line"}, "+2.00 +0.50 x 110"),
        ({OTHER_FORM.name, "axis-off-the-sphere-line"}, "+0.50 +1.50 x 020"),
    ],
)
def test_two_readings_of_the_trades_example(slips: set[str], written: str):
    """Common practice: +2.00 sharp along 110, then +0.50 along 20."""
    assert str(MAKERS["focimeter-reading"].answer(READINGS, slips)) == written


def test_the_most_plus_reading_comes_first_and_no_reading_is_plano():
    for case in cases("focimeter-reading"):
        assert case.first.drum_d > case.second.drum_d
        assert case.first.drum_d
        assert case.second.drum_d
        assert abs(case.first.line_deg - case.second.line_deg) == 90.0


# --- Which formula --------------------------------------------------------------------------------------


def test_every_formula_is_asked_for_by_a_task_and_four_are_shown():
    assert set(TASKS) == set(FORMULAS)
    assert {case.right for case in cases("which-formula")} == set(FORMULAS)
    for case in cases("which-formula"):
        assert len(case.shown) == 4
        assert case.right in case.shown


@pytest.mark.parametrize("key", FORMULAS)
def test_every_task_is_a_text_of_its_own_without_the_formulas_name(key: str):
    named = {"meridian": "meridian", "equivalent": "equivalent", "vertex": "vertex", "focal-length": "focal"}
    texts = [task(Draws(seed)) for task in TASKS[key] for seed in range(40)]
    assert len(set(texts)) > 30
    for text in texts:
        assert named.get(key, key) not in text
        assert text.endswith(".")


def test_the_slip_is_named_by_the_formula_that_was_taken():
    question = questions("which-formula")[0]
    for mistake in question.mistakes:
        assert mark(question, mistake.value).slips[0].name == f"takes-{mistake.value}"


def test_a_chart_of_front_curves_leaves_no_choice_of_power():
    """One rule for the front curve starts from the equivalent, another from the stronger meridian."""
    one_sphere, chart = (task(Draws(1)) for task in TASKS["equivalent"])
    assert "half way between the two meridians" in chart
    assert "in the middle" in one_sphere
