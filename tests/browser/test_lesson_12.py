"""Lesson 12 on the page: a lens turns step by step, four lenses are saved or not, a question is answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import SHOWN, panels, press, press_run
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

LESSON = "12_slip"
ANGLE = number_of("12", "turn-from-marks")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_lens_turns_step_by_step_and_one_change_saves_some_of_four(
    watched: Watched, pictures: Path
) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(panels(page)).to_have_count(2)
        early, whole = (panels(page).nth(number) for number in range(2))
        press(page, early.get_by_role("slider"), "ArrowRight", 1)
        expect(early.get_by_role("status").first).to_contain_text(
            "After turn 1 the lens has turned 4.7 degrees"
        )
        press(page, early.get_by_role("slider"), "ArrowRight", 3)
        expect(early.get_by_role("status").first).to_contain_text(
            "After turn 4 the lens has turned 14 degrees"
        )
        outputs = page.locator(f"{SHOWN} .jp-OutputArea-output")
        four = outputs.filter(has=page.get_by_role("combobox", name="Change one thing"))
        said = four.get_by_role("status").first
        expect(said).to_contain_text("Four lenses on their blocks, each line level")
        # By the keyboard alone: an arrow goes on by one, and does not leave the list for the next cell.
        for words in (
            "As they were cut: lens 1 no sign, margin 2.74; lens 2 line off level",
            "lens 2 as it was, margin 0.93; lens 3 no sign",
        ):
            four.get_by_role("combobox").focus()
            page.keyboard.press("ArrowDown")
            expect(said).to_contain_text(words)
            expect(four.get_by_role("combobox")).to_be_focused()
        four.screenshot(path=pictures / "four_signs.png")
        whole.get_by_role("combobox", name="Wheel").select_option("glazed")
        expect(whole.get_by_role("status").first).to_contain_text("burnt patch")
        whole.screenshot(path=pictures / "turning_lens.png")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_half_the_distance_is_named_and_the_right_answer_kept(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(cards(page)).to_have_count(8)
        signs = cards(page).nth(number_of("12", "which-sign") - 1).get_by_role("radio")
        signs.first.focus()
        page.keyboard.press("ArrowDown")
        expect(signs.nth(1)).to_be_checked()
        page.keyboard.press("ArrowUp")
        expect(signs.first).to_be_checked()
        expect(signs.first).to_be_focused()
        place = places("12")["turn-from-marks"]
        wrong = place.question.mistakes[0]
        for text, words in (
            (place.question.kind.written(wrong.value), wrong.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, ANGLE).fill(text)
            line(page, ANGLE).press("Enter")
            expect(feedback(page, ANGLE)).to_contain_text(words)
        assert places("12")["turn-from-marks"].mark.state is State.RIGHT
