"""Base directions and prisms as people write them: what is read, what is asked about, what is refused.

How prisms are written is common practice, no source.
"""

import itertools
import random
from contextlib import suppress

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.optics.base_reading import PrismReading, base_direction_deg, read_base, read_prism
from lablib.optics.prism import Prism
from lablib.optics.unclear import BaseMissing

BASE_LIKE = 'write one direction and no amount, like "base in", "BI" or, in degrees, "37"'
PRISM_LIKE = 'write it like "2.50 base up", "2.50 BU, 1.00 BI" or "2.50 @ 37"'
SHORT = {"in": "BI", "out": "BO", "up": "BU", "down": "BD"}


def reading(*parts: tuple[float, str | float]) -> PrismReading:
    """Return the reading of amounts with their bases."""
    return PrismReading(prisms=tuple(Prism(amount_prism_d=amount, base=base) for amount, base in parts))


@pytest.mark.parametrize(
    ("text", "base"),
    [
        ("in", "in"),
        ("IN", "in"),
        ("  Out\n", "out"),
        ("up", "up"),
        ("down", "down"),
        ("base in", "in"),
        ("Base Out", "out"),
        ("BASE UP", "up"),
        ("base-down", "down"),
        ("BI", "in"),
        ("bo", "out"),
        ("Bu", "up"),
        ("bD", "down"),
        ("nasal", "in"),
        ("base temporal", "out"),
        ("37", 37.0),
        ("37.5", 37.5),
        ("37,5", 37.5),
        ("037", 37.0),
        ("37°", 37.0),
        ("37º", 37.0),
        ("37 deg", 37.0),
        ("37 degrees", 37.0),
        ("@ 37", 37.0),
        ("base 37", 37.0),
        ("base at 37 degrees", 37.0),
        ("base\u00a0@\u00a037°", 37.0),
        ("0", 0.0),
        ("360", 360.0),
    ],
)
def test_a_base_is_read(text: str, base: str | float):
    assert read_base(text) == base


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", f"base direction is empty: {BASE_LIKE}"),
        ("   ", f"base direction is empty: {BASE_LIKE}"),
        ("in and up", f"base direction 'in and up' is more than a direction: {BASE_LIKE}"),
        ("in up", f"base direction 'in up' is more than a direction: {BASE_LIKE}"),
        ("2.4 down", f"base direction '2.4 down' is more than a direction: {BASE_LIKE}"),
        ("up 90", f"base direction 'up 90' is more than a direction: {BASE_LIKE}"),
        ("base", f"base direction 'base' names no direction: {BASE_LIKE}"),
        ("no prism", f"base direction 'no prism' names no direction: {BASE_LIKE}"),
        ("in base", f"base direction 'in base' is not in the order of a direction: {BASE_LIKE}"),
        ("d", f"base direction 'd' has a D that can be dioptres or down: {BASE_LIKE}"),
        ("I", f"base direction 'I' has the letter I alone for a base direction: {BASE_LIKE}"),
        ("base o", f"base direction 'base o' has the letter O alone for a base direction: {BASE_LIKE}"),
        ("u", f"base direction 'u' has the letter U alone for a base direction: {BASE_LIKE}"),
        ("-", f"base direction '-' has a - with no number after it: {BASE_LIKE}"),
        (
            "left",
            "base direction 'left' holds 'left', which belongs to no prism and no base direction: "
            f"{BASE_LIKE}",
        ),
        ("²", f"base direction '²' holds '²', which belongs to no prism and no base direction: {BASE_LIKE}"),
        (
            "361",
            "base direction 361 in '361' is not a direction: give degrees from 0 to 360 without a sign",
        ),
        (
            "-37",
            "base direction -37 in '-37' is not a direction: give degrees from 0 to 360 without a sign",
        ),
        (
            "+37",
            "base direction +37 in '+37' is not a direction: give degrees from 0 to 360 without a sign",
        ),
        (
            "0037",
            "base direction 0037 in '0037' is not a direction: give degrees from 0 to 360 without a sign",
        ),
        (
            "in " * 40,
            f"base direction {('in ' * 19)!r} is longer than 100 characters: {BASE_LIKE}".replace(
                "in '", "in ...'"
            ),
        ),
    ],
)
def test_what_is_no_base_is_refused_in_words(text: str, words: str):
    with pytest.raises(LabError) as caught:
        read_base(text)
    assert str(caught.value) == words


