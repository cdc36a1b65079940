"""The frame of every panel: one redraw a move, words in the picture's place, nothing hidden."""

import threading
import time
from dataclasses import replace

import pytest
from bar import BarPanel, state
from stops import move_every_control

from lablib.errors import LabError
from lablib.panels.panel import PICTURE_NAME, Panel


@pytest.fixture
def panel(tmp_path):
    return BarPanel(folder=tmp_path)


def test_ranges_are_known_without_a_widget():
    assert (BarPanel.ranges["first_mm"].low, BarPanel.ranges["first_mm"].high) == (0, 10)
    assert list(BarPanel.ranges) == ["first_mm", "second_mm", "colour"]


def test_two_controls_of_one_name_are_refused():
    with pytest.raises(
        LabError, match=r"Twice: control names \['first_mm', 'first_mm'\] repeat: give each control"
    ):
        type("Twice", (BarPanel,), {"controls": (BarPanel.controls[0], BarPanel.controls[0])})


def test_every_control_to_its_stops_and_back(panel):
    seen = move_every_control(panel)

    assert set(seen) == {None, "length 16 mm is <more> than 15: shorten a part"}
    assert (len(seen), seen.count(None)) == (2 * 2 * 3 + 3, 13)


@pytest.mark.parametrize(
    "move",
    [
        lambda handles: setattr(handles["first_mm"].slider, "value", 7),
        lambda handles: setattr(handles["first_mm"].box, "value", "7"),
        lambda handles: setattr(handles["colour"].box, "value", "blue"),
    ],
)
def test_one_move_is_one_redraw(panel, move):
    before = panel.computed
    move(panel.handles)

    assert panel.computed == before + 1


def test_what_people_wrote_is_escaped(panel):
    assert '<th scope="row">Length &lt;both&gt;</th><td>10.0</td><td>mm</td>' in panel._table.value
    assert panel._sentence.value == (
        '<p class="lab-sentence" role="status" aria-live="polite">The &lt;bar&gt; is 10.0 mm long.</p>'
    )


def test_an_impossible_combination_puts_its_words_in_the_pictures_place(panel):
    before = state(panel)
    panel.handles["first_mm"].slider.value = 9.5

    assert panel._words.value == (
        '<div class="lab-refused" role="alert">length 15.5 mm is &lt;more&gt; than 15: shorten a part</div>'
    )
    assert (panel._image.layout.display, panel._words.layout.display) == ("none", None)
    assert "<td>–</td>" in panel._table.value
    assert "10.0" not in panel._table.value
    assert "mm long" not in panel._sentence.value
    panel.handles["first_mm"].slider.value = 4
    assert state(panel) == before


def test_a_faulty_entry_stays_until_it_is_mended(panel):
    before = state(panel)
    computed = panel.computed
    panel.handles["first_mm"].box.value = "4.2"
    panel.handles["second_mm"].box.value = "long"

    assert str(panel.trouble) == (
        "First 4.2 mm lies between two steps here: give 4.0 or 4.5 (from 0.0 to 10.0 mm in steps of 0.5)\n"
        "Second 'long' is not a number: give a value from 0.0 to 10.0 mm in steps of 0.5"
    )
    assert panel.computed == computed
    panel.handles["first_mm"].box.value = "4"
    panel.handles["second_mm"].box.value = "6"
    assert state(panel) == before


def test_other_faults_come_out(panel, monkeypatch):
    monkeypatch.setattr(panel, "sentence", lambda data: 1 / 0)

    with pytest.raises(ZeroDivisionError):
        panel.handles["first_mm"].slider.value = 5


def test_other_faults_come_out_of_buttons_too(panel, monkeypatch):
    monkeypatch.setattr(panel, "to_ticket", lambda values: 1 / 0)

    with pytest.raises(ZeroDivisionError):
        panel._tickets.save.click()


def test_a_panel_may_begin_elsewhere(tmp_path):
    panel = BarPanel(folder=tmp_path, first_mm=2, colour="blue")

    assert panel.values == {"first_mm": 2, "second_mm": 6, "colour": "blue"}
    assert panel.handles["first_mm"].box.value == "2.0"
    assert panel.computed == 1


def test_a_panel_may_begin_with_words(tmp_path):
    panel = BarPanel(folder=tmp_path, first_mm=10)

    assert str(panel.trouble) == "length 16 mm is <more> than 15: shorten a part"
    assert panel.shown_png == b""


