"""Numbers as people write them: what is read, what is refused, and in which words."""

import math
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.study.answer import NotUnderstood
from lablib.study.number import NumberAnswer

LENGTH = NumberAnswer(unit="mm", tolerance=0.1, digits=1)
POWER = NumberAnswer(unit="D", tolerance=0.12, digits=2, signed=True)
RATIO = NumberAnswer(unit="", tolerance=0.0005, digits=3)
TORQUE = NumberAnswer(unit="N m", tolerance=0.01, digits=2)
COUNT = NumberAnswer(unit="degrees", tolerance=0.5, digits=0)
NO_NUMBERS = [
    *(
        "1e5",
        "1E-3",
        "--2",
        "+-2",
        "2.5.1",
        "2,5,1",
        "2 . 5",
        "2 500",
        "1,250.5",
        "2-3",
        "5/2",
        "½",
        "1½",
        "2²",
    ),
    *(
        "２.５",
        "٢",
        "abc",
        ".",
        ",",
        "-",
        "mm",
        "mm 2",
        "about 2",
        "= 2",
        "2 or 3",
        "2\n3",
        "nan",
        "inf",
        "1e",
    ),
    *("0x1F", "1_000", "2.5 mm mm mm mm mm mm mm", "1234567890", "0." + "3" * 21, "2" + " " * 60 + "mm"),
    *("(2)", "2.5;", "$5", "\x00", "😀", "9" * 500),
]
WRITE = "write one number, as in"
FINER = "decimal(s) can show: widen it or ask for more decimals"


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2.5", 2.5),
        ("2,5", 2.5),
        ("2.5mm", 2.5),
        ("  2.5 mm ", 2.5),
        ("2.5 mm.", 2.5),
        ("2.5\u00a0mm", 2.5),
        ("2.5\u202fMM", 2.5),
        ("+2.5 mm", 2.5),
        ("+ 2.5 mm", 2.5),
        ("-2.5", -2.5),
        ("\u22122.5 mm", -2.5),
        ("\u20132.5 mm", -2.5),
        ("0,25cm", 2.5),
        ("0.0025 m", 2.5),
        (".5", 0.5),
        (",5", 0.5),
        ("5.", 5.0),
        ("007", 7.0),
        ("0", 0.0),
        ("-0.0", 0.0),
        ("2.4999999999999998", 2.5),
        ("-8.928571428571429 mm", -8.928571428571429),
        ("1250", 1250.0),
        ("1.250", 1.25),
        ("0,125", 0.125),
        ("1250,375", 1250.375),
        ("999999999", 999999999.0),
    ],
)
def test_a_length_as_people_write_it(text: str, value: float):
    understood = LENGTH.read(text)
    (meaning,) = understood.meanings
    assert meaning == pytest.approx(value)
    assert math.copysign(1.0, meaning) == math.copysign(1.0, value) or not value
    assert understood.faults == ()


def test_zero_is_never_minus_zero():
    for text in ("-0", "-0.00", "\u22120 mm"):
        (meaning,) = LENGTH.read(text).meanings
        assert math.copysign(1.0, meaning) == 1.0
        assert LENGTH.read(text).words == "0.0 mm"


@pytest.mark.parametrize("text", NO_NUMBERS)
def test_what_is_not_one_number_is_never_guessed(text: str):
    with pytest.raises(NotUnderstood) as caught:
        LENGTH.read(text)
    assert "write one number, as in 2.2 mm" in str(caught.value)
    assert len(str(caught.value)) < 150


@pytest.mark.parametrize("text", ["1½", "2²", "3 ¼ mm"])
def test_a_fraction_is_no_unit(text: str):
    with pytest.raises(NotUnderstood, match="is not one number"):
        LENGTH.read(text)


@pytest.mark.parametrize("thing", [2.5, 7, True, ["2.5"], [], {"a": 1}, 10**400])
def test_what_is_no_text_is_not_read(thing: object):
    with pytest.raises(NotUnderstood, match=r"is not one number: write one number, as in 2\.2 mm"):
        LENGTH.read(thing)


@pytest.mark.parametrize(
    ("kind", "text", "words"),
    [
        (LENGTH, "2.5 D", f"'2.5 D': D does not fit, the answer is in mm: {WRITE} 2.2 mm"),
        (LENGTH, "2.5?", f"'2.5?': ? does not fit, the answer is in mm: {WRITE} 2.2 mm"),
        (POWER, "-2 prism D", f"'-2 prism D': prism D does not fit, the answer is in D: {WRITE} -2.25 D"),
        (RATIO, "2 mm", f"'2 mm': mm is not asked for: {WRITE} 2.250"),
        (COUNT, "five", f"'five' is not one number: {WRITE} 2 degrees"),
    ],
)
def test_the_words_of_a_refusal(kind: NumberAnswer, text: str, words: str):
    with pytest.raises(NotUnderstood) as caught:
        kind.read(text)
    assert str(caught.value) == words


def test_a_comma_between_thousands_is_asked_about_not_guessed():
    with pytest.raises(NotUnderstood) as caught:
        LENGTH.read("1,250 mm")
    assert str(caught.value) == (
        "'1,250 mm' can be 1.250 or 1250: write a point before decimals and nothing between thousands"
    )
    # Where three decimals are asked for, a comma before three figures can only stand before decimals.
    assert RATIO.read("1,064").meanings == (1.064,)