@pytest.mark.parametrize("text", [None, 37, 37.0, b"in", ["in"], {"base": "in"}, object()])
def test_what_is_no_text_is_refused(text: object):
    with pytest.raises(LabError) as caught:
        read_base(text)
    assert str(caught.value) == f"base direction is not text: {BASE_LIKE}"
    with pytest.raises(LabError) as caught:
        read_prism(text)
    assert str(caught.value) == f"prism is not text: {PRISM_LIKE}"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2.4 down", reading((2.4, "down"))),
        ("2,4 DOWN", reading((2.4, "down"))),
        ("2.4down", reading((2.4, "down"))),
        (".5 up", reading((0.5, "up"))),
        ("+2.4 up", reading((2.4, "up"))),
        ("2.50 BU", reading((2.5, "up"))),
        ("2.50BU", reading((2.5, "up"))),
        ("2.5 base-up", reading((2.5, "up"))),
        ("2.5 nasal", reading((2.5, "in"))),
        ("2.50 Δ base up", reading((2.5, "up"))),
        ("2.50∆ BU", reading((2.5, "up"))),
        ("2.5^ in", reading((2.5, "in"))),
        ("2 prism down", reading((2.0, "down"))),
        ("2 prism D down", reading((2.0, "down"))),
        ("2 prism dioptres base in", reading((2.0, "in"))),
        ("1 prism diopter BO", reading((1.0, "out"))),
        ("base in 2.25", reading((2.25, "in"))),
        ("BI 2.25 Δ", reading((2.25, "in"))),
        ("2.5 @ 37", reading((2.5, 37.0))),
        ("2.5@37", reading((2.5, 37.0))),
        ("2.5 @ 37°", reading((2.5, 37.0))),
        ("2.5 at 37 degrees", reading((2.5, 37.0))),
        ("2.5 base 37", reading((2.5, 37.0))),
        ("2.5 Δ base at 37°", reading((2.5, 37.0))),
        ("2.5 37°", reading((2.5, 37.0))),
        ("2.5 @ 0", reading((2.5, 0.0))),
        ("5.50 base down, 0.87 in", reading((5.5, "down"), (0.87, "in"))),
        ("5.50 down,0.87 in", reading((5.5, "down"), (0.87, "in"))),
        ("5,50 down, 0,87 in", reading((5.5, "down"), (0.87, "in"))),
        ("5.50 down 0.87 in", reading((5.5, "down"), (0.87, "in"))),
        ("5.50 BD / 0.87 BI", reading((5.5, "down"), (0.87, "in"))),
        ("5.50 BD; 0.87 BI", reading((5.5, "down"), (0.87, "in"))),
        ("5.50 BD & 0.87 BI", reading((5.5, "down"), (0.87, "in"))),
        ("5.50 BD + 0.87 BI", reading((5.5, "down"), (0.87, "in"))),
        ("2.25 base in with 0.43 base down", reading((2.25, "in"), (0.43, "down"))),
        ("2 in and 3 up", reading((2.0, "in"), (3.0, "up"))),
        ("in 2, up 3", reading((2.0, "in"), (3.0, "up"))),
        ("2 up and 0", reading((2.0, "up"))),
        ("2 up, 0 in", reading((2.0, "up"), (0.0, "in"))),
        ("0", reading()),
        ("0.00", reading()),
        ("-0", reading()),
        ("-0 up", reading((0.0, "up"))),
        ("no prism", reading()),
        ("None", reading()),
    ],
)
def test_a_prism_is_read(text: str, expected: PrismReading):
    assert read_prism(text) == expected


