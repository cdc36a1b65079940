"""Reading prescriptions: what is accepted and what is asked about.

How prescriptions are written is common practice, no source.
"""

import pytest

from lablib.optics.prescription import Prescription
from lablib.optics.reading import read
from lablib.optics.unclear import (
    AxisMissing,
    AxisWithoutCylinder,
    PointMissing,
    SignMissing,
    UnclearPrescription,
)


@pytest.mark.parametrize(
    ("text", "sphere", "cylinder", "axis", "addition"),
    [
        ("+2.00 -1.50 x 090", 2, -1.5, 90, 0),
        ("+2.00 -1.50 X 90", 2, -1.5, 90, 0),
        ("+2.00 -1.50 × 90°", 2, -1.5, 90, 0),
        ("+2.00 -1.50 @ 90 deg", 2, -1.5, 90, 0),
        ("+2.00-1.50x90", 2, -1.5, 90, 0),
        ("+2.00 -1.50 ax90", 2, -1.5, 90, 0),
        ("+2.00 -1.50 Axis 5", 2, -1.5, 5, 0),
        ("+2.00 -1.50 x 5°", 2, -1.5, 5, 0),
        ("+2.00 -1.50 x 50", 2, -1.5, 50, 0),
        ("+2.00 -1.50 90°", 2, -1.5, 90, 0),
        ("+0.50 +1.50 x 180", 0.5, 1.5, 180, 0),
        ("-2.00/-3.00x30", -2, -3, 30, 0),
        ("-2,00 / -3,00 x 30", -2, -3, 30, 0),
        ("-2,00, -3,00 x 30", -2, -3, 30, 0),
        ("-2.00; -3.00; x 30", -2, -3, 30, 0),
        ("-2,-1x90", -2, -1, 90, 0),
        ("-2.00 DS / -3.00 DC x 30", -2, -3, 30, 0),
        ("-2.00D -3.00D x 30", -2, -3, 30, 0),
        ("Sph -2.00 Cyl -3.00 Axis 30 Add 2.00", -2, -3, 30, 2),
        ("-2.00 DSph -3.00 DCyl x 30", -2, -3, 30, 0),
        ("-2.00 D sph", -2, 0, None, 0),
        ("-3.25 DS", -3.25, 0, None, 0),
        ("-3.25ds", -3.25, 0, None, 0),
        ("-3.25", -3.25, 0, None, 0),
        ("+.50 -.25 x 010", 0.5, -0.25, 10, 0),
        ("+0.5", 0.5, 0, None, 0),
        ("-10.00", -10, 0, None, 0),
        ("-02.25", -2.25, 0, None, 0),
        ("+2.125 DS", 2.125, 0, None, 0),
        ("plano", 0, 0, None, 0),
        ("Plano DS", 0, 0, None, 0),
        ("pl -1.00 x 90", 0, -1, 90, 0),
        ("PL/-1.00X90", 0, -1, 90, 0),
        ("0.00 -1.00 x 90", 0, -1, 90, 0),
        ("0", 0, 0, None, 0),
        ("-2.00 0.00", -2, 0, None, 0),
        ("+1.00 -0.50 x 090 add 2.25", 1, -0.5, 90, 2.25),
        ("+1.00 -0.50 x 090 ADD +2.25", 1, -0.5, 90, 2.25),
        ("+1.00 -0.50 x 090, Add+2,25", 1, -0.5, 90, 2.25),
        ("+1.00 DS addition 2.25 D", 1, 0, None, 2.25),
        ("plano add 1.75", 0, 0, None, 1.75),
        ("  -2.00 \t-1.00\u00a0x 20\n", -2, -1, 20, 0),
        ("\u22122.00 \u20131.00 x 20", -2, -1, 20, 0),
        ("－２．００　－１．００×２０", -2, -1, 20, 0),
        ("-2.00 -1.00 x 20\u00ba", -2, -1, 20, 0),
    ],
)
def test_what_is_read(text: str, sphere: float, cylinder: float, axis: float | None, addition: float):
    expected = Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis, addition_d=addition)
    reading = read(text)
    assert reading.prescription == Prescription.parse(text) == expected
    assert reading.notes == ()


