"""A panel goes into a ticket and comes back; a ticket that does not fit changes nothing."""

import tomllib

import pytest
from bar import BarPanel, state


@pytest.fixture
def panel(tmp_path):
    return BarPanel(folder=tmp_path)


def test_tickets_go_to_the_working_folder_unless_told(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    BarPanel()._tickets.save.click()

    assert tomllib.loads((tmp_path / "my-bar.toml").read_text())["first_mm"] == 4


def test_a_saved_ticket_comes_back_in_one_redraw(panel):
    before = state(panel)
    panel._tickets.save.click()
    panel.handles["first_mm"].slider.value = 8
    panel.handles["colour"].box.value = "blue"
    computed = panel.computed
    panel._tickets.open.click()

    assert state(panel) == before
    assert panel.computed == computed + 1
    assert "Opened my-bar.toml. Read whole." in panel._tickets.status.value


def test_a_ticket_mends_a_faulty_entry(panel):
    before = state(panel)
    panel._tickets.save.click()
    panel.handles["first_mm"].box.value = "long"
    panel._tickets.open.click()

    assert state(panel) == before
    assert panel.trouble is None


def test_a_ticket_that_lacks_a_value_leaves_that_control(panel, tmp_path):
    (tmp_path / "t.toml").write_text("first_mm = 1\n")
    panel._tickets.look()
    panel._tickets.open.click()

    assert panel.values == {"first_mm": 1, "second_mm": 6, "colour": "black"}


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("first_mm = ", "t.toml is not TOML"),
        ("first_mm = 11\nsecond_mm = 1.2\n", "First 11 mm is out of range here"),
        ("first_mm = 11\nsecond_mm = 1.2\n", "Second 1.2 mm lies between two steps here: give 1.0 or 1.5"),
        ("first_mm = 1\nsecond_mm = true\n", "Second True is not a number"),
        ("first_mm = 9\nsecond_mm = 9\n", "length 18 mm is &lt;more&gt; than 15"),
    ],
)
def test_a_ticket_that_does_not_fit_changes_nothing(panel, tmp_path, text, words):
    before = state(panel)
    (tmp_path / "t.toml").write_text(text)
    panel._tickets.look()
    panel._tickets.open.click()

    assert state(panel) == before
    assert "t.toml was not opened, and nothing was changed." in panel._tickets.status.value
    assert words.replace("'", "&#x27;") in panel._tickets.status.value


def test_nothing_is_saved_while_words_stand_in_the_pictures_place(panel, tmp_path):
    panel.handles["first_mm"].box.value = "long"
    panel._tickets.save.click()

    assert list(tmp_path.iterdir()) == []
    assert "Nothing was saved. First &#x27;long&#x27; is not a number" in panel._tickets.status.value
