"""Lesson 01 as a newcomer meets it: the hard job turns on its block, and two sliders cure it."""

import os
from pathlib import Path

import pytest
from browser_fixtures import Watched
from lesson_page import panels, press, run_all
from playwright.sync_api import expect
from served import opened

# Where to put the picture for the README, when it is to be taken anew.
PICTURE = "LABLIB_PANEL_PICTURE"


@pytest.mark.usefixtures("folder", "no_way_out")
def test_start_here_the_hard_job_is_cured_with_two_sliders(watched: Watched, pictures: Path) -> None:
    with opened("01_start_here", "--no-browser") as workbook, watched.at(workbook.url) as page:
        run_all(page)
        expect(panels(page)).to_have_count(3)
        cure = panels(page).nth(1)
        said = cure.get_by_role("status").first
        expect(said).to_contain_text("turns on its block, margin 0.81")
        blank, crib = cure.get_by_role("slider").all()
        press(page, blank, "ArrowLeft", 72 - 58)
        expect(said).to_contain_text("margin 1.45")
        press(page, crib, "Home", 1)
        expect(said).to_contain_text(
            "cribbing here holds, margin 1.24; then the right lens holds, margin 2.40"
        )
        expect(page.locator("[data-mime-type='application/vnd.jupyter.stderr']")).to_have_count(0)
        cure.screenshot(path=pictures / "cured.png")
        if wanted := os.environ.get(PICTURE):
            # Tall enough for the whole panel to stand clear of the page's own bars.
            page.set_viewport_size({"width": 1280, "height": 1400})
            page.wait_for_timeout(1_000)
            panels(page).nth(2).screenshot(path=wanted)
