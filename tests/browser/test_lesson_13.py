"""Lesson 13 on the page: a groove without walls, a bevel that no rim takes, a question answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import SHOWN, panels, press, press_run
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

LESSON = "13_edges_and_mounting"
SIZE = number_of("13", "size-by-circumference")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_groove_gets_its_walls_and_a_thin_lens_fits_no_wrapped_rim(
    watched: Watched, pictures: Path
) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        outputs = page.locator(f"{SHOWN} .jp-OutputArea-output")
        expect(panels(page)).to_have_count(5)
        cord = panels(page).nth(0)
        said = cord.get_by_role("status").first
        expect(said).to_contain_text("No groove: in the middle of the edge it leaves walls of 0.20 mm")
        press(page, cord.get_by_role("slider"), "ArrowRight", 10)
        expect(said).to_contain_text("The groove holds")
        way = outputs.filter(has=page.get_by_role("combobox", name="Bevel runs")).first
        way.get_by_role("combobox").select_option("middle of the edge")
        expect(way.get_by_role("status").first).to_contain_text("would bend the rim by 0.7 mm")
        wrapped = panels(page).nth(3)
        told = wrapped.get_by_role("status").first
        rim, sphere = (wrapped.get_by_role("slider").nth(at) for at in range(2))
        press(page, rim, "ArrowRight", 6)
        expect(told).to_contain_text("Bevel following the rim, because following the front")
        press(page, sphere, "ArrowRight", 4)
        expect(told).to_contain_text("No bevel holds")
        wrapped.screenshot(path=pictures / "wrapped_rim.png")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_change_taken_over_is_named_and_the_right_answer_kept(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(cards(page)).to_have_count(8)
        place = places("13")["size-by-circumference"]
        wrong = place.question.mistakes[0]
        for text, words in (
            (place.question.kind.written(wrong.value), wrong.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, SIZE).fill(text)
            line(page, SIZE).press("Enter")
            expect(feedback(page, SIZE)).to_contain_text(words)
        assert places("13")["size-by-circumference"].mark.state is State.RIGHT
