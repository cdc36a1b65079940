"""Which way the cutting torque goes: what questions say of each change, worked out on the bench."""

from dataclasses import replace

import pytest
from random_jobs import job
from reference_jobs import work

from lablib.bench.machine import Bench, lens_material
from lablib.bench.margin import CutResult
from lablib.questions.cutting.changes import changes

HARD = {"coat": "slick", "skin": "clean", "pad_age_months": 0.0}
# What each change is on the bench: parts of the lens, the material, the bench, the setup before and after.
ON_THE_BENCH = {
    "slower-lens": {"after": {"lens_speed_rpm": 6.0}},
    "faster-lens": {"after": {"lens_speed_rpm": 10.0}},
    "faster-wheel": {"bench": {"wheel_speed_rpm": 4000.0}},
    "slower-wheel": {"bench": {"wheel_speed_rpm": 2500.0}},
    "larger-wheel": {"bench": {"wheel_diameter_mm": 120.0}},
    "smaller-bites": {"material": {"depth_per_turn_mm": 1.0}},
    "deeper-bites": {"material": {"depth_per_turn_mm": 3.0}},
    "glazed-wheel": {"after": {"wheel": "glazed"}},
    "loaded-wheel": {"after": {"wheel": "loaded"}},
    "smaller-blank": {"parts": {"blank_mm": 66.0}},
    "larger-blank": {"parts": {"blank_mm": 76.0}},
    "thinner-edge": {"parts": {"index": 1.74}},
    "thicker-edge": {"parts": {"index": 1.6}},
    "torque-cap": {"after": {"feed": "torque cap", "torque_cap_nmm": 500.0}},
    "roughed-dry": {"after": {"water": "dry"}},
    "film": {"after": {"film": True}},
    "tape": {"after": {"back_tape": True}},
    "fresh-pad": {"before": {"pad_age_months": 9.0}},
    "cleaned": {"before": {"skin": "oily"}},
    "ordinary-coat": {"after": {"coat": "coated"}},
    "half-eye": {"after": {"block": "half-eye"}},
}


def peaks(name: str) -> tuple[CutResult, CutResult]:
    """The hard job before a change and after it."""
    made = ON_THE_BENCH[name]
    material = replace(lens_material("thiourethane-1.67"), **made.get("material", {}))
    before = work(material=lens_material("thiourethane-1.67"), **(HARD | made.get("before", {})))
    after = work(
        made.get("parts"),
        material=material,
        bench=Bench(**made.get("bench", {})),
        **(HARD | made.get("after", {})),
    )
    return before, after


@pytest.mark.parametrize("name", list(changes()))
def test_a_change_does_what_the_table_says(name: str):
    before, after = (result.peak_cutting_torque_nmm for result in peaks(name))
    if changes()[name].does == "same":
        assert after == pytest.approx(before, rel=1e-12)
        assert peaks(name)[0].margin != pytest.approx(peaks(name)[1].margin, rel=0.01)
    else:
        assert ("less" if after < 0.95 * before else "more" if after > 1.05 * before else "") == changes()[
            name
        ].does


@pytest.mark.parametrize("seed", range(6))
def test_the_directions_hold_on_random_jobs(seed: int):
    drawn = job(seed)
    peak = drawn.result().peak_cutting_torque_nmm
    depth = drawn.material.depth_per_turn_mm

    def after(parts: dict | None = None, **changed: object) -> float:
        return drawn.result(parts, **changed).peak_cutting_torque_nmm

    # A motor at its limit gives no more force, dry or wet.
    assert after(water="dry") >= peak
    assert (
        after({"blank_mm": drawn.parts["blank_mm"] - 4.0})
        < peak
        < after({"blank_mm": drawn.parts["blank_mm"] + 4.0})
    )
    assert after(material={"depth_per_turn_mm": max(0.75, 0.6 * depth)}) < peak or depth < 0.8
    assert after(wheel="glazed") >= peak
    assert after(lens_speed_rpm=5.0) <= peak <= after(lens_speed_rpm=15.0)
