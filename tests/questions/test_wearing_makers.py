"""Makers of the wearing position: the trade's own examples to the printed digit, and what is drawn."""

import pytest
from made_questions import SEEDS, answered, questions

from lablib.job.check_values import CheckedLens
from lablib.optics.best_form import Bending
from lablib.optics.prescription import Prescription
from lablib.questions import wearing
from lablib.questions.power.vertex import VertexCase
from lablib.questions.wearing.best_form import FormCase
from lablib.questions.wearing.case import TiltedSphere
from lablib.questions.wearing.centre_height import CentreCase
from lablib.questions.wearing.power_factor import FactorCase
from lablib.questions.wearing.verdict import CheckValueVerdict
from lablib.questions.wearing.where_read import ReadCase
from lablib.study.draws import Draws

MAKERS = {maker.name: maker for maker in wearing.MAKERS}
SIX_AT_TEN = TiltedSphere(power_d=-6.0, index=1.5, tilt_deg=10.0, is_wrap=False)


@pytest.mark.parametrize(
    ("slips", "down"),
    [
        ((), 4.0),
        (("millimetre-for-each-degree",), 8.0),
        (("raised",), -4.0),
        (("left-at-the-pupil",), 0.0),
        (("millimetre-for-each-degree", "raised"), -8.0),
    ],
)
def test_eight_degrees_of_tilt(slips: tuple[str, ...], down: float):
    """Common practice: 4 mm down; mistakes 8 down and 4 up."""
    case = CentreCase(pupil_height_mm=24.0, tilt_deg=8.0)
    assert answered("centre-height", case, *slips) == 24.0 - down


@pytest.mark.parametrize(
    ("slips", "written"),
    [
        ((), "-6.06 -0.19 x 180"),
        (("cylinder-of-tilt-forgotten",), "-6.06 DS"),
        (("axis-of-the-other-tilt",), "-6.06 -0.19 x 090"),
        (("sphere-kept",), "-6.00 -0.19 x 180"),
        (("sine-for-half-sine",), "-6.12 -0.19 x 180"),
        (("sphere-kept", "cylinder-of-tilt-forgotten"), "-6.00 DS"),
    ],
)
def test_minus_six_tilted_by_ten_degrees(slips: tuple[str, ...], written: str):
    assert str(answered("tilt-effect", SIX_AT_TEN, *slips)) == written


@pytest.mark.parametrize(
    ("slips", "written"),
    [
        ((), "-5.94 +0.18 x 180"),
        (("orders-the-effect",), "-6.06 -0.19 x 180"),
        (("orders-as-prescribed",), "-6.00 DS"),
        (("cylinder-left-out",), "-5.94 DS"),
        (("sign-of-the-cylinder-kept",), "-5.94 -0.18 x 180"),
    ],
)
def test_minus_six_ordered_for_ten_degrees(slips: tuple[str, ...], written: str):
    """The wrong order of the curriculum: the effect, -6.06, for its cure, -5.94."""
    assert str(answered("compensated-order", SIX_AT_TEN, *slips)) == written


def test_what_a_tilt_does_is_told_for_both_signs_and_lines():
    words = {
        (power, is_wrap): MAKERS["tilt-does"]
        .kind(TiltedSphere(power_d=power, index=1.5, tilt_deg=10.0, is_wrap=is_wrap))
        .written("stronger-with-cylinder")
        for power in (-6.0, 6.0)
        for is_wrap in (False, True)
    }
    assert words == {
        (-6.0, False): "A stronger sphere and a minus cylinder, axis 180.",
        (-6.0, True): "A stronger sphere and a minus cylinder, axis 090.",
        (6.0, False): "A stronger sphere and a plus cylinder, axis 180.",
        (6.0, True): "A stronger sphere and a plus cylinder, axis 090.",
    }


@pytest.mark.parametrize(
    ("slips", "factor"),
    [((), 1.064), (("way-to-the-pupil-left-out",), 1.050), (("turned-over",), 0.940)],
)
def test_plus_four_twelve_millimetres_away(slips: tuple[str, ...], factor: float):
    """+4.00, 12 mm and 3 mm on to the pupil: 1.064; 12 mm alone 1.050."""
    case = FactorCase(power_d=4.0, tested_mm=13.0, worn_mm=12.0)
    assert answered("power-factor-worn", case, *slips) == pytest.approx(factor, abs=5e-4)
    at_test = answered("power-factor-worn", case, "tested-distance")
    assert at_test == pytest.approx(1.0 / (1.0 - 0.016 * 4.0), abs=1e-9)


def three_columns(reading: str) -> CheckedLens:
    return CheckedLens(
        order=Prescription.parse("+4.00 -1.00 x 090"),
        check_value=Prescription.parse("+3.75 -0.79 x 094"),
        reading=Prescription.parse(reading),
        progressive=True,
    )


def test_a_progressive_that_was_nearly_sent_back():
    """Order +4.00 -1.00 x 090, check value +3.75 -0.79 x 094, reads +3.77 -0.80 x 093: make."""
    case = three_columns("+3.77 -0.80 x 093")
    assert answered("check-value-verdict", case) == "use-it"
    assert answered("check-value-verdict", case, "read-against-the-order") == "send-back"
    assert answered("off-the-check-value", case) == 0.02
    assert answered("off-the-check-value", case, "against-the-order") == -0.23
    assert answered("off-the-check-value", case, "check-value-against-order") == -0.25
    assert answered("off-the-check-value", case, "other-way-round") == -0.02


