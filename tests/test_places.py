"""Where what came with the workbook is, and where the learner's folder is."""

import os
import subprocess
import sys
import unicodedata
import zipfile
from pathlib import Path

import platformdirs
import pytest

from lablib import places
from lablib.errors import LabError

CHECKOUT = Path(__file__).parents[1]


@pytest.mark.parametrize("kind", places.KINDS)
def test_a_checkout_uses_its_own_folders(kind: str) -> None:
    assert places.shipped(kind) == CHECKOUT / kind


def test_what_did_not_come_with_the_workbook_is_named() -> None:
    with pytest.raises(LabError) as said:
        places.shipped("answers")
    assert str(said.value) == (
        "'answers' did not come with the workbook: ask for one of lessons, exercises, answer_keys"
    )


@pytest.fixture
def alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A package that stands in no checkout."""
    package = tmp_path / "site" / "lablib"
    package.mkdir(parents=True)
    monkeypatch.setattr(places, "_PACKAGE", package)
    places.checkout.cache_clear()
    yield package
    places.checkout.cache_clear()


def test_an_installed_copy_uses_what_it_carries(alone: Path) -> None:
    (alone / "carried" / "lessons").mkdir(parents=True)
    assert places.shipped("lessons") == alone / "carried" / "lessons"


@pytest.mark.parametrize("text", ['[project]\nname = "other"', "[project", "", "[tool]", "\udcff"])
def test_another_project_beside_the_package_is_no_checkout(alone: Path, text: str) -> None:
    (alone.parent / "pyproject.toml").write_bytes(text.encode("utf-8", "surrogateescape"))
    assert places.checkout() is None


def test_a_missing_folder_is_named(alone: Path) -> None:
    with pytest.raises(LabError) as said:
        places.shipped("lessons")
    assert str(said.value) == (
        f"the folder of lessons {alone / 'carried' / 'lessons'} is missing: install the workbook again"
    )


def test_the_variable_moves_the_learner_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path / "new" / "folder"))
    assert places.learner_folder() == tmp_path / "new" / "folder"
    assert (tmp_path / "new" / "folder").is_dir()


def test_without_the_variable_it_is_the_platform_folder_for_own_data(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("LABLIB_FOLDER", "")
    monkeypatch.setattr(platformdirs, "user_data_path", lambda name, **_: tmp_path / name)
    assert places.learner_folder() == tmp_path / "lablib"


def test_a_folder_that_depends_on_where_one_stands_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LABLIB_FOLDER", "notes")
    with pytest.raises(LabError) as said:
        places.learner_folder()
    assert (
        str(said.value)
        == f"LABLIB_FOLDER 'notes' is not a full path: give one, such as {Path.cwd() / 'notes'}"
    )


def test_a_folder_that_cannot_be_made_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("in the way", encoding="utf-8")
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path / "file" / "folder"))
    with pytest.raises(LabError) as said:
        places.learner_folder()
    assert str(said.value) == (
        f"the learner's folder {tmp_path / 'file' / 'folder'} cannot be made ({os.strerror(20)}): "
        "set LABLIB_FOLDER to a folder you can write to"
    )


def test_a_named_learner_has_a_folder_within(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path))
    monkeypatch.setenv("LABLIB_LEARNER", "Ana")
    assert places.learner_name() == "Ana"
    assert places.learner_folder() == tmp_path / "learners" / "ana"
    assert (tmp_path / "learners" / "ana").is_dir()
    assert places.record_file() == tmp_path / "learners" / "ana" / "record.sqlite3"
    assert not places.record_file().exists()


@pytest.mark.parametrize("given", [None, ""])
def test_nobody_has_to_be_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, given: str | None) -> None:
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path))
    monkeypatch.delenv("LABLIB_LEARNER", raising=False)
    if given is not None:
        monkeypatch.setenv("LABLIB_LEARNER", given)
    assert places.learner_name() == ""
    assert places.learner_folder() == tmp_path
    assert places.record_file() == tmp_path / "record.sqlite3"


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Ana", "ana"),
        ("ÄNNE", "änne"),
        ("Änne", "A\u0308nne"),
        ("Weiß", "WEISS"),
        ("Σίσυφος", "σίσυφοσ"),
        ("ŽOFIE", "žofie"),
    ],
)
def test_case_and_ways_of_writing_a_letter_do_not_part_a_learner(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, one: str, other: str
) -> None:
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path))
    folders = []
    for name in (one, other):
        monkeypatch.setenv("LABLIB_LEARNER", name)
        folders.append(places.learner_folder())
        assert places.learner_name() == unicodedata.normalize("NFC", name)
    assert folders[0] == folders[1]
    assert len(list((tmp_path / "learners").iterdir())) == 1


@pytest.mark.parametrize(
    "name",
    ["A", "7", "Ana-Lucía O. de la Cruz_2", "李小龙", "अनन्या", "عائشة", "x" * 60, "com10", "console"],
)
def test_people_are_called_many_things(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path))
    monkeypatch.setenv("LABLIB_LEARNER", "")
    places.set_learner(name)
    assert os.environ["LABLIB_LEARNER"] == name
    assert places.learner_folder().parent == tmp_path / "learners"


NO_FOLDERS = [
    *("../x", "a/b", "a\\b", "a\0b", "a\nb", "~ana", ".ana", "-ana", "_ana", " ana", "ana ", "ana.", "."),
    *("con", "CON", "nul.txt", "Aux.tar.gz", "com1", "LPT9", "prn .x", "a*", "a?", "a:b", "C:", '"a"', "a|b"),
    *("x" * 61, "ŉ" * 31, "ana²", "..", "\u200bana", "ana\u202e", "\u0301ana", "a\ud800", "\udcff"),
]


@pytest.mark.parametrize("name", NO_FOLDERS, ids=ascii)
def test_what_cannot_be_a_folder_everywhere_is_no_name(monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    monkeypatch.setenv("LABLIB_LEARNER", "Ana")
    words = (
        f"learner's name {name!r} cannot be the name of a folder: give 1 to 60 letters, digits, spaces or "
        "any of . _ -, beginning with a letter or a digit, not ending in a full stop or a space, and no name "
        "that Windows keeps for a device, such as con or com1"
    )
    with pytest.raises(LabError) as said:
        places.set_learner(name)
    assert str(said.value) == words
    assert os.environ["LABLIB_LEARNER"] == "Ana"
    # An environment holds neither, so nobody can be called so there.
    if "\0" not in name and "\ud800" not in name:
        monkeypatch.setenv("LABLIB_LEARNER", name)
        for ask in (places.learner_name, places.learner_folder, places.record_file):
            with pytest.raises(LabError) as said:
                ask()
            assert str(said.value) == words


def test_an_installed_copy_carries_every_lesson_sheet_and_key(tmp_path: Path) -> None:
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", tmp_path], cwd=CHECKOUT, check=True
    )
    (wheel,) = tmp_path.glob("*.whl")
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(tmp_path / "site")
    page = Path("lablib", "opening", "page")
    assert _names(tmp_path / "site" / page) == _names(CHECKOUT / page)
    for kind in places.KINDS:
        code = f"from lablib.places import shipped; print(shipped({kind!r}))"
        told = subprocess.run(
            [sys.executable, "-c", code],
            cwd=tmp_path,
            env={**os.environ, "PYTHONPATH": str(tmp_path / "site")},
            capture_output=True,
            text=True,
            check=True,
        )
        folder = Path(told.stdout.strip())
        assert folder == tmp_path / "site" / "lablib" / "carried" / kind
        assert {file.name for file in folder.iterdir()} == _names(CHECKOUT / kind)


def _names(folder: Path) -> set[str]:
    return {file.name for file in folder.iterdir() if not file.name.startswith(".")}
