"""Prescriptions as answers: what is read from a line or from boxes, and what is right."""

import itertools
import random
from collections.abc import Iterator

import numpy as np
import pytest
from bare_question import marked

from lablib.optics.prescription import Prescription
from lablib.questions.answers.prescription import OTHER_FORM, PrescriptionAnswer
from lablib.questions.answers.prescription_line import Past180
from lablib.study.answer import NotUnderstood
from lablib.study.marking import State
from lablib.study.question import Mistake

PLUS = PrescriptionAnswer(form="plus")
MINUS = PrescriptionAnswer(form="minus")
EITHER = PrescriptionAnswer(form="either")
NEAR = PrescriptionAnswer(form="minus", addition=True)
RIGHT = Prescription(sphere_d=0.5, cylinder_d=1.5, axis_deg=110)
ROUNDS = 1500
NO_SIGN = "has no sign: a power is written with + or -"


def lenses() -> Iterator[Prescription]:
    """Yield lenses in quarters and eighths, in both forms, spheres and plano among them."""
    for seed in range(ROUNDS):
        draw = random.Random(seed)
        step = 0.125 if seed % 4 == 0 else 0.25
        cylinder = 0.0 if seed % 7 == 0 else step * draw.randrange(-32, 33)
        sphere = 0.0 if seed % 11 == 0 else step * draw.randrange(-80, 81)
        yield Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=draw.randrange(1, 181))


def parts(lens: Prescription) -> tuple[str, str, str]:
    """Return sphere, cylinder and axis as plain as can be, with nothing where there is no cylinder."""
    digits = 3 if lens.sphere_d % 0.25 or lens.cylinder_d % 0.25 else 2
    sphere = f"{lens.sphere_d:+.{digits}f}"
    return (
        (sphere, f"{lens.cylinder_d:+.{digits}f}", f"{lens.axis_deg:.0f}")
        if lens.cylinder_d
        else (sphere, "", "")
    )


def spellings(lens: Prescription) -> Iterator[str]:
    """Yield a lens in many ways to write it."""
    sphere, cylinder, axis = parts(lens)
    spheres = [sphere, f"{sphere} DS", f"{sphere}D", f"sph {sphere}"]
    if abs(lens.sphere_d) < 10:
        spheres.append(f"{sphere[0]}0{sphere[1:]}")
    if not lens.sphere_d:
        spheres += ["plano", "PL", "0"]
    if not cylinder:
        yield from spheres
        return
    axes = (
        f"x {axis}",
        f"X{axis:0>3}",
        f"@ {axis}°",
        f"axis {axis:0>3}",
        f"ax{axis} deg",
        f"× {axis}º",
        f"{axis}°",
    )
    cylinders = (cylinder, f"{cylinder} DC", f"cyl {cylinder}")
    for number, (one, two, three) in enumerate(itertools.product(spheres, cylinders, axes)):
        yield (" ", " / ", "/", "; ")[number % 4].join((one, two)) + (" ", ", ", "/")[number % 3] + three


def in_other_letters(text: str) -> Iterator[str]:
    """Yield a line as other keyboards and other countries write it."""
    yield text
    yield f"  {text.upper()} \n"
    yield text.replace("-", "\u2212").replace(" ", "\u00a0")
    yield text.replace(", ", " ").replace(".", ",")


def test_thousands_of_spellings_are_read_and_right():
    count = 0
    for number, lens in enumerate(lenses()):
        for spelling in itertools.islice(spellings(lens), number % 23, None, 23):
            for text in in_other_letters(spelling):
                found = EITHER.read(text)
                assert found.meanings == (lens,), (text, found)
                assert (found.words, found.faults, found.notes) == (str(lens), (), ()), text
                count += 1
    assert count > 20_000


def test_what_is_written_is_read_back_and_right_in_its_form_and_in_boxes():
    for lens in lenses():
        form = "plus" if lens.cylinder_d > 0 else "minus"
        for kind in (PrescriptionAnswer(form=form), EITHER):
            for text in (kind.written(lens), list(parts(lens)), [f" {part} " for part in parts(lens)]):
                assert marked(text, kind, lens).state is State.RIGHT, (kind, text)
        # An axis box may hold its mark, a cylinder box its own.
        sphere, cylinder, axis = parts(lens)
        if cylinder:
            boxes = [f"{sphere} DS", f"{cylinder} DC", f"x {axis:0>3}°"]
            assert marked(boxes, EITHER, lens).state is State.RIGHT, boxes


