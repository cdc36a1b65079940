"""Lesson 04 on the page: panels answer the keyboard, tables stand there, and a question is answered."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import SHOWN, panels, press, run_all
from playwright.sync_api import expect
from self_check_page import cards, feedback, line, number_of, places, right_text
from served import opened

from lablib.study.marking import State

FRINGE = number_of("04", "colour-fringe")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_materials_are_compared_and_the_facts_stand_in_tables(watched: Watched, pictures: Path) -> None:
    with opened("04_material", "--no-browser") as workbook, watched.at(workbook.url) as page:
        run_all(page)
        expect(panels(page)).to_have_count(4)
        index, weight, colour, _ = (panels(page).nth(number) for number in range(4))
        index.get_by_role("combobox").first.select_option("thiourethane-1.67")
        expect(index.get_by_role("table").first).to_contain_text("0.792")
        said = weight.get_by_role("status").first
        press(page, weight.get_by_role("slider").first, "ArrowRight", 8)
        expect(said).to_contain_text("crown glass 1.523 (29.2 g) heaviest")
        said = colour.get_by_role("status").first
        expect(said).to_contain_text("above what is usually noticed in 5 of them")
        press(page, colour.get_by_role("slider").first, "ArrowRight", 8)
        expect(said).to_contain_text("Without prism there is no colour in any.")
        colour.screenshot(path=pictures / "materials.png")
        tables = page.locator(f"{SHOWN} .lab-glossary table")
        expect(tables).to_have_count(3)
        expect(tables.last).to_contain_text("Offer a proper safety order")
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_fringe_is_answered(watched: Watched) -> None:
    with opened("04_material", "--no-browser") as workbook, watched.at(workbook.url) as page:
        run_all(page)
        expect(cards(page)).to_have_count(8)
        place = places("04")["colour-fringe"]
        wrong = place.question.mistakes[0]
        for text, words in (
            (place.question.kind.written(wrong.value), wrong.slips[0].words),
            (right_text(place), "Right"),
        ):
            line(page, FRINGE).fill(text)
            line(page, FRINGE).press("Enter")
            expect(feedback(page, FRINGE)).to_contain_text(words)
        assert places("04")["colour-fringe"].mark.state is State.RIGHT
