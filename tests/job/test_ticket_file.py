"""Reading tickets: the design's example, every fault with its words, holds apart from faults."""

import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tickets import FRAME, LENS, table, ticket, ticket_path

from lablib.errors import LabError
from lablib.job.fields import TicketFaults
from lablib.job.ticket import Ticket
from lablib.job.ticket_file import ticket_from
from lablib.job.ticket_writing import ticket_text
from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import Prism

EVERY_KEY = """
format = 1
number = "T-101"
note = "as last year"

[frame]
a_mm = 54.0
b_mm = 38
dbl_mm = 17.0
kind = "grooved"
rim_curve_d = 5.5
outline = { family = "superellipse", exponent = 3.2 }

[wearer]
vertex_distance_mm = 12.0
tested_vertex_distance_mm = 13.0

[right]
sphere_d = -6.25
cylinder_d = -2.75
axis_deg = 20
monocular_pd_mm = 31.0
height_mm = 21.0
addition_d = 0.0
prism = [{ amount_prism_d = 1.5, base = "in" }, { amount_prism_d = 1.0, base = 270 }]

[right.lens]
least_edge_mm = 2.0
coat = "uncoated"

[left]
prescription = "-5.50 -1.25 x 165"
monocular_pd_mm = 32.0

[lens]
design = "single vision"
material = { index = 1.592, density = 1.31, abbe = 42.0, cuts_like = "polycarbonate-1.59" }
front_curve_measured_d = 3.0
centre_thickness_mm = 1.3
blank_diameter_mm = 75.0
supply = "surfaced"
coat = "slick"

[blocking]
blocking_point = "optical centre"
film = true
clamp_force_n = 290.0
grip_layer = "present"
film_wrinkle = 0.1
block_face = "worn"
key_play_mm = 0.1
block_curve_d = 4.0
tip_face_mm = 80.0
tip_stiffness = "stiff"
tip_swivels = false

[cut]
crib_allowance_mm = 2.0
depth_per_turn_mm = 2.0
feed = "head force"
head_force_n = 12.0
torque_cap_nmm = 500.0
lens_speed_rpm = 6.0
water = "dry"
"""


@pytest.fixture
def every_key(tmp_path: Path) -> Ticket:
    path = tmp_path / "job.toml"
    path.write_text(EVERY_KEY, encoding="utf-8")
    return Ticket.read(path)


def test_every_key_of_the_format_is_read(every_key: Ticket):
    right, left = every_key.right, every_key.left
    assert (every_key.number, every_key.note) == ("T-101", "as last year")
    assert (every_key.frame.a_mm, every_key.frame.b_mm, every_key.frame.kind) == (54.0, 38.0, "grooved")
    assert every_key.frame.shape.lower_nasal == 3.2
    assert every_key.frame.rim_curve_d == 5.5
    assert every_key.wearer.tested_vertex_distance_mm == 13.0
    assert right.prescription == Prescription(sphere_d=-6.25, cylinder_d=-2.75, axis_deg=20)
    assert right.prism == (
        Prism(amount_prism_d=1.5, base="in"),
        Prism(amount_prism_d=1.0, base=270),
    )
    assert right.height_mm == 21.0
    assert left.height_mm is None
    assert left.prescription == Prescription(sphere_d=-5.5, cylinder_d=-1.25, axis_deg=165)
    assert left.lens.material.cuts_like == "polycarbonate-1.59"
    assert every_key.blocking.film is True
    assert (every_key.blocking.grip_layer, every_key.blocking.block_face) == ("present", "worn")
    assert (every_key.blocking.film_wrinkle, every_key.blocking.key_play_mm) == (0.1, 0.1)
    assert (every_key.blocking.block_curve_d, every_key.blocking.tip_face_mm) == (4.0, 80.0)
    assert (every_key.blocking.tip_stiffness, every_key.blocking.tip_swivels) == ("stiff", False)
    assert every_key.cut.crib_allowance_mm == 2.0
    assert (every_key.cut.feed, every_key.cut.head_force_n, every_key.cut.torque_cap_nmm) == (
        "head force",
        12.0,
        500.0,
    )
    assert (every_key.cut.lens_speed_rpm, every_key.cut.water) == (6.0, "dry")


def test_a_key_of_one_eye_replaces_its_alternative(every_key: Ticket):
    assert (every_key.right.lens.least_edge_mm, every_key.right.lens.centre_thickness_mm) == (2.0, None)
    assert (every_key.left.lens.least_edge_mm, every_key.left.lens.centre_thickness_mm) == (None, 1.3)
    assert (every_key.right.lens.coat, every_key.left.lens.coat) == ("uncoated", "slick")


def test_a_measured_front_curve_is_turned_into_the_material(every_key: Ticket):
    # Lens measure engraved for 1.530: 3.00 on index 1.592 is 3.00 x 0.592 / 0.530.
    assert every_key.left.lens.front_surface_d == pytest.approx(3.3509, abs=5e-5)


