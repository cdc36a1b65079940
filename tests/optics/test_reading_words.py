"""Texts that are no prescription, and what is said about them."""

import pytest

from lablib.errors import LabError
from lablib.optics.reading import read
from lablib.optics.unclear import UnclearPrescription

LIKE = 'write it like "+2.00 -1.50 x 090" or "-3.25 DS"'
TWO_MERIDIANS = (
    "gives a power in each of two meridians, or two cylinders, and is not read: work out sphere, cylinder "
    f"and axis and {LIKE}"
)
ORDER = f"is not in the order sphere, cylinder, axis, addition: {LIKE}"
NO_MARK = f"has a third number without a mark: write x before an axis and add before an addition; {LIKE}"
NO_SPHERE = f"has a cylinder but no sphere: write the sphere before it, or plano; {LIKE}"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("-2.00 @ 90 / -3.00 @ 180", TWO_MERIDIANS),
        ("-2.00 x 90 -3.00 x 180", TWO_MERIDIANS),
        ("-2.00 90° -3.00 180°", TWO_MERIDIANS),
        ("-2.00 -1.00 90", NO_MARK),
        ("-2.00 DS / -1.00 DC / 90", NO_MARK),
        ("-2.00 -1.00 x 20 2.25", ORDER),
        ("-2.00 -1.00 DS x 20", ORDER),
        ("-2.00 x 20 -1.00", ORDER),
        ("-2.00 -1.00 x", ORDER),
        ("-2.00 // -1.00 x 20", ORDER),
        ("-2.00 -1.00 x 20 add", ORDER),
        ("-2.00 -1 .00 x 20", ORDER),
        ("-1.00 DC x 90", NO_SPHERE),
        ("cyl -1.00 axis 90", NO_SPHERE),
        ("add 2.00", f"begins with an addition: write the sphere before it, or plano; {LIKE}"),
        ("DS", f"holds no power: {LIKE}"),
        ("x", f"holds no power: {LIKE}"),
        ("+plano", f"has a + with no figure after it: {LIKE}"),
        ("-2.00 --1.00 x 20", f"has a - with no figure after it: {LIKE}"),
        (
            "-2.00 -1.00 x 5o",
            "has a letter o after a figure, for a nought or for a degree sign: write the axis in three "
            "figures, as in 005 or 050",
        ),
        ("-2.00\n-1.00 x 20", f"runs over more than one line: give one eye on one line; {LIKE}"),
        ("1e5", f"holds 'e', which belongs to no prescription: {LIKE}"),
        ("nan", f"holds 'n', which belongs to no prescription: {LIKE}"),
        ("-inf", f"has a - with no figure after it: {LIKE}"),
        ("-٢.٠٠", f"has a - with no figure after it: {LIKE}"),
        ("٢", f"holds '٢', which belongs to no prescription: {LIKE}"),
        ("+²", f"has a + with no figure after it: {LIKE}"),
        ("+2.00 \u212a", f"holds '\u212a', which belongs to no prescription: {LIKE}"),
    ],
)
def test_what_is_refused(text: str, words: str):
    with pytest.raises(LabError) as caught:
        read(text)
    assert str(caught.value) == f"prescription {text!r} {words}"
    assert not isinstance(caught.value, UnclearPrescription)


AXIS_WORDS = "is not a cylinder axis: give whole degrees above 0 and up to 180, without a sign or a point"
POWER_WORDS = (
    "is not a power: give dioptres with up to two figures before the point and up to four after it, as in "
    "-2.25"
)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            "-2.00 -1.00 x 194",
            "axis 194 is not a cylinder axis: give an axis above 0 and up to 180 degrees",
        ),
        ("-2.00 -1.00 x -90", f"axis -90 in '-2.00 -1.00 x -90' {AXIS_WORDS}"),
        ("-2.00 -1.00 x 12.5", f"axis 12.5 in '-2.00 -1.00 x 12.5' {AXIS_WORDS}"),
        ("-2.00 -1.00 x 0090", f"axis 0090 in '-2.00 -1.00 x 0090' {AXIS_WORDS}"),
        ("+1.2.3", f"sphere +1.2.3 in '+1.2.3' {POWER_WORDS}"),
        ("-2.", f"sphere -2. in '-2.' {POWER_WORDS}"),
        ("-100.00", f"sphere -100.00 in '-100.00' {POWER_WORDS}"),
        ("-2.00 -22500 x 20", f"cylinder -22500 in '-2.00 -22500 x 20' {POWER_WORDS}"),
        ("-2.00,1.50", f"sphere -2.00,1.50 in '-2.00,1.50' {POWER_WORDS}"),
        ("-60.00", "sphere -60 is out of range: give from -40 to 40 D"),
        ("+1.00 -25.00 x 20", "cylinder -25 is out of range: give from -20 to 20 D"),
        (
            "+2.00 add -1.00",
            "addition -1.00 in '+2.00 add -1.00' is minus: an addition is plus; check whether it is the "
            "cylinder or the power for near",
        ),
        ("", f"prescription is empty: {LIKE}"),
        (" \n ", f"prescription is empty: {LIKE}"),
        ("-" * 101, f"prescription '{'-' * 57}...' is longer than 100 characters: {LIKE}"),
        (None, f"prescription None is not text: {LIKE}"),
        (-2.0, f"prescription -2.0 is not text: {LIKE}"),
    ],
)
def test_other_words(text: object, words: str):
    with pytest.raises(LabError) as caught:
        read(text)
    assert str(caught.value) == words
    assert not isinstance(caught.value, UnclearPrescription)
