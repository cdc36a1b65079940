"""Lesson 15 on the page: a week goes outside, causes change their ranks, a question is answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import SHOWN, panels, press, press_run
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

LESSON = "15_bench_care"
PADS = number_of("15", "pads-last")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_week_goes_outside_and_causes_change_their_ranks(watched: Watched, pictures: Path) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(panels(page)).to_have_count(2)
        week, whole = (panels(page).nth(number) for number in range(2))
        spoiled = week.get_by_role("slider").nth(1)
        press(page, spoiled, "ArrowRight", 5)
        expect(week.get_by_role("status").first).to_contain_text("9 of 80 lenses are spoiled, 11.2 %: inside")
        press(page, spoiled, "ArrowRight", 1)
        expect(week.get_by_role("status").first).to_contain_text("12.5 %: outside the limits")
        week.screenshot(path=pictures / "week_outside.png")
        outputs = page.locator(f"{SHOWN} .jp-OutputArea-output")
        ranked = outputs.filter(has=page.get_by_role("combobox", name="Causes ranked by")).first
        # By the keyboard alone: the space bar opens the list, an arrow goes on by one, Enter takes it.
        ranked.get_by_role("combobox").focus()
        for key in ("Space", "ArrowUp", "Enter"):
            page.keyboard.press(key)
        expect(ranked.get_by_role("status").first).to_contain_text(
            "First by money: segment or cross height, 5 lenses for 910.50"
        )
        ranked.screenshot(path=pictures / "causes_by_money.png")
        whole.get_by_role("combobox", name="One point for").select_option("four weeks")
        expect(whole.get_by_role("status").first).to_contain_text("None is outside before it.")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_jobs_for_lenses_is_named_and_the_right_answer_kept(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(cards(page)).to_have_count(8)
        place = places("15")["pads-last"]
        wrong = place.question.mistakes[0]
        for text, words in (
            (place.question.kind.written(wrong.value), wrong.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, PADS).fill(text)
            line(page, PADS).press("Enter")
            expect(feedback(page, PADS)).to_contain_text(words)
        assert places("15")["pads-last"].mark.state is State.RIGHT
