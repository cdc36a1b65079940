"""What is said of a multifocal pair: the rows of its table, and the sentence under its picture."""

from collections.abc import Sequence

from lablib.optics.eye import Eye
from lablib.optics.progressive import NASAL_ENGRAVING, TEMPORAL_ENGRAVING
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.segment_layout import SegmentLayout
from lablib.pictures.multifocal_data import PairLaidOut

Row = tuple[str, str, str]
# What is lost is given in whole per cent: less than half of one is not said.
_WHOLE = 0.995


def rows(data: PairLaidOut) -> Sequence[Row]:
    """Return the rows of the table.

    data: the pair.
    """
    if data.engravings_alone:
        return [row for eye in Eye for row in _engraving_rows(data.layout(eye), eye.value.capitalize())]
    boxed = f"{2.0 * data.frame.bridge_to_boxed_centre_mm:.1f}"
    each = _segment_rows if data.has_segments else _progressive_rows
    return [
        ("Boxed centres apart", boxed, "mm"),
        _heights_row(data),
        _jump_row(data),
        *(row for eye in Eye for row in each(data, eye, eye.value.capitalize())),
    ]


def said(data: PairLaidOut) -> str:
    """Return the sentence: where the near parts lie, and what must be asked.

    data: the pair.
    """
    if data.engravings_alone:
        return "Only the engravings are left: find each fitting cross from them and from the chart."
    each = _segment_said if data.has_segments else _progressive_said
    places = " ".join(each(data, eye) for eye in Eye)
    return f"{places} {_heights_said(data)}"


def _heights_row(data: PairLaidOut) -> Row:
    heights = data.heights
    figure = f"{abs(heights.right_over_left_mm):.1f}"
    return ("Heights differ", figure, f"mm, {heights.higher} higher" if heights.higher else "mm")


def _jump_row(data: PairLaidOut) -> Row:
    if not data.jump_prism_d:
        return ("Image jump", "none", "")
    return ("Image jump", f"{data.jump_prism_d:.2f}", "base down")


def _segment_rows(data: PairLaidOut, eye: Eye, name: str) -> Sequence[Row]:
    layout: SegmentLayout = data.layout(eye)
    found = [
        (f"{name}, distance centre", *_part(layout.distance_centre_mm[0], "in", "out")),
        (f"{name}, segment inset", f"{layout.segment_inset_mm:.1f}", "mm"),
        (f"{name}, total inset", *_part(layout.total_inset_mm, "in", "out")),
        (f"{name}, top", *_part(layout.top_up_mm, "above midline", "below midline")),
        (f"{name}, depth", f"{layout.depth_left_mm:.1f}", f"of {layout.segment.depth_mm:g} mm"),
        (f"{name}, segment inside", f"{100.0 * layout.share_left:.0f}", "%"),
    ]
    cut_out = data.cut_out(eye)
    if cut_out:
        inwards, upwards = cut_out.blank_centre_mm
        found += [
            (f"{name}, blank across", *_part(inwards, "in", "out")),
            (f"{name}, blank upright", *_part(upwards, "up", "down")),
            (f"{name}, least blank", f"{cut_out.least_blank_mm:.1f}", "mm"),
        ]
    return found


def _progressive_rows(data: PairLaidOut, eye: Eye, name: str) -> Sequence[Row]:
    layout: ProgressiveLayout = data.layout(eye)
    own = data.insets_mm[list(Eye).index(eye)]
    return [
        (f"{name}, cross across", *_part(layout.cross_mm[0], "in", "out")),
        (f"{name}, cross upright", *_part(layout.cross_mm[1], "above midline", "below midline")),
        *_engraving_rows(layout, name),
        (f"{name}, near circle inside", f"{100.0 * layout.near_circle_left:.0f}", "%"),
        (f"{name}, near centre", *_part(layout.near_centre_room_mm, "above the rim", "below the rim")),
        (f"{name}, own inset", f"{own:.1f}", f"mm, chart {layout.design.near_inset_mm:g}"),
    ]


def _engraving_rows(layout: ProgressiveLayout, name: str) -> Sequence[Row]:
    nasal, temporal = (layout.mark(which) for which in (NASAL_ENGRAVING, TEMPORAL_ENGRAVING))
    return [
        (f"{name}, nasal engraving", *_part(nasal.in_mm, "in", "out")),
        (f"{name}, temporal engraving", *_part(temporal.in_mm, "in", "out")),
        (f"{name}, engravings", *_part(nasal.up_mm, "above midline", "below midline")),
    ]


def _segment_said(data: PairLaidOut, eye: Eye) -> str:
    layout: SegmentLayout = data.layout(eye)
    top, inwards = layout.top_up_mm, layout.total_inset_mm
    where = f"{eye.value.capitalize()} segment {_away(inwards, 'in', 'out', 'the boxed centre')}"
    level = f"top {_away(top, 'above', 'below', 'the midline')}"
    words = f"{where}, {level}"
    if layout.share_left < _WHOLE:
        words += f"; the rim cuts off {100.0 * (1.0 - layout.share_left):.0f} % of it"
    cut_out = data.cut_out(eye)
    if cut_out and not cut_out.covers:
        words += f"; the blank lacks {cut_out.short_mm:.1f} mm, {cut_out.worst_words}"
    return f"{words}."


def _progressive_said(data: PairLaidOut, eye: Eye) -> str:
    layout: ProgressiveLayout = data.layout(eye)
    inwards, upwards = layout.cross_mm
    words = f"{eye.value.capitalize()} cross {_away(inwards, 'in', 'out', 'the boxed centre')}"
    words += f", {_away(upwards, 'above', 'below', 'the midline')}"
    if layout.height_short_mm:
        words += f"; {layout.height_short_mm:.1f} mm under the least fitting height: hold"
    if layout.room_above_short_mm:
        words += f"; {layout.room_above_short_mm:.1f} mm too little room above it"
    if layout.near_circle_left < _WHOLE:
        words += f"; the rim cuts off {100.0 * (1.0 - layout.near_circle_left):.0f} % of the near circle"
    return f"{words}."


def _heights_said(data: PairLaidOut) -> str:
    heights = data.heights
    if heights.higher is None:
        return "Both stand level."
    difference = f"The {heights.higher} stands {abs(heights.right_over_left_mm):.1f} mm higher"
    return f"{difference}: ask before cutting." if heights.is_asked else f"{difference}."


def _away(part: float, plus: str, minus: str, point: str) -> str:
    figure = f"{abs(part):.1f}"
    if figure == "0.0":
        return f"at {point}"
    way = plus if part > 0.0 else minus
    return f"{figure} mm {way} from {point}" if way in ("in", "out") else f"{figure} mm {way} {point}"


def _part(part: float, plus: str, minus: str) -> tuple[str, str]:
    figure = f"{abs(part):.1f}"
    return figure, "mm" if figure == "0.0" else f"mm {plus if part > 0.0 else minus}"
