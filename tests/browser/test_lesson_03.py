"""Lesson 03 as a learner meets it: its panels answer the keyboard, a lens is found, a question answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import panels, run_all
from playwright.sync_api import Locator, Page, expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

LESSON = "03_power_in_place"
FOCAL = number_of("03", "focal-length")
FOCUS, WORN, PINS, UNKNOWN, WHOLE = range(5)


def said(page: Page, number: int) -> Locator:
    """Return the sentence of a panel."""
    return panels(page).nth(number).get_by_role("status").first


def press(page: Page, slider: Locator, key: str, times: int = 1) -> None:
    """Move a slider from the keyboard."""
    slider.focus()
    for _ in range(times):
        page.keyboard.press(key)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_the_lesson_runs_its_panels_answer_keys_and_a_question_is_marked(
    watched: Watched, pictures: Path
) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        run_all(page)
        expect(panels(page)).to_have_count(5)
        power = panels(page).nth(FOCUS).get_by_role("slider")
        press(page, power, "ArrowRight", times=16)
        expect(said(page, FOCUS)).to_contain_text("+8.00 D has its focus 12.5 cm behind the lens")
        press(page, panels(page).nth(WORN).get_by_role("slider").first, "Home")
        expect(said(page, WORN)).to_contain_text("on the cornea it takes -8.93 D to keep the focus there")
        leans = panels(page).nth(PINS).get_by_role("slider").first
        press(page, leans, "ArrowRight", times=20)
        expect(said(page, PINS)).to_contain_text("the dial shows +5.77 D; held square it shows +5.43 D")
        find_the_lens(page)
        panels(page).nth(UNKNOWN).screenshot(path=pictures / "lesson_03_focimeter.png")
        answer_one(page)
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


def find_the_lens(page: Page) -> None:
    """Turn the target onto the axis, then the drum to the first sharp line and to the second."""
    drum, target = panels(page).nth(UNKNOWN).get_by_role("slider").all()
    press(page, target, "Home")
    press(page, target, "ArrowRight", times=64)
    expect(said(page, UNKNOWN)).to_contain_text("nothing is broken")
    press(page, drum, "ArrowLeft", times=14)
    expect(said(page, UNKNOWN)).to_contain_text("Drum at -1.75 D")
    expect(said(page, UNKNOWN)).to_contain_text("the single line along 155 is sharp")
    press(page, drum, "ArrowLeft", times=10)
    expect(said(page, UNKNOWN)).to_contain_text("the three lines along 65 are sharp")
    expect(said(page, WHOLE)).to_contain_text("Drum at 0.00 D")


def answer_one(page: Page) -> None:
    """Give the first slip of the first question, then what is right."""
    expect(cards(page)).to_have_count(8)
    place = places("03")["focal-length"]
    mistake = place.question.mistakes[0]
    hand_in(page, place.question.kind.written(mistake.value))
    expect(feedback(page, FOCAL)).to_contain_text(mistake.slips[0].words)
    hand_in(page, right_text(place))
    expect(feedback(page, FOCAL)).to_contain_text("Right")


def hand_in(page: Page, text: str) -> None:
    """Write an answer to the first question and press Enter."""
    line(page, FOCAL).fill(text)
    line(page, FOCAL).press("Enter")
