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
        "An invented ticket. Frame and distances are in order. Of the lenses it says:",
        'Right eye: "-2.25 -1.00".',
        'Left eye: "-2.00 -0.75 x 170".',
        "Note: none.",
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
    assert words(sign)[1] == words(letter)[1] == "hold it and ask: Is the axis 005 or 050?"
    assert words(sign)[2] == "make it, with axis 050"
    assert words(letter)[2] == "make it, with axis 005, the letter being a degree sign"


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