@pytest.mark.parametrize(
    ("text", "prisms", "turned"),
    [
        ("-2.4 up", ((2.4, "down"),), ("base up as base down",)),
        ("\u22122.4 in", ((2.4, "out"),), ("base in as base out",)),
        ("- 2.4 BO", ((2.4, "in"),), ("base out as base in",)),
        ("-2.5 @ 217", ((2.5, 37.0),), ("base 217 degrees as base 37 degrees",)),
        ("-2.5 @ 90", ((2.5, 270.0),), ("base 90 degrees as base 270 degrees",)),
        ("2 in, -3 up", ((2.0, "in"), (3.0, "down")), ("base up as base down",)),
        ("-2 in and -3 up", ((2.0, "out"), (3.0, "down")), ("base in as base out", "base up as base down")),
    ],
)
def test_a_minus_amount_is_turned_round_and_said(text: str, prisms: tuple, turned: tuple[str, ...]):
    found = read_prism(text)
    assert found.prisms == reading(*prisms).prisms
    assert found.turned == tuple(f"a minus amount is read as the opposite base, {said}" for said in turned)


@pytest.mark.parametrize(
    ("text", "amount"),
    [("2.4", "2.4"), ("-2.4", "2.4"), ("2 Δ", "2"), ("2.5 37", "2.5"), ("2.4 down and 0.87", "0.87")],
)
def test_a_prism_without_base_is_asked_about(text: str, amount: str):
    with pytest.raises(BaseMissing) as caught:
        read_prism(f" {text} ")
    assert caught.value.question == f"Which way does the base of the prism {amount} point?"
    assert caught.value.as_written == text


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("in", "has no amount"),
        ("base in and up", "has no amount"),
        ("none none", "has no amount"),
        ("37°", "has a direction in degrees and no amount"),
        ("2.5 BU @ 37", "gives a base as a word and in degrees"),
        ("2 in @ 37", "gives a base as a word and in degrees"),
        ("2.5 up base", "is not an amount and its base after it"),
        ("2 base", "is not an amount and its base after it"),
        ("none 2 in", "is not an amount and its base after it"),
        (",5 up", "is not an amount and its base after it"),
        ("2 in,, 3 up", "is not an amount and its base after it"),
        ("2 D in", "has a D that can be dioptres or down"),
        ("2 I", "has the letter I alone for a base direction"),
        ("2.50-up", "has a - with no number after it"),
        ("+", "has a + with no number after it"),
        ("2 baseup", "holds 'baseup', which belongs to no prism and no base direction"),
        ("2..5 up", "holds '.', which belongs to no prism and no base direction"),
        ("2e1 up", "holds 'e', which belongs to no prism and no base direction"),
        ("½ up", "holds '½', which belongs to no prism and no base direction"),
        ("２ up", "holds '２', which belongs to no prism and no base direction"),
        ("2 in\n3 up", "holds '\\n', which belongs to no prism and no base direction"),
        ("2 in 3 out", "is not one amount in or out with one up or down: put them together first"),
        ("2 up and 3 up", "is not one amount in or out with one up or down: put them together first"),
        ("1 in 2 up 3 in", "holds more than one amount in or out and one up or down"),
        ("1 in 2 up 3", "holds more than one amount in or out and one up or down"),
        ("2 @ 37 and 1 @ 90", "is not one amount in or out with one up or down: put them together first"),
    ],
)
def test_what_is_no_prism_is_refused_in_words(text: str, why: str):
    with pytest.raises(LabError) as caught:
        read_prism(text)
    assert not isinstance(caught.value, BaseMissing)
    joint = "; " if why.endswith("first") else ": "
    assert str(caught.value) == f"prism {text!r} {why}{joint}{PRISM_LIKE}"


