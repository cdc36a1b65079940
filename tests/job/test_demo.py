"""The demo tickets: each is read, each does what its name says."""

import pytest

from lablib.command import main
from lablib.errors import LabError
from lablib.job.demo import demo_names, demo_path, demo_ticket, file_named
from lablib.job.figures import as_dict
from lablib.job.sheet import work
from lablib.job.ticket import Ticket


def test_every_demo_ticket_says_that_it_is_invented():
    assert len(demo_names()) == 8
    for name in demo_names():
        assert "invented" in demo_path(name).read_text(encoding="utf-8").splitlines()[0]


@pytest.mark.parametrize("name", demo_names())
def test_every_demo_ticket_is_read_and_worked(name: str):
    sheet = as_dict(work(demo_ticket(name)))
    holds, findings = ({one["name"] for one in sheet[kind]} for kind in ("holds", "findings"))
    assert holds == ({"cylinder-without-axis", "prism-without-base"} if name == "to-be-held" else set())
    assert ("blank-does-not-cover" in findings) == (name == "blank-too-small")


def test_a_bare_word_on_the_command_line_names_a_demo_ticket(capsys):
    assert main(["job", "easy-minus"]) == 0
    assert capsys.readouterr().out.startswith("Job sheet HS-001 easy minus\n")
    assert main(["job", "to-be-held"]) == 3
    capsys.readouterr()
    assert main(["job", "nothing"]) == 2
    assert capsys.readouterr().err.startswith("demo ticket 'nothing' is not there: give one of")


def test_an_unknown_demo_ticket_is_refused_with_the_names():
    with pytest.raises(LabError, match="demo ticket 'x' is not there: give one of blank-too-small, "):
        demo_path("x")


def test_a_bare_word_that_is_no_file_names_a_demo_ticket(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert file_named("easy-minus") == demo_path("easy-minus")
    (tmp_path / "easy-minus").touch()
    assert str(file_named("easy-minus")) == "easy-minus"
    assert str(file_named("not-there.toml")) == "not-there.toml"
    with pytest.raises(LabError, match="demo ticket 'x' is not there: give one of"):
        file_named("x")


def test_a_folder_is_no_ticket():
    with pytest.raises(LabError, match=r"^\.: cannot be opened"):
        Ticket.read(file_named("."))


def test_a_name_too_long_for_any_file_is_told_by_whoever_opens_it():
    with pytest.raises(LabError, match=r"cannot be opened \(file name too long\)"):
        Ticket.read(file_named("a" * 5000))
