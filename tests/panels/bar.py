"""A panel small enough to test the frame with: two lengths, one colour, one bar."""

import tomllib

from lablib.errors import LabError
from lablib.panels.specs import Choice, Slider
from lablib.panels.ticket_panel import TicketPanel
from lablib.pictures.kept import KeptPicture


class Bar(KeptPicture):
    """A bar from nought to a length."""

    width_px, height_px = 300, 200

    def build(self):
        axes = self.figure.add_axes([0.1, 0.1, 0.8, 0.8])
        axes.set_xlim(0, 20)
        self.bar = self.moving(axes.plot([], [], linewidth=5)[0])

    def update(self, data):
        self.bar.set_data([0, data["length_mm"]], [0.5, 0.5])
        self.bar.set_color(data["colour"])


class BarPanel(TicketPanel):
    """A bar whose parts may not be longer than 15 mm together."""

    draws = Bar
    ticket_name = "my-bar"
    controls = (
        Slider(name="first_mm", label="First", unit="mm", low=0, high=10, step=0.5, value=4),
        Slider(name="second_mm", label="Second", unit="mm", low=0, high=10, step=0.5, value=6),
        Choice(name="colour", label="Colour", options=("black", "blue"), value="black"),
    )
    computed = 0

    def compute(self, values):
        self.computed += 1
        length_mm = values["first_mm"] + values["second_mm"]
        if length_mm > 15:
            raise LabError(f"length {length_mm:g} mm is <more> than 15: shorten a part")
        return {"length_mm": length_mm, "colour": values["colour"]}

    def numbers(self, data):
        return [("Length <both>", f"{data['length_mm']:.1f}", "mm"), ("Colour", data["colour"], "")]

    def sentence(self, data):
        return f"The <bar> is {data['length_mm']:.1f} mm long."

    def to_ticket(self, values):
        return "".join(f"{name} = {value!r}\n" for name, value in values.items())

    def from_ticket(self, path):
        try:
            return tomllib.loads(path.read_text()), "Read whole."
        except tomllib.TOMLDecodeError as error:
            raise LabError(f"{path.name} is not TOML ({error}): mend it") from error


def state(panel):
    """Everything that a person sees and a screen reader says."""
    boxes = [handle.box.value for handle in panel.handles.values()]
    shown = (panel._image.layout.display, panel._words.layout.display)
    return (panel.values, boxes, panel.shown_png, panel._table.value, panel._sentence.value, shown)
