"""The panel of multifocals: layouts of both eyes, and what must be asked before cutting."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.panels.multifocal_panel import MultifocalPanel

# Tickets 9 and 10 of invented jobs: a progressive too low in its frame, and a flat top for unlike eyes.
LOW = {
    "design": "progressive, general",
    "a_mm": 50.0,
    "b_mm": 28.0,
    "right_far_mm": 31.0,
    "right_near_mm": 29.0,
    "right_height_mm": 15.0,
    "left_height_mm": 15.0,
}
FLAT = {"a_mm": 52.0, "b_mm": 40.0, "right_height_mm": 17.0, "left_height_mm": 17.0}
FINISHED = {"design": "progressive, general", "marks": "engravings alone", "left_height_mm": 20.0}


def test_controls_have_the_ranges_the_lessons_speak_of():
    got = {
        name: (spec.low, spec.high, spec.step, spec.value)
        for name, spec in MultifocalPanel.ranges.items()
        if name not in ("design", "marks", "blank")
    }

    assert got == {
        "addition_d": (0.75, 3.5, 0.25, 2.0),
        "a_mm": (40, 62, 0.5, 54),
        "b_mm": (24, 50, 0.5, 38),
        "dbl_mm": (14, 24, 0.5, 18),
        "right_far_mm": (26, 38, 0.5, 32),
        "left_far_mm": (26, 38, 0.5, 32),
        "right_near_mm": (24, 37, 0.5, 30),
        "left_near_mm": (24, 37, 0.5, 30),
        "right_height_mm": (8, 36, 0.5, 18),
        "left_height_mm": (8, 36, 0.5, 18),
    }
    assert MultifocalPanel.ranges["design"].options == (
        "flat top 25",
        "flat top 28",
        "flat top 35",
        "round 22",
        "round 24",
        "curved top 25",
        "curved top 28",
        "progressive, general",
        "progressive, short",
    )


@pytest.mark.parametrize("start", [{}, LOW, FLAT, FINISHED], ids=["start", "low", "flat", "finished"])
def test_every_control_to_its_stops_and_back(start):
    trouble = {words for words in move_every_control(MultifocalPanel(**start)) if words}

    known = ("is larger than the far one", "inside B", "has no engravings to show", "no segment that fixes")
    assert trouble
    assert all(any(part in words for part in known) for words in trouble)


# A 54, DBL 18, near distance 30: 6 mm in; 18 high on B 38: 1 mm below. Common practice.
def test_it_starts_with_a_flat_top_laid_out():
    panel = MultifocalPanel()
    shown = rows(panel)

    assert (shown["Right, segment inset"], shown["Right, total inset"]) == ("2.0 mm", "6.0 mm in")
    assert shown["Left, top"] == "1.0 mm below midline"
    assert shown["Heights differ"] == "0.0 mm"
    assert shown["Image jump"] == "1.00 base down"
    assert said(panel).endswith("Both stand level.")


@pytest.mark.parametrize(
    ("design", "jump"), [("round 24", "2.40"), ("flat top 35", "0.90"), ("curved top 25", "1.00")]
)
def test_the_jump_is_that_of_the_depth_of_the_segments_own_centre(design: str, jump: str):
    assert rows(MultifocalPanel(design=design))["Image jump"] == f"{jump} base down"


def test_heights_that_differ_are_named_and_asked_beyond_a_millimetre():
    panel = MultifocalPanel(left_height_mm=19.0)
    assert said(panel).endswith("The left stands 1.0 mm higher.")

    panel.handles["left_height_mm"].slider.value = 20.0
    assert rows(panel)["Heights differ"] == "2.0 mm, left higher"
    assert said(panel).endswith("The left stands 2.0 mm higher: ask before cutting.")


def test_a_cross_under_the_least_height_is_a_hold_and_the_near_circle_is_cut():
    panel = MultifocalPanel(**LOW)

    assert "3.0 mm under the least fitting height: hold" in said(panel)
    assert "the rim cuts off 36 % of the near circle" in said(panel)
    assert rows(panel)["Right, near centre"] == "1.0 mm above the rim"
    assert rows(panel)["Right, own inset"] == "2.0 mm, chart 2.5"


def test_a_cross_too_near_the_top_rim_is_named():
    assert "1.0 mm too little room above it" in said(MultifocalPanel(**LOW | {"right_height_mm": 19.0}))


def test_a_segment_cut_by_the_rim_is_named():
    panel = MultifocalPanel(design="round 24", right_height_mm=16.0)

    assert "the rim cuts off" in said(panel)
    assert rows(panel)["Right, depth"] == "16.0 of 24 mm"


def test_a_cut_that_rounds_to_nothing_is_not_said():
    panel = MultifocalPanel(**LOW | {"right_height_mm": 18.0, "left_height_mm": 18.0})

    assert 0.995 < panel.at().right.near_circle_left < 1.0
    assert "cuts off" not in said(panel)


# The blank has its segment 3 mm in and 5 mm down: total inset 8 less 3, top -2 plus 5.
def test_a_blank_is_laid_so_that_its_segment_lies_right():
    panel = MultifocalPanel(a_mm=58.0, b_mm=44.0, right_height_mm=20.0, left_height_mm=20.0, blank="blank 70")
    shown = rows(panel)

    assert (shown["Right, blank across"], shown["Right, blank upright"]) == ("5.0 mm in", "3.0 mm up")
    assert "the blank lacks" in said(panel)
    panel.handles["blank"].box.value = "blank 75"
    assert (shown := rows(panel))["Right, blank across"] == "4.0 mm in"
    assert "lacks" not in said(panel)
    assert float(shown["Right, least blank"].split()[0]) <= 75.0


def test_engravings_alone_do_not_tell_where_the_cross_is():
    panel = MultifocalPanel(**FINISHED)
    shown = rows(panel)

    assert "cross" not in " ".join(shown)
    assert (shown["Right, nasal engraving"], shown["Right, temporal engraving"]) == (
        "21.0 mm in",
        "13.0 mm out",
    )
    assert shown["Left, engravings"] == "3.0 mm below midline"
    assert said(panel).startswith("Only the engravings are left")
    panel.handles["marks"].box.value = "all"
    assert rows(panel)["Left, cross upright"] == "1.0 mm above midline"


@pytest.mark.parametrize(
    ("start", "words"),
    [
        ({"marks": "engravings alone"}, "flat top 28: a segment has no engravings"),
        ({"design": "progressive, short", "blank": "blank 70"}, "has no segment that fixes its place"),
        ({"right_near_mm": 33.0}, "near distance 33 mm is larger than the far one, 32 mm"),
    ],
)
def test_what_cannot_be_is_said_in_the_place_of_the_picture(start: dict, words: str):
    assert words in str(MultifocalPanel(**start).trouble)


@pytest.mark.parametrize("start", [{}, LOW, {"design": "round 24", "right_height_mm": 10.0}])
def test_the_sentence_is_short_enough(start: dict):
    assert len(said(MultifocalPanel(**start)).split()) <= 70
