"""Questions about tickets: what the reader asks about each kind, and what is said of each wrong choice."""

import pytest
from settled import settled, slips

from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.reading import read
from lablib.questions.ticket_check import MakeOrHold, SortTickets, WriteItRight
from lablib.questions.ticket_check.drawn import Ticket, ticket
from lablib.questions.ticket_check.kinds import Kind, kinds
from lablib.questions.ticket_check.make_or_hold import TicketCase
from lablib.questions.ticket_check.order import Doubt, Order, asked
from lablib.questions.ticket_check.paper import drawing
from lablib.questions.ticket_check.write import WritingCase
from lablib.study.draws import Draws
from lablib.study.marking import State, mark
from lablib.study.question import Question

SEEDS = range(200)
OPTIONS = ("make", "hold", "make-altered", "hold-for-another-thing")
SOUND = Prescription.parse("-2.00 -0.75 x 170")
by_kind = pytest.mark.parametrize("kind", kinds().values(), ids=kinds().keys())
# What the ticket reader asks, of tickets written out by hand. Which faults send one back: common practice.
TICKETS = {
    "axis-missing": (
        Order(right="-2.25 -1.00", left="-2.00 -0.75 x 170"),
        "ask about the right eye: What is the axis of the cylinder -1.00?",
    ),
    "axis-without-cylinder": (
        Order(right="-2.00 -0.75 x 170", left="-2.25 x 090"),
        "ask about the left eye: There is an axis 090 but no cylinder: was a cylinder left out?",
    ),
    "sign-missing": (
        Order(right="2.25 -1.00 x 090", left="-2.00 -0.75 x 170"),
        "ask about the right eye: Is the sphere 2.25 plus or minus?",
    ),
    "point-missing": (
        Order(right="-2.25 -50 x 090", left="-2.00 -0.75 x 170"),
        "ask about the right eye: The cylinder is written -50: where does the decimal point stand?",
    ),
    "prism-without-base": (
        Order(right="-2.25 DS", left="-2.00 DS", prism_eye=Eye.LEFT, prism_prism_d=2.0),
        "ask about the left eye: Which way does the base of the prism 2.00 point?",
    ),
    "opposite-signs": (
        Order(right="+2.25 DS", left="-2.00 -0.75 x 170"),
        "ask: Right +2.25 DS and left -2.00 -0.75 x 170 have opposite signs: is that meant? A note on the "
        "ticket settles it.",
    ),
    "additions-differ": (
        Order(right="+1.00 DS add 2.00", left="+1.25 DS add 2.25"),
        "ask: Right +2.00 and left +2.25 D of addition differ: is that meant? A note on the ticket settles "
        "it.",
    ),
    "addition-in-one-eye": (
        Order(right="+1.00 DS add 2.00", left="+1.25 DS"),
        "ask: Addition +2.00 D stands in one eye only: is that meant? A note on the ticket settles it.",
    ),
    # The ticket of the trade that looks odd: R +2.00 -1.00 x 090, L +1.00 +1.00 x 180, the same lens twice.
    "two-forms": (Order(right="+2.00 -1.00 x 090", left="+1.00 +1.00 x 180"), None),
    "noted-opposite-signs": (Order(right="+2.25 DS", left="-2.00 DS", note="opposite signs are meant"), None),
    "unsigned-addition": (Order(right="+1.00 DS add 2.25", left="+1.00 DS add 2.25"), None),
    "degree-sign": (Order(right="-1.00 -1.00 x 5°", left="-1.00 DS"), None),
    "plano-eye": (Order(right="plano", left="-1.00 DS"), None),
    "commas": (Order(right="-1,00 -1,00 x 050", left="-1,00"), None),
}


@pytest.mark.parametrize(("order", "question"), TICKETS.values(), ids=TICKETS.keys())
def test_what_the_ticket_reader_asks(order: Order, question: str | None):
    assert [str(doubt) for doubt in asked(order)] == ([question] if question else [])


def test_a_line_that_cannot_be_read_is_asked_about_in_the_readers_words():
    (doubt,) = asked(Order(right="-2.00 -1.00 x 5o", left="-2.00 DS"))
    assert doubt.eye is None
    assert "has a letter o after a figure, for a nought or for a degree sign" in doubt.words


def test_a_ticket_says_prism_and_note_where_they_are():
    order = Order(right="-1.00 DS", left="+1.00 DS", prism_eye=Eye.LEFT, prism_prism_d=1.5, note="meant")
    assert order.shown(Eye.RIGHT) == "-1.00 DS"
    assert order.on_one_line == "right -1.00 DS; left +1.00 DS, prism 1.50; note: meant"


