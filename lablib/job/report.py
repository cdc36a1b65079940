"""The job sheet as text to read at the bench."""

import math
import re
import textwrap

from lablib.bench.margin import CutResult
from lablib.inspection.axis import standard_name
from lablib.job.eye_sheet import EyeSheet
from lablib.job.figures import bench_dict, eye_dict
from lablib.job.how_sure import how_sure
from lablib.job.multifocal_sheet import multifocal_rows
from lablib.job.sheet import JobSheet
from lablib.optics.eye import Eye
from lablib.optics.prism import in_words
from lablib.working import plain

_LABEL, _COLUMN, _WIDTH = 34, 22, 96
_WRITTEN, _NO_BREAK = re.compile(r"[-+]\d+\.\d\d [-+]\d+\.\d\d x \d{3}"), "\N{NO-BREAK SPACE}"


def as_text(sheet: JobSheet) -> str:
    """Return the sheet as lines to read at the bench.

    sheet: a worked ticket.
    """
    grade = ["", *textwrap.wrap(how_sure(sheet), _WIDTH)] if any(eye.cut for eye in sheet.eyes) else []
    safety = ["", *textwrap.wrap(_SAFETY, _WIDTH)]
    parts = (_head(sheet), _questions(sheet), [""], _columns(sheet), grade, safety, _found(sheet))
    return "\n".join(line for part in parts for line in part)


_SAFETY = (
    "Thicknesses are geometry. Least thickness for impact and for safety eyewear is set by law and "
    "standards; this sheet does not decide them."
)


def _head(sheet: JobSheet) -> list[str]:
    frame, wearer = sheet.ticket.frame, sheet.ticket.wearer
    kind = f", {frame.kind}" if frame.kind else ""
    diameter = sheet.eyes[0].outline.effective_diameter_mm
    lines = [
        f"Job sheet {sheet.ticket.number}",
        f"Frame: A {frame.a_mm:g}, B {frame.b_mm:g}, DBL {frame.dbl_mm:g} mm, {frame.outline_words}{kind}; "
        f"effective diameter {diameter:.1f} mm",
    ]
    distances = (("as tested", wearer.tested_vertex_distance_mm), ("as worn", wearer.vertex_distance_mm))
    known = [f"{value:g} mm {words}" for words, value in distances if value is not None]
    if known:
        lines.append(f"Vertex distance: {', '.join(known)}")
    if sheet.ticket.note:
        lines.append(f"Read this first: {sheet.ticket.note}")
    return lines


def _columns(sheet: JobSheet) -> list[str]:
    """One row a figure, one column a lens; in the order in which the bench needs them."""
    columns = [_column(eye) | multifocal_rows(sheet.ticket, eye.order, eye.multifocal) for eye in sheet.eyes]
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
    short = "covers without the allowance" if sheet.blank_reaches else "does NOT cover"
    covers = "covers" if sheet.blank_covers else short
    shown = {
        "Prescription": str(order.prescription) if order.prescription else "HELD",
        "Prism": "HELD" if order.prism_held else in_words(*order.prism_in_up),
        "Lens": f"{lens.material.words}, {lens.coat}",
        "Supply": f"{lens.supply}, front curve {lens.front_surface_d:.2f} D",
        "Optical centre from boxed centre": _decentration(sheet),
        "Least blank, exact / by rule": f"{exact:.1f} / {by_rule:.1f} mm",
        "Blank": f"{lens.blank_diameter_mm:g} mm, {covers}",
    }
    return shown | _lens_rows(sheet) | _bench_rows(sheet)


def _lens_rows(sheet: EyeSheet) -> dict[str, str]:
    if sheet.finished is None:
        return dict.fromkeys(_LENS_ROWS, "held")
    at = eye_dict(sheet)
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


