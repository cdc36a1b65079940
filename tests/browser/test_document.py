"""A lesson's page as one calm document: what is not there, where links lead, what is kept."""

import time
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from browser_fixtures import Watched
from lesson_page import SHOWN
from nbformat.v4 import new_markdown_cell
from playwright.sync_api import expect
from served import opened
from stand_ins import folded, lesson, save, saved_by_the_page

BUTTON = f"{SHOWN} button[data-commandlinker-command]"


@pytest.fixture
def lessons(tmp_path: Path) -> Path:
    for name, other in (("02_prescription", "07_lens_form"), ("07_lens_form", "02_prescription")):
        link = new_markdown_cell(f"Go on to [the other lesson]({other}.ipynb).")
        cell = folded(f"# The answer\nprint('answer of {name}')")
        save(lesson(name, cell, link), tmp_path / "shipped" / f"{name}.ipynb")
    return tmp_path / "shipped"


@pytest.mark.usefixtures("folder", "no_way_out")
def test_there_is_a_document_and_nothing_else(watched: Watched, lessons: Path, pictures: Path) -> None:
    with opened("7", "--no-browser", lessons=lessons) as workbook, watched.at(workbook.url) as page:
        # As soon as it can be pressed: a press before the kernel is there would run nothing.
        page.locator(BUTTON).click()
        expect(page.get_by_text("answer of 07_lens_form", exact=True)).to_be_visible()
        expect(page.get_by_role("heading", name="07_lens_form")).to_be_visible()
        page.screenshot(path=pictures / "document.png")
        for absent in (".jp-FileBrowser", ".jp-SideBar", "#jp-main-statusbar", ".jp-Placeholder"):
            expect(page.locator(absent).filter(visible=True)).to_have_count(0)
        for absent in (".jp-Dialog", ".Toastify__toast"):
            expect(page.locator(absent)).to_have_count(0)


@pytest.mark.usefixtures("folder")
def test_a_touched_lesson_runs_without_a_question_too(watched: Watched, lessons: Path, folder: Path) -> None:
    with opened("7", "--no-browser", lessons=lessons):
        pass
    saved_by_the_page(folder / "lessons" / "07_lens_form.ipynb", add="my own note")
    with opened("7", "--no-browser", lessons=lessons) as workbook, watched.at(workbook.url) as page:
        expect(page.get_by_role("paragraph").get_by_text("my own note")).to_be_visible()
        # The stored output is gone until the lesson is run.
        expect(page.get_by_text("FloatSlider(value=1.0)")).to_have_count(0)
        page.locator(BUTTON).click()
        expect(page.get_by_text("answer of 07_lens_form", exact=True)).to_be_visible()


@pytest.mark.usefixtures("folder")
def test_links_lead_from_lesson_to_lesson_in_the_same_kind_of_document(
    watched: Watched, lessons: Path, pictures: Path
) -> None:
    with opened("7", "--no-browser", lessons=lessons) as workbook, watched.at(workbook.url) as page:
        for name in ("02_prescription", "07_lens_form"):
            page.locator(SHOWN).get_by_role("link", name="the other lesson").click()
            expect(page.locator(SHOWN).get_by_role("heading", name=name)).to_be_visible()
            page.wait_for_url(f"**/doc/tree/{name}.ipynb")
            expect(page.locator(".jp-FileBrowser").filter(visible=True)).to_have_count(0)
            page.locator(BUTTON).click()
            expect(page.locator(SHOWN).get_by_text(f"answer of {name}", exact=True)).to_be_visible()
        page.screenshot(path=pictures / "after_two_links.png")
        assert len(page.context.pages) == 1
        # Reloading shows the lesson that the address names.
        page.reload()
        expect(page.locator(SHOWN).get_by_role("heading", name="07_lens_form")).to_be_visible()


def test_what_is_typed_is_in_the_copy_before_the_browser_is_closed(
    watched: Watched, lessons: Path, folder: Path
) -> None:
    copy = folder / "lessons" / "07_lens_form.ipynb"
    before = (lessons / "07_lens_form.ipynb").read_bytes()
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        with watched.at(workbook.url) as page:
            page.locator(BUTTON).wait_for()
            page.locator(f"{SHOWN} [data-jp-item-name='insert']").click()
            page.keyboard.press("Enter")
            expect(page.locator(f"{SHOWN} .jp-mod-active .cm-content")).to_be_focused()
            page.keyboard.type("# what I noticed at the wheel")
            _wait_for_text(copy, "what I noticed at the wheel", seconds=30)
        with watched.at(workbook.url) as page:
            expect(page.locator(SHOWN).get_by_text("what I noticed at the wheel")).to_be_visible()
    assert (lessons / "07_lens_form.ipynb").read_bytes() == before


@pytest.mark.usefixtures("folder")
def test_a_browser_that_was_let_in_needs_no_token_for_another_lesson(watched: Watched, lessons: Path) -> None:
    with opened("7", "--no-browser", lessons=lessons) as workbook:
        with watched.at(workbook.url) as page:
            page.locator(BUTTON).wait_for()
        with watched.at(f"http://{urlsplit(workbook.url).netloc}/doc/tree/02_prescription.ipynb") as page:
            expect(page.get_by_role("heading", name="02_prescription")).to_be_visible()
            page.locator(BUTTON).wait_for()


def _wait_for_text(path: Path, text: str, *, seconds: float) -> None:
    end = time.monotonic() + seconds
    while text not in path.read_text(encoding="utf-8"):
        assert time.monotonic() < end, f"{text!r} was not saved within {seconds} s"
        time.sleep(0.1)
