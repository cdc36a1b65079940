"""Workings of prism: resolving, resultant, decentration, thickness. Each comes out, over many inputs."""

import random

import pytest
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import (
    Prism,
    decentration_for,
    prism_at,
    resultant,
    thickness_difference_mm,
)
from lablib.optics.prism_workings import (
    decentration_workings,
    resolving_workings,
    resultant_workings,
    thickness_difference_working,
)

eyes = pytest.mark.parametrize("eye", list(Eye))


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


@eyes
def test_resolving(eye: Eye):
    for seed in range(200):
        draw = random.Random(seed)
        base = draw.choice(["in", "out", "up", "down", draw.randrange(0, 361), draw.randrange(0, 721) / 2])
        prism = Prism(amount_prism_d=draw.randrange(0, 41) / 4, base=base)
        steps = resolving_workings(prism, eye=eye)
        assert_worked(steps)
        assert tuple(step.value for step in steps) == prism.resolved(eye=eye)


# Computed (published values, prism): 1.5 base 255 is 1.449 down with 0.388 out, right; in, left.
def test_what_a_learner_reads_of_resolving():
    prism = Prism(amount_prism_d=1.5, base=255)
    inwards, upwards = resolving_workings(prism, eye="right")
    assert (inwards.substituted, inwards.result) == ("1.50 * cos(255)", "-0.39 prism dioptres")
    assert upwards.result == "-1.45 prism dioptres"
    assert resolving_workings(prism, eye="left")[0].substituted == "-1.50 * cos(255)"
    assert [
        step.substituted for step in resolving_workings(Prism(amount_prism_d=2, base="out"), eye="left")
    ] == [
        "-2.00",
        "0",
    ]


@eyes
def test_resultant(eye: Eye):
    for seed in range(300):
        draw = random.Random(seed)
        parts = {
            "in_prism_d": draw.choice([0.0, 0.001, draw.randrange(-40, 41) / 8]),
            "up_prism_d": draw.choice([0.0, -0.001, draw.randrange(-40, 41) / 8]),
        }
        prism, steps = resultant(eye=eye, **parts), resultant_workings(eye=eye, **parts)
        assert_worked(steps)
        assert steps[0].value == prism.amount_prism_d
        if any(parts.values()):
            assert steps[-1].value == prism.base
        else:
            assert len(steps) == 1


# Computed (published values, prism): 1.5 up with 2 in is 2.50 at 36.87, right, and at 143.13, left.
@pytest.mark.parametrize(
    ("eye", "parts", "base", "result"),
    [
        ("right", (2.0, 1.5), "36.87", "36.87 degrees"),
        ("left", (2.0, 1.5), "180 - 36.87", "143.13 degrees"),
        ("right", (-2.0, -1.5), "180 + 36.87", "216.87 degrees"),
        ("right", (2.0, -1.5), "360 - 36.87", "323.13 degrees"),
        ("right", (0.0, -1.5), "360 - 90.00", "270.00 degrees"),
        ("left", (2.0, 0.0), "180 - 0.00", "180.00 degrees"),
        ("right", (2.0, 0.0), "0.00", "0.00 degrees"),
    ],
)
def test_what_a_learner_reads_of_a_resultant(eye: str, parts: tuple, base: str, result: str):
    *_, last = resultant_workings(eye=eye, in_prism_d=parts[0], up_prism_d=parts[1])
    assert (last.substituted, last.result) == (base, result)


@eyes
def test_decentration(eye: Eye):
    for seed in range(300):
        draw = random.Random(seed)
        cylinder = 0.0 if seed % 5 == 0 else draw.randrange(-16, 17) / 4
        lens = rx(draw.choice([-1, 1]) * draw.randrange(1, 41) / 4, cylinder, draw.randrange(1, 181))
        if not lens.sphere_d + lens.cylinder_d:
            continue
        wanted = {"in_prism_d": draw.randrange(-16, 17) / 4, "up_prism_d": draw.randrange(-16, 17) / 4}
        steps = decentration_workings(lens, eye=eye, **wanted)
        assert_worked(steps)
        assert tuple(step.value for step in steps[-2:]) == decentration_for(lens, eye=eye, **wanted)
        assert len(steps) == (6 if lens.cylinder_d else 2)


@eyes
@pytest.mark.parametrize("lens", [rx(0, -2, 90), rx(2, -2, 35), rx(0, 1.5, 180), rx(0)])
def test_decentration_where_a_meridian_is_plano(eye: Eye, lens: Prescription):
    inwards, upwards = prism_at(lens, eye=eye, in_mm=-4.0, up_mm=3.0)
    steps = decentration_workings(lens, eye=eye, in_prism_d=inwards, up_prism_d=upwards)
    assert_worked(steps)
    found = tuple(step.value for step in steps[-2:])
    assert prism_at(lens, eye=eye, in_mm=-found[0], up_mm=-found[1]) == pytest.approx((inwards, upwards))
    assert len(steps) == (3 if lens.cylinder_d else 2)


# Jalie 2022 (read): 2 prism dioptres need 4 mm of 5.00 D. Jalie, Lens Talk Nov-Dec 2024 (read): the toric
# lens, its centre 2.5 out and 11 up.
def test_what_a_learner_reads_of_decentration():
    inwards, upwards = decentration_workings(rx(5), eye="right", in_prism_d=2, up_prism_d=0)
    assert (inwards.substituted, inwards.result) == ("10 * 2.00 / 5.00", "4.00 mm")
    assert (upwards.substituted, upwards.result) == ("10 * 0.00 / 5.00", "0.00 mm")
    steps = decentration_workings(rx(6, -3, 140), eye="right", in_prism_d=-2.8151, up_prism_d=5.0328)
    assert steps[3].substituted == "6.00 * (6.00 + (-3.00))"
    assert [step.result for step in steps[-2:]] == ["-2.50 mm", "11.00 mm"]


# Computed (published values, prism): 3 across 50 mm is 3.01 mm at 1.498 and 2.87 mm at 1.523.
@pytest.mark.parametrize(("index", "expected"), [(1.498, "3.01 mm"), (1.523, "2.87 mm")])
def test_thickness_difference(index: float, expected: str):
    values = {"amount_prism_d": 3, "across_mm": 50, "index_n": index}
    working = thickness_difference_working(**values)
    assert_worked([working])
    assert working.value == thickness_difference_mm(**values)
    assert working.result == expected
    assert working.substituted == f"3.00 * 50.0 / (100 * ({index} - 1))"


def test_words():
    for call in (
        lambda: resolving_workings(Prism(amount_prism_d=1, base="in"), eye="both"),
        lambda: resultant_workings(eye="both", in_prism_d=1, up_prism_d=0),
        lambda: decentration_workings(rx(5), eye="both", in_prism_d=1, up_prism_d=0),
    ):
        with pytest.raises(LabError, match="eye 'both' is not an eye"):
            call()
    with pytest.raises(LabError, match=r"prism 1\.00 base up cannot come from decentring"):
        decentration_workings(rx(0, -2, 90), eye="right", in_prism_d=0, up_prism_d=1)
    with pytest.raises(LabError, match="prism 40 is out of range"):
        thickness_difference_working(amount_prism_d=40, across_mm=50, index_n=1.5)
