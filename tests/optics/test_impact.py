"""Impact: the falling ball, the least thickness of safety lenses, what counts as broken, cautions."""

import math

import pytest
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.impact import (
    DropBall,
    dress_drop_ball,
    fracture_words,
    impact_cautions,
    least_safety_thickness_mm,
    safety_levels,
    safety_source,
)
from lablib.optics.material_workings import drop_ball_workings


def test_the_ball_of_dress_lenses():
    """21 CFR 801.410: 5/8 inch, about 0.56 oz, 50 inches; 15.88 g from 1.27 m is 0.198 J at 4.99 m/s."""
    ball = dress_drop_ball()
    assert (ball.mass_g, ball.height_mm) == (15.88, 1270.0)
    assert ball.energy_j == pytest.approx(0.198, abs=0.0005)
    assert ball.speed_m_per_s == pytest.approx(4.99, abs=0.005)
    assert "801.410" in ball.source
    assert ball.grade == "published"
    # A steel ball of 5/8 inch weighs that: 7.8 g/cm3 (from memory).
    steel_g = 7.8 * math.pi / 6.0 * (0.625 * 2.54) ** 3
    assert steel_g == pytest.approx(ball.mass_g, abs=0.7)
    assert_worked(drop_ball_workings(ball))


@pytest.mark.parametrize(
    ("level", "most_plus", "least"),
    [
        ("basic", 0.0, 3.0),
        ("basic", 2.99, 3.0),
        ("basic", 3.0, 2.5),
        ("basic", 6.0, 2.5),
        ("basic", -6.0, 3.0),
        ("impact-rated", -6.0, 2.0),
        ("impact-rated", 6.0, 2.0),
    ],
)
def test_least_thickness_of_safety_lenses(level: str, most_plus: float, least: float):
    """ANSI Z87.1-2020 as quoted in an insurer's manual: basic 3.0, from +3.00 D 2.5, impact rated 2.0 mm."""
    assert least_safety_thickness_mm(level, most_plus_d=most_plus) == least


def test_words_have_their_sources_and_cautions_stand_there():
    words, source = fracture_words()
    assert "whole diameter" in words
    assert "Z80.3-2001" in source
    assert "Z87.1-2020" in safety_source()
    assert list(safety_levels()) == ["basic", "impact-rated"]
    cautions = " ".join(impact_cautions())
    assert "complete, marked pair" in cautions
    assert "current edition" in cautions
    assert "never edged or drilled" in cautions


def test_what_cannot_be_is_refused():
    with pytest.raises(LabError, match="level of a safety lens 'strong' is not known: give one of basic"):
        least_safety_thickness_mm("strong", most_plus_d=0.0)
    with pytest.raises(LabError, match="most plus meridian 90 is out of range"):
        least_safety_thickness_mm("basic", most_plus_d=90.0)
    with pytest.raises(LabError, match="mass of the ball 0 is out of range"):
        DropBall(mass_g=0.0, height_mm=1000.0)
    with pytest.raises(LabError, match="height of the fall -1 is out of range"):
        DropBall(mass_g=10.0, height_mm=-1.0)
    with pytest.raises(LabError, match="drop ball has the grade 'good'"):
        DropBall(mass_g=10.0, height_mm=100.0, grade="good")
