"""Lesson 11 on the page: its panels answer the keyboard, and a question is answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import panels, press, press_run
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

LESSON = "11_cutting"
FORCE = number_of("11", "cutting-force")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_the_turn_goes_on_the_arm_swings_and_the_wheel_slows(watched: Watched, pictures: Path) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(panels(page)).to_have_count(7)
        turns, plus, arm, wheel, crib, feeds, whole = (panels(page).nth(number) for number in range(7))
        expect(said(turns)).to_contain_text("Turn 1 of 10, roughing: the wheel asks at most 1.13 N m")
        press(page, turns.get_by_role("slider"), "ArrowRight", 9)
        expect(said(turns)).to_contain_text("Turn 10 of 10, finishing")
        press(page, plus.get_by_role("slider"), "ArrowRight", 6)
        expect(said(plus)).to_contain_text("Turn 7 of 10, roughing: the wheel asks at most 0.43 N m")
        expect(said(arm)).to_contain_text("the tangential force pulls on an arm of 25.0 mm")
        press(page, arm.get_by_role("slider").first, "ArrowRight", 9)
        expect(said(arm)).to_contain_text("the tangential force pulls on an arm of 21.8 mm")
        press(page, arm.get_by_role("slider").last, "ArrowRight", 8)
        expect(said(arm)).to_contain_text("the tangential force pulls on an arm of 22.1 mm")
        press(page, wheel.get_by_role("slider").first, "Home", 1)
        expect(said(wheel)).to_contain_text("the wheel asks at most 1.65 N m")
        press(page, crib.get_by_role("slider").first, "Home", 1)
        expect(said(crib)).to_contain_text("Turn 1 of 11, cribbing")
        feeds.screenshot(path=pictures / "feeds.png")
        whole.screenshot(path=pictures / "cutting.png")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


def said(panel):
    """The sentence under a panel's picture."""
    return panel.get_by_role("status").first


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_usual_slip_is_named_and_the_right_answer_kept(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        place = places("11")["cutting-force"]
        expect(cards(page).first).to_be_visible()
        wrong = place.question.mistakes[0]
        for text, words in (
            (place.question.kind.written(wrong.value), wrong.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, FORCE).fill(text)
            line(page, FORCE).press("Enter")
            expect(feedback(page, FORCE)).to_contain_text(words)
        assert places("11")["cutting-force"].mark.state is State.RIGHT