def _bench_rows(sheet: EyeSheet) -> dict[str, str]:
    turn = {"Axis may be off": _axis_words(sheet)}
    if sheet.cut is None:
        return dict.fromkeys(_BENCH_ROWS, _why_no_cut(sheet)) | turn
    at, cut = bench_dict(sheet), sheet.cut
    values = (
        _start_words(cut),
        f"{at['removed_volume_mm3'] / 1000:.1f} cm3",
        f"{at['peak_removal_rate_mm3_per_s']:.0f} mm3/s",
        f"{at['peak_tangential_force_n']:.1f} N",
        f"{at['peak_cutting_torque_nmm'] / 1000:.2f} N m",
        f"{at['front_hold_nmm'] / 1000:.2f} / {at['back_hold_nmm'] / 1000:.2f} N m",
        at["weakest_interface"],
        f"{at['clamp_force_n']:.0f} N",
        _block_words(cut.block_clearance_mm),
        f"{at['margin']:.2f}, turn {cut.least.turn}, {where(cut.least.angle_deg, sheet.eye)}",
        "not cribbed" if cut.crib is None else _crib_words(cut.crib),
        f"{percent(at['slip_probability'])} / {percent(at['slip_probability_calibrated'])}",
    )
    return dict(zip(_BENCH_ROWS, values, strict=True)) | turn


_BENCH_ROWS = (
    "Cut from",
    "To take off",
    "Greatest removal rate",
    "Greatest tangential force",
    "Greatest cutting torque",
    "Hold, front / back",
    "Weakest joint",
    "Clamp force",
    "Block in the outline",
    "Margin, where least",
    "Cribbing: margin, slip now",
    "Slip, now / calibrated bench",
)


def _why_no_cut(sheet: EyeSheet) -> str:
    if sheet.finished is None:
        return "held"
    return "not known" if sheet.blank_reaches else "blank too small"


def _start_words(cut: CutResult) -> str:
    allowance = cut.setup.crib_allowance_mm
    blank = f"round blank, {cut.lens.blank_diameter_mm:g} mm"
    # An allowance wider than the blank leaves nothing to crib.
    return blank if cut.crib is None else f"crib, +{allowance:g} mm"


def _crib_words(crib: CutResult) -> str:
    return f"{crib.margin:.2f}, {percent(crib.slip_probability)}"


def _block_words(clearance_mm: float) -> str:
    if plain(abs(clearance_mm), 1) == "0.0":
        return "touches the outline"
    return f"{'inside' if clearance_mm > 0.0 else 'stands out'} by {abs(clearance_mm):.1f} mm"


def percent(share: float) -> str:
    """Return a probability in whole per cent, never as certain.

    share: from 0 to 1.
    """
    if 0.01 <= share <= 0.99:
        return f"{100.0 * share:.0f} %"
    return "under 1 %" if share < 0.5 else "over 99 %"


def _axis_words(sheet: EyeSheet) -> str:
    if sheet.order.prescription is None:
        return "held"
    limit = sheet.axis_tolerance_deg
    if limit is not None:
        return f"{limit:g} degrees, {standard_name()}"
    return "no limit; a turn spoils coat, outline"


def _edge(edge_mm: float, angle_deg: float, eye: Eye) -> str:
    return f"{edge_mm:.2f} mm, {where(angle_deg, eye)} ({round(angle_deg) % 360})"


def _decentration(sheet: EyeSheet) -> str:
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
    return ["", "HOLD. Do not cut. Ask before this job goes on:", *lines]


def _found(sheet: JobSheet) -> list[str]:
    if not sheet.findings:
        return []
    lines = [_item(found.eye, found.text, found.name) for found in sheet.findings]
    return ["", "Findings:", *lines]


def _item(eye: Eye | None, text: str, name: str) -> str:
    of = f"{eye.value}: " if eye else ""
    # A prescription is not broken over two lines.
    whole = _WRITTEN.sub(lambda found: found.group().replace(" ", _NO_BREAK), f"{of}{text} [{name}]")
    lines = textwrap.fill(
        whole, _WIDTH, initial_indent="  - ", subsequent_indent="    ", break_on_hyphens=False
    )
    return lines.replace(_NO_BREAK, " ")
