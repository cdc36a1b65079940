"""A compensated lens inspected against its check value and, for the mistake it is, against its order."""

import pytest

from lablib.job.check_values import CheckedLens
from lablib.optics.prescription import Prescription


def checked(order: str, check_value: str, reading: str, **kind: bool) -> CheckedLens:
    return CheckedLens(
        order=Prescription.parse(order),
        check_value=Prescription.parse(check_value),
        reading=Prescription.parse(reading),
        **kind,
    )


def test_a_progressive_that_was_nearly_sent_back():
    """+4.00 -1.00 x 090 ordered, check value +3.75 -0.79 x 094, reads +3.77 -0.80 x 093: make."""
    lens = checked("+4.00 -1.00 x 090", "+3.75 -0.79 x 094", "+3.77 -0.80 x 093", progressive=True)
    assert lens.passes
    assert not lens.would_pass_the_order
    sphere, cylinder, axis = lens.against_check_value
    assert (sphere.off, cylinder.off, axis.off) == pytest.approx((0.02, -0.01, -1.0))
    assert (sphere.limit, cylinder.limit, axis.limit) == (0.16, 0.16, 3.0)
    sphere, cylinder, axis = lens.against_order
    assert sphere.off == pytest.approx(-0.23)
    assert (sphere.passes, cylinder.passes, axis.passes) == (False, False, True)


def test_a_lens_made_as_ordered_fails_where_a_check_value_asks_for_another():
    lens = checked("-6.00 DS", "-5.94 +0.18 x 180", "-6.00 DS")
    assert lens.would_pass_the_order
    assert not lens.passes


@pytest.mark.parametrize(("read", "passes"), [("-3.13 DS", True), ("-3.14 DS", False), ("-2.87 DS", True)])
def test_a_limit_is_compared_after_rounding(read: str, passes: bool):
    assert checked("-3.00 DS", "-3.00 DS", read).passes is passes


@pytest.mark.parametrize(("read", "passes"), [(2, True), (178, True), (3, False)])
def test_axes_are_compared_the_shorter_way_round(read: int, passes: bool):
    """Cylinder 1.75: 2 degrees, from 180 to 002 as from 180 to 178."""
    lens = checked("-3.00 -1.75 x 180", "-3.00 -1.75 x 180", f"-3.00 -1.75 x {read:03d}")
    assert lens.passes is passes
    assert abs(lens.against_check_value[2].off) == min(read, 180 - read)


def test_columns_may_be_written_in_different_forms():
    lens = checked("+4.00 -1.00 x 090", "+2.96 +0.79 x 004", "+3.77 -0.80 x 093", progressive=True)
    assert lens.passes
    assert lens.against_check_value[0].wanted == pytest.approx(3.75)


def test_without_a_cylinder_there_is_no_axis_to_compare():
    assert [line.quantity for line in checked("+1.00 DS", "+1.00 DS", "+1.02 DS").against_order] == [
        "sphere",
        "cylinder",
    ]


def test_a_cylinder_too_small_for_a_limit_passes_at_any_axis():
    lens = checked("+1.00 DS", "+1.06 -0.10 x 090", "+1.06 -0.10 x 020")
    assert lens.against_check_value[2].limit is None
    assert lens.passes
