"""What must be asked about a multifocal order, and what the bench should know of it."""

from lablib.job.eye_sheet import EyeSheet
from lablib.job.finding import Finding
from lablib.job.multifocal_order import PROGRESSIVE, SegmentOrder
from lablib.job.multifocal_sheet import cut_out
from lablib.job.ticket import EyeOrder, Hold, Ticket
from lablib.optics.multifocal_pair import TwoHeights
from lablib.optics.near_imbalance import slab_off
from lablib.optics.practice import usual
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.segment_layout import SegmentLayout

_SETTLES = "A note on the ticket settles it."
# What a figure of the distance part leaves out: of a segment, and of a progressive (common practice).
_ELSEWHERE = (
    "a segment adds a little, and its blank lies where the segment must come",
    "a near part adds a little, and the blank lies lower, about the prism reference point",
)


def multifocal_holds(ticket: Ticket) -> list[Hold]:
    """Return what must be answered before a multifocal job goes on.

    ticket: the job. Faults to catch: common practice, no source.
    """
    asked = [hold for order in ticket.eyes if order.lens.multifocal is not None for hold in _one_eye(order)]
    both = [order for order in ticket.eyes if order.lens.multifocal is not None]
    if len(both) == 2 and not ticket.note:
        asked += _heights(*both)
        asked += _near_imbalance(*both)
    return asked


def _one_eye(order: EyeOrder) -> list[Hold]:
    design = order.lens.design
    height = _height_key(order)
    missing = []
    if order.prescription is not None and not order.prescription.addition_d:
        missing.append(("addition-missing", f"A {design} without an addition: what addition is ordered?"))
    if getattr(order, height) is None:
        name = "fitting-height-missing" if design == PROGRESSIVE else "segment-height-missing"
        what = "the fitting cross" if design == PROGRESSIVE else "the top of the segment"
        missing.append((name, f"{height} is not given: at what height does {what} stand? Measure it."))
    if isinstance(order.lens.multifocal, SegmentOrder) and order.near_pd_mm is None:
        question = "near_pd_mm is not given: what is this eye's near distance? It is measured, never guessed."
        missing.append(("near-distance-missing", question))
    asked = [Hold(name=name, question=question, eye=order.eye) for name, question in missing]
    return asked + _fitting_height(order)


def _fitting_height(order: EyeOrder) -> list[Hold]:
    if order.lens.design != PROGRESSIVE or order.height_mm is None:
        return []
    least = order.lens.multifocal.least_fitting_height_mm
    if order.height_mm >= least:
        return []
    return [
        Hold(
            name="height-below-least-fitting",
            eye=order.eye,
            question=f"The cross stands {order.height_mm:g} mm high and this design needs {least:g} mm: "
            "another design or another frame? The cross is not raised, and the near part not cut off.",
        )
    ]


def _height_key(order: EyeOrder) -> str:
    return "height_mm" if order.lens.design == PROGRESSIVE else "segment_height_mm"


def _heights(right: EyeOrder, left: EyeOrder) -> list[Hold]:
    keys = {_height_key(order) for order in (right, left)}
    values = [getattr(order, _height_key(order)) for order in (right, left)]
    if None in values or len(keys) == 2:
        return []
    if not TwoHeights(right_mm=values[0], left_mm=values[1]).is_asked:
        return []
    return [
        Hold(
            name="heights-differ",
            question=f"Right {values[0]:g} and left {values[1]:g} mm of height differ: is that meant, or did "
            f"the frame sit askew? {_SETTLES}",
        )
    ]


def _near_imbalance(right: EyeOrder, left: EyeOrder) -> list[Hold]:
    powers = right.prescription, left.prescription
    if None in powers:
        return []
    drop = usual("reading_drop")
    found = slab_off(*powers, drop_mm=drop)
    # Compared rounded, so that the last bit of a machine decides nothing.
    if round(found.amount_prism_d, 6) < usual("near_imbalance_raised"):
        return []
    return [
        Hold(
            name="near-imbalance",
            question=f"Right {powers[0]} and left {powers[1]} put {found.amount_prism_d:.2f} prism dioptres "
            f"between the eyes {drop:g} mm below the distance centres: what does the prescriber want done? "
            f"If slab-off is ordered, it goes base up on the {found.eye} lens. {_SETTLES}",
        )
    ]


def multifocal_findings(sheet: EyeSheet) -> list[Finding]:
    """Return what the bench should know of a multifocal lens; nothing of a single vision one.

    sheet: the lens, worked.
    """
    if sheet.order.lens.multifocal is None:
        return []
    layout = sheet.multifocal
    found = [_distance_part(sheet)]
    if isinstance(layout, SegmentLayout):
        found += [_top(sheet, layout), _blank(sheet)]
    elif layout is not None:
        found.append(_room(sheet, layout))
    return [one for one in found if one is not None]


def _distance_part(sheet: EyeSheet) -> Finding:
    return Finding(
        name="distance-part-alone",
        eye=sheet.eye,
        text="thickness, weight and bench figures are those of the distance part, with the blank about its "
        f"centre: {_ELSEWHERE[sheet.order.lens.design == PROGRESSIVE]}",
    )


def _top(sheet: EyeSheet, layout: SegmentLayout) -> Finding | None:
    if layout.top_below_centre_mm >= 0.0:
        return None
    return Finding(
        name="top-above-distance-centre",
        eye=sheet.eye,
        text=f"the top of the segment lies {-layout.top_below_centre_mm:g} mm above the distance centre: the "
        "wearer looks far through it; check both heights",
    )


def _blank(sheet: EyeSheet) -> Finding | None:
    laid = cut_out(sheet.order, sheet.multifocal)
    if laid is None or laid.covers:
        return None
    return Finding(
        name="blank-does-not-carry-segment",
        eye=sheet.eye,
        text=f"with its segment in place the blank of {laid.blank.diameter_mm:g} mm is smaller than the "
        f"least, {laid.least_blank_mm:.1f} mm, and fails first {laid.worst_words}: take another blank or a "
        "smaller frame; moving the outline would move the segment",
    )


def _room(sheet: EyeSheet, layout: ProgressiveLayout) -> Finding | None:
    if not layout.room_above_short_mm:
        return None
    left = sheet.frame.b_mm - layout.height_mm
    return Finding(
        name="little-room-above-the-cross",
        eye=sheet.eye,
        text=f"{left:g} mm are left above the fitting cross and the chart asks for "
        f"{layout.design.least_above_cross_mm:g}: the far part is cut short; ask about the frame",
    )
