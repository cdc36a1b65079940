"""The paper ticket shows every field as written, and rings what is in doubt once the question is over."""

import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.errors import LabError
from lablib.pictures.asked import Asked, picture_for
from lablib.pictures.asked_ticket import COLUMNS, FIELDS, JobTicket, TicketPicture
from lablib.questions.ticket_check.drawn import ticket
from lablib.questions.ticket_check.kinds import kinds
from lablib.questions.ticket_check.paper import drawing
from lablib.study.draws import Draws
from lablib.study.question import Drawing

RIGHT = ("-4.25", "-1.25", "", "+2.75", "", "", "31", "20")
LEFT = ("plano", "-0.50", "2o", "+2.00", "3.00", "", "31.5", "19.5")
VALUES = {"right": RIGHT, "left": LEFT, "frame": "A 52, B 38, DBL 18", "note": "opposite signs are meant"}
HELD = VALUES | {"doubtful": ("right axis",), "doubt": "the axis of the right eye"}


@pytest.fixture
def picture() -> TicketPicture:
    return picture_for(Drawing(name="ticket", values=VALUES))


def ringed(picture: TicketPicture) -> list[str]:
    """Names of the fields that have a ring now."""
    return [name for name, field in picture.fields.items() if field.ring.get_visible()]


def test_every_field_says_what_is_written_there(picture: TicketPicture):
    picture.update(Asked(values=VALUES))
    said = {name: field.words.get_text() for name, field in picture.fields.items()}

    assert said == {
        **dict(zip((f"right {column}" for column in COLUMNS), RIGHT, strict=True)),
        **dict(zip((f"left {column}" for column in COLUMNS), LEFT, strict=True)),
        "frame": VALUES["frame"],
        "note": VALUES["note"],
    }
    assert {*COLUMNS, "right", "left", "frame", "note"} <= texts_of(picture)


def test_nothing_is_ringed_or_said_before_the_question_is_over(picture: TicketPicture):
    picture.update(Asked(values=HELD))
    before = picture.png()

    assert ringed(picture) == []
    assert picture.verdict.get_text() == ""
    picture.update(Asked(values=HELD | {"doubtful": FIELDS, "doubt": "everything"}))
    assert picture.png() == before, "the answer changes nothing before it is given"


def test_what_is_in_doubt_is_ringed_and_named_once_the_question_is_over(picture: TicketPicture):
    picture.update(Asked(values=HELD, is_over=True))

    assert ringed(picture) == ["right axis"]
    assert picture.verdict.get_text() == "ringed: the axis of the right eye"
    picture.update(Asked(values=HELD))
    assert ringed(picture) == []


def test_a_ticket_that_is_made_has_no_ring_and_says_so(picture: TicketPicture):
    picture.update(Asked(values=VALUES, is_over=True))

    assert ringed(picture) == []
    assert picture.verdict.get_text() == "nothing is ringed: it can be read in one way only"


def test_a_ring_goes_round_the_field_it_is_of(picture: TicketPicture):
    picture.update(Asked(values=VALUES | {"doubtful": FIELDS}, is_over=True))
    assert ringed(picture) == list(FIELDS)
    for name, field in picture.fields.items():
        (x, y), half = field.ring.get_center(), field.ring.get_width() / 2.0
        at, level = field.words.get_position()
        assert level == y, name
        assert x - half < at < x + half, name
        left, low, right, high = picture.window.box_px
        assert left < x - half < x + half < right, name
        assert low < y < high, name
    columns = [picture.fields[f"right {column}"].ring.get_center()[0] for column in COLUMNS]
    assert columns == sorted(columns)


@pytest.mark.parametrize("kind", kinds())
def test_words_stay_inside_and_apart_on_every_ticket_that_is_drawn(picture: TicketPicture, kind: str):
    for seed in range(12):
        values = drawing(ticket(kind, Draws(seed))).values
        for is_over in (False, True):
            picture.update(Asked(values=values, is_over=is_over))
            require_apart_and_inside(picture, (kind, seed, is_over))
        assert ringed(picture) == [name for name in FIELDS if name in values["doubtful"]]


def test_the_longest_texts_stay_inside_and_apart(picture: TicketPicture):
    widest = ("+12.75", "-10.25", "180°", "+10.00", "10.00", "down", "33.5", "22.5")
    note, doubt = (
        "opposite signs are meant, dispenser, 3 May",
        "the cylinder and the axis of each eye, and the old pair too",
    )
    values = {
        "right": widest,
        "left": widest,
        "frame": "A 52.5, B 38.5, DBL 18.5, vertex distance 12",
        "note": note,
    }
    picture.update(Asked(values=values | {"doubtful": ("note",), "doubt": doubt}, is_over=True))
    require_apart_and_inside(picture)


def test_words_are_large_enough_to_read(picture: TicketPicture):
    assert smallest_px(picture) >= 12.0


FAULTS = {
    "too few": (
        {"right": ("-1.00",)},
        "right eye of a ticket: 1 texts: give one for each of sphere, cylinder",
    ),
    "long field": (
        {"left": ("-10.000", *LEFT[1:])},
        "sphere of the left eye '-10.000' does not fit the paper",
    ),
    "no text": (
        {"left": (1.0, *LEFT[1:])},
        "sphere of the left eye 1.0 does not fit the paper: give a text of 6",
    ),
    "long note": ({"note": "n" * 45}, "note 'n+' does not fit the paper: give a text of 44 letters at most"),
    "long frame": ({"frame": "f" * 45}, "frame 'f+' does not fit the paper"),
    "long doubt": ({"doubt": "d" * 61}, "doubt 'd+' does not fit the paper"),
    "no field": (
        {"doubtful": ("right lens",)},
        "doubtful field 'right lens' is not known: give one of right",
    ),
}


@pytest.mark.parametrize(("replaced", "said"), FAULTS.values(), ids=FAULTS.keys())
def test_values_that_are_no_ticket_are_said(replaced: dict, said: str):
    with pytest.raises(LabError, match=said):
        JobTicket(**(VALUES | replaced))


def test_missing_and_unknown_values_are_said(picture: TicketPicture):
    with pytest.raises(LabError, match="values of a drawing: 'frame' is missing: give "):
        picture.update(Asked(values={"right": RIGHT, "left": LEFT}))
    with pytest.raises(LabError, match="values of a drawing: 'price' is unknown: give "):
        picture.update(Asked(values=VALUES | {"price": "60"}))
