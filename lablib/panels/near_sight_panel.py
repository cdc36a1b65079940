"""The panel of near distances: two eyes that turn in to read, and where they look through their lenses."""

from collections.abc import Sequence

from lablib.optics.eye import Eye
from lablib.optics.wearer_distances import near_pd_mm
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Slider
from lablib.pictures.near_sight import NearSightPicture
from lablib.pictures.near_sight_data import NearSight

_WEARER = {"group": "Wearer"}


def _pd(name: str, label: str) -> Slider:
    return Slider(name=name, label=label, unit="mm", low=26.0, high=38.0, step=0.5, value=32.0, **_WEARER)


class NearSightPanel(Panel):
    """Two eyes, a page, and a lens of one power before both."""

    draws = NearSightPicture
    note = (
        "The inset is worked by rule, with the eyes taken to turn about one point each. It does not replace "
        "the measured near distance."
    )
    controls = (
        _pd("right_pd_mm", "Right pupil"),
        _pd("left_pd_mm", "Left pupil"),
        Slider(
            name="working_distance_mm",
            label="Working distance",
            unit="mm",
            low=250.0,
            high=700.0,
            step=10.0,
            value=400.0,
            **_WEARER,
        ),
        Slider(
            name="centre_of_rotation_mm",
            label="Centre of rotation",
            unit="mm",
            low=22.0,
            high=34.0,
            step=1.0,
            value=27.0,
            **_WEARER,
        ),
        Slider(
            name="power_d",
            label="Power along 180",
            unit="D",
            low=-10.0,
            high=10.0,
            step=0.25,
            value=0.0,
            group="Lenses",
        ),
    )

    def compute(self, values: Values) -> NearSight:
        """Return where both eyes look through, far and near.

        values: by the control's name.
        """
        how = {name: values[name] for name in ("working_distance_mm", "centre_of_rotation_mm")}
        far = {eye: values[f"{eye}_pd_mm"] for eye in Eye}
        near = {eye: near_pd_mm(far[eye], power_d=values["power_d"], **how) for eye in Eye}
        return NearSight(
            right_pd_mm=far[Eye.RIGHT],
            left_pd_mm=far[Eye.LEFT],
            right_near_mm=near[Eye.RIGHT],
            left_near_mm=near[Eye.LEFT],
            **how,
        )

    def numbers(self, data: NearSight) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: what is shown.
        """
        rows = [
            row
            for eye in Eye
            for row in (
                (f"{eye.value.capitalize()}, far distance", f"{data.far_mm(eye):.1f}", "mm"),
                (f"{eye.value.capitalize()}, near inset", f"{data.inset_mm(eye):.2f}", "mm"),
                (f"{eye.value.capitalize()}, near distance", f"{data.near_mm(eye):.1f}", "mm"),
            )
        ]
        return [
            *rows,
            ("Both, far distance", f"{data.right_pd_mm + data.left_pd_mm:.1f}", "mm"),
            ("Both, near distance", f"{data.right_near_mm + data.left_near_mm:.1f}", "mm"),
        ]

    def sentence(self, data: NearSight) -> str:
        """Return where both eyes look through when they read.

        data: what is shown.
        """
        each = " and ".join(f"the {eye} {data.near_mm(eye):.1f} mm" for eye in Eye)
        both = f"{data.right_near_mm + data.left_near_mm:.1f} mm near for"
        far = f"{data.right_pd_mm + data.left_pd_mm:.1f} mm far"
        return (
            f"Reading at {data.working_distance_mm:g} mm, the eyes look through nearer the nose: "
            f"{each} from the middle of the bridge, {both} {far}."
        )
