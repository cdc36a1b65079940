"""Lesson 05 on the page: its panels answer the keyboard, and questions are answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import panels, press, press_run
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

DECENTRATION = number_of("05", "decentration")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_blank_refuses_and_a_larger_one_covers(watched: Watched, pictures: Path) -> None:
    with opened("05_frame_and_layout", "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        # The panel of outlines has a list in place of sliders.
        expect(panels(page)).to_have_count(5)
        eyes, _, near, refused, _ = (panels(page).nth(number) for number in range(5))
        press(page, eyes.get_by_role("slider").first, "ArrowLeft", 8)
        expect(eyes.get_by_role("status").first).to_contain_text("Right lens: 4.0 in from the boxed centre")
        press(page, near.get_by_role("slider").first, "ArrowLeft", 30)
        expect(near.get_by_role("status").first).to_contain_text("60.0 mm near for 64.0 mm far")
        said = refused.get_by_role("status").first
        expect(said).to_contain_text("it needs 76.9 mm, and the 70 mm blank leaves 3.4 mm uncovered")
        refused.screenshot(path=pictures / "blank_that_refuses.png")
        press(page, refused.get_by_role("slider").first, "ArrowRight", 7)
        expect(said).to_contain_text("it needs 76.9 mm, and the 77 mm blank covers")
        near.screenshot(path=pictures / "near_sight.png")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_the_total_for_one_eye_is_named_and_the_right_answer_kept(watched: Watched) -> None:
    with opened("05_frame_and_layout", "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(cards(page)).to_have_count(8)
        place = places("05")["decentration"]
        total = next(wrong for wrong in place.question.mistakes if wrong.slips[0].name == "total-for-one-eye")
        for text, words in (
            (place.question.kind.written(total.value), total.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, DECENTRATION).fill(text)
            line(page, DECENTRATION).press("Enter")
            expect(feedback(page, DECENTRATION)).to_contain_text(words)
        assert places("05")["decentration"].mark.state is State.RIGHT