@by_kind
def test_every_ticket_drawn_has_the_one_thing_its_kind_is_about(kind: Kind):
    eyes = set()
    for seed in SEEDS:
        one = ticket(kind.key, Draws(seed))
        assert len(asked(one.order)) == kind.is_fault, one.order
        line = one.order.right if one.sound_eye is Eye.RIGHT else one.order.left
        assert read(line).prescription == Prescription(
            sphere_d=one.sound.sphere_d,
            cylinder_d=one.sound.cylinder_d,
            axis_deg=one.sound.axis_deg,
            addition_d=read(line).prescription.addition_d,
        )
        eyes.add(one.sound_eye)
    assert eyes == set(Eye)


def case_of(kind: str, order: Order, axis_deg: int = 0) -> TicketCase:
    """Return a ticket written out by hand, with a question about its sound eye."""
    other = Doubt(words="What is the axis of the cylinder -0.75?", eye=Eye.LEFT)
    one = Ticket(kind=kind, order=order, sound_eye=Eye.LEFT, sound=SOUND, axis_deg=axis_deg)
    return TicketCase(ticket=one, other=other, shown=OPTIONS)


def words(question: Question) -> list[str]:
    """Return the options as they are read."""
    return [option.words for option in question.kind.options]


def test_a_ticket_with_a_fault_is_held_with_the_readers_question():
    question = settled(MakeOrHold(), case_of("axis-missing", TICKETS["axis-missing"][0]))
    assert question.prompt == (
        "An invented ticket, printed. Of the lenses it says:",
        'Right eye: "-2.25 -1.00".',
        'Left eye: "-2.00 -0.75 x 170".',
        "Note: none.",
        "Frame A 52, B 38, DBL 18, vertex distance 12; PD 31 and height 20 in each eye: these are in order.",
        "Do you make it or hold it?",
    )
    assert words(question) == [
        "make it as it stands",
        "hold it and ask about the right eye: What is the axis of the cylinder -1.00?",
        "make it, with the axis of the other eye",
        "hold it and ask about the left eye: What is the axis of the cylinder -0.75?",
    ]
    assert question.right == "hold"
    assert slips(mark(question, "make")) == ("lets-axis-missing-through",)
    assert slips(mark(question, "make-altered")) == ("fills-in-axis-missing",)
    assert slips(mark(question, "hold-for-another-thing")) == ("asks-about-what-is-in-order",)
    assert question.solution.words[0] == (
        "Hold it and ask about the right eye: What is the axis of the cylinder -1.00?"
    )


def test_a_ticket_that_only_looks_odd_is_made():
    question = settled(MakeOrHold(), case_of("two-forms", TICKETS["two-forms"][0]))
    assert question.right == "make"
    assert slips(mark(question, "hold")) == ("holds-two-forms",)
    assert slips(mark(question, "make-altered")) == ("changes-two-forms",)
    assert question.solution.words[0] == "Make it as it stands."


def test_a_degree_sign_is_read_and_a_letter_is_asked_about():
    sign, letter = (
        settled(
            MakeOrHold(), case_of(kind, Order(right=f"-2.00 -1.00 x 5{mark}", left=str(SOUND)), axis_deg=5)
        )
        for kind, mark in (("degree-sign", "°"), ("degree-letter", "o"))
    )
    assert (sign.right, letter.right) == ("make", "hold")
    assert (
        words(sign)[1] == words(letter)[1] == "hold it and ask about the right eye: Is the axis 005 or 050?"
    )
    assert words(sign)[2] == "make it, with axis 050"
    assert words(letter)[2] == "make it, with axis 005, the letter being a degree sign"


# Which field of a ticket is in doubt, written out by hand.
DOUBTS = {
    "axis-missing": "the axis",
    "axis-without-cylinder": "the cylinder and the axis",
    "sign-missing": "the sphere",
    "point-missing": "the cylinder",
    "prism-without-base": "the base",
    "degree-letter": "the axis",
    "opposite-signs": "the sphere",
    "additions-differ": "the addition",
    "addition-in-one-eye": "the addition",
}


@by_kind
def test_a_paper_ticket_has_the_fields_in_doubt_by_their_names(kind: Kind):
    for seed in SEEDS:
        one = ticket(kind.key, Draws(seed))
        values = drawing(one).values
        assert (not values["doubtful"], not values["doubt"]) == (not kind.is_fault, not kind.is_fault)
        named = {eye for eye in Eye if any(name.startswith(eye) for name in values["doubtful"])}
        both = kind.key in ("opposite-signs", "additions-differ", "addition-in-one-eye")
        assert named == (set() if not kind.is_fault else set(Eye) if both else {one.sound_eye.other})
        for name in values["doubtful"]:
            eye, column = name.split(" ")
            assert column in values["doubt"]
            assert both or f"of the {eye} eye" in values["doubt"]
        if kind.is_fault and not one.part:
            assert values["doubt"].startswith(DOUBTS[kind.key])


