"""The panel of one lens: prescription, lens, frame and wearer; what comes out is drawn to scale."""

from collections.abc import Sequence
from pathlib import Path

from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.job.figures import eye_dict
from lablib.job.report import where
from lablib.job.ticket import SUPPLIES, Ticket
from lablib.job.ticket_writing import ticket_text
from lablib.optics.eye import Eye
from lablib.optics.frame import outline_families
from lablib.optics.material import materials
from lablib.panels.lens_ticket import CENTRE, LEAST_EDGE, SUPERELLIPSE, ticket_for, values_of
from lablib.panels.panel import Values
from lablib.panels.specs import Choice, Slider
from lablib.panels.ticket_panel import TicketPanel
from lablib.pictures.lens import LensPicture

_RX, _LENS, _WORN = ({"group": words} for words in ("Prescription", "Lens", "Frame and wearer"))


def _mm(
    name: str, label: str, ends: tuple[float, float], value: float, *, step: float = 0.5, group: str
) -> Slider:
    low, high = ends
    return Slider(name=name, label=label, unit="mm", low=low, high=high, step=step, value=value, group=group)


def _d(name: str, label: str, ends: tuple[float, float], value: float, *, group: str) -> Slider:
    low, high = ends
    return Slider(name=name, label=label, unit="D", low=low, high=high, step=0.25, value=value, group=group)


class LensPanel(TicketPanel):
    """One lens with everything that shapes it."""

    draws = LensPicture
    ticket_name = "my-lens"
    controls = (
        Choice(name="eye", label="Eye", options=tuple(eye.value for eye in Eye), value="right", **_RX),
        _d("sphere_d", "Sphere", (-12.0, 8.0), -4.0, **_RX),
        _d("cylinder_d", "Cylinder", (-4.0, 4.0), 0.0, **_RX),
        Slider(name="axis_deg", label="Axis", unit="degrees", low=1, high=180, step=1, value=180, **_RX),
        Choice(
            name="material", label="Material", options=tuple(materials()), value="hard-resin-1.50", **_LENS
        ),
        _d("front_curve_d", "Front curve", (0.0, 10.0), 4.0, **_LENS),
        Choice(
            name="thickness_at",
            label="Thickness at",
            options=(CENTRE, LEAST_EDGE),
            value=CENTRE,
            **_LENS,
        ),
        _mm("thickness_mm", "Thickness", (0.8, 10.0), 2.0, step=0.1, **_LENS),
        Choice(name="supply", label="Supply", options=SUPPLIES, value="surfaced", **_LENS),
        _mm("blank_diameter_mm", "Blank diameter", (50.0, 85.0), 70.0, step=1.0, **_LENS),
        Choice(
            name="outline",
            label="Outline",
            options=(SUPERELLIPSE, *outline_families()),
            value=SUPERELLIPSE,
            **_WORN,
        ),
        _mm("a_mm", "Width A", (40.0, 62.0), 50.0, **_WORN),
        _mm("b_mm", "Height B", (24.0, 50.0), 36.0, **_WORN),
        _mm("dbl_mm", "Bridge DBL", (14.0, 24.0), 18.0, **_WORN),
        _mm("monocular_pd_mm", "Monocular distance", (26.0, 38.0), 32.0, **_WORN),
        _mm("height_mm", "Centre height", (6.0, 40.0), 18.0, step=0.25, **_WORN),
    )

    def compute(self, values: Values) -> EyeSheet:
        """Return the lens, worked.

        values: by the control's name.

        Raises LabError when no lens can be made so.
        """
        ticket = ticket_for(values)
        return work_eye(ticket, ticket.eyes[0])

    def numbers(self, data: EyeSheet) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: the lens, worked.
        """
        at = eye_dict(data)
        return [
            ("Centre thickness", f"{at['centre_thickness_mm']:.2f}", "mm"),
            *_edge_rows(data, at),
            ("Back curve, base", f"{at['back_curve_base_d']:.2f}", "D"),
            ("Back curve, cross", f"{at['back_curve_cross_d']:.2f}", "D"),
            ("Weight, edged", f"{at['weight_g']:.1f}", "g"),
            ("Decentration across", f"{abs(data.in_mm):.1f}", f"mm {'in' if data.in_mm >= 0 else 'out'}"),
            ("Decentration upright", f"{abs(data.up_mm):.1f}", f"mm {'up' if data.up_mm >= 0 else 'down'}"),
            ("Least blank, exact", f"{at['minimum_blank_mm']:.1f}", "mm"),
            ("Least blank, by rule", f"{at['minimum_blank_rule_mm']:.1f}", "mm"),
            ("Blank covers", "yes" if data.blank_covers else "no", ""),
        ]

    def sentence(self, data: EyeSheet) -> str:
        """Return where the lens is thick and thin, and whether the blank covers it.

        data: the lens, worked.
        """
        return f"The {data.eye} lens {_form(data, eye_dict(data))}; {_blank_words(data)}."

    def to_ticket(self, values: Values) -> str:
        """Return the text of a ticket for one eye.

        values: by the control's name.
        """
        return ticket_text(ticket_for(values))

    def from_ticket(self, path: Path) -> tuple[Values, str]:
        """Return the values of the right eye of a ticket, or of the left where it has no right one.

        path: the ticket file.

        Raises LabError when it cannot be read or its prescription is held.
        """
        return values_of(Ticket.read(path))


def _edge_rows(sheet: EyeSheet, at: dict) -> list[tuple[str, str, str]]:
    extremes = [
        (words, f"{at[f'edge_{name}_mm']:.2f}", f"mm, {where(at[f'edge_{name}_at_deg'], sheet.eye)}")
        for words, name in (("Thickest", "greatest"), ("Thinnest", "least"))
    ]
    sides = ("nasal", "temporal", "top", "bottom")
    return extremes + [(f"Edge, {side}", f"{at[f'edge_{side}_mm']:.2f}", "mm") for side in sides]


def _form(sheet: EyeSheet, at: dict) -> str:
    """Say what the lens is like, beginning where it is thickest."""
    centre, greatest, least = (
        f"{at[name]:.2f} mm" for name in ("centre_thickness_mm", "edge_greatest_mm", "edge_least_mm")
    )
    thick, thin = (where(at[f"edge_{name}_at_deg"], sheet.eye) for name in ("greatest", "least"))
    if greatest == least:
        return f"is {centre} thick at its optical centre and {least} all round its edge"
    if at["edge_greatest_mm"] > at["centre_thickness_mm"]:
        edges = f"is thickest at its {thick} edge, {greatest}, thinnest at its {thin} edge, {least}"
        return f"{edges}, and {centre} at its optical centre"
    return f"is {centre} thick at its optical centre and thins to {least} at its {thin} edge"


def _blank_words(sheet: EyeSheet) -> str:
    blank, needed = sheet.order.lens.blank_diameter_mm, f"{sheet.minimum_blank_mm:.1f} mm"
    if sheet.blank_covers:
        return f"the {blank:g} mm blank covers it, {needed} being needed"
    return f"the {blank:g} mm blank is too small, {needed} being needed"
