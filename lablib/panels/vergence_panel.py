"""A lens and its focus, and what becomes of its power where it is worn at another distance than tested."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.ray_bundle import ray_bundle
from lablib.optics.vergence import image_vergence_d
from lablib.optics.vertex_rule import at_vertex_distance_by_rule, rule_less_exact_d
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Slider
from lablib.pictures.vergence import HALF_WIDTH_MM, LensAway, VergencePicture, VertexMove

# Farther than the widest picture reaches.
_REACH_MM = 1200.0


@dataclass(frozen=True, slots=True, kw_only=True)
class VertexSheet(VertexMove):
    """A lens as tested and as worn, with what the rule of thumb makes of it.

    by_rule_d: power as worn by the rule [D].
    apart_d: how far the rule lies above the exact power [D].
    """

    by_rule_d: float
    apart_d: float


class VergencePanel(Panel):
    """One power, where it was tested and where it is worn."""

    draws = VergencePicture
    note = (
        "One meridian at a time; heights in the picture are not to scale. A power is changed only after the "
        "prescriber has been asked."
    )
    controls = (
        Slider(name="power_d", label="Power", unit="D", low=-20.0, high=20.0, step=0.25, value=-10.0),
        Slider(name="tested_mm", label="Tested at", unit="mm", low=8.0, high=20.0, step=0.5, value=12.0),
        Slider(name="worn_mm", label="Worn at", unit="mm", low=0.0, high=20.0, step=0.5, value=12.0),
    )

    def compute(self, values: Values) -> VertexSheet:
        """Return the lens as tested and as worn.

        values: by the control's name.
        """
        lens, ends = Prescription(sphere_d=values["power_d"]), (values["tested_mm"], values["worn_mm"])
        away = {"from_mm": ends[0], "to_mm": ends[1]}
        worn = at_vertex_distance(lens, **away)
        return VertexSheet(
            tested=_lens(lens.sphere_d, ends[0]),
            worn=_lens(worn.sphere_d, ends[1]),
            by_rule_d=at_vertex_distance_by_rule(lens, **away).sphere_d,
            apart_d=rule_less_exact_d(lens.sphere_d, **away),
        )

    def numbers(self, data: VertexSheet) -> Sequence[tuple[str, str, str]]:
        """Return powers and focal lengths.

        data: from `compute`.
        """
        tested, worn = data.tested, data.worn
        if self._stays(data):
            vergence = written_power(image_vergence_d(tested.power_d))
            return [("Focal length", *_focal(tested)), ("Vergence behind the lens", vergence, "D")]
        return [
            ("Focal length, tested", *_focal(tested)),
            ("Power worn, exact", written_power(worn.power_d), "D"),
            ("Focal length, worn", *_focal(worn)),
            ("Change", written_power(worn.power_d - tested.power_d), "D"),
            ("Power worn, by rule", written_power(data.by_rule_d), "D"),
            ("Rule less exact", written_power(data.apart_d), "D"),
        ]

    def sentence(self, data: VertexSheet) -> str:
        """Return where the focus lies and what keeps it there.

        data: from `compute`.
        """
        tested, worn = data.tested, data.worn
        if math.isinf(tested.focus_mm):
            return "A lens of 0.00 D leaves the light parallel, wherever it is worn."
        side = "behind" if tested.focus_mm > -tested.away_mm else "in front of"
        has = (
            f"{written_power(tested.power_d)} D has its focus {abs(tested.rays.focus_z_mm) / 10.0:.1f} cm "
            f"{side} the lens"
        )
        if self._stays(data):
            return f"{has}."
        start = f"At {tested.away_mm:g} mm, {has}"
        if tested.away_mm == worn.away_mm:
            return f"{start}; worn where it was tested, it stays as it is."
        place = f"at {worn.away_mm:g} mm" if worn.away_mm else "on the cornea"
        return (
            f"{start}; {place} it takes {written_power(worn.power_d)} D to keep the focus there, by the rule "
            f"of thumb {written_power(data.by_rule_d)} D."
        )

    def _stays(self, data: VertexSheet) -> bool:
        """Whether the lens is worn where it was tested and no control can move it: then the focus is all."""
        fixed = not {"tested_mm", "worn_mm"} & set(self.shown)
        return fixed and data.tested.away_mm == data.worn.away_mm


def _lens(power_d: float, away_mm: float) -> LensAway:
    rays = ray_bundle(power_d, half_width_mm=HALF_WIDTH_MM, before_mm=_REACH_MM, behind_mm=_REACH_MM)
    return LensAway(power_d=power_d, away_mm=away_mm, rays=rays)


def _focal(one: LensAway) -> tuple[str, str]:
    if math.isinf(one.focus_mm):
        return NOT_KNOWN, ""
    return f"{one.rays.focus_z_mm / 10.0:+.1f}", "cm"
