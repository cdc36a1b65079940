"""The job sheet's figures with their workings, in the order in which they are reached."""

from lablib.bench.workings import margin_workings
from lablib.job.eye_sheet import EyeSheet
from lablib.job.multifocal_sheet import cut_out
from lablib.job.sheet import JobSheet
from lablib.optics.edge_workings import edge_workings
from lablib.optics.layout_workings import decentration_workings, minimum_blank_workings
from lablib.optics.lens_workings import curve_workings, weight_working
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.progressive_workings import progressive_layout_workings
from lablib.optics.segment_layout import SegmentLayout
from lablib.optics.segment_workings import cut_out_workings, image_jump_working, segment_layout_workings
from lablib.working import Working

_WORKED = ("d_in", "d_up")


def explain_eye(sheet: EyeSheet) -> tuple[Working, ...]:
    """Return the workings of one lens; while it is held, those of its layout.

    sheet: a worked lens.
    """
    order = sheet.order
    layout = (
        *decentration_workings(sheet.frame, monocular_pd_mm=order.monocular_pd_mm, height_mm=order.height_mm),
        *minimum_blank_workings(sheet.outline, x_mm=sheet.centre_x_mm, y_mm=sheet.up_mm),
        *_multifocal(sheet),
    )
    if sheet.finished is None:
        return layout
    rx, finished = order.prescription, sheet.finished
    return (
        *layout,
        *curve_workings(finished.lens, along_axis_d=rx.sphere_d, across_axis_d=rx.sphere_d + rx.cylinder_d),
        *edge_workings(finished, sheet.greatest_at, name="thickest edge"),
        *edge_workings(finished, sheet.least_at, name="thinnest edge"),
        weight_working(finished, order.lens.material.density),
        *(margin_workings(sheet.cut) if sheet.cut else ()),
    )


def _multifocal(sheet: EyeSheet) -> tuple[Working, ...]:
    """The layout of a segment or a progressive, without what was worked already."""
    layout = sheet.multifocal
    if isinstance(layout, ProgressiveLayout):
        return tuple(step for step in progressive_layout_workings(layout) if step.symbol not in _WORKED)
    if not isinstance(layout, SegmentLayout):
        return ()
    laid, rx = cut_out(sheet.order, layout), sheet.order.prescription
    jumps = rx is not None and rx.addition_d
    below = layout.segment.centre_below_top_mm
    steps = segment_layout_workings(layout)
    worked = {*_WORKED, *(step.symbol for step in steps)}
    return (
        *(step for step in steps if step.symbol not in _WORKED),
        *((image_jump_working(rx.addition_d, centre_below_top_mm=below),) if jumps else ()),
        *(step for step in (cut_out_workings(laid) if laid else ()) if step.symbol not in worked),
    )


def explain_text(sheet: JobSheet) -> str:
    """Return every working of a sheet as text.

    sheet: a worked ticket.
    """
    blocks = []
    for eye in sheet.eyes:
        blocks.append(f"How the figures were reached, {eye.eye.value} lens")
        blocks += [str(working) for working in explain_eye(eye)]
    return "\n\n".join(blocks)
