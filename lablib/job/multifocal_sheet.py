"""The multifocal part of a job sheet: the layout of each lens, its figures and its rows."""

from lablib.job.multifocal_order import SINGLE_VISION, SegmentOrder
from lablib.job.ticket import EyeOrder, Ticket
from lablib.optics.frame import Frame
from lablib.optics.progressive import (
    DISTANCE_CIRCLE,
    NASAL_ENGRAVING,
    NEAR_CIRCLE,
    PRISM_POINT,
    TEMPORAL_ENGRAVING,
    ProgressiveDesign,
)
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.segment_blank import CutOut
from lablib.optics.segment_layout import SegmentLayout
from lablib.optics.segment_prism import image_jump_prism_d
from lablib.working import plain

MultifocalLayout = SegmentLayout | ProgressiveLayout
_SEGMENT_ROWS = ("Segment middle", "Segment top", "Image jump", "Blank, by its segment")
_PROGRESSIVE_ROWS = ("Fitting cross", "Engravings, nasal and temporal", "Engravings, level")


def multifocal_layout(frame: Frame, order: EyeOrder) -> MultifocalLayout | None:
    """Return the layout of a multifocal lens; None for single vision, and while a distance is missing.

    frame: of the pair; order: of the eye.

    Raises LabError for a distance or a height that cannot be.
    """
    ordered = order.lens.multifocal
    if isinstance(ordered, SegmentOrder):
        if order.near_pd_mm is None or order.segment_height_mm is None:
            return None
        return SegmentLayout(
            frame=frame,
            eye=order.eye,
            segment=ordered.segment,
            far_pd_mm=order.monocular_pd_mm,
            near_pd_mm=order.near_pd_mm,
            segment_height_mm=order.segment_height_mm,
            height_mm=order.height_mm,
        )
    if ordered is None or order.height_mm is None:
        return None
    return ProgressiveLayout(
        frame=frame,
        eye=order.eye,
        design=ordered,
        monocular_pd_mm=order.monocular_pd_mm,
        height_mm=order.height_mm,
    )


def cut_out(order: EyeOrder, layout: MultifocalLayout | None) -> CutOut | None:
    """Return the outline laid over the blank's own segment; None where it is not said where that lies.

    order: of the eye; layout: of its lens.
    """
    if not isinstance(layout, SegmentLayout):
        return None
    blank = order.lens.multifocal.blank(order.lens.blank_diameter_mm)
    return blank and CutOut(layout=layout, blank=blank)


def multifocal_dict(order: EyeOrder, layout: MultifocalLayout | None) -> dict[str, object]:
    """Return the layout as plain values, under "multifocal" for a multifocal lens, else under nothing at all.

    order: of the eye; layout: of its lens.
    """
    if order.lens.multifocal is None:
        return {}
    figures: dict[str, object] = {"design": order.lens.design}
    if isinstance(layout, SegmentLayout):
        figures |= _segment_figures(order, layout)
    elif layout is not None:
        figures |= _progressive_figures(layout)
    return {"multifocal": figures}


def _segment_figures(order: EyeOrder, layout: SegmentLayout) -> dict[str, object]:
    laid, below = cut_out(order, layout), layout.segment.centre_below_top_mm
    # Without an addition the order is held, and so is the jump.
    addition = (order.prescription and order.prescription.addition_d) or None
    return {
        "segment_inset_mm": layout.segment_inset_mm,
        "total_inset_mm": layout.total_inset_mm,
        "segment_top_up_mm": layout.top_up_mm,
        "segment_top_below_centre_mm": layout.top_below_centre_mm,
        "segment_share_left": layout.share_left,
        "image_jump_prism_d": addition and image_jump_prism_d(addition, centre_below_top_mm=below),
        "segment_blank_least_mm": laid and laid.least_blank_mm,
        "segment_blank_covers": laid and laid.covers,
    }


def _progressive_figures(layout: ProgressiveLayout) -> dict[str, object]:
    inwards, upwards = layout.cross_mm
    figures = {"cross_in_mm": inwards, "cross_up_mm": upwards}
    for name in (PRISM_POINT, NASAL_ENGRAVING, TEMPORAL_ENGRAVING, DISTANCE_CIRCLE, NEAR_CIRCLE):
        mark, key = layout.mark(name), name.replace(" ", "_")
        figures |= {f"{key}_in_mm": mark.in_mm, f"{key}_up_mm": mark.up_mm}
    return figures | {
        "least_fitting_height_mm": layout.design.least_fitting_height_mm,
        "fitting_height_short_mm": layout.height_short_mm,
        "near_circle_left": layout.near_circle_left,
    }


def multifocal_rows(ticket: Ticket, order: EyeOrder, layout: MultifocalLayout | None) -> dict[str, str]:
    """Return the rows of an eye: those of every design in the pair, none where all of it is single vision.

    ticket: the job; order: of the eye; layout: of its lens.
    """
    kinds = {type(one.lens.multifocal) for one in ticket.eyes} - {type(None)}
    rows = {"Design": _design_words(order)} if kinds else {}
    for kind, names, words in (
        (SegmentOrder, _SEGMENT_ROWS, _segment_words),
        (ProgressiveDesign, _PROGRESSIVE_ROWS, _progressive_words),
    ):
        if kind not in kinds:
            continue
        if not isinstance(order.lens.multifocal, kind):
            rows |= dict.fromkeys(names, "-")
        elif layout is None:
            rows |= dict.fromkeys(names, "held")
        else:
            rows |= dict(zip(names, words(order, layout), strict=True))
    return rows


def _design_words(order: EyeOrder) -> str:
    ordered = order.lens.multifocal
    if ordered is None:
        return SINGLE_VISION
    return ordered.words if isinstance(ordered, ProgressiveDesign) else ordered.segment.words


def _segment_words(order: EyeOrder, layout: SegmentLayout) -> tuple[str, str, str, str]:
    figures = _segment_figures(order, layout)
    jump, least = figures["image_jump_prism_d"], figures["segment_blank_least_mm"]
    covers = "covers" if figures["segment_blank_covers"] else "does NOT cover"
    return (
        f"{_across(layout.total_inset_mm)} (inset {plain(layout.segment_inset_mm, 1)})",
        _upright(layout.top_up_mm),
        "held" if jump is None else f"{jump:.2f} prism D base down",
        "its inset and drop not given" if least is None else f"least {least:.1f} mm, {covers}",
    )


def _progressive_words(order: EyeOrder, layout: ProgressiveLayout) -> tuple[str, str, str]:
    nasal, temporal = layout.mark(NASAL_ENGRAVING), layout.mark(TEMPORAL_ENGRAVING)
    return (
        f"{_across(layout.cross_mm[0])}, {_upright(layout.cross_mm[1])}",
        f"{_across(nasal.in_mm)} and {_across(temporal.in_mm)}",
        _upright(nasal.up_mm),
    )


def _across(value: float) -> str:
    return f"{plain(abs(value), 1)} mm {'in' if value >= 0.0 else 'out'}"


def _upright(value: float) -> str:
    size = plain(abs(value), 1)
    if not float(size):
        return "on the midline"
    return f"{size} mm {'above' if value > 0.0 else 'below'} midline"