def test_what_is_written_reads_back_as_it_was(every_key: Ticket):
    assert ticket_from(tomllib.loads(ticket_text(every_key))) == every_key
    assert ticket_from(tomllib.loads(ticket_text(ticket()))) == ticket()


def test_defaults_where_a_key_is_optional():
    plain = ticket(frame={"a_mm": 50, "b_mm": 32, "dbl_mm": 18}, left=None)
    assert plain.left is None
    assert plain.frame.shape.upper_nasal == 2.6
    assert (plain.right.lens.supply, plain.right.lens.coat, plain.right.lens.design) == (
        "surfaced",
        "coated",
        "single vision",
    )
    assert (plain.blocking.blocking_point, plain.blocking.film) == ("boxed centre", False)


@pytest.mark.parametrize("outline", ["panto", {"family": "panto"}])
def test_a_named_outline_can_be_given_either_way(outline: object):
    assert ticket(frame=FRAME | {"outline": outline}).frame.shape.family == "panto"


RIGHT = {"sphere_d": -2.0, "monocular_pd_mm": 32.0}


@pytest.mark.parametrize(
    ("parts", "line"),
    [
        ({"format": 2}, "format = 2: this workbook reads format 1: write format = 1"),
        ({"format": None}, "format = None: this workbook reads format 1: write format = 1"),
        ({"number": 3}, "number = 3 is not text: put it in quotes"),
        ({"number": None}, "number is missing: add it"),
        (
            {"frame": 5},
            "frame = 5 is not a table: write it as [frame] with its keys below",
        ),
        (
            {"frame": FRAME | {"a_mm": "54"}},
            "[frame] a_mm '54' is not a number: give a number",
        ),
        (
            {"frame": FRAME | {"a_mm": 5.0}},
            "[frame] a_mm 5 is out of range: give from 20 to 80 mm",
        ),
        (
            {"frame": FRAME | {"trace": "t.txt"}},
            "[frame] trace and a_mm: both are there: take a_mm away, the trace gives it",
        ),
        (
            {"frame": FRAME | {"outline": "star"}},
            "[frame] outline family 'star' is not in the table: give one of superellipse, round, rectangle, "
            "panto, pilot",
        ),
        (
            {"frame": FRAME | {"outline": 3}},
            "[frame] outline = 3: give a family's name or a table with a family",
        ),
        (
            {"frame": FRAME | {"outline": {"family": "panto", "exponent": 2}}},
            "[frame] outline = {'family': 'panto', 'exponent': 2}: give family = a name of the table, or "
            'family = "superellipse" with an exponent',
        ),
        (
            {"frame": FRAME | {"rim_curve_d": 12.0}},
            "[frame] rim_curve_d 12 is out of range: give from 0 to 10 D",
        ),
        (
            {"frame": FRAME | {"kind": "wood"}},
            "[frame] frame kind 'wood' is not known: give one of plastic, metal, grooved, drilled",
        ),
        (
            {"right": RIGHT | {"cylinder_d": -1.0, "axis_deg": 194}},
            "[right] axis 194 is not a cylinder axis: give an axis above 0 and up to 180 degrees",
        ),
        (
            {"right": RIGHT | {"cylinder_d": -1.0, "axis_deg": 0}},
            "[right] axis 0 is written 180: give an axis above 0 and up to 180 degrees",
        ),
        (
            {"right": RIGHT | {"sphere_d": float("nan")}},
            "[right] sphere_d nan is not a finite number: give a number",
        ),
        ({"right": {"monocular_pd_mm": 32.0}}, "[right] sphere_d is missing: add it"),
        (
            {"right": RIGHT | {"prescription": "-2.00 DS"}},
            "[right] prescription = '-2.00 DS' and its numbers are both there: give the line, or sphere_d, "
            "cylinder_d and axis_deg",
        ),
        (
            {
                "right": {
                    "prescription": "-2.00 DS add +2.00",
                    "addition_d": 1.0,
                    "monocular_pd_mm": 32.0,
                }
            },
            "[right] addition_d = 1 and 2 in the prescription differ: give it once",
        ),
        (
            {"right": RIGHT | {"monocular_pd_mm": 64.0}},
            "[right] monocular_pd_mm 64 is out of range: give from 18 to 45 mm",
        ),
        (
            {"right": RIGHT | {"prism": 2.0}},
            "[right] prism = 2.0: give a list: [{ amount_prism_d = 1.5, base = 'in' }]",
        ),
        (
            {"right": RIGHT | {"prism": [2.0]}},
            "[right] prism = 2.0: give amount_prism_d and base for each",
        ),
        (
            {"right": RIGHT | {"prism": [{"amount_prism_d": 1.0, "base": "left"}]}},
            "[right.prism] base 'left' is not a base direction: give in, out, up or down, or degrees from 0 "
            "to 360",
        ),
        (
            {"right": RIGHT | {"lens": 4}},
            "[right] lens = 4: write [lens] with its keys",
        ),
        (
            {"lens": LENS | {"material": "glass"}},
            "[lens] material 'glass' is not in the table: give one of crown-glass-1.523, hard-resin-1.50, "
            "urethane-1.53, polycarbonate-1.59, thiourethane-1.60, thiourethane-1.67, episulfide-1.74",
        ),
        (
            {"lens": LENS | {"material": None}},
            "[lens] material = None: give a name of the table, or index and density",
        ),
        (
            {"lens": LENS | {"material": {"index": 1.6, "colour": 1}}},
            "[lens] material key 'colour': give index, density, abbe and cuts_like only",
        ),
        (
            {"lens": LENS | {"material": {"index": 1.6}}},
            "[lens] material without density: give index and density, or a name",
        ),
        (
            {"lens": LENS | {"material": {"index": 1.6, "density": 1.3, "cuts_like": ["a"]}}},
            "[lens] material ['a'] is not in the table: give one of crown-glass-1.523, hard-resin-1.50, "
            "urethane-1.53, polycarbonate-1.59, thiourethane-1.60, thiourethane-1.67, episulfide-1.74",
        ),
        (
            {"frame": FRAME | {"outline": {"family": ["a"]}}},
            "[frame] outline family ['a'] is not in the table: give one of superellipse, round, rectangle, "
            "panto, pilot",
        ),
        ({"number": " "}, "number = ' ' cannot be printed on one line: write it in plain characters"),
        (
            {"note": "\x1b[31m"},
            "note = '\\x1b[31m' cannot be printed on one line: write it in plain characters",
        ),
        (
            {"lens": LENS | {"material": {"index": 16.0, "density": 1.3}}},
            "[lens] material by its numbers: index 16 is out of range: give from 1.4 to 1.95",
        ),
        (
            {"lens": LENS | {"least_edge_mm": 1.0}},
            "[lens] centre_thickness_mm and least_edge_mm: both are there: give exactly one of the two",
        ),
        (
            {"lens": LENS | {"front_curve_d": None}},
            "[lens] front_curve_d and front_curve_measured_d: neither is there: give exactly one of the two",
        ),
        (
            {"lens": LENS | {"design": "trifocal"}},
            "[lens] design 'trifocal' is not known: give one of single vision, flat top, round segment, "
            "curved top, progressive",
        ),
        (
            {"lens": LENS | {"supply": "bought"}},
            "[lens] supply 'bought' is not known: give one of surfaced, stock",
        ),
        (
            {"lens": LENS | {"coat": "waxed"}},
            "[lens] coat 'waxed' is not known: give one of uncoated, coated, slick",
        ),
        (
            {"lens": LENS | {"centre_thickness_mm": 0.0}},
            "[lens] centre_thickness_mm 0 is out of range: give above 0 and up to 60 mm",
        ),
        (
            {"blocking": {"film": "yes"}},
            "[blocking] film 'yes' is not yes or no: give true or false",
        ),
        (
            {"blocking": {"grip_layer": "half"}},
            "[blocking] grip_layer 'half' is not known: give one of none, present, stripped",
        ),
        (
            {"blocking": {"tip_face_mm": 5}},
            "[blocking] radius of the face of the back tip 5 is out of range: give from 30 to 500 mm",
        ),
        (
            {"blocking": {"clamp_force_n": 5000}},
            "[blocking] clamp force 5000 is out of range: give from 100 to 500 N",
        ),
        (
            {"cut": {"depth_per_turn_mm": 0}},
            "[cut] depth_per_turn_mm 0 is out of range: give above 0 and up to 5 mm",
        ),
        (
            {"cut": {"feed": "slow"}},
            "[cut] feed 'slow' is not known: give one of depth, head force, torque cap",
        ),
        (
            {"cut": {"lens_speed_rpm": 40}},
            "[cut] lens speed 40 is out of range: give from 5 to 15 rpm",
        ),
        (
            {"wearer": {"vertex_distance_mm": 120}},
            "[wearer] vertex_distance_mm 120 is out of range: give from 5 to 30 mm",
        ),
        (
            {"colour": "red"},
            "colour = 'red': unknown key: give one of blocking, cut, format, frame, left, lens, note, "
            "number, right, wearer",
        ),
        (
            {"right": None, "left": None},
            "ticket 'T-1' has no lens on it: give [right], [left] or both",
        ),
    ],
)
def test_a_fault_names_the_place_the_value_the_rule_and_the_next_step(parts: dict, line: str, tmp_path: Path):
    whole = {key: _without_none(value) for key, value in parts.items()}
    with pytest.raises(TicketFaults) as found:
        Ticket.read(ticket_path(tmp_path, **whole))
    assert found.value.faults == (f"ticket.toml: {line}",)


