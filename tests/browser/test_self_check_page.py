"""The self-check as a learner meets it: Enter marks, and nothing is lost, whatever happens to the page."""

import json
from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import press_run
from playwright.sync_api import Page, expect
from self_check_page import card, cards, feedback, line, number_of, places, right_text
from served import Served, opened

LESSON = "07_lens_form_and_thickness"
SAGITTA = number_of("07", "sagitta")
EDGE = number_of("07", "temporal-edge")


def restart_kernels(workbook: Served) -> None:
    """Restart what computes, as from the page's menu."""
    _, listed = workbook.ask("GET", "/api/kernels")
    for kernel in json.loads(listed):
        status, _ = workbook.ask("POST", f"/api/kernels/{kernel['id']}/restart")
        assert status == 200


def hand_in(page: Page, number: int, text: str) -> None:
    """Type an answer, fast, and press Enter."""
    line(page, number).click()
    page.keyboard.type(text, delay=5)
    page.keyboard.press("Enter")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_enter_marks_an_answer_and_a_right_one_leads_to_the_next(watched: Watched, pictures: Path) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        expect(cards(page)).to_have_count(len(places("07")))
        expect(card(page, SAGITTA)).to_contain_text("not answered yet")
        place = places("07")["sagitta"]
        wrong = place.question.kind.written(place.question.mistakes[0].value)
        hand_in(page, SAGITTA, wrong)
        expect(feedback(page, SAGITTA)).to_contain_text(place.question.mistakes[0].slips[0].words)
        expect(line(page, SAGITTA)).to_be_focused()
        expect(card(page, SAGITTA)).to_contain_text("not right yet")
        card(page, SAGITTA).screenshot(path=pictures / "self_check_wrong.png")
        line(page, SAGITTA).fill("")
        hand_in(page, SAGITTA, right_text(place))
        expect(feedback(page, SAGITTA)).to_contain_text("Right")
        expect(line(page, EDGE)).to_be_focused()
        expect(line(page, SAGITTA)).to_be_disabled()
        card(page, SAGITTA).screenshot(path=pictures / "self_check_right.png")
        # Other numbers: an empty answer again, and the cursor in it.
        card(page, SAGITTA).get_by_role("button", name="Another like it").click()
        expect(card(page, SAGITTA)).to_contain_text("not answered yet")
        expect(line(page, SAGITTA)).to_be_focused()
        expect(line(page, SAGITTA)).to_have_value("")
        assert places("07")["sagitta"].question.seed != place.question.seed
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


@pytest.mark.usefixtures("folder")
def test_reloading_the_page_loses_nothing(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        answer_and_begin(page)
        page.reload()
        press_run(page)
        expect_both_back(page)


@pytest.mark.usefixtures("folder")
def test_restarting_the_kernel_loses_nothing(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        answer_and_begin(page)
        restart_kernels(workbook)
        press_run(page)
        expect_both_back(page)


@pytest.mark.usefixtures("folder")
def test_a_second_window_loses_nothing(watched: Watched) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        press_run(page)
        answer_and_begin(page)
        with watched.at(workbook.url) as second:
            press_run(second)
            expect_both_back(second)
            edge = places("07")["temporal-edge"]
            line(second, EDGE).fill("")
            hand_in(second, EDGE, right_text(edge))
            expect(feedback(second, EDGE)).to_contain_text("Right")
        press_run(page)
        expect(feedback(page, SAGITTA)).to_contain_text("Right")
        expect(feedback(page, EDGE)).to_contain_text("Right")
        assert [place.tries_here for place in places("07").values()][:2] == [1, 1]


def answer_and_begin(page: Page) -> None:
    """Answer one question, and write half of the next answer without handing it in."""
    place = places("07")["sagitta"]
    hand_in(page, SAGITTA, right_text(place))
    expect(feedback(page, SAGITTA)).to_contain_text("Right")
    expect(line(page, EDGE)).to_be_focused()
    page.keyboard.type("12.")
    wait_for_draft(page, "temporal-edge", "12.")


def wait_for_draft(page: Page, maker: str, text: str) -> None:
    """Wait until what was typed is on the disk."""
    for _ in range(100):
        if places("07")[maker].draft == text:
            return
        page.wait_for_timeout(50)
    raise AssertionError(f"{maker}: {places('07')[maker].draft!r} is kept, not {text!r}")


def expect_both_back(page: Page) -> None:
    """See that the answer is there with its mark, and the half-written one as far as it went."""
    expect(feedback(page, SAGITTA)).to_contain_text("Right")
    expect(line(page, SAGITTA)).to_have_value(right_text(places("07")["sagitta"]))
    expect(card(page, EDGE)).to_contain_text("not answered yet")
    expect(line(page, EDGE)).to_have_value("12.")
