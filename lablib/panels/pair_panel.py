"""The panel of a pair: two lenses slid apart before two eyes, and what the wearer gets."""

import math
from collections.abc import Sequence

from lablib.optics.eye import Eye
from lablib.optics.near_imbalance import slab_off
from lablib.optics.prescription import Prescription
from lablib.optics.prism import in_words
from lablib.optics.prism_pair import inwards_of_centre_mm, pair_at
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Slider
from lablib.pictures.pair import (
    PairPicture,
    level_words,
    sideways_words,
    turning_words,
    upright_words,
)
from lablib.pictures.pair_data import PairSeen

_LENSES, _WEARER = {"group": "Lenses"}, {"group": "Wearer"}
_MOST_APART_MM, _MOST_DROP_MM = 6.0, 12.0


def _d(name: str, label: str) -> Slider:
    ends = {"low": -8.0, "high": 8.0, "step": 0.25, "value": -3.0}
    return Slider(name=name, label=label, unit="D", **ends, **_LENSES)


def _pd(name: str, label: str) -> Slider:
    ends = {"low": 26.0, "high": 38.0, "step": 0.5, "value": 31.0}
    return Slider(name=name, label=label, unit="mm", **ends, **_WEARER)


class PairPanel(Panel):
    """Two spherical lenses before two eyes."""

    draws = PairPicture
    note = (
        "Prism and slab-off are the prescriber's to order. The bench asks, records the answer, and never "
        "shifts a centre to suit a blank."
    )
    controls = (
        _d("right_sphere_d", "Right sphere"),
        _d("left_sphere_d", "Left sphere"),
        Slider(
            name="wider_mm",
            label="Each centre wider",
            unit="mm",
            low=-_MOST_APART_MM,
            high=_MOST_APART_MM,
            step=0.2,
            value=0.0,
            **_LENSES,
        ),
        _pd("right_pd_mm", "Right pupil"),
        _pd("left_pd_mm", "Left pupil"),
        Slider(
            name="drop_mm",
            label="Eyes look below",
            unit="mm",
            low=0.0,
            high=_MOST_DROP_MM,
            step=0.5,
            value=0.0,
            **_WEARER,
        ),
    )

    def compute(self, values: Values) -> PairSeen:
        """Return what the eyes meet.

        values: by the control's name.
        """
        right, left = (Prescription(sphere_d=values[f"{eye}_sphere_d"]) for eye in Eye)
        pds = {eye: values[f"{eye}_pd_mm"] for eye in Eye}
        centres = {eye: pd + values["wider_mm"] for eye, pd in pds.items()}
        drop = values["drop_mm"]
        looks = {
            f"{eye}_mm": (inwards_of_centre_mm(centre_mm=centres[eye], pd_mm=pds[eye]), -drop) for eye in Eye
        }
        farthest = math.hypot(_MOST_APART_MM, _MOST_DROP_MM)
        strongest = Prescription(sphere_d=max(abs(right.sphere_d), abs(left.sphere_d)))
        reach = pair_at(strongest, strongest, right_mm=(0.0, -farthest), left_mm=(0.0, -farthest))
        return PairSeen(
            right_d=right.sphere_d,
            left_d=left.sphere_d,
            right_centre_mm=centres[Eye.RIGHT],
            left_centre_mm=centres[Eye.LEFT],
            right_pd_mm=pds[Eye.RIGHT],
            left_pd_mm=pds[Eye.LEFT],
            drop_mm=drop,
            pair=pair_at(right, left, **looks),
            slab=slab_off(right, left, drop_mm=drop),
            reach_prism_d=reach.right_up_prism_d,
        )

    def numbers(self, data: PairSeen) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: what is shown.
        """
        sideways, upright = data.pair.between
        slab = data.slab
        return [
            ("Centres apart", f"{data.right_centre_mm + data.left_centre_mm:.1f}", "mm"),
            ("Pupils apart", f"{data.right_pd_mm + data.left_pd_mm:.1f}", "mm"),
            ("Right, in or out", *_part(data.pair.right_in_prism_d, "in", "out")),
            ("Left, in or out", *_part(data.pair.left_in_prism_d, "in", "out")),
            ("Both, in or out", *_part(sideways, "in", "out")),
            ("Right, up or down", *_part(data.pair.right_up_prism_d, "up", "down")),
            ("Left, up or down", *_part(data.pair.left_up_prism_d, "up", "down")),
            ("Between, up or down", f"{abs(upright):.2f}", "prism dioptres"),
            (
                "Slab-off, if ordered",
                f"{slab.amount_prism_d:.2f}" if slab.eye else "none",
                f"base up, {slab.eye} lens" if slab.eye else "",
            ),
        ]

    def sentence(self, data: PairSeen) -> str:
        """Return what each eye and both eyes get.

        data: what is shown.
        """
        sideways, upright = data.pair.between
        each = f"Right {in_words(*data.pair.right)}, left {in_words(*data.pair.left)}."
        across = f"Sideways {sideways_words(sideways)}: {turning_words(sideways)}."
        return f"{each} {across} Up and down {upright_words(upright)}: {level_words(upright)}."


def _part(part: float, plus: str, minus: str) -> tuple[str, str]:
    figure = f"{abs(part):.2f}"
    return figure, "" if figure == "0.00" else f"base {plus if part > 0.0 else minus}"
