"""A lens on the stop of a focimeter: turn drum and target until one set of lines is sharp, then the other."""

from collections.abc import Sequence

from lablib.optics.focimeter import view
from lablib.optics.prescription import Prescription
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Slider
from lablib.pictures.focimeter import DRUM_D, FocimeterPicture, Seen, drum_words

_LENS, _TURNED = {"group": "Lens on the stop"}, {"group": "Focimeter"}


class FocimeterPanel(Panel):
    """A lens, and the two things that are turned to read it."""

    draws = FocimeterPicture
    note = (
        "At the bench the eyepiece is set to your own eye first, then the zero of the drum is checked; both "
        "are right here. The optical centre lies on the stop."
    )
    controls = (
        Slider(name="sphere_d", label="Sphere", unit="D", low=-8.0, high=8.0, step=0.25, value=2.0, **_LENS),
        Slider(
            name="cylinder_d", label="Cylinder", unit="D", low=-4.0, high=4.0, step=0.25, value=-1.5, **_LENS
        ),
        Slider(name="axis_deg", label="Axis", unit="degrees", low=1, high=180, step=1, value=20, **_LENS),
        Slider(
            name="drum_d", label="Drum", unit="D", low=-DRUM_D, high=DRUM_D, step=0.125, value=0, **_TURNED
        ),
        Slider(
            name="target_deg",
            label="Target",
            unit="degrees",
            low=1,
            high=180,
            step=1,
            value=180,
            **_TURNED,
        ),
    )

    def compute(self, values: Values) -> Seen:
        """Return what is seen.

        values: by the control's name.
        """
        rx = Prescription(
            sphere_d=values["sphere_d"], cylinder_d=values["cylinder_d"], axis_deg=values["axis_deg"]
        )
        drum = values["drum_d"]
        return Seen(view=view(rx, drum_d=drum, target_deg=values["target_deg"]), drum_d=drum)

    def numbers(self, data: Seen) -> Sequence[tuple[str, str, str]]:
        """Return the drum and what is sharp; the lens is for the reader to find.

        data: from `compute`.
        """
        (three, single), (first, second) = data.view.is_sharp, data.view.line_deg
        return [
            ("Drum", drum_words(data.drum_d), "D"),
            ("Three lines", "sharp" if three else "smeared", f"along {first:g}"),
            ("Single line", "sharp" if single else "smeared", f"along {second:g}"),
            ("Both", "unbroken" if data.view.is_unbroken.all() else "broken", ""),
        ]

    def sentence(self, data: Seen) -> str:
        """Return what is sharp, smeared or broken.

        data: from `compute`.
        """
        (three, single), (first, second) = data.view.is_sharp, data.view.line_deg
        lines = (
            f"the three lines along {first:g} are {'sharp' if three else 'smeared'}, the single line along "
            f"{second:g} is {'sharp' if single else 'smeared'}"
        )
        unbroken = data.view.is_unbroken.all()
        end = "no stroke leans, nothing is broken" if unbroken else "strokes lean: broken, off the axis"
        return f"Drum at {drum_words(data.drum_d)} D: {lines}; {end}."
