"""The panel of paper tickets: each is laid out whole, and its doubt is kept back until it is ringed."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.job.finding import threshold
from lablib.optics.power import written_power
from lablib.optics.reading import read
from lablib.panels.paper_panel import PaperPanel
from lablib.pictures.asked_ticket import COLUMNS, FIELDS, JobTicket
from lablib.questions.ticket_check.order import Order, asked
from lablib.questions.ticket_check.papers import Paper, papers

by_paper = pytest.mark.parametrize("number", range(1, len(papers()) + 1))


def line(texts: tuple[str, ...]) -> str:
    """The prescription of an eye as one line."""
    sphere, cylinder, axis, addition, *_ = texts
    marked = ((" x ", axis), (" add ", addition))
    return f"{sphere} {cylinder}".strip() + "".join(mark + text for mark, text in marked if text)


def lenses(paper: Paper) -> Order:
    """The two lenses of a ticket."""
    return Order(right=line(paper.right), left=line(paper.left), note=paper.note)


def test_every_control_to_its_stops_and_back():
    assert set(move_every_control(PaperPanel())) == {None}


@by_paper
def test_the_doubt_is_kept_back_until_it_is_ringed(number: int):
    paper, panel = papers()[number - 1], PaperPanel(ticket=str(number))
    rings = [field.ring for field in panel.picture.fields.values()]
    assert not any(ring.get_visible() for ring in rings)
    assert said(panel) == "Make it or hold it? Which field would you ask about?"
    panel.handles["ring"].box.value = "yes"
    assert [name for name in FIELDS if panel.picture.fields[name].ring.get_visible()] == [
        name for name in FIELDS if name in paper.doubtful
    ]
    assert said(panel) == paper.verdict
    assert said(panel).startswith("Hold it for " if paper.doubtful else "Make it. ")


@by_paper
def test_all_that_stands_on_the_paper_is_read_beside_it(number: int):
    paper, panel = papers()[number - 1], PaperPanel(ticket=str(number))
    found = rows(panel)
    for eye, texts in (("Right", paper.right), ("Left", paper.left)):
        for column, text in zip(COLUMNS, texts, strict=True):
            assert not text or (text if column == "sphere" else f"{column} {text}") in found[eye].split(", ")
    assert (found["Frame"], found["Note"]) == (paper.frame, paper.note or "–")


@by_paper
def test_a_paper_is_a_ticket_that_says_which_fields_are_in_doubt(number: int):
    paper = papers()[number - 1]
    JobTicket(**paper.values)
    assert bool(paper.doubtful) == bool(paper.doubt)
    assert paper.says.endswith((".", "?"))
    assert paper.says.startswith("Ask the ") == bool(paper.doubtful)


# What the ticket reader itself asks about the lenses: an axis that is missing, and of all others nothing.
@by_paper
def test_of_the_lenses_the_ticket_reader_asks_what_the_paper_says(number: int):
    paper = papers()[number - 1]
    questions = [doubt.words for doubt in asked(lenses(paper))]
    if paper.doubtful == ("right axis",):
        assert questions == ["What is the axis of the cylinder -1.00?"]
        assert "what is the axis of the cylinder -1.00?" in paper.says
    else:
        assert questions == []


def test_what_is_beside_the_lenses_is_out_of_range_where_it_is_in_doubt():
    for paper in papers():
        b_mm = float(paper.frame.partition("B ")[2].partition(",")[0])
        for eye in ("right", "left"):
            texts = dict(zip(COLUMNS, getattr(paper, eye), strict=True))
            assert (float(texts["height"]) >= b_mm) == (f"{eye} height" in paper.doubtful)
            is_plain = texts["PD"] != "" and float(texts["PD"]) < 45.0
            assert is_plain != (f"{eye} PD" in paper.doubtful)
            assert (bool(texts["prism"]) and not texts["base"]) == (f"{eye} base" in paper.doubtful)


def test_a_strong_power_without_a_vertex_distance_is_the_only_one():
    for paper in papers():
        if "right axis" not in paper.doubtful:
            lens = [read(line(texts)).prescription for texts in (paper.right, paper.left)]
            strongest = max(max(abs(one.sphere_d), abs(one.sphere_d + one.cylinder_d)) for one in lens)
            unsaid = strongest >= threshold("vertex_power") and "vertex distance" not in paper.frame
            assert unsaid == ("frame" in paper.doubtful), paper


def test_the_change_from_the_old_pair_is_what_is_said():
    (paper,) = (one for one in papers() if one.note.startswith("old pair"))
    old = [float(words.split()[1]) for words in paper.note.partition(": ")[2].split(", ")]
    changes = {
        abs(float(texts[0]) - power) for texts, power in zip((paper.right, paper.left), old, strict=True)
    }
    (change,) = changes
    assert f"a change of {written_power(change).lstrip('+')} D" in paper.says


def test_two_forms_are_the_same_lens():
    (paper,) = (one for one in papers() if "two forms" in one.says)
    right, left = (read(line(texts)).prescription for texts in (paper.right, paper.left))
    assert left.transposed() == right