def test_a_start_that_does_not_fit_is_refused(tmp_path):
    with pytest.raises(
        LabError, match="'third_mm' is not a control of this panel: give any of first_mm, second_mm"
    ):
        BarPanel(folder=tmp_path, third_mm=2)
    with pytest.raises(LabError, match="First 11 mm is out of range here"):
        BarPanel(folder=tmp_path, first_mm=11)


def test_showing_returns_nothing_and_displays_the_panel(panel, monkeypatch):
    displayed = []
    monkeypatch.setattr("lablib.panels.panel.display", displayed.append)

    assert panel.show() is None
    assert panel._ipython_display_() is None
    assert displayed == [panel.widget, panel.widget]


def test_the_picture_has_a_name_where_the_browser_looks_for_it(panel):
    sent = panel._image.get_state(["tooltip", "description"])

    assert sent == {"tooltip": PICTURE_NAME, "description": ""}


def test_the_style_sheet_knows_the_size(panel):
    style = panel.widget.children[0].value

    assert ".lab-300-200-11 { --lab-width: 300px; --lab-ratio: 300 / 200; --lab-label: 10.1ch; }" in style
    assert "lab-300-200-11" in panel.widget._dom_classes


def test_a_panel_that_moves_only_some_controls_shows_these_alone(tmp_path):
    panel = BarPanel(folder=tmp_path, move=("second_mm",), first_mm=2)
    shown = panel.widget.children[1].children

    assert panel.shown == ("second_mm",)
    assert [part for part in shown if "lab-control" in part._dom_classes] == [
        panel.handles["second_mm"].widget
    ]
    assert shown[-1] is panel._table
    assert panel._tickets.widget not in panel.widget.children
    assert panel.values == {"first_mm": 2, "second_mm": 6, "colour": "black"}


def test_a_whole_panel_shows_all_controls_with_the_tickets_below(panel):
    _, left, right, tickets = panel.widget.children

    assert [*(handle.widget for handle in panel.handles.values()), panel._table] == list(left.children)
    assert list(right.children[1:]) == [panel._sentence]
    assert tickets is panel._tickets.widget


def test_beside_many_controls_the_numbers_stand_under_the_sentence(tmp_path):
    more = tuple(replace(BarPanel.controls[0], name=f"other_{letter}_mm") for letter in "abcd")
    panel = type("Crowded", (BarPanel,), {"controls": (*BarPanel.controls, *more)})(folder=tmp_path)
    _, left, right, _ = panel.widget.children

    assert [handle.widget for handle in panel.handles.values()] == list(left.children)
    assert list(right.children[1:]) == [panel._sentence, panel._table]


def test_a_panel_without_tickets_ends_with_its_picture():
    parts = {name: vars(BarPanel)[name] for name in ("draws", "controls", "compute", "numbers", "sentence")}
    panel = type("Plain", (Panel,), parts | {"computed": 0})()

    assert len(panel.widget.children) == 3


def test_only_controls_that_are_there_can_be_moved(tmp_path):
    with pytest.raises(LabError, match="'third_mm' is not a control of this panel: give any of first_mm"):
        BarPanel(folder=tmp_path, move=("third_mm",))


def test_a_heading_stands_where_a_group_begins(tmp_path):
    grouped = tuple(replace(spec, group="Less & more") for spec in BarPanel.controls[:2])
    panel = type("Grouped", (BarPanel,), {"controls": (*grouped, BarPanel.controls[2])})(folder=tmp_path)
    column = panel.widget.children[1].children

    assert column[0].value == '<p class="lab-group">Less &amp; more</p>'
    assert list(column[1:3]) == [panel.handles[name].widget for name in ("first_mm", "second_mm")]


def test_other_values_can_be_asked_for_without_moving_anything(panel):
    before = state(panel)

    assert panel.at(first_mm=1)["length_mm"] == 7.0
    assert panel.at()["length_mm"] == 10.0
    assert state(panel) == before
    with pytest.raises(LabError, match="length 20 mm is <more> than 15"):
        panel.at(first_mm=10, second_mm=10)
    with pytest.raises(LabError, match="'third_mm' is not a control of this panel"):
        panel.at(third_mm=1)


def test_two_threads_draw_one_after_the_other(panel, monkeypatch):
    """A page may be heard in another thread than the one that runs the cells."""
    inside, together = [], []
    png = panel.picture.png

    def slow_png() -> bytes:
        inside.append(1)
        time.sleep(0.05)
        together.append(len(inside))
        inside.pop()
        return png()

    monkeypatch.setattr(panel.picture, "png", slow_png)
    threads = [threading.Thread(target=panel._redraw) for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert together == [1, 1, 1]
