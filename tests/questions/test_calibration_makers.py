"""Makers on calibration: the handbook's readings to the printed digit, and what the data hold."""

import pytest
from made_questions import answered, questions

from lablib.bench.fitted import Fitted
from lablib.bench.grip_fit_workings import ReadingsOnALine
from lablib.datafile import require_grade
from lablib.questions.calibration.scrap import ScrapCase
from lablib.questions.calibration.sure import IntervalCase, NeededCase
from lablib.questions.calibration.told import ReadingsCase, table

EXACT = ReadingsOnALine(
    across_mm=24.0, forces_n=(100.0, 200.0, 300.0, 400.0), torques_nmm=(284.6, 460.6, 636.6, 812.6)
)


@pytest.mark.parametrize(
    ("slips", "friction"),
    [
        ((), 0.22),
        (("through-the-origin",), 0.27),
        (("diameter-for-radius",), 0.11),
        (("rim-for-mean-lever",), 0.147),
        (("through-the-origin", "diameter-for-radius"), 0.133),
    ],
)
def test_the_friction_of_the_exact_readings(slips: tuple[str, ...], friction: float):
    assert answered("grip-friction-from-line", EXACT, *slips) == pytest.approx(friction, abs=5e-3)


@pytest.mark.parametrize(
    ("slips", "shear"),
    [
        ((), 0.03),
        (("diameter-for-radius",), 0.004),
        (("area-times-radius",), 0.02),
        (("friction-left-in",), 0.079),
        (("newton-metres-for-millimetres",), 30.0),
    ],
)
def test_the_shear_strength_of_the_exact_readings(slips: tuple[str, ...], shear: float):
    assert answered("grip-shear-from-line", EXACT, *slips) == pytest.approx(shear, rel=0.07)


@pytest.mark.parametrize(
    ("slips", "end"),
    [
        ((), 0.1933),
        (("one-error-taken",), 0.208),
        (("divided-by-the-readings-again",), 0.2123),
        (("upper-end-given",), 0.2467),
    ],
)
def test_the_lower_end_of_twelve_readings(slips: tuple[str, ...], end: float):
    case = IntervalCase(fitted=Fitted(value=0.22, error=0.012), readings=12)
    assert answered("lower-end-of-a-fit", case, *slips) == pytest.approx(end, abs=5e-5)


@pytest.mark.parametrize(
    ("slips", "readings"), [((), 48), (("root-forgotten",), 24), (("further-readings-given",), 36)]
)
def test_half_the_error_of_twelve_readings(slips: tuple[str, ...], readings: int):
    case = NeededCase(readings=12, error=0.02, wanted=0.01)
    assert answered("readings-for-an-error", case, *slips) == pytest.approx(readings)


@pytest.mark.parametrize(
    ("slips", "thickness"),
    [
        ((), 1.41),
        (("root-not-taken",), 1.98),
        (("bending-share-left-out",), 3.15),
        (("two-sides-counted",), 1.99),
    ],
)
def test_400_n_on_the_bench_of_the_table(slips: tuple[str, ...], thickness: float):
    case = ScrapCase(force_n=400.0, share=0.2, stress_mpa=25.0)
    assert answered("scrap-for-a-force", case, *slips) == pytest.approx(thickness, abs=5e-3)


def test_every_set_of_readings_offers_what_is_right_once_and_always_the_clamp():
    for key, row in table()["readings"].items():
        assert row["right"] in table()["action"], key
        assert row["right"] not in row["offered"], key
        assert len(set(row["offered"])) == 4, key
        assert set(row["offered"]) <= set(table()["action"]), key
        assert "clamp" in row["offered"], key


def test_the_machines_clamp_is_never_right():
    assert "clamp" not in {row["right"] for row in table()["readings"].values()}
    case = ReadingsCase(readings="beyond-above", keys=("silent", "clamp", "fit", "apart"))
    assert answered("what-of-these-readings", case) == "silent"
    assert answered("what-of-these-readings", case, "chose-clamp") == "clamp"


def test_every_set_of_readings_is_asked():
    asked = {question.prompt for question in questions("what-of-these-readings")}
    assert len(asked) == len(table()["readings"])


def test_the_table_says_where_it_comes_from():
    require_grade("told.toml", table()["grade"])
    assert table()["source"]
