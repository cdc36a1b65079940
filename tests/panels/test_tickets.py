"""Tickets are saved under a new name or not at all, and what happened is said."""

import re
from html import unescape

import pytest

from lablib.errors import LabError
from lablib.panels.tickets import TicketRow, file_name, write_new


class Desk:
    """Stands in for the panel: what it writes, what it took."""

    def __init__(self):
        self.text, self.taken, self.remark, self.error = "number = 1\n", [], "", None

    def write(self):
        if self.error:
            raise self.error
        return self.text

    def take(self, path):
        if self.error:
            raise self.error
        self.taken.append(path)
        return self.remark


@pytest.fixture
def desk():
    return Desk()


@pytest.fixture
def row(tmp_path, desk):
    return TicketRow(tmp_path, name="my-lens", write=desk.write, take=desk.take)


def said(row):
    return unescape(re.fullmatch(r'<p class="lab-said" role="status">(.*)</p>', row.status.value).group(1))


def test_saving_writes_the_text_and_says_where(row, tmp_path):
    row.save.click()

    assert (tmp_path / "my-lens.toml").read_bytes() == b"number = 1\n"
    assert said(row) == f"Saved as my-lens.toml in {tmp_path}."
    assert row.files.value == "my-lens.toml"
    assert not row.open.disabled


def test_a_file_that_is_there_is_left_as_it_is(row, desk, tmp_path):
    row.save.click()
    desk.text = "another"
    row.save.click()

    assert (tmp_path / "my-lens.toml").read_text() == "number = 1\n"
    assert said(row) == (
        "Nothing was saved. file my-lens.toml is there already and was left as it is: give another name"
    )


def test_what_the_panel_refuses_to_write_is_said_and_leaves_no_file(row, desk, tmp_path):
    desk.error = LabError("Sphere 'four' is not a number: give one")
    row.save.click()

    assert said(row) == "Nothing was saved. Sphere 'four' is not a number: give one"
    assert list(tmp_path.iterdir()) == []


def test_opening_hands_over_the_path_and_says_the_remark(row, desk, tmp_path):
    row.save.click()
    desk.remark = "The left eye is not shown here."
    row.open.click()

    assert desk.taken == [tmp_path / "my-lens.toml"]
    assert said(row) == "Opened my-lens.toml. The left eye is not shown here."
    desk.remark = ""
    row.open.click()
    assert said(row) == "Opened my-lens.toml."


def test_a_faulty_ticket_is_said_in_its_readers_words(row, desk):
    row.save.click()
    desk.error = LabError("axis 194 is not an axis: give one & <b>")
    row.open.click()

    assert said(row) == (
        "my-lens.toml was not opened, and nothing was changed. axis 194 is not an axis: give one & <b>"
    )
    assert "<b>" not in row.status.value


def test_without_tickets_there_is_nothing_to_open(row):
    assert row.open.disabled
    assert row.files.disabled
    assert row.files.options == ("none in this folder yet",)


def test_looking_again_finds_what_came_and_keeps_what_was_picked(row, tmp_path):
    row.save.click()
    for name in ("a.toml", "z.toml", "notes.txt"):
        (tmp_path / name).write_text("")
    (tmp_path / "folder.toml").mkdir()
    row.again.click()

    assert row.files.options == ("a.toml", "my-lens.toml", "z.toml")
    assert row.files.value == "my-lens.toml"
    (tmp_path / "my-lens.toml").unlink()
    row.again.click()
    assert row.files.value == "a.toml"


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("T-101", "T-101.toml"),
        (" lens 2.toml ", "lens 2.toml"),
        ("A.TOML", "A.TOML"),
        ("plüs (1)", "plüs (1).toml"),
    ],
)
def test_names_get_their_ending(typed, name):
    assert file_name(typed) == name


@pytest.mark.parametrize(
    "typed", ["", "  ", "a/b", "..", ".hidden", "..\\up", "a:b", "a*", "x" * 101, "a\nb", "-"]
)
def test_names_that_lead_astray_are_refused(typed):
    words = f"file name {typed!r} cannot be used: give 1 to 100 letters, digits, spaces or any of . _ - ( ), "

    with pytest.raises(LabError, match=re.escape(words)):
        file_name(typed)


def test_a_folder_that_cannot_be_written_is_said(tmp_path):
    missing = tmp_path / "gone" / "a.toml"

    with pytest.raises(
        LabError, match=r"file a\.toml cannot be written in .*gone \(No such file or directory\): start"
    ):
        write_new(missing, "")
