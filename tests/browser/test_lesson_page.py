"""A lesson as an apprentice meets it: opened, run from its button, moved from the keyboard."""

import re
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from browser_fixtures import Watched
from lesson_page import panel_of, picture, run_all, sentence
from playwright.sync_api import expect
from served import opened

LESSON = "07_lens_form_and_thickness"


@pytest.mark.usefixtures("folder", "no_way_out")
def test_the_lesson_runs_and_its_panel_answers_the_keyboard(watched: Watched, pictures: Path) -> None:
    with opened(LESSON, "--no-browser") as workbook:
        with watched.at(workbook.url) as page:
            run_all(page)
            page.screenshot(path=pictures / "lesson_top.png")
            panel = panel_of(page)
            shown, said = picture(panel), sentence(panel)
            panel.get_by_role("slider").first.focus()
            page.keyboard.press("ArrowRight")
            expect(panel.get_by_role("status").first).not_to_have_text(said)
            expect(panel.locator("img").first).not_to_have_attribute("src", shown)
            panel.screenshot(path=pictures / "panel_moved.png")
            page.keyboard.press("ArrowLeft")
            expect(panel.get_by_role("status").first).to_have_text(said)
            expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)
        stopped = workbook.stop()
    assert stopped == (0, "Stopped. Your copies stay where they are.\n", "")


# What the widgets themselves leave without a name, and the part of a panel that makes up for it.
_MADE_UP_FOR = {
    "aria-input-field-name": (".noUi-handle", "a slider's handle: the number box beside it carries the name"),
    "image-alt": (".widget-image", "a picture: the sentence under it says what it shows"),
}


@pytest.mark.usefixtures("folder")
def test_the_lesson_can_be_used_without_sight_or_mouse(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        run_all(page)
        parts = {"include": [[".jp-RenderedMarkdown"], [".jp-OutputArea-output"]]}
        for violation in Axe().run(page, context=parts).response["violations"]:
            selector, _ = _MADE_UP_FOR.get(violation["id"], ("nothing", ""))
            for node in violation["nodes"]:
                assert page.locator(node["target"][0]).and_(page.locator(selector)).count() == 1, violation
        panel = panel_of(page)
        assert panel.locator("input").count() >= panel.get_by_role("slider").count()
        for box in panel.locator("input").all():
            expect(box).to_have_accessible_name(re.compile(r"\w"))
        assert len(sentence(panel)) > 20
