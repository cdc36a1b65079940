"""The job sheet as text for people and as plain values for programs."""

import math
import textwrap

from lablib.job.eye_sheet import EyeSheet
from lablib.job.sheet import JobSheet
from lablib.optics.eye import Eye
from lablib.optics.prism import in_words
from lablib.working import plain

_LABEL, _COLUMN, _WIDTH = 34, 22, 96


def as_dict(sheet: JobSheet) -> dict:
    """Return the sheet as plain values: "number", "right", "left" (None for no lens), "holds", "findings".

    sheet: a worked ticket.
    """
    return {
        "number": sheet.ticket.number,
        "right": eye_dict(sheet.right),
        "left": eye_dict(sheet.left),
        "holds": [
            {"name": hold.name, "eye": hold.eye and hold.eye.value, "question": hold.question}
            for hold in sheet.holds
        ],
        "findings": [
            {"name": found.name, "eye": found.eye and found.eye.value, "text": found.text}
            for found in sheet.findings
        ],
    }


def eye_dict(sheet: EyeSheet | None) -> dict | None:
    """Return one lens as plain values, those of the lens itself None while it is held.

    sheet: the lens, worked; None for an eye that gets none, which returns None.
    """
    if sheet is None:
        return None
    rx = sheet.order.prescription
    layout = {
        "prescription": rx and str(rx),
        "decentration_in_mm": sheet.in_mm,
        "decentration_up_mm": sheet.up_mm,
        "prism_in_prism_d": sheet.order.prism_in_up[0],
        "prism_up_prism_d": sheet.order.prism_in_up[1],
        "effective_diameter_mm": sheet.outline.effective_diameter_mm,
        "minimum_blank_mm": sheet.minimum_blank_mm,
        "minimum_blank_rule_mm": sheet.minimum_blank_rule_mm,
        "blank_diameter_mm": sheet.order.lens.blank_diameter_mm,
        "blank_covers": sheet.blank_covers,
        "front_curve_d": sheet.order.lens.front_surface_d,
    }
    return layout | (dict.fromkeys(_LENS_FIGURES) if sheet.finished is None else _lens_dict(sheet))


_LENS_FIGURES = (
    "centre_thickness_mm",
    "edge_least_mm",
    "edge_least_at_deg",
    "edge_greatest_mm",
    "edge_greatest_at_deg",
    "edge_nasal_mm",
    "edge_temporal_mm",
    "edge_top_mm",
    "edge_bottom_mm",
    "back_curve_base_d",
    "back_curve_cross_d",
    "volume_mm3",
    "weight_g",
)


def _lens_dict(sheet: EyeSheet) -> dict:
    finished, angle = sheet.finished, sheet.outline.angle_deg
    base, cross = finished.lens.back_curves_d
    figures = (
        finished.lens.centre_thickness_mm,
        float(finished.edge_mm.min()),
        float(angle[sheet.least_at]),
        float(finished.edge_mm.max()),
        float(angle[sheet.greatest_at]),
        finished.edge_at_mm(sheet.nasal_deg),
        finished.edge_at_mm(sheet.nasal_deg + 180.0),
        finished.edge_at_mm(90.0),
        finished.edge_at_mm(270.0),
        base,
        cross,
        finished.volume_mm3,
        finished.weight_g(sheet.order.lens.material.density),
    )
    return dict(zip(_LENS_FIGURES, figures, strict=True))


def as_text(sheet: JobSheet) -> str:
    """Return the sheet as lines to read at the bench.

    sheet: a worked ticket.
    """
    return "\n".join([*_head(sheet), "", *_columns(sheet), *_questions(sheet), *_found(sheet)])


def _head(sheet: JobSheet) -> list[str]:
    frame, wearer = sheet.ticket.frame, sheet.ticket.wearer
    kind = f", {frame.kind}" if frame.kind else ""
    diameter = sheet.eyes[0].outline.effective_diameter_mm
    lines = [
        f"Job sheet {sheet.ticket.number}",
        f"Frame: A {frame.a_mm:g}, B {frame.b_mm:g}, DBL {frame.dbl_mm:g} mm, {frame.shape.words}{kind}; "
        f"effective diameter {diameter:.1f} mm",
    ]
    if wearer.vertex_distance_mm is not None:
        lines.append(f"Vertex distance as worn: {wearer.vertex_distance_mm:g} mm")
    if sheet.ticket.note:
        lines.append(f"Note: {sheet.ticket.note}")
    return lines


