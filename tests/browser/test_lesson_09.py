"""Lesson 09 on the page: its panels answer the keyboard, and a question is answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import panels, press, press_run
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

LESSON = "09_wearing_position"
HEIGHT = number_of("09", "centre-height")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_lens_leans_its_centre_goes_down_and_a_reading_is_compared(
    watched: Watched, pictures: Path
) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(panels(page)).to_have_count(6)
        leaning, lowered, _, slipped, columns, whole = (panels(page).nth(number) for number in range(6))
        press(page, leaning.get_by_role("slider"), "ArrowRight", 10)
        expect(leaning.get_by_role("status").first).to_contain_text("an error of -0.25 D along the turn")
        expect(leaning).to_contain_text("-6.06 -0.19 x 180")
        press(page, lowered.get_by_role("slider").first, "ArrowRight", 9)
        expect(lowered.get_by_role("status").first).to_contain_text("an error of -0.03 D along the turn")
        press(page, slipped.get_by_role("slider"), "End", 1)
        expect(slipped.get_by_role("status").first).to_contain_text("an error of +0.43 D along the turn")
        said = columns.get_by_role("status").first
        expect(said).to_contain_text("passes against its check value; against the order it would fail")
        press(page, columns.get_by_role("slider"), "ArrowRight", 14)
        expect(said).to_contain_text("fails against its check value: sphere")
        columns.screenshot(path=pictures / "check_values.png")
        whole.screenshot(path=pictures / "wearing_position.png")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_raised_centre_is_named_and_the_right_answer_kept(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(cards(page)).to_have_count(8)
        place = places("09")["centre-height"]
        raised = next(wrong for wrong in place.question.mistakes if wrong.slips[0].name == "raised")
        for text, words in (
            (place.question.kind.written(raised.value), raised.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, HEIGHT).fill(text)
            line(page, HEIGHT).press("Enter")
            expect(feedback(page, HEIGHT)).to_contain_text(words)
        assert places("09")["centre-height"].mark.state is State.RIGHT
