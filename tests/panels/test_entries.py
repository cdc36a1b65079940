"""The controls an answer is given with: what they hand over, and what they show again."""

from dataclasses import dataclass, field

import pytest

from lablib.panels.entries import entry_for
from lablib.panels.entry import Entry
from lablib.questions.answers.prescription import PrescriptionAnswer
from lablib.study.marker import MarkerAnswer
from lablib.study.number import NumberAnswer
from lablib.study.picked import ChoiceAnswer, Option, OrderAnswer, SeveralAnswer

OPTIONS = tuple(Option(key=key, words=f"the {key} one") for key in ("first", "second", "third"))
PRESCRIPTION = PrescriptionAnswer(form="minus")
NUMBER = NumberAnswer(unit="mm", tolerance=0.05, digits=1)
CHOICE, SEVERAL, ORDER = (kind(options=OPTIONS) for kind in (ChoiceAnswer, SeveralAnswer, OrderAnswer))
MARKER = MarkerAnswer(
    label="Thickest at", unit="degrees", low=0, high=360, step=2, start=90, tolerance=15, wraps=True
)


@dataclass
class Heard:
    """What an entry said: its changes, and how often it was handed in."""

    changes: list = field(default_factory=list)
    entered: int = 0

    def enter(self) -> None:
        self.entered += 1


def entry(kind: object) -> tuple[Entry, Heard]:
    heard = Heard()
    return entry_for(kind, heard.changes.append, heard.enter), heard


def test_a_number_is_asked_for_with_its_unit_and_is_none_until_written():
    made, heard = entry(NUMBER)
    assert made.widget.description == "Your answer [mm]"
    assert made.given is None
    made.widget.value = "2"
    made.widget.value = "2."
    made.widget.value = ""
    assert heard.changes == ["2", "2.", None]


def test_enter_hands_in_and_leaves_the_text_as_it_was():
    made, heard = entry(NUMBER)
    made.widget.value = "2.5\n"
    assert (made.given, made.widget.value, heard.entered) == ("2.5", "2.5", 1)
    made.widget.value = "2.5\n"
    assert (made.given, heard.entered, heard.changes) == ("2.5", 2, ["2.5"])


def test_enter_in_the_middle_of_a_line_hands_all_of_it_in():
    made, heard = entry(NUMBER)
    made.widget.value = "2.5"
    made.widget.value = "2\n.5"
    assert (made.given, heard.entered) == ("2.5", 1)


def test_lines_that_are_pasted_are_not_handed_in_and_not_run_together():
    made, heard = entry(NUMBER)
    made.widget.value = "1.5\n2"
    assert (made.given, heard.entered) == ("1.5 2", 0)


def test_a_prescription_goes_on_one_line_or_in_three_boxes():
    made, heard = entry(PRESCRIPTION)
    made.whole.widget.value = "+2.00 -1.50 x 020"
    assert made.given == "+2.00 -1.50 x 020"
    made.how.value = "a box for each part"
    assert made.given is None
    for box, text in zip(made.boxes, ("+2.00", "-1.50", "20"), strict=True):
        box.box.value = text
    assert made.given == heard.changes[-1] == ["+2.00", "-1.50", "20"]


def test_an_addition_has_a_box_of_its_own():
    made, _ = entry(PrescriptionAnswer(form="minus", addition=True))
    assert [box.box.description for box in made.boxes] == ["Sphere", "Cylinder", "Axis", "Addition"]
    made.set(["+2.00", "-1.50", "20", "2.25"])
    assert made.given == ["+2.00", "-1.50", "20", "2.25"]


def test_enter_goes_through_the_three_boxes_and_hands_in_at_the_last():
    made, heard = entry(PRESCRIPTION)
    made.how.value = "a box for each part"
    for box, entered in zip(made.boxes, (0, 0, 1), strict=True):
        box.box.value = "1\n"
        assert heard.entered == entered


def test_one_way_of_writing_is_shown_at_a_time():
    made, _ = entry(PRESCRIPTION)
    boxes = made.widget.children[2]
    assert (made.whole.widget.layout.display, boxes.layout.display) == (None, "none")
    made.set(["+2.00", "-1.50", "20"])
    assert (made.whole.widget.layout.display, boxes.layout.display) == ("none", None)
    made.set("+2.00 -1.50 x 20")
    assert (made.whole.widget.layout.display, boxes.layout.display) == (None, "none")


def test_nothing_is_picked_at_first():
    for kind in (CHOICE, SEVERAL):
        assert entry(kind)[0].given is None


def test_picks_are_handed_over_by_their_keys():
    choice, heard = entry(CHOICE)
    choice.widget.index = 1
    assert choice.given == "second"
    assert heard.changes == ["second"]
    several, heard = entry(SEVERAL)
    several.boxes["third"].value = True
    several.boxes["first"].value = True
    several.boxes["third"].value = False
    assert several.given == ["first"]
    assert heard.changes == [["third"], ["first", "third"], ["first"]]


def test_an_order_moves_one_place_at_a_time():
    made, heard = entry(ORDER)
    made.rows[2].earlier.click()
    made.rows[1].earlier.click()
    assert made.given == ["third", "first", "second"]
    made.rows[0].later.click()
    assert heard.changes[-1] == made.given == ["first", "third", "second"]
    assert [row.words.value for row in made.rows] == [
        "1. the first one",
        "2. the third one",
        "3. the second one",
    ]


def test_an_order_that_was_not_touched_is_no_answer():
    made, _ = entry(ORDER)
    assert made.given is None
    made.rows[0].later.click()
    made.rows[1].earlier.click()
    assert made.given == ["first", "second", "third"]


def test_nothing_moves_beyond_the_ends():
    made, _ = entry(ORDER)
    assert [(row.earlier.disabled, row.later.disabled) for row in made.rows] == [
        (True, False),
        (False, False),
        (False, True),
    ]


def test_a_marker_that_was_not_moved_is_no_answer():
    made, heard = entry(MARKER)
    assert (made.given, made.control.value) == (None, 90)
    made.control.slider.value = 180.0
    assert made.given == 180
    made.control.box.value = "200"
    assert heard.changes == [180, 200]


def test_what_is_typed_for_a_marker_and_is_no_place_is_handed_over_as_typed():
    made, _ = entry(MARKER)
    made.control.box.value = "top"
    assert made.given == "top"


@pytest.mark.parametrize(
    ("kind", "given"),
    [
        (NUMBER, "2,5 mm"),
        (PRESCRIPTION, "+2.00"),
        (PRESCRIPTION, ["+2.00", "", ""]),
        (CHOICE, "third"),
        (SEVERAL, ["first", "third"]),
        (ORDER, ["second", "third", "first"]),
        (MARKER, 270.0),
    ],
)
def test_what_was_given_before_is_shown_again_without_a_word(kind: object, given: object):
    made, heard = entry(kind)
    made.set(given)
    assert made.given == given
    assert (heard.changes, heard.entered) == ([], 0)


@pytest.mark.parametrize("kind", [NUMBER, PRESCRIPTION, CHOICE, SEVERAL, ORDER, MARKER])
def test_nothing_can_be_shown_again_as_well(kind: object):
    made, _ = entry(kind)
    made.set(None)
    assert made.given is None
