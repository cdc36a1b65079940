"""Lesson 02 as a learner meets it: a meridian turned, a lens transposed, a ticket ringed, two questions."""

from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import SHOWN, panels, run_all
from playwright.sync_api import Locator, Page, expect
from self_check_page import card, cards, feedback, line, number_of, places, right_text
from served import opened

LESSON = "02_prescription"
TRANSPOSE, TICKET = (number_of("02", name) for name in ("transpose", "make-or-hold"))
TURNING, FORMS, WHOLE = range(3)


def said(page: Page, number: int) -> Locator:
    """Return the sentence of a panel."""
    return panels(page).nth(number).get_by_role("status").first


def press(page: Page, slider: Locator, key: str, times: int = 1) -> None:
    """Move a slider from the keyboard."""
    slider.focus()
    for _ in range(times):
        page.keyboard.press(key)


@pytest.mark.usefixtures("folder", "no_way_out")
def test_the_lesson_runs_and_its_panels_answer_keys(watched: Watched, pictures: Path) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        run_all(page)
        expect(panels(page)).to_have_count(3)
        find_the_cross(page)
        panels(page).nth(TURNING).screenshot(path=pictures / "lesson_02_cross.png")
        transpose_by_keys(page)
        # The other panels stand where they stood.
        expect(said(page, WHOLE)).to_contain_text("Along 180 the lens has +1.82 D: between +2.00 on 020")
        ring_the_doubt(page, pictures)
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)


def find_the_cross(page: Page) -> None:
    """Turn the meridian to either power of the cross, which is kept back, and have it shown."""
    meridian = panels(page).nth(TURNING).get_by_role("slider")
    expect(said(page, TURNING)).to_have_text("Along 180 the lens has +1.82 D.")
    press(page, meridian, "ArrowLeft", times=70)
    expect(said(page, TURNING)).to_have_text("Along 110 the lens has +0.50 D.")
    press(page, meridian, "Home")
    press(page, meridian, "ArrowRight", times=19)
    expect(said(page, TURNING)).to_have_text("Along 020 the lens has +2.00 D.")
    panels(page).nth(TURNING).get_by_role("combobox").select_option("yes")
    expect(said(page, TURNING)).to_contain_text("on the axis of its minus form, +2.00 -1.50 x 020")


def transpose_by_keys(page: Page) -> None:
    """Write the lens of the second panel in its other form: everything is said as before."""
    sphere, cylinder, axis = panels(page).nth(FORMS).get_by_role("slider").all()
    before = said(page, FORMS).inner_text()
    press(page, cylinder, "ArrowRight", times=12)
    expect(said(page, FORMS)).not_to_have_text(before)
    press(page, sphere, "ArrowLeft", times=6)
    press(page, axis, "ArrowRight", times=90)
    expect(said(page, FORMS)).to_have_text(before)


def ring_the_doubt(page: Page, pictures: Path) -> None:
    """Lay out another paper ticket, and have what is in doubt on it ringed."""
    outputs = page.locator(f"{SHOWN} .jp-OutputArea-output")
    paper = outputs.filter(has=page.get_by_label("Ring the doubt"))
    expect(paper.get_by_role("status").first).to_have_text(
        "Make it or hold it? Which field would you ask about?"
    )
    paper.get_by_label("Ticket").select_option("4")
    paper.get_by_label("Ring the doubt").select_option("yes")
    expect(paper.get_by_role("status").first).to_contain_text("Hold it for the height of the left eye.")
    paper.screenshot(path=pictures / "lesson_02_paper.png")


@pytest.mark.usefixtures("folder", "no_way_out")
def test_a_lens_is_written_and_a_ticket_held(watched: Watched, pictures: Path) -> None:
    with opened(LESSON, "--no-browser") as workbook, watched.at(workbook.url) as page:
        run_all(page)
        expect(cards(page)).to_have_count(8)
        place = places("02")["transpose"]
        mistake = place.question.mistakes[0]
        hand_in(page, place.question.kind.written(mistake.value))
        expect(feedback(page, TRANSPOSE)).to_contain_text(mistake.slips[0].words)
        hand_in(page, right_text(place))
        expect(feedback(page, TRANSPOSE)).to_contain_text("Right")
        pick_the_right_one(page)
        card(page, TICKET).screenshot(path=pictures / "lesson_02_ticket.png")


def hand_in(page: Page, text: str) -> None:
    """Write an answer to the first question and press Enter."""
    line(page, TRANSPOSE).fill(text)
    line(page, TRANSPOSE).press("Enter")


def pick_the_right_one(page: Page) -> None:
    """Pick what is right for the ticket, and have it checked."""
    words = right_text(places("02")["make-or-hold"])
    card(page, TICKET).get_by_role("radio", name=words, exact=True).check()
    card(page, TICKET).get_by_role("button", name="Check").click()
    expect(feedback(page, TICKET)).to_contain_text("Right")
    # A choice that takes two lines stands beside its circle, not above it.
    for choice in card(page, TICKET).locator("label", has=page.get_by_role("radio")).all():
        circle, words = choice.get_by_role("radio").bounding_box(), choice.bounding_box()
        assert abs(circle["x"] - words["x"]) < 8
        assert circle["y"] - words["y"] < 12
