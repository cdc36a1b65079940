"""The back vertex power from two surfaces, worked."""

import random

import pytest
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.thick_lens import back_vertex_power_d
from lablib.optics.thick_lens_workings import back_vertex_power_workings


# Computed from F1 / (1 - t F1 / n) + F2, M. Jalie, The Principles of Ophthalmic Lenses (from memory).
def test_what_a_learner_reads():
    brought, power = back_vertex_power_workings(10.0, -4.0, thickness_mm=6.0, index=1.523)
    assert brought.substituted == "10.00 / (1 - 6.0 / 1000 * 10.00 / 1.523)"
    assert (brought.result, power.substituted, power.result) == ("10.410 D", "10.410 + (-4.00)", "6.41 D")


def test_workings_come_out_and_end_with_the_numeric_function():
    for seed in range(200):
        draw = random.Random(seed)
        front, back = draw.randrange(-40, 49) / 4, draw.randrange(-60, 41) / 4
        thickness, index = draw.randrange(10, 90) / 10, draw.choice((1.498, 1.523, 1.586, 1.66))
        steps = back_vertex_power_workings(front, back, thickness_mm=thickness, index=index)
        assert_worked(steps)
        assert steps[-1].value == back_vertex_power_d(front, back, thickness, index)


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"front_d": 26.0}, "front surface power 26 is out of range: give from -25 to 25 D"),
        ({"back_d": -26.0}, "back surface power -26 is out of range: give from -25 to 25 D"),
        ({"thickness_mm": 0.0}, "centre thickness 0 is out of range: give above 0 and up to 60 mm"),
        ({"index": 1.0}, "index 1 is out of range: give from 1.4 to 1.95"),
    ],
)
def test_what_no_lens_has_is_refused(changed: dict, words: str):
    values = {"front_d": 8.0, "back_d": -4.0, "thickness_mm": 5.0, "index": 1.5} | changed
    with pytest.raises(LabError, match=words):
        back_vertex_power_workings(
            values["front_d"], values["back_d"], thickness_mm=values["thickness_mm"], index=values["index"]
        )