@pytest.mark.parametrize(
    ("text", "sphere", "cylinder", "axis", "notes"),
    [
        ("-2.00 -1.00 x 000", -2, -1, 180, ("axis 000 is read as 180, which is how this axis is written",)),
        ("-2.00 -1.00 x 0", -2, -1, 180, ("axis 0 is read as 180, which is how this axis is written",)),
        (
            "-2.00 - 1.00 x 20",
            -2,
            -1,
            20,
            ("cylinder: the sign before 1.00 stands apart and is read as its sign",),
        ),
        ("+2.20 DS", 2.2, 0, None, ("sphere +2.20 is not in quarters or eighths and is taken as written",)),
        (
            "+2.00 -0.3 x 20",
            2,
            -0.3,
            20,
            ("cylinder -0.3 is not in quarters or eighths and is taken as written",),
        ),
    ],
)
def test_what_is_read_with_a_note(
    text: str, sphere: float, cylinder: float, axis: float | None, notes: tuple
):
    reading = read(text)
    assert reading.prescription == Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)
    assert reading.notes == notes


@pytest.mark.parametrize(
    "eighth", ["12", "125", "13", "37", "375", "38", "62", "625", "63", "87", "875", "88"]
)
def test_eighths_need_no_note(eighth: str):
    assert read(f"-1.{eighth} DS").notes == ()


@pytest.mark.parametrize(
    ("text", "kind", "name", "words", "question"),
    [
        (
            "2.00 -1.50 x 90",
            SignMissing,
            "sign-missing",
            "sphere 2.00 has no sign: a power is written with + or -; ask the prescriber which it is",
            "Is the sphere 2.00 plus or minus?",
        ),
        (
            "+2.00 1.50 x 90",
            SignMissing,
            "sign-missing",
            "cylinder 1.50 has no sign: a power is written with + or -; ask the prescriber which it is",
            "Is the cylinder 1.50 plus or minus?",
        ),
        (
            "-2.25 -1.00",
            AxisMissing,
            "cylinder-without-axis",
            "cylinder -1.00 has no axis: it cannot be made without one; ask the prescriber",
            "What is the axis of the cylinder -1.00?",
        ),
        (
            "-2.25 x 20",
            AxisWithoutCylinder,
            "axis-without-cylinder",
            "axis 20 stands without a cylinder: only a cylinder has an axis; ask the prescriber whether a "
            "cylinder was left out",
            "There is an axis 20 but no cylinder: was a cylinder left out?",
        ),
        (
            "-225 -1.00 x 20",
            PointMissing,
            "point-missing",
            "sphere -225 has no decimal point, so it may be dioptres or hundredths: write it with two "
            "decimals, as in -2.25",
            "The sphere is written -225: where does the decimal point stand?",
        ),
    ],
)
def test_what_is_asked_about(text: str, kind: type, name: str, words: str, question: str):
    with pytest.raises(kind) as caught:
        read(f" {text} ")
    fault = caught.value
    assert isinstance(fault, UnclearPrescription)
    assert (fault.name, str(fault), fault.question) == (name, words, question)
    assert fault.as_written == text
    assert fault.others == ()


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("2.00 1.50", ["sign-missing", "sign-missing", "cylinder-without-axis"]),
        ("225 DS", ["point-missing", "sign-missing"]),
        ("-2.00 -150 x 20 add 225", ["point-missing", "point-missing"]),
        ("-10 DS", ["point-missing"]),
        ("-2.00 0.00 x 20", ["axis-without-cylinder"]),
        ("-2.00 DS x 180", ["axis-without-cylinder"]),
        ("-2.00 @ 90", ["axis-without-cylinder"]),
        ("plano 90°", ["axis-without-cylinder"]),
        ("+2 .50", ["sign-missing", "cylinder-without-axis"]),
    ],
)
def test_everything_unclear_is_asked_in_one_call(text: str, names: list[str]):
    with pytest.raises(UnclearPrescription) as caught:
        read(text)
    assert [caught.value.name, *(other.name for other in caught.value.others)] == names
