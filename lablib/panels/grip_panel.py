"""The panel of the grip: every interface between block and back tip with its condition."""

from collections.abc import Sequence

from lablib.bench.cautions import pad_cautions
from lablib.bench.contact import block_words
from lablib.bench.holding import holding
from lablib.bench.key_play import play_deg
from lablib.bench.machine import Bench, coat_names, skin_names
from lablib.bench.parameter import parameters
from lablib.bench.setup import Setup, block_faces, grip_layers, tip_fits
from lablib.bench.tip_fit import STIFFNESSES
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.grip import GripPicture, nm
from lablib.pictures.grip_data import Grip, grip_of

NO, YES = "no", "yes"
_BLOCK, _PAD, _FRONT, _BACK = ({"group": words} for words in ("Block", "Pad", "Lens front", "Lens back"))
_PERCENT = 100.0


def _slider(name: str, label: str, unit: str, step: float, group: dict[str, str]) -> Slider:
    """A slider over the range of a parameter of the grip, starting at its default."""
    row = parameters()[name]
    ends = {"low": row.low, "high": row.high, "value": row.default}
    return Slider(name=name, label=label, unit=unit, step=step, **ends, **group)


class GripPanel(Panel):
    """One lens gripped; it starts with a slick coat, which needs more than the pad gives."""

    draws = GripPicture
    note = (
        "Teaching estimate: which joint is the weakest, and the ratios, are teachable; the torques are "
        "uncertain about threefold until this bench is calibrated. The clamp force is what the lens bears: "
        "it is no remedy."
    )
    controls = (
        Choice(name="block", label="Block", options=tuple(block_words()), value="round", **_BLOCK),
        Choice(name="block_face", label="Block face", options=tuple(block_faces()), value="clean", **_BLOCK),
        _slider("key_play_mm", "Key play", "mm", 0.05, _BLOCK),
        _slider("pad_age_months", "Pad age", "months", 1.0, _PAD),
        _slider("temperature_c", "Temperature", "degrees C", 1.0, _PAD),
        Choice(name="film", label="Film", options=(NO, YES), value=NO, **_PAD),
        Slider(
            name="crease_percent",
            label="Air under crease",
            unit="%",
            low=0.0,
            high=_PERCENT * parameters()["film_wrinkle"].high,
            step=5.0,
            value=0.0,
            **_PAD,
        ),
        Choice(name="coat", label="Coat", options=coat_names(), value="slick", **_FRONT),
        Choice(name="grip_layer", label="Grip layer", options=tuple(grip_layers()), value="none", **_FRONT),
        Choice(name="skin", label="Lens surface", options=skin_names(), value="clean", **_FRONT),
        Slider(
            name="thickness_mm",
            label="Centre thickness",
            unit="mm",
            low=0.8,
            high=3.0,
            step=0.1,
            value=1.2,
            **_BACK,
        ),
        Choice(name="back_tape", label="Back tape", options=(NO, YES), value=NO, **_BACK),
        Choice(name="tip_fit", label="Back tip fits", options=tuple(tip_fits()), value="usual", **_BACK),
        Choice(name="tip_stiffness", label="Tip rubber", options=STIFFNESSES, value="soft", **_BACK),
    )

    def compute(self, values: Values) -> Grip:
        """Return the grip, worked.

        values: by the control's name.
        """
        names = (
            "block",
            "block_face",
            "key_play_mm",
            "pad_age_months",
            "temperature_c",
            "coat",
            "grip_layer",
        )
        setup = Setup(
            film=values["film"] == YES,
            film_wrinkle=values["crease_percent"] / _PERCENT,
            back_tape=values["back_tape"] == YES,
            **{name: values[name] for name in (*names, "skin", "tip_fit", "tip_stiffness")},
        )
        held = holding(setup, centre_thickness_mm=values["thickness_mm"], bench=Bench())
        return grip_of(setup, held, play_deg=play_deg(setup.key_play_mm))

    def numbers(self, data: Grip) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: what is shown.
        """
        held = data.held
        return [
            ("Weakest joint", data.weakest.name, ""),
            ("Front holds", nm(held.front_nmm), "N m"),
            ("Next weakest", data.second.name, f"{nm(data.second.torque_nmm)} N m"),
            ("Back tip adds", nm(held.back_nmm), "N m"),
            ("Holds together", nm(held.torque_nmm), "N m"),
            ("Holds sideways", f"{held.force_n:.0f}", "N"),
            ("Clamp force", f"{held.clamp_force_n:.0f}", "N"),
            ("Lens bears", f"{held.clamp_cap_n:.0f}", "N"),
            ("Axis off by key", f"{data.play_deg:.1f}", "degrees"),
        ]

    def sentence(self, data: Grip) -> str:
        """Return which joint governs, what block and tip hold together, and what would come next.

        data: what is shown.

        Of a pad that is cold or old the last is what to mind: cold, it looks stronger than it will be.
        """
        held = data.held
        return (
            f"The weakest joint of the front stack is {data.weakest.name}, with {nm(held.front_nmm)} N m; "
            f"the back tip adds {nm(held.back_nmm)}, together {nm(held.torque_nmm)} N m. {_then(data)}."
        )


def _then(data: Grip) -> str:
    for caution in pad_cautions(data.setup):
        return f"But {caution.text}"
    return f"With that joint mended, {data.second.name} would be the weakest, at {nm(data.second.torque_nmm)}"