DASH = f"that can be a dash or a sign: leave it out, or write and between two amounts; {PRISM_LIKE}"
SIZE = "is not read: give prism dioptres with up to three figures before the point and up to four after it"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2 in - 3 up", f"prism '2 in - 3 up' has a - before 3 {DASH}"),
        ("2 -3 up", f"prism '2 -3 up' has a - before 3 {DASH}"),
        ("base down -2", f"prism 'base down -2' has a - before 2 {DASH}"),
        ("1234 up", f"amount 1234 in '1234 up' {SIZE}"),
        ("2.12345 up", f"amount 2.12345 in '2.12345 up' {SIZE}"),
        (
            "2.5 @ 400",
            "base direction 400 in '2.5 @ 400' is not a direction: give degrees from 0 to 360 without a sign",
        ),
        (
            "2.5 @ -37",
            "base direction -37 in '2.5 @ -37' is not a direction: give degrees from 0 to 360 without a sign",
        ),
        ("", f"prism is empty: {PRISM_LIKE}"),
    ],
)
def test_other_words_for_what_is_no_prism(text: str, words: str):
    with pytest.raises(LabError) as caught:
        read_prism(text)
    assert str(caught.value) == words


@pytest.mark.parametrize(
    ("base", "right", "left"),
    [("in", 0, 180), ("out", 180, 0), ("up", 90, 90), ("down", 270, 270), (37.0, 37, 37), (360.0, 0, 0)],
)
def test_a_direction_in_degrees_hangs_on_the_eye(base: str | float, right: float, left: float):
    # 360 notation of ISO 8429.
    assert base_direction_deg(base, eye="right") == pytest.approx(right, abs=1e-9)
    assert base_direction_deg(base, eye="left") == pytest.approx(left, abs=1e-9)


def test_words_for_a_direction_or_an_eye_that_is_none():
    with pytest.raises(LabError, match="base 'nasal' is not a base direction: give in, out, up or down"):
        base_direction_deg("nasal", eye="right")
    with pytest.raises(LabError, match="eye 'both' is not an eye"):
        base_direction_deg("in", eye="both")


def spellings(amount: float, base: str) -> list[str]:
    """Return many ways to write one amount with its base."""
    sizes = (f"{amount:.2f}", f"{amount:g}", f"{amount:.2f}".replace(".", ","), f"+{amount:.2f}")
    units = ("", "Δ", " ∆", " prism dioptres")
    bases = (base, f"base {base}", f"Base {base.capitalize()}", SHORT[base], f"base-{base}")
    return [f"{size}{unit} {word}" for size, unit, word in itertools.product(sizes, units, bases)]


def test_thousands_of_spellings_of_one_prism_or_two():
    draw = random.Random(5)
    for _ in range(60):
        across = (draw.randrange(1, 1200) / 100, draw.choice(("in", "out")))
        upwards = (draw.randrange(1, 1200) / 100, draw.choice(("up", "down")))
        for one in spellings(*across):
            assert read_prism(one) == reading(across), one
            other = draw.choice(spellings(*upwards))
            joint = draw.choice((", ", " / ", " and ", " with ", " ", "; "))
            assert read_prism(f"{one}{joint}{other}") == reading(across, upwards), (one, joint, other)
            assert read_prism(f"{other}{joint}{one}") == reading(upwards, across), (other, joint, one)


PIECES = (
    *("2", "2.5", "2,5", "37", "400", ".5", "-", "+", "-2", "@", "at", "°", "deg", "Δ", "prism", "prism d"),
    *("base", "in", "out", "up", "down", "BI", "bd", "nasal", "d", ",", "and", "with", "none", "no prism"),
    *(" ", "  ", "\n", "x", "²"),
)


@settings(derandomize=True, deadline=None, max_examples=1500, database=None)
@given(st.lists(st.sampled_from(PIECES), max_size=10).map(" ".join) | st.text(max_size=40))
def test_any_text_is_read_or_refused_in_words(text: str):
    for reader in (read_base, read_prism):
        found = None
        with suppress(LabError):
            found = reader(text)
        if found is None:
            continue
        if isinstance(found, PrismReading):
            assert len(found.prisms) <= 2
            assert all(0.0 <= prism.amount_prism_d < 1000.0 for prism in found.prisms)
        else:
            assert found in SHORT or 0.0 <= found <= 360.0


def test_a_long_text_is_refused_at_once():
    # Read piece by piece both ways, it would take a million tries.
    with pytest.raises(LabError, match="holds more than one amount in or out and one up or down"):
        read_prism("1in1 " * 19 + "base")
