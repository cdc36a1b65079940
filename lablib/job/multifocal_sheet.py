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
_ROWS = ("Design", "Segment middle, or cross", "Segment top, or cross", "Jump, or engravings")


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
    rx, laid = order.prescription, cut_out(order, layout)
    below = layout.segment.centre_below_top_mm
    return {
        "segment_inset_mm": layout.segment_inset_mm,
        "total_inset_mm": layout.total_inset_mm,
        "segment_top_up_mm": layout.top_up_mm,
        "segment_top_below_centre_mm": layout.top_below_centre_mm,
        "segment_share_left": layout.share_left,
        "image_jump_prism_d": rx and image_jump_prism_d(rx.addition_d, centre_below_top_mm=below),
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
    """Return the rows of an eye, none where the whole ticket is single vision.

    ticket: the job; order: of the eye; layout: of its lens.
    """
    if all(one.lens.multifocal is None for one in ticket.eyes):
        return {}
    ordered = order.lens.multifocal
    if ordered is None:
        return dict(zip(_ROWS, (SINGLE_VISION, "-", "-", "-"), strict=True))
    words = ordered.words if isinstance(ordered, ProgressiveDesign) else ordered.segment.words
    rest = ("held", "held", "held")
    if isinstance(layout, SegmentLayout):
        rest = _segment_words(order, layout)
    elif layout is not None:
        rest = _progressive_words(layout)
    return dict(zip(_ROWS, (words, *rest), strict=True))


def _segment_words(order: EyeOrder, layout: SegmentLayout) -> tuple[str, str, str]:
    jump = _segment_figures(order, layout)["image_jump_prism_d"]
    return (
        f"{_way(layout.total_inset_mm, 'in', 'out')} (inset {plain(layout.segment_inset_mm, 1)})",
        _way(layout.top_up_mm, "above midline", "below midline"),
        "held" if jump is None else f"{jump:.2f} prism D base down",
    )


def _progressive_words(layout: ProgressiveLayout) -> tuple[str, str, str]:
    inwards, upwards = layout.cross_mm
    nasal, temporal = layout.mark(NASAL_ENGRAVING), layout.mark(TEMPORAL_ENGRAVING)
    level = _way(nasal.up_mm, "above", "below")
    return (
        _way(inwards, "in", "out"),
        _way(upwards, "above midline", "below midline"),
        f"{plain(nasal.in_mm, 1)} and {plain(temporal.in_mm, 1)} in, {level}",
    )


def _way(value: float, plus: str, minus: str) -> str:
    return f"{plain(abs(value), 1)} mm {plus if value >= 0.0 else minus}"
