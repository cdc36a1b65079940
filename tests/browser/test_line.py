"""The line an answer is written on, on a real page with a kernel slower than the fingers."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import SHOWN, press_run
from playwright.sync_api import expect
from served import opened
from stand_ins import folded, lesson, save

LINES = """
# Two lines, and what came of them; each change keeps the kernel busy for a while.
import time
import ipywidgets as widgets
from lablib.panels.line import Line

handed_in = widgets.Label()

def line(name):
    heard = dict(on_change=lambda _: time.sleep(0.05), on_enter=lambda: enter(made))
    made = Line(description=name, placeholder="", **heard)
    return made

def enter(made):
    handed_in.value += f"[{made.text}]"
    other.focus()

first, other = line("First"), line("Other")
widgets.VBox([first.box, other.box, handed_in])
"""


@pytest.mark.usefixtures("folder")
def test_enter_hands_in_all_that_was_typed_and_tab_nothing(watched: Watched, tmp_path: Path) -> None:
    save(lesson("Lines", folded(LINES.strip())), tmp_path / "lessons" / "00_lines.ipynb")
    with (
        opened("0", "--no-browser", lessons=tmp_path / "lessons") as workbook,
        watched.at(workbook.url) as page,
    ):
        press_run(page)
        outputs = page.locator(f"{SHOWN} .jp-OutputArea-output")
        first, other = (
            outputs.get_by_role("textbox", name="First"),
            outputs.get_by_role("textbox", name="Other"),
        )
        said = outputs.locator(".widget-label").last
        first.click()
        page.keyboard.type("-2.25 -0.75 x 175", delay=5)
        page.keyboard.press("Enter")
        expect(said).to_have_text("[-2.25 -0.75 x 175]")
        expect(other).to_be_focused()
        # The same again, without a key: it is handed in again.
        first.click()
        page.keyboard.press("Enter")
        expect(said).to_have_text("[-2.25 -0.75 x 175][-2.25 -0.75 x 175]")
        # Leaving a box hands nothing in, and what was typed stays.
        other.click()
        page.keyboard.type("4.5")
        page.keyboard.press("Tab")
        first.click()
        page.keyboard.press("End")
        page.keyboard.type("!")
        page.keyboard.press("Enter")
        expect(said).to_have_text("[-2.25 -0.75 x 175][-2.25 -0.75 x 175][-2.25 -0.75 x 175!]")
        expect(other).to_have_value("4.5")
        expect(first).to_have_value("-2.25 -0.75 x 175!")