def _columns(sheet: JobSheet) -> list[str]:
    """One row a figure, one column a lens; in the order in which the bench needs them."""
    columns = [_column(eye) for eye in sheet.eyes]
    width = max(_COLUMN, *(len(text) + 2 for column in columns for text in column.values()))
    heads = "".join(f"{eye.eye.value:<{width}}" for eye in sheet.eyes)
    rows = [f"{'':{_LABEL}}{heads}".rstrip()]
    for label in columns[0]:
        cells = "".join(f"{column[label]:<{width}}" for column in columns)
        rows.append(f"{label:{_LABEL}}{cells}".rstrip())
    return rows


def _column(sheet: EyeSheet) -> dict[str, str]:
    order, lens = sheet.order, sheet.order.lens
    exact, by_rule = sheet.minimum_blank_mm, sheet.minimum_blank_rule_mm
    covers = "covers" if sheet.blank_covers else "does NOT cover"
    shown = {
        "Prescription": str(order.prescription) if order.prescription else "HELD",
        "Prism": in_words(*order.prism_in_up),
        "Lens": f"{lens.material.words}, {lens.coat}",
        "Supply": f"{lens.supply}, front curve {lens.front_surface_d:.2f} D",
        "Optical centre from boxed centre": decentration_words(sheet),
        "Least blank, exact / by rule": f"{exact:.1f} / {by_rule:.1f} mm",
        "Blank": f"{lens.blank_diameter_mm:g} mm, {covers}",
    }
    return shown | _lens_rows(sheet)


def _lens_rows(sheet: EyeSheet) -> dict[str, str]:
    if sheet.finished is None:
        return dict.fromkeys(_LENS_ROWS, "held")
    at = _lens_dict(sheet)
    values = (
        f"{at['back_curve_base_d']:.2f} / {at['back_curve_cross_d']:.2f} D",
        f"{at['centre_thickness_mm']:.2f} mm",
        _edge(at["edge_greatest_mm"], at["edge_greatest_at_deg"], sheet.eye),
        _edge(at["edge_least_mm"], at["edge_least_at_deg"], sheet.eye),
        f"{at['edge_nasal_mm']:.2f} / {at['edge_temporal_mm']:.2f} mm",
        f"{at['edge_top_mm']:.2f} / {at['edge_bottom_mm']:.2f} mm",
        f"{at['weight_g']:.1f} g",
    )
    return dict(zip(_LENS_ROWS, values, strict=True))


_LENS_ROWS = (
    "Back curves, base / cross",
    "Centre thickness",
    "Thickest edge",
    "Thinnest edge",
    "Edge, nasal / temporal",
    "Edge, top / bottom",
    "Weight, edged",
)


def _edge(edge_mm: float, angle_deg: float, eye: Eye) -> str:
    return f"{edge_mm:.2f} mm, {where(angle_deg, eye)} ({angle_deg:.0f})"


def decentration_words(sheet: EyeSheet) -> str:
    """Return where the optical centre lies from the boxed centre, such as "3.0 mm in, 1.5 mm up".

    sheet: the lens, worked.
    """
    across = _direction(sheet.in_mm, "in", "out")
    upright = _direction(sheet.up_mm, "up", "down")
    return ", ".join(part for part in (across, upright) if part) or "none"


def _direction(value: float, positive: str, negative: str) -> str:
    text = plain(abs(value), 1)
    return "" if text == "0.0" else f"{text} mm {positive if value > 0 else negative}"


def where(angle_deg: float, eye: Eye) -> str:
    """Return a direction on the lens in words, such as "temporal" or "upper nasal".

    angle_deg: from the boxed centre, anticlockwise from +x [degrees]; eye: which lens.
    """
    across = math.cos(math.radians(angle_deg)) * eye.nasal_sign
    upright = math.sin(math.radians(angle_deg))
    # A direction within 22.5 degrees of an axis is called by that axis alone.
    limit = math.sin(math.radians(22.5))
    side = ("nasal" if across > 0 else "temporal") if abs(across) > limit else ""
    level = ("upper" if upright > 0 else "lower") if abs(upright) > limit else ""
    return f"{level} {side}".strip() if side else ("top" if upright > 0 else "bottom")


def _questions(sheet: JobSheet) -> list[str]:
    if not sheet.holds:
        return []
    lines = [_item(hold.eye, hold.question, hold.name) for hold in sheet.holds]
    return ["", "HOLD. Ask before this job goes on:", *lines]


def _found(sheet: JobSheet) -> list[str]:
    if not sheet.findings:
        return []
    lines = [_item(found.eye, found.text, found.name) for found in sheet.findings]
    return ["", "Findings:", *lines]


def _item(eye: Eye | None, text: str, name: str) -> str:
    of = f"{eye.value}: " if eye else ""
    return textwrap.fill(
        f"{of}{text} [{name}]",
        _WIDTH,
        initial_indent="  - ",
        subsequent_indent="    ",
        break_on_hyphens=False,
    )
