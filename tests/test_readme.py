"""What the README and the notes for engineers promise is there."""

import re
import tomllib
from pathlib import Path

import pytest
from notebooks.lesson import headings, lesson_paths

from lablib.command import SUBCOMMANDS
from lablib.job.ticket_file import ticket_from
from lablib.job.ticket_writing import ticket_text

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


@pytest.mark.parametrize("text", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_links_and_pictures_lead_to_files(text: str):
    targets = re.findall(r"\]\(([^)#]+)", text)
    assert [target for target in targets if not (ROOT / target).exists()] == []


def test_places_named_in_the_notes_are_there():
    folders = "lablib|tests|optics|bench|job|panels|pictures|inspection|study|questions"
    named = set(re.findall(rf"`((?:{folders})/[\w./]+)`", DEVELOPERS)) - {"lablib/carried"}
    assert named
    missing = [name for name in named if not any((root / name).exists() for root in (ROOT, ROOT / "lablib"))]
    assert missing == []


def test_the_table_of_lessons_is_complete():
    listed = re.findall(r"^\| (\d\d [^|]+?) \|", README, flags=re.MULTILINE)
    assert listed == [headings(path)[0][1] for path in lesson_paths()]


def test_the_commands_are_those_there_are():
    named = set(re.findall(r"^lablib (\w+)", README, flags=re.MULTILINE))
    assert named == {name for name, *_ in SUBCOMMANDS}


@pytest.mark.parametrize("section", ["Start", "Test"])
def test_start_and_test_are_one_command_each(section: str):
    part = README.split(f"## {section}\n")[1].split("\n## ")[0]
    fences = re.findall(r"```(\w+)\n(.*?)```", part, flags=re.DOTALL)
    assert [kind for kind, _ in fences] == ["bash", "powershell"]
    assert all(len(text.strip().splitlines()) == 1 for _, text in fences)


def test_the_ticket_in_the_notes_is_a_ticket_and_names_every_key():
    text = re.search(r"## A ticket\n\n```toml\n(.*?)```", DEVELOPERS, flags=re.DOTALL)[1]
    ticket = ticket_from(tomllib.loads(text))
    written = set(re.findall(r"^(\w+) =", ticket_text(ticket), flags=re.MULTILINE))
    assert written <= set(re.findall(r"(\w+) =", text))
