"""The demo tickets: each is read, each does what its name says."""

import pytest

from lablib.command import main
from lablib.errors import LabError
from lablib.job.demo import demo_names, demo_path, demo_ticket
from lablib.job.figures import as_dict
from lablib.job.sheet import work


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
