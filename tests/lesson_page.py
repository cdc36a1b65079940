"""What a person does on a lesson's page."""

from playwright.sync_api import Locator, Page

SHOWN = ".jp-NotebookPanel:not(.lm-mod-hidden)"
# Between two cells the kernel is idle for a moment, too.
_RESTING = """indicator => {
    const idle = document.querySelector(indicator)?.dataset.status === "idle";
    window.restingSince = idle ? window.restingSince ?? performance.now() : null;
    return idle && performance.now() - window.restingSince > 400;
}"""


def press_run(page: Page) -> None:
    """Press the lesson's own button, and wait for the kernel to come to rest."""
    page.locator(SHOWN).locator("button[data-commandlinker-command='notebook:run-all-cells']").click()
    page.locator(f"{SHOWN} .jp-OutputArea-output").first.wait_for()
    page.wait_for_function(_RESTING, arg=f"{SHOWN} .jp-Notebook-ExecutionIndicator")


def run_all(page: Page) -> None:
    """Run the lesson as `press_run` does, and wait for its first panel as well."""
    press_run(page)
    panel_of(page)


def panel_of(page: Page) -> Locator:
    """Return the first panel: the output that holds a slider and a sentence that is read out."""
    outputs = page.locator(f"{SHOWN} .jp-OutputArea-output")
    panel = outputs.filter(has=page.get_by_role("status")).first
    panel.get_by_role("slider").first.wait_for()
    return panel


def picture(panel: Locator) -> str:
    """Return the address of the panel's picture, which changes with the picture."""
    return panel.locator("img").first.get_attribute("src")


def sentence(panel: Locator) -> str:
    """Return the sentence under the picture."""
    return panel.get_by_role("status").first.inner_text()


def panels(page: Page) -> Locator:
    """Return the lesson's panels that have a slider, in reading order."""
    outputs = page.locator(f"{SHOWN} .jp-OutputArea-output")
    return outputs.filter(has=page.get_by_role("slider"))


def press(page: Page, slider: Locator, key: str, times: int) -> None:
    """Move a slider from the keyboard."""
    slider.focus()
    for _ in range(times):
        page.keyboard.press(key)
