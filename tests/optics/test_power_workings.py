"""Every printed working of power and prism comes out, over many seeded inputs."""

import math
import random

import pytest
from evaluation import assert_comes_out

from lablib.optics.power_workings import (
    power_in_meridian_working,
    prism_at_workings,
    spherical_equivalent_working,
    transposition_workings,
    vertex_distance_workings,
)
from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.prism import prism_at

ROUNDS = 300


def lenses() -> list[tuple[Prescription, random.Random]]:
    """Spheres and cylinders in quarter steps and as computed, each with its own source of further numbers."""
    made = []
    for seed in range(ROUNDS):
        draw = random.Random(seed)
        step = (0.25, 0.12, 0.001)[seed % 3]
        sphere = step * round(draw.uniform(-12, 12) / step)
        cylinder = 0.0 if seed % 5 == 0 else step * round(draw.uniform(-6, 6) / step)
        axis = round(draw.uniform(1, 180), (0, 0, 1, 3)[seed % 4])
        made.append((Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis), draw))
    return made


def test_the_lenses_cover_spheres_both_forms_and_odd_axes():
    made = [lens for lens, _ in lenses()]
    assert sum(lens.cylinder_d == 0 for lens in made) > 40
    assert sum(lens.cylinder_d > 0 for lens in made) > 80
    assert sum(lens.cylinder_d < 0 for lens in made) > 80
    assert sum(lens.axis_deg is not None and lens.axis_deg % 1 != 0 for lens in made) > 80


def test_spherical_equivalent():
    for lens, _ in lenses():
        working = spherical_equivalent_working(lens)
        assert working.value == lens.spherical_equivalent_d
        assert_comes_out(working)


def test_transposition():
    for lens, _ in lenses():
        steps = transposition_workings(lens)
        if lens.cylinder_d == 0:
            assert steps == ()
            continue
        other = lens.transposed()
        assert [step.value for step in steps] == [other.sphere_d, other.cylinder_d, other.axis_deg]
        for step in steps:
            assert_comes_out(step)


def test_power_in_a_meridian():
    for lens, draw in lenses():
        meridian = draw.randrange(0, 181)
        working = power_in_meridian_working(lens, meridian)
        assert working.value == lens.power_in_meridian_d(meridian)
        assert_comes_out(working)


def test_vertex_distance():
    for lens, draw in lenses():
        from_mm, to_mm = draw.randrange(8, 17), draw.choice([0, 10, 12.5, 13, 14.25])
        steps = vertex_distance_workings(lens, from_mm=from_mm, to_mm=to_mm)
        worn = at_vertex_distance(lens, from_mm=from_mm, to_mm=to_mm)
        assert steps[0].value == worn.sphere_d
        assert len(steps) == (4 if lens.cylinder_d else 1)
        if lens.cylinder_d:
            assert steps[-1].value == worn.cylinder_d
        for step in steps:
            assert_comes_out(step)


@pytest.mark.parametrize("eye", ["right", "left"])
def test_prism_at_a_point(eye: str):
    for lens, draw in lenses():
        in_mm, up_mm = draw.randrange(-60, 61) / 2, draw.randrange(-50, 51) / 2
        steps = prism_at_workings(lens, eye=eye, in_mm=in_mm, up_mm=up_mm)
        assert (steps[-2].value, steps[-1].value) == prism_at(lens, eye=eye, in_mm=in_mm, up_mm=up_mm)
        assert len(steps) == (5 if lens.cylinder_d else 2)
        for step in steps:
            assert_comes_out(step)


# The published oblique lens (Long 1976, computed): 10 mm below the centre 5.50 down with 0.866 in.
def test_what_a_learner_reads():
    steps = prism_at_workings(
        Prescription(sphere_d=-4, cylinder_d=-2, axis_deg=30), eye="right", in_mm=0, up_mm=-10
    )
    inwards, upwards = steps[-2:]
    assert (inwards.what, inwards.result) == (
        "prism at the point, base in (minus is base out)",
        "0.87 prism dioptres",
    )
    assert upwards.result == "-5.50 prism dioptres"
    assert inwards.substituted == "-((-4.500) * 0.0 + 0.866 * (-10.0)) / 10"
    assert "Long" in upwards.source
    assert steps[1].substituted == "-(-2.00) * sin(30) * cos(30)"
    assert steps[1].value == pytest.approx(math.sqrt(3) / 2)
