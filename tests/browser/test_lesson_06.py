"""Lesson 06 on the page: its panels answer the keyboard, and a question is answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import panels, press, run_all
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

SPLIT = number_of("06", "split")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_prism_at_a_point_and_a_pair_slid_apart(watched: Watched, pictures: Path) -> None:
    with opened("06_prism", "--no-browser") as workbook, watched.at(workbook.url) as page:
        run_all(page)
        expect(panels(page)).to_have_count(5)
        sphere, _, pair, near, _ = (panels(page).nth(number) for number in range(5))
        said = sphere.get_by_role("status").first
        expect(said).to_have_text("The right eye looks through the optical centre and meets no prism.")
        press(page, sphere.get_by_role("slider").first, "ArrowLeft", 16)
        expect(said).to_contain_text("looks 8 mm below the optical centre and meets 2.40 base down")
        said = pair.get_by_role("status").first
        press(page, pair.get_by_role("slider").first, "ArrowRight", 18)
        expect(said).to_contain_text("2.16 base in together: the eyes must turn outwards")
        press(page, near.get_by_role("slider").first, "ArrowRight", 20)
        expect(near.get_by_role("status").first).to_contain_text("the right eye must look lower")
        pair.screenshot(path=pictures / "pair_slid_apart.png")
        sphere.screenshot(path=pictures / "prism_field.png")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_split_prism_is_answered_with_its_base(watched: Watched) -> None:
    with opened("06_prism", "--no-browser") as workbook, watched.at(workbook.url) as page:
        run_all(page)
        expect(cards(page)).to_have_count(8)
        place = places("06")["split"]
        wrong = place.question.mistakes[0]
        for text, words in (
            ("2", "has no base direction"),
            (place.question.kind.written(wrong.value), wrong.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, SPLIT).fill(text)
            line(page, SPLIT).press("Enter")
            expect(feedback(page, SPLIT)).to_contain_text(words)
        assert places("06")["split"].mark.state is State.RIGHT