@pytest.mark.parametrize(
    ("kind", "text", "words", "notes"),
    [
        (LENGTH, "2,5", "2.5 mm", ()),
        (LENGTH, "0.25 cm", "2.5 mm", ("cm was converted to mm",)),
        (TORQUE, "450 N mm", "0.45 N m", ("N mm was converted to N m",)),
        (POWER, "+2.5", "+2.50 D", ()),
        (POWER, "-2,5 d", "-2.50 D", ()),
        (POWER, "0", "0.00 D", ()),
        (RATIO, "1.064", "1.064", ()),
        (COUNT, "37°", "37 degrees", ()),
    ],
)
def test_the_words_of_what_was_read(kind: NumberAnswer, text: str, words: str, notes: tuple[str, ...]):
    understood = kind.read(text)
    assert (understood.words, understood.notes, understood.faults) == (words, notes, ())


def test_an_answer_is_never_shown_rounded():
    # 3.96 shown as "4.0 mm" and called wrong, beside a solution that says 4.0 mm, would be no help.
    assert LENGTH.read("3.96").words == "3.96 mm"
    assert LENGTH.read("3.90").words == "3.9 mm"
    assert LENGTH.read("-8.928571428571429").words == "-8.928571 mm"
    assert LENGTH.read("0.0039 m").words == "3.9 mm"


def test_a_missing_sign_is_a_fault_that_leaves_both_values_open():
    understood = POWER.read("2.25")
    assert understood.meanings == (2.25, -2.25)
    assert understood.words == "2.25 D, with no sign"
    assert understood.faults == ("a sign is missing, + or -",)


@pytest.mark.parametrize("text", ["0", "0.00", "0 D", "-0", "+0"])
def test_zero_needs_no_sign(text: str):
    assert POWER.read(text).faults == ()
    assert POWER.read(text).meanings == (0.0,)


@pytest.mark.parametrize("blank", [None, "", "   ", "\t\n"])
def test_nothing_written_is_blank(blank: object):
    assert LENGTH.is_blank(blank)


@pytest.mark.parametrize("given_", ["0", "x", 0, 0.0, False, [], ["2"]])
def test_anything_else_is_not_blank(given_: object):
    assert not LENGTH.is_blank(given_)


def test_the_tolerance_counts_to_its_edge():
    # 2.6 - 2.5 is a little more than 0.1 in binary; the edge still counts as the same.
    assert LENGTH.matches(2.6, 2.5)
    assert LENGTH.matches(2.4, 2.5)
    assert not LENGTH.matches(2.6001, 2.5)
    assert not LENGTH.matches(-2.5, 2.5)


def test_what_is_near_enough_to_the_rounded_value_is_the_same():
    assert LENGTH.matches(3.6, 3.498)
    assert LENGTH.matches(3.398, 3.498)
    assert not LENGTH.matches(3.61, 3.498)


def test_values_are_apart_beyond_twice_the_tolerance_and_their_rounding():
    assert LENGTH.apart(2.5, 2.81)
    assert not LENGTH.apart(2.5, 2.8)
    assert not LENGTH.apart(2.5, 2.5)


@given(st.floats(-1000.0, 1000.0), st.floats(-1000.0, 1000.0))
def test_no_answer_is_the_same_as_two_values_that_are_apart(one: float, other: float):
    if LENGTH.apart(one, other):
        between = (one + other) / 2.0
        assert not (LENGTH.matches(between, one) and LENGTH.matches(between, other))


@given(st.floats(-1e6, 1e6), st.sampled_from([LENGTH, POWER, RATIO, TORQUE, COUNT]))
def test_a_value_as_it_is_written_is_read_back(value: float, kind: NumberAnswer):
    understood = kind.read(kind.written(value))
    assert understood.faults == ()
    assert kind.matches(understood.meanings[0], value)
    assert understood.words == kind.written(value)


@given(st.text(max_size=60) | st.text(alphabet="0123456789.,+-−– mDNe½²", max_size=12))
def test_any_text_is_read_as_a_finite_number_or_refused(text: str):
    for kind in (LENGTH, POWER, RATIO):
        with suppress(NotUnderstood):
            assert all(math.isfinite(value) for value in kind.read(text).meanings)


@pytest.mark.parametrize(
    ("tolerance", "digits", "words"),
    [
        (0.01, 1, f"tolerance 0.01 is finer than an answer of 1 {FINER}"),
        (0.0, 2, f"tolerance 0 is finer than an answer of 2 {FINER}"),
        (-1.0, 2, f"tolerance -1 is finer than an answer of 2 {FINER}"),
        (math.nan, 2, "tolerance nan is not a finite number: give a number in mm"),
    ],
)
def test_a_tolerance_nobody_can_meet_is_refused(tolerance: float, digits: int, words: str):
    with pytest.raises(LabError) as caught:
        NumberAnswer(unit="mm", tolerance=tolerance, digits=digits)
    assert str(caught.value) == words


@pytest.mark.parametrize(
    ("given", "stands_for"),
    [
        ("3", (2.5, 4.0)),
        ("-3", (-4.0, -2.5)),
        ("3.0", None),
        ("3.04", None),
        ("0.3 cm", (2.5, 4.0)),
        ("0 m", None),
        ("0.01 m", None),
    ],
)
def test_a_number_written_too_coarsely_stands_for_a_range(given: str, stands_for: tuple | None):
    found = LENGTH.read(given).stands_for
    assert found == (None if stands_for is None else pytest.approx(stands_for))
