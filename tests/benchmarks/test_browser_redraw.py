"""From a key press to the new picture in the browser: the kept picture beside a new figure for each move.

Run by `pytest tests/benchmarks --benchmark-only`; the figures are printed.
"""

from pathlib import Path
from statistics import median, quantiles

import pytest
from browser_fixtures import Watched
from lesson_page import run_all
from playwright.sync_api import Locator, Page
from served import opened
from stand_ins import folded, lesson, save

ROUNDS = 40
WARM_UP = 5
SETTLE_MS = 120

KEPT = """
# The panel as it is.
from lablib.panels.lens_panel import LensPanel
LensPanel()
"""

# The same computation, drawing, table and sentence; only the figure is a new one of pyplot's for each move,
# shown by the inline backend in an Output widget.
NEW_FIGURE = """
# The lens with a new figure for each move.
import ipywidgets as widgets
import matplotlib.pyplot as plt
from IPython.display import clear_output
from lablib.panels import markup
from lablib.pictures import kept

lens, output, said = LensPanel(), widgets.Output(), widgets.HTML()
slider = widgets.FloatSlider(min=-12, max=8, step=0.25, value=-4, description="Sphere [D]")

def draw(_=None):
    data = lens.at(sphere_d=slider.value)
    with output:
        clear_output(wait=True)
        lens.draws().update(data)
        plt.show()
    said.value = markup.table(lens.numbers(data)) + markup.sentence(lens.sentence(data))

kept.Figure = plt.figure
slider.observe(draw, "value")
draw()
widgets.VBox([slider, output, said])
"""

# Time from the key press to the frame that shows the new picture [ms].
WATCH = """
panel => {
    let pressed;
    addEventListener("keydown", () => { pressed = performance.now(); }, {capture: true, once: true});
    window.untilPicture = new Promise(done => {
        const seen = new MutationObserver(async changes => {
            for (const {type, target, addedNodes} of changes) {
                const images = type === "attributes" ? [target]
                    : [...addedNodes].flatMap(node => node.querySelectorAll
                        ? [...node.querySelectorAll("img"), ...(node.matches("img") ? [node] : [])] : []);
                for (const image of images.filter(image => image.src)) {
                    seen.disconnect();
                    if (type === "attributes" || !image.complete)
                        await new Promise(loaded => image.addEventListener("load", loaded, {once: true}));
                    requestAnimationFrame(() => done(performance.now() - pressed));
                    return;
                }
            }
        });
        seen.observe(panel, {subtree: true, childList: true, attributes: true, attributeFilter: ["src"]});
    });
}
"""


class Pressed:
    """One panel whose sphere is moved to and fro by the arrow keys; `times_ms` holds what each press took."""

    def __init__(self, page: Page, output: Locator) -> None:
        self.page, self.output = page, output
        self.handle = output.get_by_role("slider").first
        self.times_ms: list[float] = []

    def press(self) -> None:
        self.handle.focus()
        self.output.evaluate(WATCH)
        self.page.keyboard.press("ArrowLeft" if len(self.times_ms) % 2 else "ArrowRight")
        self.times_ms.append(self.page.evaluate("window.untilPicture"))

    def settle(self) -> None:
        self.page.wait_for_timeout(SETTLE_MS)

    def told(self, name: str) -> str:
        counted = self.times_ms[WARM_UP:]
        low, *_, high = quantiles(counted, n=10)
        return f"{name:<12} median {median(counted):6.1f} ms, 10 to 90 %: {low:.1f} to {high:.1f} ms"


@pytest.mark.usefixtures("folder")
def test_key_press_to_new_picture(
    benchmark, watched: Watched, tmp_path: Path, capsys: pytest.CaptureFixture
) -> None:
    cells = [folded(source.strip()) for source in (KEPT, NEW_FIGURE)]
    save(lesson("Speed", *cells), tmp_path / "lessons" / "00_speed.ipynb")
    with (
        opened("0", "--no-browser", lessons=tmp_path / "lessons") as workbook,
        watched.at(workbook.url) as page,
    ):
        run_all(page)
        outputs = page.locator(".jp-Cell-outputArea > .jp-OutputArea-child").filter(
            has=page.get_by_role("slider")
        )
        kept, new = (Pressed(page, outputs.nth(place)) for place in (0, 1))

        # One after the other: the figures that the second throws away would slow the first.
        benchmark.pedantic(kept.press, setup=kept.settle, rounds=ROUNDS, warmup_rounds=WARM_UP)
        for _ in range(WARM_UP + ROUNDS):
            new.settle()
            new.press()
    with capsys.disabled():
        print(f"\n{kept.told('kept picture')}\n{new.told('new figure')}")
    benchmark.extra_info.update(kept_ms=median(kept.times_ms), new_figure_ms=median(new.times_ms))
    assert median(kept.times_ms[WARM_UP:]) < median(new.times_ms[WARM_UP:])
