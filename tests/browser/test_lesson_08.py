"""Lesson 08 on the page: its panels answer the keyboard, and a question is answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import SHOWN, press, press_run
from playwright.sync_api import Locator, Page, expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

TOTAL_INSET = number_of("08", "total-inset")


def panels(page: Page) -> Locator:
    """Return the lesson's panels, in reading order; some have lists in place of sliders."""
    return page.locator(f"{SHOWN} .lab-panel")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_segments_and_a_progressive_are_laid_out(watched: Watched, pictures: Path) -> None:
    with opened("08_multifocals", "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(panels(page)).to_have_count(6)
        flat, tops, blank, low, finished, _ = (panels(page).nth(number) for number in range(6))
        said = flat.get_by_role("status").first
        expect(said).to_contain_text("Both stand level")
        press(page, flat.get_by_role("slider").nth(1), "ArrowRight", 4)
        expect(said).to_contain_text("The right stands 2.0 mm higher: ask before cutting.")
        tops.get_by_role("combobox").first.select_option("round 24")
        expect(tops).to_contain_text("2.40")
        said = blank.get_by_role("status").first
        expect(said).to_contain_text("the blank lacks 1.0 mm, lower temporal")
        blank.get_by_role("combobox").first.select_option("blank 75")
        expect(said).not_to_contain_text("lacks")
        said = low.get_by_role("status").first
        expect(said).to_contain_text("3.0 mm under the least fitting height: hold")
        low.get_by_role("combobox").first.select_option("progressive, short")
        expect(said).not_to_contain_text("hold")
        said = finished.get_by_role("status").first
        expect(said).to_contain_text("Only the engravings are left")
        finished.get_by_role("combobox").first.select_option("all")
        expect(said).to_contain_text("The right stands 2.0 mm higher")
        flat.screenshot(path=pictures / "segment_laid_out.png")
        finished.screenshot(path=pictures / "progressive_marked.png")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_total_inset_is_answered(watched: Watched) -> None:
    with opened("08_multifocals", "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(cards(page)).to_have_count(8)
        place = places("08")["total-inset"]
        wrong = place.question.mistakes[0]
        for text, words in (
            (place.question.kind.written(wrong.value), wrong.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, TOTAL_INSET).fill(text)
            line(page, TOTAL_INSET).press("Enter")
            expect(feedback(page, TOTAL_INSET)).to_contain_text(words)
        assert places("08")["total-inset"].mark.state is State.RIGHT
