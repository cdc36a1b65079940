"""The pair panel: two lenses slid apart before two eyes, in numbers and words."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.panels.pair_panel import PairPanel

# Job of an invented lab: -3.00 both, 29 mm, centres moved 3.6 mm to suit a blank.
MOVED = {"right_pd_mm": 29.0, "left_pd_mm": 29.0, "wider_mm": 3.6}


def test_controls_have_the_ranges_the_lessons_speak_of():
    got = {name: (spec.low, spec.high, spec.step, spec.value) for name, spec in PairPanel.ranges.items()}

    assert got == {
        "right_sphere_d": (-8, 8, 0.25, -3),
        "left_sphere_d": (-8, 8, 0.25, -3),
        "wider_mm": (-6, 6, 0.2, 0),
        "right_pd_mm": (26, 38, 0.5, 31),
        "left_pd_mm": (26, 38, 0.5, 31),
        "drop_mm": (0, 12, 0.5, 0),
    }


@pytest.mark.parametrize(
    "start",
    [
        {},
        MOVED,
        {"right_sphere_d": 8.0, "left_sphere_d": -8.0, "wider_mm": -6.0, "drop_mm": 12.0},
        {"right_pd_mm": 26.0, "left_pd_mm": 38.0, "wider_mm": 6.0},
    ],
    ids=["start", "moved", "strongest", "uneven"],
)
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(PairPanel(**start))) == {None}


# 3.00 D x 0.36 cm = 1.08 base in each, 2.16 together.
def test_centres_moved_to_suit_a_blank():
    panel = PairPanel(**MOVED)
    shown = rows(panel)

    assert (shown["Centres apart"], shown["Pupils apart"]) == ("65.2 mm", "58.0 mm")
    assert shown["Right, in or out"] == shown["Left, in or out"] == "1.08 base in"
    assert shown["Both, in or out"] == "2.16 base in"
    assert shown["Slab-off, if ordered"] == "none"
    assert said(panel) == (
        "Right 1.08 base in, left 1.08 base in. Sideways 2.16 base in together: the eyes must turn outwards. "
        "Up and down nothing: both eyes look equally high."
    )


@pytest.mark.parametrize(
    ("power", "wider", "word", "turn"),
    [
        (4.0, 2.0, "out", "inwards"),
        (4.0, -2.0, "in", "outwards"),
        (-4.0, 2.0, "in", "outwards"),
        (-4.0, -2.0, "out", "inwards"),
    ],
)
def test_wider_and_narrower_by_sign(power, wider, word, turn):
    panel = PairPanel(right_sphere_d=power, left_sphere_d=power, wider_mm=wider)

    assert rows(panel)["Both, in or out"] == f"1.60 base {word}"
    assert f"the eyes must turn {turn}" in said(panel)


# Right -1.00, left -4.50, 10 mm below: 3.5, to be raised on the left lens if it is ordered.
def test_unlike_lenses_at_near():
    panel = PairPanel(right_sphere_d=-1.0, left_sphere_d=-4.5, drop_mm=10.0)
    shown = rows(panel)

    assert (shown["Right, up or down"], shown["Left, up or down"]) == ("1.00 base down", "4.50 base down")
    assert shown["Between, up or down"] == "3.50 prism dioptres"
    assert shown["Slab-off, if ordered"] == "3.50 base up, left lens"
    assert said(panel).endswith("Up and down 3.50 between them: the right eye must look lower.")
    other = PairPanel(right_sphere_d=-4.5, left_sphere_d=-1.0, drop_mm=10.0)
    assert said(other).endswith("the left eye must look lower.")


def test_bases_to_one_side_leave_the_eyes_parallel():
    panel = PairPanel(right_sphere_d=-4.0, left_sphere_d=4.0, wider_mm=3.0)

    assert (rows(panel)["Right, in or out"], rows(panel)["Left, in or out"]) == (
        "1.20 base in",
        "1.20 base out",
    )
    assert "Sideways nothing: the eyes stay parallel." in said(panel)


def test_the_sentence_is_short_enough():
    panel = PairPanel(right_sphere_d=2.0, left_sphere_d=-1.0, wider_mm=2.0, drop_mm=8.0)

    assert len(said(panel).split()) < 40


def test_the_panel_says_who_orders():
    assert "the prescriber's to order" in PairPanel.note
