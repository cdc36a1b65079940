"""The job sheet's figures as plain values, for programs and for everything that prints them."""

from lablib.job.eye_sheet import EyeSheet
from lablib.job.multifocal_sheet import multifocal_dict
from lablib.job.sheet import JobSheet


def as_dict(sheet: JobSheet) -> dict:
    """Return the sheet as plain values: "number", "right", "left" (None for no lens), "holds", "findings".

    sheet: a worked ticket.
    """
    return {
        "number": sheet.ticket.number,
        "right": _whole_eye(sheet.right),
        "left": _whole_eye(sheet.left),
        "holds": [
            {"name": hold.name, "eye": hold.eye and hold.eye.value, "question": hold.question}
            for hold in sheet.holds
        ],
        "findings": [
            {"name": found.name, "eye": found.eye and found.eye.value, "text": found.text}
            for found in sheet.findings
        ],
    }


def _whole_eye(sheet: EyeSheet | None) -> dict | None:
    return sheet and (eye_dict(sheet) | bench_dict(sheet) | multifocal_dict(sheet.order, sheet.multifocal))


def eye_dict(sheet: EyeSheet) -> dict:
    """Return one lens as plain values, those of the lens itself None while it is held.

    sheet: the lens, worked.
    """
    rx = sheet.order.prescription
    prism = (None, None) if sheet.order.prism_held else sheet.order.prism_in_up
    layout = {
        "prescription": rx and str(rx),
        "decentration_in_mm": sheet.in_mm,
        "decentration_up_mm": sheet.up_mm,
        "prism_in_prism_d": prism[0],
        "prism_up_prism_d": prism[1],
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


def bench_dict(sheet: EyeSheet) -> dict:
    """Return what happens to one lens on the bench as plain values, None where it is not known.

    sheet: the lens, worked. Those of cribbing are None, too, where the lens is not cribbed.
    """
    axis = {"axis_tolerance_deg": sheet.axis_tolerance_deg}
    cut = sheet.cut
    if cut is None:
        return axis | dict.fromkeys(_BENCH_FIGURES)
    own = {name: getattr(cut, name) for name in _BENCH_FIGURES[:-5]}
    return (
        axis
        | own
        | {
            "least_margin_turn": cut.least.turn,
            "least_margin_at_deg": cut.least.angle_deg,
            "clamp_force_n": cut.holding.clamp_force_n,
            "crib_margin": cut.crib and cut.crib.margin,
            "crib_slip_probability": cut.crib and cut.crib.slip_probability,
        }
    )


# All but the last five carry the names they have in a CutResult.
_BENCH_FIGURES = (
    "removed_volume_mm3",
    "peak_removal_rate_mm3_per_s",
    "peak_tangential_force_n",
    "peak_cutting_torque_nmm",
    "front_hold_nmm",
    "back_hold_nmm",
    "weakest_interface",
    "margin",
    "slip_probability",
    "slip_probability_calibrated",
    "block_clears",
    "least_margin_turn",
    "least_margin_at_deg",
    "clamp_force_n",
    "crib_margin",
    "crib_slip_probability",
)