def test_a_part_that_was_drawn_to_be_in_doubt_is_the_one_that_is():
    parts = set()
    for kind, right in (
        ("sign-missing", lambda text: text[0] in "+-"),
        ("point-missing", lambda text: "." in text),
    ):
        for seed in SEEDS:
            one = ticket(kind, Draws(seed))
            sphere, cylinder, *_ = drawing(one).values[one.sound_eye.other]
            assert [right(sphere), right(cylinder)] == [one.part != "sphere", one.part != "cylinder"]
            parts.add(one.part)
    assert parts == {"sphere", "cylinder"}


def test_each_part_of_a_line_stands_in_its_own_field():
    order = Order(right="-2.25 x 5o add 2.00", left="pl -.5 x 0", prism_eye=Eye.LEFT, prism_prism_d=1.5)
    values = drawing(Ticket(kind="commas", order=order, sound_eye=Eye.LEFT, sound=SOUND)).values
    assert values["right"] == ("-2.25", "", "5o", "2.00", "", "", "31", "20")
    assert values["left"] == ("pl", "-.5", "0", "", "1.50", "", "31", "20")
    assert values["frame"] == "A 52, B 38, DBL 18, vertex distance 12"


def test_what_is_ringed_is_said_in_the_solution_too():
    question = settled(MakeOrHold(), case_of("axis-missing", TICKETS["axis-missing"][0]))
    assert question.drawing.values["doubtful"] == ("right axis",)
    assert question.solution.words[-1] == "Ringed on the ticket: the axis of the right eye."
    sound = settled(MakeOrHold(), case_of("two-forms", TICKETS["two-forms"][0]))
    assert sound.solution.words[-1] == "Nothing is ringed on the ticket."


def test_a_lens_of_mixed_signs_is_minus_by_its_equivalent_as_is_the_other_eye():
    for seed in SEEDS:
        one = ticket("mixed-lens", Draws(seed))
        lens = read(one.order.line(one.odd_eye)).prescription
        assert lens.sphere_d > 0.0 > lens.spherical_equivalent_d
        assert one.sound.spherical_equivalent_d < 0.0


def test_a_strong_lens_is_not_held_for_its_vertex_distance():
    assert asked(Order(right="-5.50 -1.00 x 010", left="-5.25 DS")) == ()
    for maker in (MakeOrHold(), SortTickets()):
        assert any("vertex distance 12" in words for words in maker.make(1).prompt)


def test_faults_and_sound_tickets_come_about_as_often():
    rights = [MakeOrHold().make(seed).right for seed in range(400)]
    assert set(rights) == {"make", "hold"}
    assert 0.4 < rights.count("hold") / len(rights) < 0.65


def test_of_six_tickets_two_to_four_are_held():
    counts = set()
    for seed in SEEDS:
        question = SortTickets().make(seed)
        keys = [option.key for option in question.kind.options]
        assert len(keys) == 6
        assert question.right == {key for key in keys if kinds()[key].is_fault}
        assert [option.words[:3] for option in question.kind.options] == [
            f"{letter}: " for letter in "ABCDEF"
        ]
        held = [words[5] for words in question.solution.words if words.startswith("Hold")]
        assert held == [letter for letter, key in zip("ABCDEF", keys, strict=True) if key in question.right]
        counts.add(len(question.right))
    assert counts == {2, 3, 4}


def test_a_fault_let_through_and_a_sound_one_held_are_named():
    question = SortTickets().make(1)
    fault = sorted(question.right)[0]
    answer = mark(question, sorted(question.right - {fault}))
    assert (answer.state, slips(answer)) == (State.WRONG, (f"lets-{fault}-through",))
    sound = next(option.key for option in question.kind.options if option.key not in question.right)
    assert slips(mark(question, sorted(question.right | {sound}))) == (f"holds-{sound}",)
    assert mark(question, sorted(question.right)).state is State.RIGHT


@pytest.mark.parametrize(
    ("line", "shown", "read_as"),
    [
        (
            "- 2.25 -1.5 x 5°",
            ("proper", "sign-apart", "nought-before-figure", "degree-for-nought"),
            ["-2.25 -1.50 x 005", "+2.25 -1.50 x 005", "-2.25 -1.05 x 005", "-2.25 -1.50 x 050"],
        ),
        (
            "pl -.5 x 0",
            ("proper", "cylinder-for-sphere", "point-overlooked", "axis-of-nought-dropped"),
            ["plano -0.50 x 180", "-0.50 DS", "plano -5.00 x 180", "plano"],
        ),
    ],
)
def test_a_careless_line_and_its_misreadings(line: str, shown: tuple, read_as: list):
    question = settled(WriteItRight(), WritingCase(line=line, shown=shown))
    assert words(question) == read_as
    assert question.right == "proper"
    assert slips(mark(question, shown[1])) == (shown[1],)
    assert read_as[0] in question.solution.words[0]


def test_every_careless_line_can_be_read():
    for seed in SEEDS:
        case = WriteItRight().draw(Draws(seed))
        assert read(str(case.rx)).prescription == case.rx
        assert str(case.rx) != case.line
