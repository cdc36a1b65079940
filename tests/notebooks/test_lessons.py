"""What every lesson owes its reader: the same outline, short cells, true figures, no stored outputs.

A notebook without a number is a page, such as the glossary. It owes all but what makes a lesson: outline,
length, a question before each panel.
"""

import itertools
import json
import re
from pathlib import Path

import pytest
from notebooks.lesson import (
    FIGURE,
    RANGE,
    cells,
    headings,
    lesson_paths,
    namespace,
    notebook_paths,
    printed,
    prose,
)

OUTLINE = [
    "What you will be able to do",
    "What it is for on the bench",
    "Predict, then move, then explain",
    "A worked example",
    "The panel",
    "Common mistakes",
    "Self-check",
    "On your own",
    "Sources",
]
every_lesson = pytest.mark.parametrize("path", lesson_paths(), ids=lambda path: path.stem)
every_notebook = pytest.mark.parametrize("path", notebook_paths(), ids=lambda path: path.stem)


def test_there_are_lessons():
    assert lesson_paths()


@every_notebook
def test_name_and_title_agree(path: Path):
    assert re.fullmatch(r"\d\d_[a-z0-9_]+|[a-z][a-z_]*", path.stem)
    level, title = headings(path)[0]
    assert level == 1
    assert title.lower().replace(",", "") == path.stem.replace("_", " ")


@every_lesson
def test_outline(path: Path):
    levels = headings(path)
    assert [text for level, text in levels if level == 2] == OUTLINE
    assert [level for level, _ in levels].count(1) == 1
    steps = [after - before for (before, _), (after, _) in itertools.pairwise(levels)]
    assert max(steps) <= 1, "a heading level is left out"


@every_lesson
def test_length_and_rhythm(path: Path):
    words = len(prose(path).split())
    assert 800 <= words <= 1_700, f"{words} words"
    kinds = [cell.cell_type for cell in cells(path)]
    assert kinds.count("markdown") >= len(kinds) / 2
    assert all(before == "markdown" for before, kind in itertools.pairwise(kinds) if kind == "code")


@every_notebook
def test_code_is_short_and_folded_and_opens_with_a_friendly_line(path: Path):
    for cell in cells(path):
        if cell.cell_type == "code":
            lines = cell.source.splitlines()
            assert lines[0].startswith("# "), cell.id
            assert 1 <= len(lines) - 1 <= 6, cell.id
            assert cell.metadata["jupyter"]["source_hidden"] is True, cell.id


@every_lesson
def test_no_slider_without_a_question_before_it(path: Path):
    found = cells(path)
    for before, cell in itertools.pairwise(found):
        if cell.cell_type == "code" and ".show()" in cell.source:
            assert "?" in before.source, f"{cell.id}: ask something before the panel"


@every_notebook
def test_the_first_cell_says_how_to_run_it(path: Path):
    assert 'data-commandlinker-command="notebook:run-all-cells"' in cells(path)[0].source


@every_notebook
def test_links_lead_to_files_that_are_there(path: Path):
    for target in re.findall(r"\]\(([^)#]+)[^)]*\)", prose(path)):
        assert ":" not in target, f"{target}: a lesson links to nothing outside"
        assert (path.parent / target).exists(), target


def declared(cell) -> tuple[dict, list]:
    notes = cell.metadata.get("lablib", {})
    return notes.get("figures", {}), notes.get("given", [])


@every_notebook
def test_every_declared_figure_is_in_the_prose_and_comes_out(path: Path):
    names = namespace(path)
    for cell in cells(path):
        figures, given = declared(cell)
        for text, expression in figures.items():
            assert text in cell.source, f"{cell.id}: {text} is declared but not in the prose"
            assert printed(eval(expression, names), text) == text, f"{cell.id}: {expression}"
        for text in given:
            assert text in cell.source, f"{cell.id}: {text} is declared but not in the prose"


@every_notebook
def test_every_figure_in_the_prose_is_declared(path: Path):
    """Numbers with decimals, and ranges: each is computed from an expression, or stated as given."""
    for cell in cells(path):
        if cell.cell_type != "markdown":
            continue
        figures, given = declared(cell)
        known = " | ".join([*figures, *given])
        loose = [
            number
            for pattern in (FIGURE, RANGE)
            for number in pattern.findall(cell.source)
            if number not in known
        ]
        assert not loose, f"{cell.id}: {loose}"


@every_notebook
def test_stored_without_outputs(path: Path):
    for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]:
        if cell["cell_type"] == "code":
            assert cell["outputs"] == [], cell["id"]
            assert cell["execution_count"] is None, cell["id"]
    assert "widgets" not in json.loads(path.read_text(encoding="utf-8"))["metadata"]