def _without_none(value: object) -> object:
    return {key: one for key, one in value.items() if one is not None} if isinstance(value, dict) else value


def test_all_faults_come_at_once():
    faulty = table(format=2, frame=FRAME | {"a_mm": 5.0}, right=RIGHT | {"colour": "red"})
    with pytest.raises(TicketFaults) as found:
        ticket_from(faulty)
    assert len(found.value.faults) == 3


def test_files_that_are_no_tickets(tmp_path: Path):
    with pytest.raises(TicketFaults, match=r"none\.toml: cannot be opened \(no such file or directory\)"):
        Ticket.read(tmp_path / "none.toml")
    with pytest.raises(TicketFaults, match=r"cannot be opened \(is a directory\): check the name"):
        Ticket.read(tmp_path)
    cases = {
        "a = ": "not TOML",
        "a = " + "[" * 3000: "not TOML",
        "a = " + "9" * 5000: "not TOML",
        ".".join("a" * 3000) + " = 1": "unknown key",
        "x" * 300_000: "larger than 16384 bytes: a ticket is short: check the name",
    }
    for text, words in cases.items():
        (tmp_path / "odd.toml").write_text(text)
        with pytest.raises(TicketFaults, match=words):
            Ticket.read(tmp_path / "odd.toml")
    (tmp_path / "odd.toml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(TicketFaults, match="not a text file in UTF-8: save it as plain text"):
        Ticket.read(tmp_path / "odd.toml")


@pytest.mark.parametrize(
    ("right", "name", "question"),
    [
        (
            {"sphere_d": -2.0, "cylinder_d": -1.0},
            "cylinder-without-axis",
            "What is the axis of the cylinder -1.00?",
        ),
        (
            {"sphere_d": -2.0, "axis_deg": 90},
            "axis-without-cylinder",
            "There is an axis 90 but no cylinder: was a cylinder left out?",
        ),
        ({"prescription": "2.00 -1.00 x 090"}, "sign-missing", "Is the sphere 2.00 plus or minus?"),
        (
            {"sphere_d": -2.0, "prism": [{"amount_prism_d": 2.0}]},
            "prism-without-base",
            "Which way does the base of the prism 2.00 point?",
        ),
    ],
)
def test_what_must_be_asked_is_a_hold_and_not_a_fault(right: dict, name: str, question: str):
    order = ticket(right=right | {"monocular_pd_mm": 32.0}).right
    assert [(hold.name, hold.question, hold.eye) for hold in order.holds] == [(name, question, Eye.RIGHT)]


@pytest.mark.parametrize(
    "right", [{"prescription": "-2.00 0.00 x 90"}, RIGHT | {"cylinder_d": 0.0, "axis_deg": 90}]
)
def test_an_axis_beside_a_cylinder_of_nothing_is_asked_about_however_it_is_written(right: dict):
    order = ticket(right=right | {"monocular_pd_mm": 32.0}).right
    assert [hold.name for hold in order.holds] == ["axis-without-cylinder"]


_scalars = st.one_of(
    st.booleans(),
    st.integers(),
    st.floats(),
    st.text(max_size=12),
    st.dates(),
    st.lists(st.integers(), max_size=2),
    st.dictionaries(st.text(max_size=4), st.floats(), max_size=2),
)
_places = st.sampled_from(
    [
        ("frame", "a_mm"),
        ("frame", "outline"),
        ("frame", "kind"),
        ("frame", "rim_curve_d"),
        ("right", "sphere_d"),
        ("right", "cylinder_d"),
        ("right", "axis_deg"),
        ("right", "prescription"),
        ("right", "monocular_pd_mm"),
        ("right", "height_mm"),
        ("right", "prism"),
        ("right", "lens"),
        ("lens", "material"),
        ("lens", "front_curve_d"),
        ("lens", "centre_thickness_mm"),
        ("lens", "supply"),
        ("blocking", "film"),
        ("cut", "crib_allowance_mm"),
        ("wearer", "vertex_distance_mm"),
    ]
)


@given(place=_places, value=_scalars)
def test_whatever_stands_in_a_field_the_answer_is_a_ticket_or_words(place: tuple[str, str], value: object):
    whole = table(blocking={}, cut={}, wearer={})
    outer, key = place
    whole[outer] = dict(whole[outer]) | {key: value}
    try:
        answer = ticket_from(whole)
    except LabError as fault:
        answer = fault
    assert isinstance(answer, Ticket) or str(answer).strip()


def test_a_byte_order_mark_before_the_ticket_is_no_fault(tmp_path: Path):
    path = ticket_path(tmp_path)
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes())
    assert Ticket.read(path).number == "T-1"