def test_a_lens_made_as_ordered_goes_back():
    case = three_columns("+4.00 -1.00 x 090")
    assert answered("check-value-verdict", case) == "send-back"
    assert answered("check-value-verdict", case, "read-against-the-order") == "use-it"


def test_where_both_columns_say_the_same_the_slip_is_one_of_reading_limits():
    case = three_columns("+4.50 -1.50 x 090")
    names = {slip.name for slip in CheckValueVerdict().slips_in(case)}
    assert "read-against-the-order" not in names
    assert answered("check-value-verdict", case, "limits-misread") == "use-it"
    also = {slip.name for slip in CheckValueVerdict().slips_in(three_columns("+3.77 -0.80 x 093"))}
    assert also == {"read-against-the-order", "orders-the-check-value", "asks-without-need"}


@pytest.mark.parametrize(
    ("power_d", "to_mm", "ordered"),
    [(-8.0, 8.0, "weaker"), (-8.0, 16.0, "stronger"), (8.0, 8.0, "stronger"), (8.0, 16.0, "weaker")],
)
def test_which_way_a_power_changes_with_the_vertex_distance(power_d: float, to_mm: float, ordered: str):
    case = VertexCase(rx=Prescription(sphere_d=power_d), from_mm=12.0, to_mm=to_mm)
    assert answered("vertex-way", case) == ordered
    assert answered("vertex-way", case, "wrong-way") == {"weaker": "stronger", "stronger": "weaker"}[ordered]


def test_where_a_compensated_lens_is_read_hangs_on_what_it_is():
    for progressive, point in ((True, "the distance circle"), (False, "the optical centre")):
        case = ReadCase(
            progressive=progressive,
            tilt_deg=10.0,
            wrap_deg=12.0,
            order=("square-at-its-point-against-the-check-value", "held-as-worn"),
        )
        right = MAKERS["where-it-is-read"].kind(case).written(answered("where-it-is-read", case))
        assert right == f"At {point}, back to the stop, square to it, against the check value."


def test_the_best_form_is_the_one_with_least_astigmatism_by_rays():
    case = FormCase(
        power_d=-4.0,
        index=1.5,
        centre_mm=2.0,
        fronts_d=(
            ("bent-both-ways", -2.0),
            ("flattest-for-looks", 0.5),
            ("best", 4.5),
            ("steeper-than-best", 9.0),
        ),
    )
    assert answered("best-form", case) == "best"
    assert abs(case.astigmatism_d("best")) < 0.1 < abs(case.astigmatism_d("steeper-than-best"))


def drawn_forms() -> list[FormCase]:
    return [MAKERS["best-form"].draw(Draws(seed)) for seed in SEEDS]


def test_what_is_said_of_the_forms_holds_for_every_lens_drawn():
    """Bent both ways is worst, steep has the other sign, and the best front is near what a search finds."""
    for case in set(drawn_forms()):
        found = {key: case.astigmatism_d(key) for key, _ in case.fronts_d}
        assert all(abs(found["best"]) < 0.5 * abs(one) for key, one in found.items() if key != "best"), case
        if "bent-both-ways" in found:
            assert max(found, key=lambda key: abs(found[key])) == "bent-both-ways", (case, found)
        if {"steeper-than-best", "flattest-for-looks"} <= found.keys():
            assert found["steeper-than-best"] * found["flattest-for-looks"] < 0.0, (case, found)


@pytest.mark.parametrize("power_d", [-6.0, -3.0, 3.0, 5.0])
@pytest.mark.parametrize("index", [1.5, 1.6])
def test_a_best_front_drawn_is_the_flatter_one_a_search_finds(power_d: float, index: float):
    bending = Bending(power_d=power_d, index=index, centre_thickness_mm=2.0 if power_d < 0.0 else 5.0)
    searched = bending.front_curves_d(gaze_deg=30.0)[0]
    drawn = {
        dict(case.fronts_d)["best"]
        for case in drawn_forms()
        if (case.power_d, case.index) == (power_d, index)
    }
    assert drawn
    assert all(front == pytest.approx(searched, abs=0.5) for front in drawn)


def test_the_best_front_has_no_place_of_its_own_among_the_options():
    places = {[key for key, _ in case.fronts_d].index("best") for case in drawn_forms()}
    last = {case.fronts_d[-1][0] == "best" for case in drawn_forms()}
    assert places == {1, 2}
    assert last == {True, False}


def test_every_decision_is_right_now_and_then():
    assert {question.right for question in questions("check-value-verdict")} == {"use-it", "send-back"}
    assert {question.right for question in questions("vertex-way")} == {"stronger", "weaker"}


def test_a_verdict_never_hangs_on_the_last_hundredth():
    for seed in SEEDS:
        case = MAKERS["check-value-verdict"].draw(Draws(seed))
        for line in (*case.against_check_value, *case.against_order):
            if line.unit == "D":
                assert abs(abs(line.off) - line.limit) > 0.01
