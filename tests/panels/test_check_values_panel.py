"""The panel of a compensated lens on the focimeter: its columns, its verdict, its sentence."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.panels.check_values_panel import CheckValuesPanel

SPHERE = {"cylinder_d": 0.0, "wrap_deg": 0.0}


@pytest.mark.parametrize(
    "start", [{}, SPHERE, {"made": "as ordered", "sphere_d": 4.0, "wrap_deg": 0.0, "tilt_deg": 0.0}]
)
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(CheckValuesPanel(**start))) == {None}


# The curriculum's example: -5.94 is ordered for -6.00 tilted by 10 degrees.
def test_the_check_value_makes_up_for_the_tilt():
    data = CheckValuesPanel(**SPHERE).at()

    assert data.lens.check_value.written("plus") == "-5.94 +0.18 x 180"
    assert data.passes
    assert not data.would_pass_the_order


def test_a_lens_made_as_ordered_fails_although_it_agrees_with_the_order():
    panel = CheckValuesPanel(made="as ordered")

    assert rows(panel)["By check value"] == "fails this decides"
    assert rows(panel)["By the order"] == "passes decides nothing"
    assert said(panel) == (
        "The lens fails against its check value: sphere and cylinder; against the order it would pass."
    )


@pytest.mark.parametrize(("off", "passes"), [(0.13, True), (0.14, False), (-0.13, True), (-0.14, False)])
def test_the_limit_counts_from_the_check_value(off: float, passes: bool):
    assert CheckValuesPanel(sphere_off_d=off).at().passes is passes


def test_an_axis_off_is_named_and_told_apart():
    panel = CheckValuesPanel(axis_off_deg=10.0)

    assert said(panel) == "The lens fails against its check value: axis; against the order it would too."
    assert panel.at().rows[2].read_off == pytest.approx(10.0)


def test_an_order_without_a_cylinder_has_no_axis_but_its_check_value_has():
    axis = CheckValuesPanel(**SPHERE).at().rows[2]

    assert axis.columns == ("–", "090", "090")
    assert axis.order_off != axis.order_off


def test_without_tilt_and_wrap_order_and_check_value_are_one():
    panel = CheckValuesPanel(tilt_deg=0.0, wrap_deg=0.0)

    assert rows(panel)["Ordered"] == rows(panel)["Check value"]
    assert said(panel) == "The lens passes against its check value; against the order it would too."
