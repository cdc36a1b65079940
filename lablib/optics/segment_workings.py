"""The layout of a segment as workings to follow by hand: insets, the top, the blank, the jump.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.layout_workings import blank_about_working, decentration_workings
from lablib.optics.power_workings import prism_at_workings
from lablib.optics.prescription import Prescription
from lablib.optics.segment_blank import CutOut
from lablib.optics.segment_layout import (
    SegmentLayout,
    reading_drop_mm,
    segment_inset_mm,
    top_up_mm,
    total_inset_mm,
)
from lablib.optics.segment_prism import image_jump_prism_d, prism_through_segment
from lablib.optics.terms import distance_term, marked, power_term, prism_step
from lablib.working import Term, Working

_PRACTICE = "common practice"
_BHOOTRA = "Bhootra, Ophthalmic Lenses, p. 114"


def segment_inset_working(*, far_pd_mm: float, near_pd_mm: float) -> Working:
    """Return the segment inset of one eye, worked.

    far_pd_mm, near_pd_mm: as in `segment_inset_mm`, which also says what it raises.
    """
    return _millimetres(
        "segment inset: middle of the segment inwards of the distance centre",
        "i_s",
        "PD - NPD",
        (distance_term("PD", far_pd_mm, "far distance of this eye"), _near_term(near_pd_mm)),
        segment_inset_mm(far_pd_mm=far_pd_mm, near_pd_mm=near_pd_mm),
    )


def total_inset_working(frame: Frame, *, near_pd_mm: float) -> Working:
    """Return the total inset of one eye, worked.

    frame, near_pd_mm: as in `total_inset_mm`, which also says what it raises.
    """
    return _millimetres(
        "total inset: middle of the segment inwards of the boxed centre (minus: outwards)",
        "i_t",
        "(A + DBL) / 2 - NPD",
        (
            distance_term("A", frame.a_mm, "boxed width"),
            distance_term("DBL", frame.dbl_mm, "distance between lenses"),
            _near_term(near_pd_mm),
        ),
        total_inset_mm(frame, near_pd_mm=near_pd_mm),
    )


def top_up_working(frame: Frame, *, segment_height_mm: float) -> Working:
    """Return where the top of a segment lies from the midline, worked.

    frame, segment_height_mm: as in `top_up_mm`, which also says what it raises.
    """
    return _millimetres(
        "top of the segment above the midline (minus: below)",
        "t_up",
        "h_s - B / 2",
        (
            distance_term("h_s", segment_height_mm, "segment height above the lowest tangent"),
            distance_term("B", frame.b_mm, "boxed height"),
        ),
        top_up_mm(frame, segment_height_mm=segment_height_mm),
    )


def reading_drop_working(*, top_below_centre_mm: float, below_top_mm: float) -> Working:
    """Return how far below the distance centre the eye reads, worked.

    top_below_centre_mm, below_top_mm: as in `reading_drop_mm`, which also says what it raises.
    """
    return _millimetres(
        "reading place below the distance centre",
        "d",
        "t + r",
        (
            distance_term("t", top_below_centre_mm, "top of the segment below the distance centre"),
            distance_term("r", below_top_mm, "reading place below the top"),
        ),
        reading_drop_mm(top_below_centre_mm=top_below_centre_mm, below_top_mm=below_top_mm),
    )


def segment_layout_workings(layout: SegmentLayout) -> tuple[Working, ...]:
    """Return the layout of a segment, worked: distance centre, both insets, the top from midline and centre.

    layout: for one eye.
    """
    frame = layout.frame
    top = top_up_working(frame, segment_height_mm=layout.segment_height_mm)
    centre = decentration_workings(frame, monocular_pd_mm=layout.far_pd_mm, height_mm=layout.height_mm)
    above = centre[1:]
    return (
        *centre,
        segment_inset_working(far_pd_mm=layout.far_pd_mm, near_pd_mm=layout.near_pd_mm),
        total_inset_working(frame, near_pd_mm=layout.near_pd_mm),
        top,
        _millimetres(
            "top of the segment below the distance centre (minus: above)",
            "t",
            "d_up - t_up" if above else "-t_up",
            (*(step.as_term() for step in above), top.as_term()),
            layout.top_below_centre_mm,
        ),
    )


def image_jump_working(addition_d: float, *, centre_below_top_mm: float) -> Working:
    """Return the image jump, worked.

    addition_d, centre_below_top_mm: as in `image_jump_prism_d`, which also says what it raises.
    """
    return prism_step(
        "image jump, base down",
        "J",
        "Add * c / 10",
        (
            power_term("Add", addition_d, "addition"),
            distance_term("c", centre_below_top_mm, "optical centre of the segment below its top"),
        ),
        image_jump_prism_d(addition_d, centre_below_top_mm=centre_below_top_mm),
        source=_BHOOTRA,
    )


def prism_through_segment_workings(
    rx: Prescription,
    *,
    eye: Eye,
    point_mm: tuple[float, float],
    distance_centre_mm: tuple[float, float],
    segment_centre_mm: tuple[float, float],
) -> tuple[Working, ...]:
    """Return the prism through lens and segment together, worked; the last two steps are base in and base up.

    rx, eye, point_mm, distance_centre_mm, segment_centre_mm: as in `prism_through_segment`, which also says
        what it raises.
    """
    places = {"point_mm": point_mm, "distance_centre_mm": distance_centre_mm}
    total = prism_through_segment(rx, eye=eye, segment_centre_mm=segment_centre_mm, **places)
    added = Prescription(sphere_d=rx.addition_d)
    steps = (
        *_part(rx, eye, point_mm, distance_centre_mm, "_m", "main lens"),
        *_part(added, eye, point_mm, segment_centre_mm, "_s", "segment"),
    )
    found = {step.symbol: step.as_term() for step in steps}
    return steps + tuple(
        prism_step(
            f"both together, base {plus} (minus is base {minus})",
            symbol,
            f"{symbol}_m + {symbol}_s",
            (found[f"{symbol}_m"], found[f"{symbol}_s"]),
            value,
            source=_PRACTICE,
        )
        for symbol, plus, minus, value in (("P_in", "in", "out", total[0]), ("P_up", "up", "down", total[1]))
    )


def cut_out_workings(cut_out: CutOut) -> tuple[Working, ...]:
    """Return where a blank's centre comes to lie and the least blank that covers, worked.

    cut_out: the outline laid over the blank.
    """
    layout, blank = cut_out.layout, cut_out.blank
    total = total_inset_working(layout.frame, near_pd_mm=layout.near_pd_mm)
    top = top_up_working(layout.frame, segment_height_mm=layout.segment_height_mm)
    inwards, upwards = cut_out.blank_centre_mm
    outline = layout.frame.outline(layout.eye)
    exact = blank_about_working(
        outline,
        x_mm=layout.eye.nasal_sign * inwards,
        y_mm=upwards,
        what="least blank with its segment in place",
        symbol="D_s",
        centre="the blank's centre",
    )
    return (
        total,
        top,
        _millimetres(
            "centre of the blank inwards of the boxed centre (minus: outwards)",
            "b_in",
            "i_t - i_b",
            (total.as_term(), distance_term("i_b", blank.inset_mm, "the blank's own segment inset")),
            inwards,
        ),
        _millimetres(
            "centre of the blank above the boxed centre (minus: below)",
            "b_up",
            "t_up + d_b",
            (top.as_term(), distance_term("d_b", blank.drop_mm, "the blank's own segment drop")),
            upwards,
        ),
        exact,
    )


def _near_term(near_pd_mm: float) -> Term:
    return distance_term("NPD", near_pd_mm, "near distance of this eye")


def _part(
    rx: Prescription,
    eye: Eye,
    point: tuple[float, float],
    centre: tuple[float, float],
    mark: str,
    whose: str,
) -> tuple[Working, ...]:
    steps = prism_at_workings(rx, eye=eye, in_mm=point[0] - centre[0], up_mm=point[1] - centre[1])
    return marked(steps, mark, whose=whose)


def _millimetres(what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float) -> Working:
    return Working(
        what=what,
        symbol=symbol,
        formula=formula,
        terms=terms,
        value=value,
        unit="mm",
        digits=max(term.digits for term in terms),
        source=_PRACTICE,
    )