def test_either_form_takes_every_writing_of_the_lens_and_nothing_else():
    draw = random.Random(3)
    for lens in lenses():
        other = lens.transposed()
        assert marked(EITHER.written(other), EITHER, lens).state is State.RIGHT, lens
        assert EITHER.matches(other, lens)
        assert not EITHER.apart(other, lens)
        axis = lens.axis_deg or 90
        away = Prescription(
            sphere_d=lens.sphere_d + draw.choice((0.0, 0.25)),
            cylinder_d=lens.cylinder_d + draw.choice((0.0, -0.25)),
            axis_deg=draw.choice((axis, (axis + draw.randrange(2, 179)) % 180 or 180)),
        )
        # The same lens is the one with the same power in every meridian.
        same = np.allclose(away.power_matrix(), lens.power_matrix(), atol=1e-6)
        assert EITHER.matches(away, lens) == same
        assert EITHER.matches(away.transposed(), lens) == same
        assert EITHER.apart(away, lens) == (not same)


def test_in_a_set_form_the_lens_in_the_other_form_is_not_right_and_said_so():
    other = RIGHT.transposed()
    plain = marked(str(other), PLUS, RIGHT)
    assert (plain.state, plain.value) == (State.WRONG, other)
    assert plain.words[-1] == "Note: the cylinder is minus, and the plus-cylinder form is asked for."
    named = marked(str(other), PLUS, RIGHT, Mistake(slips=(OTHER_FORM,), value=other))
    assert (named.state, named.slips) == (State.WRONG, (OTHER_FORM,))
    assert named.words == (
        "Your answer: +2.00 -1.50 x 020. It is not right.",
        "This is the same lens, in the other form. The step to look at: the sign the cylinder is asked to "
        "have.",
        "Note: the cylinder is minus, and the plus-cylinder form is asked for.",
    )
    assert MINUS.read("+0.50 +1.50 x 110").notes == (
        "the cylinder is plus, and the minus-cylinder form is asked for",
    )
    for kind, text in ((EITHER, "+2.00 -1.50 x 020"), (PLUS, "+2.00 DS"), (PLUS, "+0.50 1.50 x 110")):
        assert kind.read(text).notes == ()
    assert PLUS.apart(other, RIGHT)


def test_without_signs_the_value_is_understood_and_never_simply_right():
    for lens in lenses():
        # A minus before an axis or an addition is none of the powers'.
        line = str(lens).replace("+", "").replace("-", "")
        powers = [power for power in (lens.sphere_d, lens.cylinder_d) if power]
        given = (line, [part.lstrip("+-") for part in parts(lens)])
        for text in given if powers else ():
            found = EITHER.read(text)
            assert any(EITHER.matches(one, lens) for one in found.meanings), text
            assert len(found.faults) == len(powers)
            assert len(found.meanings) <= 2 ** len(powers)
            assert marked(text, EITHER, lens).state is State.FAULTY, text


def test_an_axis_past_180_keeps_its_meaning_and_is_a_mistake_of_its_own():
    lens = Prescription(sphere_d=0.5, cylinder_d=1.5, axis_deg=30)
    past = Past180(lens=lens)
    for answer in (
        "+0.50 +1.50 x 210",
        "+0.50+1.50@210°",
        ["+0.50", "+1.50", "210"],
        ["+0.50", "+1.50", "x 210"],
    ):
        found = PLUS.read(answer)
        assert found.meanings == (past,)
        assert found.words == str(past) == PLUS.written(past) == "+0.50 +1.50 x 210"
        assert found.notes == ("axis 210 goes past 180: an axis is written above 0 and up to 180",)
        assert (found.faults, marked(answer, PLUS, lens).state) == ((), State.WRONG)
    for kind in (PLUS, EITHER):
        assert not kind.matches(past, lens)
        assert kind.apart(past, lens)
        assert kind.matches(past, Past180(lens=lens))
        assert kind.apart(past, Past180(lens=Prescription(sphere_d=0.5, cylinder_d=1.5, axis_deg=32)))
    assert EITHER.matches(past, Past180(lens=lens.transposed()))


