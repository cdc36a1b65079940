"""Which lesson is meant by a number, the start of a name, or nothing."""

from pathlib import Path

import pytest
from stand_ins import lesson, save

from lablib.errors import LabError
from lablib.opening.lessons import find_lesson

NAMES = ("02_prescription", "07_lens_form", "17_whole_job", "70_spare", "07b_lens_form_again")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name in NAMES:
        save(lesson(name), tmp_path / f"{name}.ipynb")
    (tmp_path / "README.md").write_text("not a lesson", encoding="utf-8")
    return tmp_path


@pytest.mark.parametrize(
    ("wanted", "found"),
    [
        (None, "02_prescription"),
        ("7", "07_lens_form"),
        ("07", "07_lens_form"),
        ("007", "07_lens_form"),
        ("17", "17_whole_job"),
        ("70", "70_spare"),
        ("07_", "07_lens_form"),
        ("02_PRE", "02_prescription"),
        ("07_lens_form", "07_lens_form"),
        ("07_lens_form.ipynb", "07_lens_form"),
        ("07b", "07b_lens_form_again"),
    ],
)
def test_a_lesson_is_found(folder: Path, wanted: str | None, found: str) -> None:
    assert find_lesson(wanted, folder) == f"{found}.ipynb"


@pytest.mark.parametrize("wanted", ["8", "0", "lens", "", "../07_lens_form", "07_lens_form.txt", "²"])
def test_a_wrong_name_is_answered_with_the_lessons_there_are(folder: Path, wanted: str) -> None:
    with pytest.raises(LabError) as said:
        find_lesson(wanted, folder)
    assert str(said.value) == f"there is no lesson {wanted!r}: give one of {', '.join(sorted(NAMES))}"


def test_the_start_of_two_names_is_answered_with_both(folder: Path) -> None:
    save(lesson("again"), folder / "07_lens_weight.ipynb")
    with pytest.raises(LabError) as said:
        find_lesson("07_lens", folder)
    assert str(said.value) == (
        "'07_lens' is the start of more than one lesson: give one of 07_lens_form, 07_lens_weight"
    )


def test_a_folder_without_lessons_is_named(tmp_path: Path) -> None:
    with pytest.raises(LabError) as said:
        find_lesson("7", tmp_path)
    assert str(said.value) == f"there is no lesson in {tmp_path}: install the workbook again"
