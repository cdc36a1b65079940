"""The glossary as a learner meets it: reached from a lesson, searched from the keyboard, and left again."""

import re
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from browser_fixtures import Watched
from lesson_page import SHOWN, press_run
from playwright.sync_api import expect
from served import opened


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_word_is_looked_up_from_a_lesson_and_the_lesson_is_there_again(
    watched: Watched, pictures: Path
) -> None:
    with opened("1", "--no-browser") as workbook, watched.at(workbook.url) as page:
        page.locator(SHOWN).get_by_role("link", name="Glossary").click()
        expect(page.locator(SHOWN).get_by_role("heading", name="Glossary")).to_be_visible()
        press_run(page)
        shown = page.locator(f"{SHOWN} .lab-glossary")
        rows, said = shown.locator("tbody tr"), shown.get_by_role("status")
        expect(said).to_have_text(re.compile(r"All \d{3} words\."))
        shown.get_by_role("textbox", name="Find").focus()
        page.keyboard.type("sagi")
        expect(said).to_contain_text("for “sagi”")
        expect(rows.first.get_by_role("rowheader")).to_contain_text("sagitta")
        assert rows.count() < 20
        page.screenshot(path=pictures / "glossary_found.png")
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        expect(said).to_have_text(re.compile(r"All \d{3} words\."))
        expect(shown.get_by_role("textbox", name="Find")).to_be_focused()
        parts = {"include": [[f"{SHOWN} .jp-RenderedMarkdown"], [f"{SHOWN} .jp-OutputArea-output"]]}
        assert Axe().run(page, context=parts).response["violations"] == []
        page.locator(SHOWN).get_by_role("link", name="01 Start here").click()
        expect(page.locator(SHOWN).get_by_role("heading", name="01 Start here")).to_be_visible()
