"""Lesson 10 on the page: its panels answer the keyboard, and a question is answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import panels, press, press_run
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

LESSON = "10_blocking"
GAP = number_of("10", "block-curve-gap")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_joint_gives_a_block_stands_out_and_air_opens_under_it(watched: Watched, pictures: Path) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(panels(page)).to_have_count(7)
        film, state, shallow, curve, where, tip, whole = (panels(page).nth(number) for number in range(7))
        said = film.get_by_role("status").first
        expect(said).to_contain_text("The weakest joint of the front stack is pad to coat, with 0.62 N m")
        film.get_by_role("combobox").select_option("yes")
        expect(said).to_contain_text("The weakest joint of the front stack is pad core, with 1.27 N m")
        press(page, film.get_by_role("slider"), "End", 1)
        expect(said).to_contain_text("film to coat, with 1.14 N m")
        press(page, state.get_by_role("slider").first, "ArrowRight", 12)
        expect(state.get_by_role("status").first).to_contain_text("pad to coat, with 0.52 N m")
        press(page, shallow.get_by_role("slider"), "Home", 1)
        expect(shallow.get_by_role("status").first).to_contain_text("standing out by 2.0 mm")
        press(page, curve.get_by_role("slider"), "ArrowLeft", 8)
        expect(curve.get_by_role("status").first).to_contain_text("block 2.00, front 2.00 D: no gap")
        where.get_by_role("combobox").select_option("optical centre")
        expect(where).to_contain_text("30.1")
        press(page, tip.get_by_role("slider"), "ArrowLeft", 7)
        expect(tip.get_by_role("status").first).not_to_contain_text("the tip on 90 %")
        curve.screenshot(path=pictures / "block_on_lens.png")
        whole.screenshot(path=pictures / "grip.png")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_usual_slip_is_named_and_the_right_answer_kept(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(cards(page)).to_have_count(8)
        place = places("10")["block-curve-gap"]
        wrong = place.question.mistakes[0]
        for text, words in (
            (place.question.kind.written(wrong.value), wrong.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, GAP).fill(text)
            line(page, GAP).press("Enter")
            expect(feedback(page, GAP)).to_contain_text(words)
        assert places("10")["block-curve-gap"].mark.state is State.RIGHT
