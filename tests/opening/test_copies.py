"""The learner's working copies: made, renewed while untouched, kept when touched."""

import os
from datetime import date
from pathlib import Path

import nbformat
import pytest
from nbformat.sign import NotebookNotary
from stand_ins import folded, lesson, save, saved_by_the_page

from lablib.errors import LabError
from lablib.opening.copies import Prepared, prepare, require_readable, sign

NAME = "07_lens_form.ipynb"


@pytest.fixture
def shipped(tmp_path: Path) -> Path:
    save(lesson("Lens form", folded("# The panel\n6 * 7")), tmp_path / "shipped" / NAME)
    save(lesson("Start"), tmp_path / "shipped" / "01_start.ipynb")
    return tmp_path / "shipped"


@pytest.fixture
def copies(tmp_path: Path) -> Path:
    return tmp_path / "learner" / "lessons"


def sources(path: Path) -> list[str]:
    return [cell.source for cell in nbformat.read(path, as_version=4).cells]


def ship_newer(shipped: Path) -> None:
    save(lesson("Lens form, second printing", folded("# The panel\n6 * 7")), shipped / NAME)


def test_all_lessons_are_copied_and_the_shipped_ones_are_left_alone(shipped: Path, copies: Path) -> None:
    before = {lesson.name: lesson.read_bytes() for lesson in shipped.iterdir()}
    assert prepare(shipped, copies) == Prepared()
    assert {copy.name for copy in copies.iterdir()} == {NAME, "01_start.ipynb"}
    assert sources(copies / NAME) == sources(shipped / NAME)
    assert {lesson.name: lesson.read_bytes() for lesson in shipped.iterdir()} == before


def test_an_untouched_copy_is_renewed_when_a_newer_lesson_came(shipped: Path, copies: Path) -> None:
    prepare(shipped, copies)
    ship_newer(shipped)
    assert prepare(shipped, copies) == Prepared()
    assert sources(copies / NAME) == sources(shipped / NAME)


def test_outputs_counts_and_an_empty_cell_do_not_make_a_copy_touched(shipped: Path, copies: Path) -> None:
    prepare(shipped, copies)
    saved_by_the_page(copies / NAME)
    ship_newer(shipped)
    assert prepare(shipped, copies) == Prepared()
    assert sources(copies / NAME) == sources(shipped / NAME)


def test_notes_are_never_written_over_and_the_newer_lesson_is_offered(shipped: Path, copies: Path) -> None:
    prepare(shipped, copies)
    saved_by_the_page(copies / NAME, add="my own note")
    ship_newer(shipped)
    assert prepare(shipped, copies) == Prepared(offered=(NAME,))
    assert sources(copies / NAME)[-1] == "my own note"
    assert "second printing" not in sources(copies / NAME)[0]


def test_notes_with_no_newer_lesson_are_nothing_to_tell(shipped: Path, copies: Path) -> None:
    prepare(shipped, copies)
    saved_by_the_page(copies / NAME, add="my own note")
    assert prepare(shipped, copies) == Prepared()
    assert sources(copies / NAME)[-1] == "my own note"


def test_changed_code_is_a_touch(shipped: Path, copies: Path) -> None:
    prepare(shipped, copies)
    notebook = nbformat.read(copies / NAME, as_version=4)
    notebook.cells[1].source = "# The panel\n6 * 8"
    nbformat.write(notebook, copies / NAME)
    ship_newer(shipped)
    assert prepare(shipped, copies) == Prepared(offered=(NAME,))


def test_a_copy_that_says_nothing_of_its_origin_is_touched_only_if_it_differs(
    shipped: Path, copies: Path
) -> None:
    save(nbformat.read(shipped / NAME, as_version=4), copies / NAME)
    assert prepare(shipped, copies) == Prepared()
    save(lesson("Something else"), copies / NAME)
    assert prepare(shipped, copies) == Prepared(offered=(NAME,))


@pytest.mark.parametrize("note", [None, "my own note"])
def test_stale_outputs_are_stripped_and_all_else_is_kept(
    shipped: Path, copies: Path, note: str | None
) -> None:
    prepare(shipped, copies)
    saved = saved_by_the_page(copies / NAME, add=note)
    prepare(shipped, copies)
    opened = nbformat.read(copies / NAME, as_version=4)
    for cell in saved.cells:
        if cell.cell_type == "code":
            cell.outputs, cell.execution_count = [], None
    del saved.metadata["widgets"]
    assert opened == saved


def test_renewing_keeps_the_own_copy_under_a_dated_name(shipped: Path, copies: Path) -> None:
    prepare(shipped, copies)
    today = date.today().isoformat()
    for note, name in (
        ("first", f"07_lens_form.kept-{today}.ipynb"),
        ("second", f"07_lens_form.kept-{today}-2.ipynb"),
    ):
        saved_by_the_page(copies / NAME, add=note)
        assert prepare(shipped, copies, renew=NAME) == Prepared(kept=copies / name)
        assert sources(copies / name)[-1] == note
        assert sources(copies / NAME) == sources(shipped / NAME)


def test_renewing_an_untouched_copy_keeps_nothing(shipped: Path, copies: Path) -> None:
    assert prepare(shipped, copies, renew=NAME) == Prepared()
    assert prepare(shipped, copies, renew=NAME) == Prepared()
    assert len(list(copies.iterdir())) == 2


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"nbformat": 4}', '{"nbformat": 3, "worksheets": []}', "\xff"]
)
def test_a_spoiled_copy_is_offered_a_fresh_one_and_kept(shipped: Path, copies: Path, text: str) -> None:
    prepare(shipped, copies)
    (copies / NAME).write_bytes(text.encode("latin-1"))
    assert prepare(shipped, copies) == Prepared(offered=(NAME,))
    with pytest.raises(LabError) as said:
        require_readable(copies / NAME)
    assert str(said.value) == (
        f"your copy {copies / NAME} cannot be read as a notebook: `lablib open 07_lens_form --renew` keeps "
        "it under another name and puts a fresh one in place"
    )
    kept = prepare(shipped, copies, renew=NAME).kept
    assert kept is not None
    assert kept.read_bytes() == text.encode("latin-1")
    require_readable(copies / NAME)


def test_a_spoiled_lesson_is_named(shipped: Path, copies: Path) -> None:
    (shipped / NAME).write_text("{", encoding="utf-8")
    with pytest.raises(LabError) as said:
        prepare(shipped, copies)
    assert str(said.value) == (
        f"the lesson {shipped / NAME} cannot be read as a notebook: install the workbook again"
    )


def test_a_folder_that_cannot_be_written_is_named(shipped: Path, copies: Path) -> None:
    copies.parent.write_text("a file where the folder should be", encoding="utf-8")
    with pytest.raises(LabError) as said:
        prepare(shipped, copies)
    assert str(said.value) == (
        f"the working copies in {copies} cannot be written ({os.strerror(20)}): "
        "make room there, or set LABLIB_FOLDER to another folder"
    )


def test_only_notebooks_without_outputs_are_signed(shipped: Path, copies: Path, tmp_path: Path) -> None:
    prepare(shipped, copies)
    brought = save(lesson("Brought along", folded("1")), copies / "brought_along.ipynb")
    saved_by_the_page(brought)
    data = tmp_path / "data"
    data.mkdir()
    sign(copies, data)
    notary = NotebookNotary(data_dir=str(data))
    signed = {p.name for p in copies.iterdir() if notary.check_signature(nbformat.read(p, as_version=4))}
    assert signed == {NAME, "01_start.ipynb"}
