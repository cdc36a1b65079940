"""The sign-off sheet: all tasks on one page with room for three dated tries and a signature."""

import re
from itertools import combinations
from pathlib import Path

import pytest
from matplotlib.backends.backend_pdf import FigureCanvasPdf
from matplotlib.text import Text

from lablib.command import main
from lablib.errors import LabError
from lablib.job.signoff import TRIES, bench_tasks, tasks_numbers
from lablib.pictures.outline_sheet import PAGES_MM
from lablib.pictures.signoff_sheet import signoff_figure, signoff_pdf, wrapped

MM = 25.4 / 72.0
every_sheet = pytest.mark.parametrize(
    ("number", "page"), [(number, page) for number in tasks_numbers() for page in PAGES_MM]
)


def texts(number: str, page: str) -> tuple[list[Text], list]:
    """The texts of a sheet, and the box each takes on the page [points]."""
    figure = signoff_figure(bench_tasks(number), page=page)
    # Boxes are measured as the PDF lays letters out.
    renderer = FigureCanvasPdf(figure).figure._get_renderer()
    found = [text for text in figure.findobj(Text) if text.get_text()]
    return found, [text.get_window_extent(renderer) for text in found]


@every_sheet
def test_no_words_overlap_and_all_stay_on_the_page(number: str, page: str):
    found, boxes = texts(number, page)
    dpi = found[0].get_figure().dpi
    width, height = (side / 25.4 * dpi for side in PAGES_MM[page])
    for box in boxes:
        assert 0.0 < box.x0 < box.x1 < width
        assert 0.0 < box.y0 < box.y1 < height
    for one, other in combinations(boxes, 2):
        assert not one.overlaps(other)


@every_sheet
def test_each_task_stands_there_whole_with_its_tries(number: str, page: str):
    tasks = bench_tasks(number)
    found, _ = texts(number, page)
    said = " ".join(text.get_text() for text in found)
    for task in tasks.tasks:
        assert task.done in said
        assert task.right_when in said
    written = [text.get_text() for text in found]
    assert written.count("date") == TRIES * len(tasks.tasks)
    assert {"apprentice", "trainer", "trainer signs", "try 3"} <= set(written)
    assert "tested no hands" in said
    assert tasks.caution in said


def test_the_same_tasks_give_the_same_file_of_the_page_asked_for():
    tasks = bench_tasks("15")
    assert signoff_pdf(tasks) == signoff_pdf(tasks)
    for page, size in PAGES_MM.items():
        (box,) = re.findall(rb"/MediaBox \[ ?0 0 ([\d.]+) ([\d.]+) ?\]", signoff_pdf(tasks, page=page))
        assert [float(one) * MM for one in box] == pytest.approx(size, abs=0.01)
    with pytest.raises(LabError, match="page"):
        signoff_pdf(tasks, page="a3")


def test_lines_are_as_long_as_they_may_be():
    lines = wrapped("one two three four five six seven", 25.0)
    assert " ".join(lines) == "one two three four five six seven"
    assert 1 < len(lines) < 7
    assert wrapped("one two", 200.0) == ["one two"]
    assert wrapped("", 10.0) == []


def test_the_command_writes_it_and_leaves_what_is_there(tmp_path: Path, capsys):
    file = tmp_path / "sheet.pdf"
    assert main(["signoff", "15", "--out", str(file)]) == 0
    assert "whoever saw the work signs it" in capsys.readouterr().out
    assert file.read_bytes() == signoff_pdf(bench_tasks("15"))
    assert main(["signoff", "10", "--out", str(file)]) == 2
    assert "is there already" in capsys.readouterr().err
    assert main(["signoff", "15", "--out", str(tmp_path / "sheet.txt")]) == 2
    assert "does not end in .pdf" in capsys.readouterr().err
    assert main(["signoff", "2", "--out", str(tmp_path / "two.pdf")]) == 2
    assert "lesson '2' has no tasks at the bench to sign" in capsys.readouterr().err
