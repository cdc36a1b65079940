"""Lesson 31 on the page: readings fitted or refused, a profile saved, remedies, a question answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import SHOWN, panels, press, press_run
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

LESSON = "31_bench_calibration"
FRICTION = number_of("31", "grip-friction-from-line")
READINGS = "\n".join(
    f"{force} {torque}"
    for force, torque in ((100, 0.28), (200, 0.46), (300, 0.64), (100, 0.29), (200, 0.47), (300, 0.63))
)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_readings_are_refused_or_fitted_and_own_ones_saved(watched: Watched, pictures: Path) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        whole = panels(page).last
        said = whole.get_by_role("status").first
        expect(said).to_contain_text("Coat slick, round block, 100 to 400 N")
        press(page, whole.get_by_role("slider").nth(1), "ArrowLeft", 2)
        expect(whole.get_by_role("alert")).to_contain_text("4 readings at 4 forces fit any line")
        whole.get_by_role("combobox", name="Readings").select_option("your own")
        expect(whole.get_by_role("alert")).to_contain_text("0 readings at 0 forces")
        box = whole.get_by_role("textbox", name="Readings", exact=True).last
        box.fill(READINGS)
        box.blur()
        expect(said).to_contain_text("Coat slick, round block, 100 to 300 N")
        whole.get_by_role("button", name="Save bench profile").click()
        expect(whole.get_by_role("status").last).to_contain_text("Saved as my-bench.toml")
        whole.screenshot(path=pictures / "calibration.png")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_calibrated_bench_needs_fewer_remedies(watched: Watched, pictures: Path) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        outputs = page.locator(f"{SHOWN} .jp-OutputArea-output")
        cures = outputs.filter(has=page.get_by_role("combobox", name="Bench calibrated"))
        said = cures.get_by_role("status").first
        expect(said).to_contain_text("Cheapest set under 10 %: back tape and smaller bites.")
        cures.get_by_role("combobox", name="Bench calibrated").select_option("yes")
        expect(said).to_contain_text("Cheapest set under 10 %: smaller bites.")
        press(page, cures.get_by_role("slider"), "ArrowLeft", 9)
        expect(said).to_contain_text("Cheapest set under 1 %")
        cures.screenshot(path=pictures / "remedies.png")
        doubt = outputs.filter(has_text="Benches drawn")
        doubt.get_by_role("combobox", name="Change one thing").select_option("film")
        expect(doubt.get_by_role("status").first).to_contain_text("Margin 1.56 by the table")
        doubt.screenshot(path=pictures / "doubt.png")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_line_through_the_origin_is_named_and_the_right_answer_kept(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(cards(page)).to_have_count(7)
        place = places("31")["grip-friction-from-line"]
        wrong = place.question.mistakes[0]
        for text, words in (
            (place.question.kind.written(wrong.value), wrong.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, FRICTION).fill(text)
            line(page, FRICTION).press("Enter")
            expect(feedback(page, FRICTION)).to_contain_text(words)
        assert places("31")["grip-friction-from-line"].mark.state is State.RIGHT
