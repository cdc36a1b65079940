"""The widgets that set a panel: a slider with a number box, or a list to pick from."""

from collections.abc import Callable

import ipywidgets as widgets

from lablib.errors import LabError
from lablib.panels.specs import Choice, Slider


class PairedControl:
    """A slider and a number box that always say the same, and speak up once for both.

    spec: what they set.
    on_change: called without arguments after each change a person makes.

    The box is a text box: one for numbers would move a value beyond the stops to the stop and drop what
    is no number, both without a word. What cannot be used stays in the box, with its words in `fault`, until
    the slider moves or the box holds a value that can; `value` is then still the last good one.
    """

    def __init__(self, spec: Slider, on_change: Callable[[], None]) -> None:
        self.spec = spec
        self.value = spec.check(spec.value)
        self.fault: LabError | None = None
        self._on_change = on_change
        self.box = widgets.Text(
            description=spec.title, value=spec.shown(spec.value), continuous_update=False, tooltip=spec.rule
        )
        self.slider = widgets.FloatSlider(
            min=spec.low, max=spec.high, step=spec.step, value=spec.value, readout=False
        )
        self.widget = widgets.HBox([self.box, self.slider])
        self.box.observe(self._typed, names="value")
        self.slider.observe(self._slid, names="value")

    def set(self, value: float) -> None:
        """Set slider and box to a value, and say nothing.

        value: in range and on the grid [unit].

        Raises LabError for any other.
        """
        self.value = self.spec.check(value)
        self.fault = None
        # Writing back a slider's own rounding error would pull the handle from under the hand that drags it.
        if self.spec.nearest(self.slider.value) != self.value:
            self.slider.value = self.value
        self.box.value = self.spec.shown(self.value)

    def _slid(self, change: dict) -> None:
        value = self.spec.nearest(change["new"])
        if value != self.value or self.fault:
            self.set(value)
            self._on_change()

    def _typed(self, change: dict) -> None:
        if change["new"] == self.spec.shown(self.value) and not self.fault:
            return
        try:
            self.set(self.spec.read(change["new"]))
        except LabError as fault:
            self.fault = fault
        self._on_change()


class ChoiceControl:
    """A list to pick from.

    spec: what it sets.
    on_change: called without arguments after each change a person makes.
    """

    fault = None

    def __init__(self, spec: Choice, on_change: Callable[[], None]) -> None:
        self.spec = spec
        self.value = spec.value
        self._on_change = on_change
        self.box = widgets.Dropdown(description=spec.label, options=spec.options, value=spec.value)
        self.widget = widgets.HBox([self.box])
        self.box.observe(self._picked, names="value")

    def set(self, value: str) -> None:
        """Set the list to an option, and say nothing.

        value: one of the options.

        Raises LabError for any other.
        """
        self.value = self.spec.check(value)
        self.box.value = self.value

    def _picked(self, change: dict) -> None:
        if change["new"] != self.value:
            self.value = change["new"]
            self._on_change()


def control_for(spec: Slider | Choice, on_change: Callable[[], None]) -> PairedControl | ChoiceControl:
    """Return the control that sets what a spec describes.

    spec: a number or a choice.
    on_change: called without arguments after each change a person makes.
    """
    kind = PairedControl if isinstance(spec, Slider) else ChoiceControl
    return kind(spec, on_change)
