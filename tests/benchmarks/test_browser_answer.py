"""From Enter to the feedback in the browser, on a question with a picture that is drawn again.

Run by `pytest tests/benchmarks --benchmark-only`; the figures are printed.
"""

from statistics import median, quantiles

import pytest
from browser_fixtures import Watched
from lesson_page import press_run
from playwright.sync_api import Page
from self_check_page import card, line, number_of
from served import opened

ROUNDS = 40
WARM_UP = 5
SETTLE_MS = 150

# Time from the Enter key to the frame that shows another feedback [ms].
WATCH = """
card => {
    let pressed;
    const noted = event => {
        if (event.key !== "Enter") return;
        pressed = performance.now();
        removeEventListener("keydown", noted, true);
    };
    addEventListener("keydown", noted, true);
    const said = () => card.querySelector("[role=status]")?.textContent ?? "";
    const before = said();
    window.untilFeedback = new Promise(done => {
        const seen = new MutationObserver(() => {
            if (pressed === undefined || said() === before) return;
            seen.disconnect();
            requestAnimationFrame(() => done(performance.now() - pressed));
        });
        seen.observe(card, {subtree: true, childList: true, characterData: true});
    });
}
"""


class Answered:
    """One question that is answered wrongly again and again; `times_ms` holds what each answer took."""

    def __init__(self, page: Page, number: int) -> None:
        self.page, self.number = page, number
        self.times_ms: list[float] = []

    def settle(self) -> None:
        """Write another wrong answer and wait until all is quiet."""
        line(self.page, self.number).fill(f"{900 + len(self.times_ms)}")
        self.page.wait_for_timeout(SETTLE_MS)
        line(self.page, self.number).focus()
        card(self.page, self.number).evaluate(WATCH)

    def enter(self) -> None:
        self.page.keyboard.press("Enter")
        self.times_ms.append(self.page.evaluate("window.untilFeedback"))


@pytest.mark.usefixtures("folder")
def test_answer_to_feedback(benchmark, watched: Watched, capsys: pytest.CaptureFixture) -> None:
    with (
        opened("07_lens_form_and_thickness", "--no-browser") as workbook,
        watched.at(workbook.url) as page,
    ):
        press_run(page)
        answered = Answered(page, number_of("07", "temporal-edge"))
        benchmark.pedantic(answered.enter, setup=answered.settle, rounds=ROUNDS, warmup_rounds=WARM_UP)
    counted = answered.times_ms[WARM_UP:]
    low, *_, high = quantiles(counted, n=10)
    with capsys.disabled():
        print(
            f"\nanswer to feedback: median {median(counted):.1f} ms, 10 to 90 %: {low:.1f} to {high:.1f} ms"
        )
    benchmark.extra_info.update(feedback_ms=median(counted))
