"""A wrong axis told from where the mark stands: each cause alone, two at once, and what cannot be told."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.datafile import require_grade
from lablib.errors import LabError
from lablib.inspection.wrong_axis import (
    BEFORE,
    MACHINE,
    NONE,
    RIM,
    SLIP,
    Readings,
    causes,
    level_deg,
    read_table,
    shares_deg,
    suspects,
)

TURN = st.integers(2, 30).map(float) | st.integers(-30, -2).map(float)


def named(**read: float) -> list[str]:
    return [cause.name for cause in suspects(Readings(**read))]


@pytest.mark.parametrize(
    ("read", "names"),
    # Common practice, told by where the mark stands.
    [
        ({"mark_deg": 8, "loose_deg": 8, "framed_deg": 8, "other_deg": 0}, [SLIP]),
        ({"mark_deg": 0, "loose_deg": 10, "framed_deg": 10, "other_deg": 0}, [BEFORE]),
        ({"mark_deg": 0, "loose_deg": 0, "framed_deg": -4, "other_deg": 0}, [RIM]),
        ({"mark_deg": 0, "loose_deg": 3, "framed_deg": 3, "other_deg": 3}, [MACHINE]),
        ({"mark_deg": 3, "loose_deg": 3, "other_deg": 3.5}, [MACHINE]),
        ({"mark_deg": 0.5, "loose_deg": -0.5, "framed_deg": 0, "other_deg": 0}, [NONE]),
        # Two things at once, the greater first.
        ({"mark_deg": 8, "loose_deg": 8, "framed_deg": 5, "other_deg": 0}, [SLIP, RIM]),
        ({"mark_deg": 3, "loose_deg": 10, "other_deg": 0}, [BEFORE, SLIP]),
        ({"mark_deg": 0, "loose_deg": 3, "framed_deg": 8, "other_deg": 3}, [RIM, MACHINE]),
        # Nobody looked at the mark before the block came off.
        ({"loose_deg": 8, "framed_deg": 8, "other_deg": 0}, [BEFORE, SLIP]),
        ({"loose_deg": 0, "framed_deg": 8}, [RIM]),
    ],
)
def test_causes(read: dict, names: list):
    assert named(**read) == names


@given(turn=TURN)
def test_one_cause_alone_is_named(turn: float):
    for name, read in (
        (SLIP, {"mark_deg": turn, "loose_deg": turn, "framed_deg": turn}),
        (BEFORE, {"mark_deg": 0.0, "loose_deg": turn, "framed_deg": turn}),
        (RIM, {"mark_deg": 0.0, "loose_deg": 0.0, "framed_deg": turn}),
    ):
        assert named(**read) == [name]
        assert shares_deg(Readings(**read))[name] == turn
        # The other lens being right does not change it; being off otherwise neither.
        assert named(**read, other_deg=0.0) == [name]
        assert named(**read, other_deg=-turn) == [name]


@given(mark=TURN, before=TURN, rim=TURN)
def test_shares_add_up_to_what_the_frame_shows(mark: float, before: float, rim: float):
    loose = mark + before
    framed = loose + rim
    shares = shares_deg(
        Readings(mark_deg=mark, loose_deg=loose, framed_deg=framed if abs(framed) < 90 else None)
    )
    total = sum(shares.values())
    assert total == pytest.approx(framed if abs(framed) < 90 else loose)


def test_without_the_mark_it_cannot_be_told():
    assert named(loose_deg=8.0) == [BEFORE, SLIP]
    assert SLIP not in shares_deg(Readings(loose_deg=8.0))
    assert named(loose_deg=0.5) == [NONE]


def test_a_cylinder_comes_back_upon_itself_in_half_a_turn():
    # 88 one way is 92 the other, which is 4 apart as axes are.
    assert named(mark_deg=88.0, loose_deg=-88.0) == [SLIP, BEFORE]
    assert shares_deg(Readings(mark_deg=88.0, loose_deg=-88.0))[BEFORE] == 4.0


def test_readings_that_cannot_be():
    with pytest.raises(LabError, match="mark_deg 100 is out of range: give from -90 to 90 degrees"):
        Readings(loose_deg=0.0, mark_deg=100.0)


def test_every_cause_says_how_it_shows_and_what_is_done():
    table = read_table("lablib.inspection", "wrong_axis.toml")
    assert list(causes()) == [BEFORE, SLIP, RIM, MACHINE, NONE]
    assert require_grade("wrong axis", table["grade"]) == "teaching estimate"
    assert table["level"]["low"] <= level_deg() <= table["level"]["high"]
    for cause in causes().values():
        assert all(text.endswith(".") for text in (cause.shows, cause.check, cause.then)), cause.name