@pytest.mark.parametrize(("axis", "back"), [("181", 1), ("270", 90), ("360", 180)])
def test_how_far_past_180_is_understood(axis: str, back: int):
    assert PLUS.read(f"+0.50 +1.50 x {axis}").meanings == (
        Past180(lens=Prescription(sphere_d=0.5, cylinder_d=1.5, axis_deg=back)),
    )


def test_past_180_without_signs_or_with_other_notes():
    found = PLUS.read("0.50 1.50 x 210")
    assert [str(one) for one in found.meanings] == [
        "+0.50 +1.50 x 210",
        "+0.50 -1.50 x 210",
        "-0.50 +1.50 x 210",
        "-0.50 -1.50 x 210",
    ]
    assert found.words == "0.50 1.50 x 210"
    assert found.faults == (f"sphere 0.50 {NO_SIGN}", f"cylinder 1.50 {NO_SIGN}")
    assert PLUS.read("+0.55 -1.50 x 210").notes == (
        "sphere +0.55 is not in quarters or eighths and is taken as written",
        "axis 210 goes past 180: an axis is written above 0 and up to 180",
        "the cylinder is minus, and the plus-cylinder form is asked for",
    )


def test_an_addition_belongs_to_the_answer_or_does_not():
    right = Prescription(sphere_d=1, cylinder_d=-0.5, axis_deg=90, addition_d=2.25)
    boxes = ["+1.00", "-0.50", "090"]
    for answer in (
        "+1.00 -0.50 x 090 add 2.25",
        NEAR.written(right),
        [*boxes, "2.25"],
        [*boxes, "+2.25"],
        [*boxes, "add 2,25"],
    ):
        assert marked(answer, NEAR, right).state is State.RIGHT, answer
    assert NEAR.boxes == ("sphere", "cylinder", "axis", "addition")
    assert PLUS.boxes == ("sphere", "cylinder", "axis")
    for answer in ("+1.00 -0.50 x 090", boxes, [*boxes, ""]):
        without = marked(answer, NEAR, right)
        assert (without.state, without.words[-1]) == (State.WRONG, "Note: no addition was read."), answer
    needless = marked(
        "+1.00 -0.50 x 090 add 2.25", MINUS, Prescription(sphere_d=1, cylinder_d=-0.5, axis_deg=90)
    )
    assert (needless.state, needless.words[-1]) == (State.WRONG, "Note: no addition is asked for.")
    with pytest.raises(NotUnderstood) as caught:
        NEAR.read([*boxes, "-2.25"])
    assert str(caught.value).startswith(
        "addition box: addition -2.25 in '-2.25' is minus: an addition is plus"
    )
    with pytest.raises(NotUnderstood) as caught:
        NEAR.read([*boxes, "none"])
    assert str(caught.value) == "addition box: 'none' is not one addition: write a power, as in 2.25"


def test_tolerances_are_edges():
    for sphere, cylinder, axis, is_near in (
        ("+0.50", "+1.50", 110, True),
        ("+0.505", "+1.495", 110, True),
        ("+0.506", "+1.50", 110, False),
        ("+0.50", "+1.494", 110, False),
        ("+0.50", "+1.50", 111, False),
    ):
        (lens,) = PLUS.read(f"{sphere} {cylinder} x {axis}").meanings
        assert PLUS.matches(lens, RIGHT) == is_near, lens
    wide = PrescriptionAnswer(form="plus", tolerance_d=0.12, axis_tolerance_deg=2.0)
    for axis, is_near, is_apart in (
        (112, True, False),
        (113, False, False),
        (114, False, False),
        (115, False, True),
    ):
        turned = Prescription(sphere_d=0.5, cylinder_d=1.5, axis_deg=axis)
        assert (wide.matches(turned, RIGHT), wide.apart(turned, RIGHT)) == (is_near, is_apart), axis
    # Axis 179 and axis 1 lie two degrees apart, and without a cylinder to speak of it is no matter.
    ends = [Prescription(sphere_d=1, cylinder_d=1, axis_deg=axis) for axis in (179, 1)]
    assert wide.matches(*ends)
    tiny = [Prescription(sphere_d=1, cylinder_d=0.004, axis_deg=axis) for axis in (20, 110)]
    assert PLUS.matches(*tiny)
    assert PLUS.matches(tiny[0], Prescription(sphere_d=1))
