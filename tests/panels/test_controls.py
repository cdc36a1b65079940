"""A slider and its box always agree, lose nothing that was typed, and speak once."""

import pytest

from lablib.errors import LabError
from lablib.panels.controls import ChoiceControl, PairedControl, control_for
from lablib.panels.specs import Choice, Slider

SPHERE = Slider(name="sphere_d", label="Sphere", unit="D", low=-12, high=8, step=0.25, value=-4)
EYE = Choice(name="eye", label="Eye", options=("right", "left"), value="right")


@pytest.fixture
def calls():
    return []


@pytest.fixture
def paired(calls):
    return control_for(SPHERE, lambda: calls.append(1))


@pytest.fixture
def listed(calls):
    return control_for(EYE, lambda: calls.append(1))


def agrees(control):
    return control.slider.value == control.value and control.box.value == SPHERE.shown(control.value)


def test_each_spec_has_its_control(paired, listed):
    assert isinstance(paired, PairedControl)
    assert isinstance(listed, ChoiceControl)


def test_the_box_has_the_name_and_the_slider_the_range(paired):
    assert paired.box.description == "Sphere [D]"
    assert (paired.slider.min, paired.slider.max, paired.slider.step) == (-12, 8, 0.25)
    assert agrees(paired)


@pytest.mark.parametrize("value", [-12, -1.75, 0, 8])
def test_sliding_sets_the_box_and_speaks_once(paired, calls, value):
    paired.slider.value = value

    assert (paired.value, len(calls)) == (value, 1)
    assert agrees(paired)


@pytest.mark.parametrize(("typed", "value"), [("-12", -12), ("-1,75", -1.75), ("+0.5", 0.5), ("8.00 D", 8)])
def test_typing_sets_the_slider_and_speaks_once(paired, calls, typed, value):
    paired.box.value = typed

    assert (paired.value, len(calls)) == (value, 1)
    assert agrees(paired)


@pytest.mark.parametrize("typed", ["-12.25", "-4.1", "four", ""])
def test_what_cannot_be_used_stays_in_the_box_and_is_said(paired, calls, typed):
    paired.box.value = typed

    assert paired.box.value == typed
    assert str(paired.fault).startswith("Sphere ")
    assert (paired.value, paired.slider.value, len(calls)) == (-4, -4, 1)


@pytest.mark.parametrize(
    "mend",
    [
        lambda paired: setattr(paired.box, "value", "-4.00"),
        lambda paired: setattr(paired.box, "value", "-4"),
        lambda paired: setattr(paired.slider, "value", -4.25),
        lambda paired: setattr(paired.box, "value", "-4.25"),
    ],
)
def test_the_next_good_move_mends_it_and_speaks_once(paired, calls, mend):
    paired.box.value = "-4.1"
    mend(paired)

    assert paired.fault is None
    assert len(calls) == 2
    assert agrees(paired)


def test_setting_says_nothing(paired, calls):
    paired.box.value = "four"
    calls.clear()
    paired.set(2)

    assert (paired.value, paired.fault, calls) == (2, None, [])
    assert agrees(paired)


def test_setting_refuses_what_does_not_fit_and_changes_nothing(paired):
    with pytest.raises(LabError, match="between two steps"):
        paired.set(2.1)

    assert paired.value == -4
    assert agrees(paired)


def test_rounding_errors_of_the_slider_are_not_written_back(calls):
    spec = Slider(name="a_mm", label="A", unit="mm", low=40, high=60, step=0.1, value=54)
    control = control_for(spec, lambda: calls.append(1))
    control.slider.value = 40 + 3 * 0.1 + 1e-12

    assert (control.value, control.box.value, len(calls)) == (40.3, "40.3", 1)
    assert control.slider.value != 40.3


def test_picking_speaks_once_and_setting_says_nothing(listed, calls):
    listed.box.value = "left"
    assert (listed.value, len(calls)) == ("left", 1)
    listed.set("right")

    assert (listed.value, listed.box.value, len(calls)) == ("right", "right", 1)


def test_setting_a_list_to_another_word_is_refused(listed):
    with pytest.raises(LabError, match="Eye 'middle' cannot be had here: give one of right, left"):
        listed.set("middle")

    assert listed.value == listed.box.value == "right"
