"""One prism in every notation of its base."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from test_prescription_properties import eyes, tried

from lablib.errors import LabError
from lablib.optics.base_notation import base_notations
from lablib.optics.base_reading import read_prism
from lablib.optics.eye import Eye
from lablib.optics.prism import together


def all_of(eye: str, inwards: float, upwards: float) -> tuple[str, str, str, str]:
    found = base_notations(eye=eye, in_prism_d=inwards, up_prism_d=upwards)
    return found.words, found.letters, found.full_circle, found.half_circle


# 360 notation: ISO 8429. Half circle: common practice, degrees as an axis has them and up or down.
# 1.5 up with 2 in is 2.50 at 36.87 and at 143.13 (published values, computed).
@pytest.mark.parametrize(
    ("eye", "parts", "expected"),
    [
        (
            "right",
            (2, 1.5),
            (
                "2.00 base in with 1.50 base up",
                "2.00 BI 1.50 BU",
                "2.50 base at 37 degrees",
                "2.50 base up at 37 degrees",
            ),
        ),
        (
            "left",
            (2, 1.5),
            (
                "2.00 base in with 1.50 base up",
                "2.00 BI 1.50 BU",
                "2.50 base at 143 degrees",
                "2.50 base up at 143 degrees",
            ),
        ),
        (
            "right",
            (-2, -1.5),
            (
                "2.00 base out with 1.50 base down",
                "2.00 BO 1.50 BD",
                "2.50 base at 217 degrees",
                "2.50 base down at 37 degrees",
            ),
        ),
        (
            "right",
            (2, 0),
            ("2.00 base in", "2.00 BI", "2.00 base at 0 degrees", "2.00 base in at 180 degrees"),
        ),
        (
            "right",
            (-2, 0),
            ("2.00 base out", "2.00 BO", "2.00 base at 180 degrees", "2.00 base out at 180 degrees"),
        ),
        (
            "left",
            (2, 0),
            ("2.00 base in", "2.00 BI", "2.00 base at 180 degrees", "2.00 base in at 180 degrees"),
        ),
        (
            "left",
            (-2, 0),
            ("2.00 base out", "2.00 BO", "2.00 base at 0 degrees", "2.00 base out at 180 degrees"),
        ),
        (
            "left",
            (0, 1),
            ("1.00 base up", "1.00 BU", "1.00 base at 90 degrees", "1.00 base up at 90 degrees"),
        ),
        (
            "right",
            (0, -1),
            ("1.00 base down", "1.00 BD", "1.00 base at 270 degrees", "1.00 base down at 90 degrees"),
        ),
        ("right", (0, 0), ("no prism",) * 4),
        # A hundredth below the line rounds onto it: still told in from out.
        (
            "right",
            (2, -0.01),
            (
                "2.00 base in with 0.01 base down",
                "2.00 BI 0.01 BD",
                "2.00 base at 0 degrees",
                "2.00 base in at 180 degrees",
            ),
        ),
    ],
)
def test_every_notation(eye: str, parts: tuple, expected: tuple):
    assert all_of(eye, *parts) == expected


def test_the_numbers_behind_the_words():
    found = base_notations(eye="right", in_prism_d=-2, up_prism_d=-1.5)
    assert found.amount_prism_d == 2.5
    assert found.full_circle_deg == pytest.approx(216.87, abs=0.005)
    assert found.half_circle_deg == pytest.approx(36.87, abs=0.005)
    assert found.half_circle_way == "down"


@tried
@given(eyes, st.integers(-800, 800), st.integers(-800, 800))
def test_what_is_written_is_read_again(eye: Eye, inwards: int, upwards: int):
    assume(inwards or upwards)
    parts = inwards / 100, upwards / 100
    found = base_notations(eye=eye, in_prism_d=parts[0], up_prism_d=parts[1])
    for text in (found.words, found.letters):
        assert together(read_prism(text).prisms, eye=eye) == pytest.approx(parts)
    # Whole degrees and hundredths: off by at most half a degree of the amount.
    slack = found.amount_prism_d * 0.0088 + 0.0071
    assert together(read_prism(found.full_circle).prisms, eye=eye) == pytest.approx(parts, abs=slack)
    assert found.half_circle_deg == pytest.approx(found.full_circle_deg % 180 or 180)
    assert (found.half_circle_way == "up") == (upwards > 0)


def test_words():
    with pytest.raises(LabError, match="eye 'both' is not an eye"):
        base_notations(eye="both", in_prism_d=1, up_prism_d=0)
    with pytest.raises(LabError, match="prism base in nan is not a finite number"):
        base_notations(eye="left", in_prism_d=float("nan"), up_prism_d=0)
