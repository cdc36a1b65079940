"""Where what came with the workbook is, and where the learner's folder is."""

import os
import subprocess
import sys
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
